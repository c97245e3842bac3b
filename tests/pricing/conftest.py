"""The outside solver that checks what is bought: HiGHS, through its own package highspy."""

from __future__ import annotations

import os
from collections.abc import Callable
from typing import Any

import pytest


@pytest.fixture(name="new_model", scope="module")
def _new_model() -> Callable[[], Any]:
    """Make empty models that only stop at a proven optimum; where CI is true, never skip."""
    if os.environ.get("CI") != "true":
        pytest.importorskip("highspy", reason="highspy is the outside check; pip install .[dev]")
    import highspy

    def new_model() -> Any:
        model: Any = highspy.Highs()  # type: ignore[no-untyped-call]
        for option, value in {"output_flag": False, "mip_rel_gap": 0.0, "threads": 1}.items():
            model.setOptionValue(option, value)
        return model

    return new_model
