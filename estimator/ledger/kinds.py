"""Kinds of line that the books post, each with the group it counts in; accounts.csv maps them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

Group = Literal["income", "cost", "expense", "asset", "liability", "equity"]

GROUPS: Mapping[str, Group] = {
    "materials": "income",
    "labor": "income",
    "other": "income",
    "cost-materials": "cost",
    "cost-labor": "cost",
    "labor-applied": "expense",
    "cost-trips": "cost",
    "vehicle-applied": "expense",
    "cost-permit": "cost",
    "cost-subcontract": "cost",
    "cost-other": "cost",
    "tools": "expense",
    "supplies": "expense",
    "stock": "asset",
    "bank": "asset",
    "receivable": "asset",
    "input-tax": "asset",
    "card": "liability",
    "payable": "liability",
    "deposit": "liability",
    "tax": "liability",
    "owner": "equity",
}
"""Every kind that an event can post. What is applied (own hours, own vehicle) goes to the job as
a cost and comes off as an expense, so that nothing is counted twice beside payroll and fuel."""

BY_PURPOSE: Mapping[str, str] = {
    "truck-stock": "stock", "own-tool": "tools", "supplies": "supplies", "owner": "owner",
}  # fmt: skip
"""Kind of a receipt line that is for no job."""

PAID_FROM: Mapping[str, str] = {"bank": "bank", "card": "card", "on account": "payable"}
"""Kind that a receipt is paid from."""
