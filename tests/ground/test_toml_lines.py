"""Lines of TOML values: against lines counted by hand, and against tomllib for random texts."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.toml_lines import TomlPath, line_of, repeated_keys

# Lines counted by hand in an editor; the first is 1.
JOB = '''\
# a comment
title = "x"
box.source.height = 15

[site]
note = """
[walls]
two
"""
dates = [
  1, 2,
  # between
  { day = 3,  hour.minute = 4 },
  [
    5,
  ],
]

[[walls]]
length = "12'"
"odd key" = 1
'it''s' = 1
[walls.stud]
size = 3

[[walls]]
[[walls.openings]]
width = 4
[[walls.openings]]
width = 5
height = { value = 6 }

[site.attic."way in"]
hatch = true
'''.replace("'it''s'", "'it is'")

COUNTED: list[tuple[TomlPath, int]] = [
    (("title",), 2),
    (("box",), 3),
    (("box", "source", "height"), 3),
    (("site",), 5),
    (("site", "note"), 6),
    (("site", "dates"), 10),
    (("site", "dates", 0), 11),
    (("site", "dates", 1), 11),
    (("site", "dates", 2, "day"), 13),
    (("site", "dates", 2, "hour", "minute"), 13),
    (("site", "dates", 3), 14),
    (("site", "dates", 3, 0), 15),
    (("walls",), 19),
    (("walls", 0), 19),
    (("walls", 0, "length"), 20),
    (("walls", 0, "odd key"), 21),
    (("walls", 0, "it is"), 22),
    (("walls", 0, "stud"), 23),
    (("walls", 0, "stud", "size"), 24),
    (("walls", 1), 26),
    (("walls", 1, "openings", 0), 27),
    (("walls", 1, "openings", 0, "width"), 28),
    (("walls", 1, "openings", 1, "width"), 30),
    (("walls", 1, "openings", 1, "height", "value"), 31),
    (("site", "attic"), 33),
    (("site", "attic", "way in", "hatch"), 34),
]


@pytest.mark.parametrize(("path", "line"), COUNTED, ids=str)
def test_line_as_counted_by_hand(path: TomlPath, line: int) -> None:
    assert line_of(JOB, path) == line


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("walls", 1, "length"), 26),
        (("walls", 1, "openings", 1, "depth"), 29),
        (("walls", 7, "length"), 19),
        (("site", "dates", 9), 10),
        (("title", "deeper", 0), 2),
    ],
    ids=str,
)
def test_a_missing_value_gives_the_line_of_its_nearest_parent(path: TomlPath, line: int) -> None:
    assert line_of(JOB, path) == line


@pytest.mark.parametrize("path", [(), ("nothing",), (0,)], ids=str)
def test_no_line_where_not_even_the_first_part_is_found(path: TomlPath) -> None:
    assert line_of(JOB, path) is None


def test_windows_line_ends_count_the_same() -> None:
    assert line_of(JOB.replace("\n", "\r\n"), ("walls", 1, "openings", 1, "width")) == 30


def test_a_text_with_an_error_still_gives_the_lines_before_it() -> None:
    assert line_of("a = 1\nb = 2\nc = = 3\n", ("b",)) == 2


def test_names_given_twice_with_all_their_lines() -> None:
    text = "a = 1\n[t]\nb = 2\nb = 3\n[t]\n[[w]]\nx = 1\n[[w]]\nx = 1\n"
    assert repeated_keys(text) == [(("t",), (2, 5)), (("t", "b"), (3, 4))]


KEYS = st.text("ab_-9 .\"é'", min_size=1, max_size=4)
LEAF = st.just(0)
INLINE = st.recursive(
    LEAF, lambda deeper: st.lists(deeper, max_size=3) | st.dictionaries(KEYS, deeper, max_size=3)
)
TABLES = st.recursive(
    st.dictionaries(KEYS, INLINE, max_size=3),
    lambda deeper: st.dictionaries(
        KEYS, INLINE | deeper | st.lists(deeper, min_size=1, max_size=3), max_size=4
    ),
    max_leaves=12,
)


def quoted(key: str) -> str:
    return '"' + key.replace('"', '\\"') + '"'


class Writer:
    """Writes TOML in which every number is the line that it stands on."""

    def __init__(self) -> None:
        self.lines: list[str] = []

    def value(self, value: Any) -> str:
        here = len(self.lines) + 1
        if isinstance(value, dict):
            pairs = [f"{quoted(key)} = {self.flat(inner, here)}" for key, inner in value.items()]
            return "{" + ", ".join(pairs) + "}"
        return self.flat(value, here) if isinstance(value, int) else self.array(value)

    def flat(self, value: Any, line: int) -> str:
        if isinstance(value, dict):
            return (
                "{" + ", ".join(f"{quoted(k)}={self.flat(v, line)}" for k, v in value.items()) + "}"
            )
        if isinstance(value, list):
            return "[" + ", ".join(self.flat(inner, line) for inner in value) + "]"
        return str(line)

    def array(self, values: list[Any]) -> str:
        if not values:
            return "[]"
        first = len(self.lines) + 1
        parts = [f"  {self.flat(value, first + place)}," for place, value in enumerate(values, 1)]
        return "[ # comment\n" + "\n".join(parts) + "\n]"

    def table(self, table: dict[str, Any], path: tuple[str, ...]) -> None:
        later = {k: v for k, v in table.items() if is_table(v) or is_tables(v)}
        for key, value in table.items():
            if key not in later:
                self.lines += f"{quoted(key)} = {self.value(value)}".split("\n")
        for key, value in later.items():
            inner = (*path, key)
            name = ".".join(quoted(part) for part in inner)
            for one in value if isinstance(value, list) else [value]:
                self.lines.append(f"[[{name}]]" if isinstance(value, list) else f"[{name}]")
                self.table(one, inner)


def is_table(value: Any) -> bool:
    return isinstance(value, dict) and len(value) != 1


def is_tables(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(v, dict) for v in value)


def leaves(value: Any, path: TomlPath = ()) -> Iterator[tuple[TomlPath, int]]:
    if isinstance(value, int):
        yield path, value
        return
    for key, inner in value.items() if isinstance(value, dict) else enumerate(value):
        yield from leaves(inner, (*path, key))


@given(TABLES)
def test_every_value_of_a_random_text_is_found_on_its_line(table: dict[str, Any]) -> None:
    """Each number was written as its own line number; tomllib says at which path it is."""
    writer = Writer()
    writer.table(table, ())
    text = "\n".join(writer.lines)
    for path, line in leaves(tomllib.loads(text)):
        assert line_of(text, path) == line, (path, text)
