"""Where a value stands in a TOML text, for messages that name the line."""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tree_sitter import Node

TomlPath = tuple[str | int, ...]

_KEY_NODES = ("bare_key", "quoted_key", "dotted_key")


def line_of(text: str, path: TomlPath) -> int | None:
    r"""Find the line (the first is 1) where the value at `path` begins.

    A path that is not in the text gives the line of its nearest parent that is, so a
    missing key is shown at the head of its table; None where not even the first part is
    found. Text that is not good TOML gives the lines of what could be read.

    Args:
        text: the whole file, as it was parsed.
        path: keys and, inside arrays, positions from 0: ("walls", 1, "openings", 0, "width").

    >>> line_of("[a]\nb = [\n  1,\n  2,\n]", ("a", "b", 1))
    4
    """
    places = _places(text)
    for length in range(len(path), 0, -1):
        line = places.line(path[:length])
        if line is not None:
            return line
    return None


def repeated_keys(text: str) -> list[tuple[TomlPath, tuple[int, ...]]]:
    """Find keys and tables that stand more than once, each with the lines where they stand.

    Nothing is found in a text with other faults: there, what is read twice may be a guess.
    """
    places = _places(text)
    if places.broken:
        return []
    return [(path, tuple(lines)) for path, lines in places.written.items() if lines[1:]]


@dataclass(slots=True)
class _Places:
    """Lines by path: `written` out in full, or only `named` on the way to something deeper."""

    broken: bool = False
    written: dict[TomlPath, list[int]] = field(default_factory=dict)
    named: dict[TomlPath, int] = field(default_factory=dict)
    array_counts: Counter[TomlPath] = field(default_factory=Counter)

    def line(self, path: TomlPath) -> int | None:
        """Line of exactly this path."""
        return self.written[path][0] if path in self.written else self.named.get(path)

    def note(self, path: TomlPath, line: int) -> None:
        """Remember a path that is written at a line, and its parents."""
        self.written.setdefault(path, []).append(line)
        for length in range(1, len(path)):
            self.named.setdefault(path[:length], line)

    def in_last_elements(self, keys: tuple[str, ...]) -> TomlPath:
        """Give the path of a table header: arrays on the way are at their last element."""
        path: TomlPath = ()
        for key in keys[:-1]:
            path = (*path, key)
            if path in self.array_counts:
                path = (*path, self.array_counts[path] - 1)
        return (*path, *keys[-1:])

    def new_element(self, keys: tuple[str, ...]) -> TomlPath:
        """Give the path of the next element of an array of tables."""
        array = self.in_last_elements(keys)
        self.array_counts[array] += 1
        return (*array, self.array_counts[array] - 1)


@lru_cache(maxsize=4)
def _places(text: str) -> _Places:
    """Walk the syntax tree of a text once and keep the line of each path."""
    import tree_sitter_toml
    from tree_sitter import Language, Parser

    tree = Parser(Language(tree_sitter_toml.language())).parse(text.encode())
    places = _Places(broken=tree.root_node.has_error)
    for node in tree.root_node.named_children:
        if node.type == "pair":
            _note_pair(places, (), node)
        elif node.type in ("table", "table_array_element"):
            _note_table(places, node)
    return places


def _note_table(places: _Places, node: Node) -> None:
    """Note a [table] or one element of an [[array of tables]] with all its pairs."""
    keys = _keys(node)
    if not keys:
        return
    is_element = node.type == "table_array_element"
    base = places.new_element(keys) if is_element else places.in_last_elements(keys)
    places.note(base, _line(node))
    for pair in node.named_children:
        if pair.type == "pair":
            _note_pair(places, base, pair)


def _note_pair(places: _Places, base: TomlPath, node: Node) -> None:
    """Note `key = value` under a table, and what the value holds."""
    path = (*base, *_keys(node))
    places.note(path, _line(node))
    for value in node.named_children[1:]:
        _note_inside(places, path, value)


def _note_inside(places: _Places, path: TomlPath, value: Node) -> None:
    """Note the elements of an array or the pairs of an inline table."""
    if value.type == "inline_table":
        for pair in value.named_children:
            _note_pair(places, path, pair)
    elif value.type == "array":
        elements = [node for node in value.named_children if node.type != "comment"]
        for place, element in enumerate(elements):
            places.note((*path, place), _line(element))
            _note_inside(places, (*path, place), element)


def _keys(node: Node) -> tuple[str, ...]:
    """Read the key of a pair or a header, part by part."""
    first = next((child for child in node.named_children if child.type in _KEY_NODES), None)
    return () if first is None else tuple(_key_parts(first))


def _key_parts(node: Node) -> Iterator[str]:
    """Parts of a dotted key in order; quotes and escapes are taken off."""
    if node.type == "dotted_key":
        for child in node.named_children:
            yield from _key_parts(child)
        return
    written = (node.text or b"").decode()
    if node.type == "bare_key":
        yield written
        return
    try:
        yield from tomllib.loads(f"{written} = 0")
    except tomllib.TOMLDecodeError:
        yield written


def _line(node: Node) -> int:
    """Line of a node as an editor counts it."""
    return node.start_point.row + 1
