"""The books a user edits, as frozen records."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from estimator.language import ENGLISH, Language
from estimator.problems import Problem
from estimator.settings import Shop


@dataclass(frozen=True, slots=True)
class Material:
    """One way to buy one item.

    Attributes:
        pack_size: how many `unit` one pack holds, above zero.
        pack_price: in the shop's currency; None where the book has the item but no price.
        properties: the remaining columns that are filled in ("volume_in3" -> "20.0").
        row: row in the file as a spreadsheet counts it (the header is row 1).
    """

    item: str
    description: str
    unit: str
    pack_size: Decimal
    pack_price: Decimal | None
    supplier: str
    aisle: str
    tax_class: str
    properties: Mapping[str, str]
    priced_on: date | None
    source: str
    row: int


@dataclass(frozen=True, slots=True)
class LaborUnit:
    """Hours for one unit of a task, hands on, one person.

    Attributes:
        conditions: keys of shop.toml [conditions] whose factor multiplies this task.
        source: where the hours come from; judgement says so.
    """

    task: str
    description: str
    unit: str
    hours_low: Decimal
    hours_likely: Decimal
    hours_high: Decimal
    conditions: tuple[str, ...]
    includes: str
    source: str
    row: int


@dataclass(frozen=True, slots=True)
class Account:
    """The account one kind of line posts to."""

    line_kind: str
    account_code: str
    account_name: str
    note: str
    row: int


@dataclass(frozen=True, slots=True, eq=False)
class Books:
    """Everything a shop keeps, read and checked; two readings are two books, never equal.

    Attributes:
        materials: all ways to buy an item, by item key, in file order.
        labor: by task key. accounts: by kind of line.
        files: name of each file as read, by book ("materials" -> "catalogs/materials.csv").
        left_out: problems of a large materials file, whose wrong rows do not serve.
        language: what the customer reads.
    """

    materials: Mapping[str, tuple[Material, ...]]
    labor: Mapping[str, LaborUnit]
    accounts: Mapping[str, Account]
    shop: Shop
    files: Mapping[str, str]
    left_out: tuple[Problem, ...] = ()
    language: Language = ENGLISH
