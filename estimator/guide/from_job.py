"""From a job file back to the answers that make it, as far as the questions reach."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

from estimator.guide.defaults import is_asked, read_in
from estimator.guide.facts import LEVELS
from estimator.guide.places import find
from estimator.guide.questions import UNKNOWN, by_key, questions
from estimator.units import LengthUnit, System, write_length

Raw = Mapping[str, Any]
YES_NO = {True: "yes", False: "no"}
WAYS = {"trim": "trim", "wall": "wall", "through": "through"}


def answers_from(raw: Raw) -> dict[str, str]:
    """Every question that a job file's values answer, by key, in the order of the questions.

    What the questions cannot say (other legs, more runs and boxes) is left alone.

    Args:
        raw: a job file as TOML gives it; it need not be whole.
    """
    found: dict[str, str] = {}
    for question in questions():
        value = _answer(question.key, question.path, raw)
        if value is not None and is_asked(question, found):
            found[question.key] = value
    return found


def answer_in(raw: Raw, key: str) -> str | None:
    """What a job file's values say to one question, asked there or not; None for nothing."""
    return _answer(key, by_key()[key].path, raw)


def _answer(key: str, path: str, raw: Raw) -> str | None:
    return MADE[key](raw) if key in MADE else text_of(find(raw, path))


def text_of(value: object) -> str | None:
    """A single value as people type it; None for none, for a table and for a list."""
    if isinstance(value, bool):
        return YES_NO[value]
    if isinstance(value, str):
        return str(value)
    if isinstance(value, date):
        return value.isoformat()
    return str(value) if isinstance(value, int | Decimal | Fraction | float) else None


def _unit(raw: Raw) -> LengthUnit:
    return "mm" if _system(raw) == "metric" else "in"


def _system(raw: Raw) -> System:
    return "metric" if find(raw, "job.units") == "metric" else "us"


def _source_box(raw: Raw) -> str | None:
    metal, clamps = find(raw, "source.metal"), find(raw, "source.clamps")
    if metal is None and clamps is None:
        return None
    metal, clamps = text_of(metal), text_of(clamps)
    if metal not in ("yes", "no") or clamps not in ("yes", "no"):
        return UNKNOWN
    box = "metal" if metal == "yes" else "plastic"
    return f"{box} with clamps" if clamps == "yes" else box


def _source_cables(raw: Raw) -> str | None:
    cables = find(raw, "source.cables")
    if isinstance(cables, list):
        return str(len(cables))
    return UNKNOWN if find(raw, "source.unknown_cables") else None


def _source_cable(raw: Raw) -> str | None:
    kinds = set(find(raw, "source.cables") or ())
    return str(kinds.pop()) if len(kinds) == 1 else None


def _wall_length(raw: Raw) -> str | None:
    length = text_of(find(raw, "wall.length"))
    typed = find(raw, "run.legs") or find(raw, "guide.way")
    return UNKNOWN if length is None and typed else length


def _way(raw: Raw) -> str | None:
    kept = find(raw, "guide.way")
    if kept is not None:
        return str(kept)
    way, level = find(raw, "run.way"), find(raw, "run.level")
    if level in LEVELS:
        return str(level)
    return WAYS.get(str(way)) if way is not None else _way_of_legs(raw)


def _way_of_legs(raw: Raw) -> str | None:
    """What typed legs look like: along a baseboard where they go down first."""
    gone = [leg.get("go") for leg in find(raw, "run.legs") or ()]
    if gone.count("along") != 1:
        return None
    return "trim" if gone == ["down", "along", "up"] else "wall"


def _along(raw: Raw) -> Raw:
    legs = [leg for leg in find(raw, "run.legs") or () if leg.get("go") == "along"]
    return legs[0] if len(legs) == 1 else {}


def _studs(raw: Raw) -> str | None:
    return text_of(_along(raw).get("studs"))


def _distance(raw: Raw) -> str | None:
    return text_of(_along(raw).get("length"))


def _stud_depth(raw: Raw) -> str | None:
    found = find(raw, "wall.stud_depth")
    return text_of(find(raw, "run.stud_depth") if found is None else found)


def _run_height(raw: Raw) -> str | None:
    """The height of the level part, or what the legs leave of the height of the box."""
    kept = text_of(find(raw, "run.height"))
    legs = find(raw, "run.legs") or ()
    if kept is not None or not legs or legs[0].get("go") != "down":
        return kept
    start = read_in(text_of(find(raw, "source.height")) or "", _unit(raw))
    drop = read_in(text_of(legs[0].get("length")) or "", _unit(raw))
    if start is None or drop is None or drop > start:
        return None
    return write_length(start - drop, _system(raw))


def _serves(raw: Raw) -> str | None:
    rooms = find(raw, "circuit.serves")
    return ", ".join(map(str, rooms)) if rooms else None


def _protection(raw: Raw) -> str | None:
    kinds = find(raw, "circuit.protection")
    if kinds is None:
        return None
    return {0: "none", 1: str(next(iter(kinds), ""))}.get(len(kinds), "both")


def _room(raw: Raw) -> str | None:
    """The room of the new box, or of the wall that it is on."""
    return text_of(find(raw, "new.room")) or text_of(find(raw, "wall.room"))


def _opened(raw: Raw) -> str | None:
    kept = text_of(find(raw, "guide.opened"))
    if kept is not None:
        return kept
    if find(raw, "opening.id") is not None:
        return "yes"
    return "no" if find(raw, "run.method") == "fished" else None


def _edge(first: str, second: str, size: str) -> Callable[[Raw], str | None]:
    """A side of the opening: as given, or from one edge to the other."""

    def read(raw: Raw) -> str | None:
        given = text_of(find(raw, f"opening.{size}"))
        if given is not None:
            return given
        ends = [text_of(find(raw, f"opening.{edge}")) or "" for edge in (first, second)]
        low, high = (read_in(end, _unit(raw)) for end in ends)
        if low is None or high is None or high < low:
            return None
        return write_length(high - low, _system(raw))

    return read


MADE: Mapping[str, Callable[[Raw], str | None]] = {
    "room": _room,
    "source_box": _source_box,
    "source_cables": _source_cables,
    "source_cable": _source_cable,
    "wall_length": _wall_length,
    "way": _way,
    "distance": _distance,
    "studs": _studs,
    "stud_depth": _stud_depth,
    "run_height": _run_height,
    "serves": _serves,
    "protection": _protection,
    "opened": _opened,
    "opening_width": _edge("left", "right", "width"),
    "opening_height": _edge("bottom", "top", "height"),
}
