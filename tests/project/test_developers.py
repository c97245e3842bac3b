"""What DEVELOPERS.md shows of a rule is the rule as it stands."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
# "... `path`:" with an empty line and a block after it.
SHOWN = re.findall(r"`([\w/.]+)`:\n\n```\w+\n(.*?)```", TEXT, re.DOTALL)


def test_four_pieces_of_a_rule_are_shown() -> None:
    assert [Path(path).name for path, _ in SHOWN] == [
        "rules.csv", "limits_place.csv", "outlet_rules.py", "test_place_switch.py",
    ]  # fmt: skip


@pytest.mark.parametrize(("path", "block"), SHOWN, ids=[path for path, _ in SHOWN])
def test_the_piece_stands_in_its_file_as_shown(path: str, block: str) -> None:
    file = (ROOT / path).read_text(encoding="utf-8")
    pieces = block.splitlines() if path.endswith(".csv") else [block.rstrip("\n")]
    assert [piece for piece in pieces if piece not in file] == []
