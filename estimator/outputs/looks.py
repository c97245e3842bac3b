"""How cells look: the few looks of the workbook, each made once."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Literal

BODY_SIZE = 10
TITLE_SIZE = 15
HOURS = "0.000"
PERCENT = "0.00%"
DATE = "date"
MONEY = "money"
GENERAL = "General"
TAX_WORDS = '0.00%" on materials as sold"'
SHARE_WORDS = '0.00%" of the total"'


@dataclass(frozen=True, eq=False, slots=True)
class Look:
    """One look; each is made once, and is only ever compared with itself.

    Attributes:
        edge: "line" is a pale frame, "entry" a dashed one around what may be changed, "total"
            a frame with dark lines above and below, "under" a line below.
        form: number format code, or MONEY or DATE for the job's own.
        quoted: the text begins like a formula; a program that lets it be edited keeps it text.
    """

    bold: bool = False
    italic: bool = False
    size: int = BODY_SIZE
    wrap: bool = False
    fill: Literal["", "head", "entry"] = ""
    edge: Literal["", "line", "entry", "total", "under"] = ""
    align: Literal["general", "left", "right", "center"] = "general"
    form: str = GENERAL
    quoted: bool = False


TITLE = Look(bold=True, size=TITLE_SIZE)
NOTE = Look(italic=True)
NOTE_WRAPPED = Look(italic=True, wrap=True)
LINE = Look(size=BODY_SIZE + 2)
STEP = Look(bold=True, size=BODY_SIZE + 2)
SECTION = Look(bold=True, size=BODY_SIZE + 1, edge="under")
HEAD = Look(bold=True, wrap=True, fill="head", edge="line")
PLAIN = Look(wrap=True, align="left")
NUMBERED = Look(align="right")
LABEL = Look(bold=True, wrap=True, align="left")
TEXT = Look(wrap=True, edge="line", align="left")
STRONG = Look(wrap=True, edge="line", align="left", bold=True)
MIDDLE = Look(edge="line", align="center")
ENTRY_WORD = Look(wrap=True, edge="entry", fill="entry", align="left")
RULE = Look(edge="under")
TEXT_DATE = Look(edge="line", align="left", form=DATE)
PLAIN_DATE = Look(align="left", form=DATE)


@cache
def plain(form: str) -> Look:
    """Look of a figure that stands among words."""
    return Look(wrap=True, align="left", form=form)


@cache
def figure(form: str = GENERAL) -> Look:
    """Look of a number that follows from others."""
    return Look(edge="line", align="right", form=form)


@cache
def entry(form: str = GENERAL) -> Look:
    """Look of a number that a person may change."""
    return Look(edge="entry", fill="entry", align="right", form=form)


@cache
def total(form: str = GENERAL) -> Look:
    """Look of a sum."""
    return Look(bold=True, edge="total", align="right", form=form)


@cache
def quoted(look: Look) -> Look:
    """The same look for text that begins like a formula, so that a program keeps it text."""
    return replace(look, quoted=True)
