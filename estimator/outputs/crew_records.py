"""The crew sheet as records: parts with groups of lines, and tables to write in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

Tell = Callable[[str], str]


@dataclass(frozen=True, slots=True)
class CrewLine:
    """One line of the sheet.

    Attributes:
        text: what it says. subject: the one thing of the takeoff that the line stands for
            ("box:source", "run:1", "opening:strip", "task:W01"); empty for any other line.
        tick: something to do, with a box to tick. write: room to write is left below it.
    """

    text: str
    subject: str = ""
    tick: bool = False
    write: bool = False


@dataclass(frozen=True, slots=True)
class CrewRow:
    """A row of a table, a cell for each header; an empty one is for writing."""

    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CrewGroup:
    """Lines under one heading, or a table to write in.

    Attributes:
        title: empty where the heading of the part says enough.
        headers, rows: of the table.
    """

    title: str
    lines: tuple[CrewLine, ...] = ()
    headers: tuple[str, ...] = ()
    rows: tuple[CrewRow, ...] = ()


@dataclass(frozen=True, slots=True)
class CrewPart:
    """One part of the sheet; `key` names it in every language."""

    key: str
    title: str
    groups: tuple[CrewGroup, ...]


@dataclass(frozen=True, slots=True)
class CrewSheet:
    """The sheet in one language, top to bottom.

    Attributes:
        language: code of the language that it is told in.
        head: job, customer, address and date.
    """

    language: str
    title: str
    head: tuple[str, ...]
    parts: tuple[CrewPart, ...]


def told_part(part: CrewPart, tell: Tell) -> CrewPart:
    """The same part with every saying told."""
    groups = tuple(_told_group(group, tell) for group in part.groups)
    return CrewPart(part.key, tell(part.title), groups)


def _told_group(group: CrewGroup, tell: Tell) -> CrewGroup:
    return CrewGroup(
        tell(group.title),
        tuple(replace(line, text=tell(line.text)) for line in group.lines),
        tuple(map(tell, group.headers)),
        tuple(CrewRow(tuple(map(tell, row.cells))) for row in group.rows),
    )
