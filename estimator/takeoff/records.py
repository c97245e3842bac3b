"""What the takeoff hands on: cable cuts, parts, tasks, boxes and assumptions, each with its why.

Lengths are exact fractions of an inch whatever the job's system; quantities are Decimals in
the unit named beside them (ft or m, ft2 or m2, gal or L, ea), to six places where a division
does not end.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

Group = Literal[
    "cable", "boxes", "devices", "joints", "protection", "closing", "paint", "consumables"
]
Fact = Literal[
    "year built", "occupied", "breaker", "wire", "ground", "metal", "stud places", "insulated",
    "finish", "stud depth", "framing", "bearing", "place", "height", "paint", "cables", "volume",
    "clamps", "",
]  # fmt: skip
Phase = Literal["set-up", "rough-in", "terminate", "test", "close", "paint", "clean-up"]


@dataclass(frozen=True, slots=True)
class PartLine:
    """One line of parts.

    Attributes:
        line_id: stable within a job, for example "P07".
        reason: the sum in words, so that a reader can redo it by hand.
        source: setting, rule or source key the quantity rests on.
        remedy: id of the finding that asked for the line ("box-fill:source"), else empty.
    """

    line_id: str
    group: Group
    item: str
    description: str
    quantity: Decimal
    unit: str
    where: str
    reason: str
    source: str
    remedy: str = ""


@dataclass(frozen=True, slots=True)
class TaskLine:
    """One line of work; hours come from the labor book.

    Attributes:
        line_id: stable within a job, for example "W03".
        conditions: what holds where the work is done ("plaster"); the book says which matter.
    """

    line_id: str
    phase: Phase
    task: str
    quantity: Decimal
    unit: str
    where: str
    reason: str
    source: str
    conditions: tuple[str, ...] = ()
    remedy: str = ""


@dataclass(frozen=True, slots=True)
class CableCut:
    """One run's cable, from box to box: path + extras + tails."""

    run_id: str
    from_box: str
    to_box: str
    path_in: Fraction
    corner_extra_in: Fraction
    obstacle_extra_in: Fraction
    tails_in: Fraction
    cut_in: Fraction


@dataclass(frozen=True, slots=True)
class CableOrder:
    """All cuts of one kind of cable and what to order for them.

    Attributes:
        item: materials key. kind: the kind as the survey names it ("14-2").
        with_allowance_in: sum of cuts times (1 + allowance), not rounded.
        order_in: that, rounded up once to the step. order: the same in `unit`.
    """

    item: str
    kind: str
    cuts: tuple[CableCut, ...]
    cuts_in: Fraction
    allowance_pct: Decimal
    with_allowance_in: Fraction
    step_in: Fraction
    order_in: Fraction
    order: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class RunCount:
    """What one run crosses and needs, as counted from geometry or as typed.

    Attributes:
        studs: grid studs crossed. listed: other members crossed, by kind ("king": 2).
        corners: corner turns. plates_pierced: wall plates bored through, by plate_holes holes.
        assumed: the stud count was taken from spacing alone.
    """

    run_id: str
    way: str
    path_in: Fraction
    studs: int
    listed: tuple[tuple[str, int], ...]
    corners: int
    obstacles: int
    plates_pierced: int
    plate_holes: int
    floor_holes: int
    bored: int
    notched: int
    protection_plates: int
    staples: int
    sealant: int
    assumed: bool


@dataclass(frozen=True, slots=True)
class BoxCount:
    """The wires in one box before and after the work, and the box chosen for it.

    Attributes:
        conductors: insulated conductors that enter and end here, after the work, by size.
        grounds: equipment grounds that enter, after the work.
        fill_before, fill_after: volume taken, in3 (None where the job's rules do not count).
        volume_in3: of the box that will be there; None where it could not be read.
        replaced: an existing box that is too small and gets a larger one.
        joints: conductors held by each wire connector, pigtail included.
        depth_in: of the box that will be there; None where nobody knows it.
        clamps: inner clamps of that box that count in its room.
    """

    box_id: str
    role: Literal["source", "through", "end"]
    existing: bool
    conductors: tuple[tuple[str, int], ...]
    grounds: int
    fill_before: Decimal | None
    fill_after: Decimal | None
    fill_sum: str
    volume_in3: Decimal | None
    old_volume_in3: Decimal | None
    item: str
    replaced: bool
    pigtails: int
    joints: tuple[int, ...]
    depth_in: Fraction | None = None
    clamps: Literal["yes", "no", "unknown"] = "unknown"


@dataclass(frozen=True, slots=True)
class Closing:
    """Openings and surfaces to close, summed: the figures behind tape, compound and paint."""

    openings: int
    visible_openings: int
    patch_in2: Fraction
    visible_patch_in2: Fraction
    tape_in: Fraction
    compound_in3: Fraction
    prime_in2: Fraction
    paint_in2: Fraction
    paint_in3: Fraction
    disturbed_in2: tuple[tuple[str, Fraction], ...]


@dataclass(frozen=True, slots=True)
class Visit:
    """One trip to the job: what is done, and the wait before the next may begin, in hours."""

    number: int
    what: str
    wait_after_h: Decimal


@dataclass(frozen=True, slots=True)
class Assumption:
    """A fact nobody measured, and what was taken in its place; or what the job decided.

    Attributes:
        moves_price: the price would be another if it is not as taken.
        in_second_total: and the second total of the bid says by how much.
        subject: whose fact it is, as findings name it ("circuit", "wall north", a box's id).
        fact: which fact of it, where the takeoff needed it.
        findings: ids of the findings that cannot be answered without it, or that were decided.
        decided: it was found, and the job accepts it or goes without its remedy; `taken` says why.
    """

    number: int
    about: str
    taken: str
    moves_price: bool
    subject: str = ""
    fact: Fact = ""
    findings: tuple[str, ...] = ()
    in_second_total: bool = False
    decided: bool = False


@dataclass(frozen=True, slots=True)
class Takeoff:
    """The whole takeoff of one route of a job."""

    runs: tuple[RunCount, ...]
    cable: tuple[CableOrder, ...]
    boxes: tuple[BoxCount, ...]
    parts: tuple[PartLine, ...]
    tasks: tuple[TaskLine, ...]
    closing: Closing
    visits: tuple[Visit, ...]
    assumptions: tuple[Assumption, ...]
