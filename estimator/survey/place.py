"""The house around the run: walls, corners, doors and windows, members, obstacles, levels."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from estimator.survey.fields import (
    Length,
    MaybeArea,
    MaybeInt,
    MaybeLength,
    MaybeText,
    Record,
    Whole,
    YesNo,
)

Finish = Literal["gypsum board", "plaster", "unknown"]
MemberKind = Literal["stud", "king", "jack", "cripple", "post", "block", "nog", "plate", "joist"]


RoomUse = Literal[
    "bedroom", "living room", "family room", "dining room", "kitchen", "pantry", "office", "den",
    "library", "sunroom", "recreation room", "hall", "closet", "laundry", "bathroom", "garage",
    "outdoors", "finished basement", "unfinished basement", "attic", "crawlspace", "boathouse",
    "accessory building", "other", "unknown",
]  # fmt: skip


class Room(Record):
    """What a room is used for; a room that is not listed takes its use from its name."""

    id: str = Field(min_length=1, description="the name that walls, boxes and openings use")
    use: RoomUse = "unknown"
    vehicle_bays_count: MaybeInt = Field(
        default=None, alias="vehicle_bays", description="garage: vehicles it is built for"
    )
    sink_or_tub: YesNo = Field(
        default="unknown", description="sink, tub or shower in it or near its doors; no: looked"
    )
    food_preparation: YesNo = Field(
        default="no", description="a bar or kitchenette: a sink and a fixed place to cook"
    )
    island_in2: MaybeArea = Field(default=None, alias="island", description="top of an island")
    disturbed_before_in2: MaybeArea = Field(
        default=None,
        alias="disturbed_before",
        description="painted surface already disturbed there in the last 30 days",
    )
    child_occupied: YesNo = "unknown"


class Wall(Record):
    """One straight wall, faced from inside its room; x runs left to right from its left end."""

    id: str = Field(min_length=1, description="short name used by boxes, runs and openings")
    room: str = Field(default="room", description="the room the wall is faced from")
    length_in: Length = Field(alias="length", gt=0)
    height_in: MaybeLength = Field(default=None, alias="height")
    stud: MaybeText = Field(default=None, description='nominal size such as "2x4", or unknown')
    stud_depth_in: MaybeLength = Field(
        default=None, alias="stud_depth", description="measured, goes before the nominal size"
    )
    spacing_in: MaybeLength = Field(default=None, alias="spacing", description="centre to centre")
    layout_from_in: MaybeLength = Field(
        default=None,
        alias="layout_from",
        description="centre of the first grid stud from the wall's left end, or unknown",
    )
    bearing: YesNo = "unknown"
    exterior: YesNo = "no"
    finish: Finish = "gypsum board"
    finish_thickness_in: MaybeLength = Field(default=None, alias="finish_thickness")
    combustible_finish: YesNo = Field(
        default="no", description="wood panels or another surface that burns lies on the finish"
    )
    insulated: YesNo = "unknown"
    trim_height_in: MaybeLength = Field(
        default=None,
        alias="trim_height",
        description="baseboard height; an opening below is hidden",
    )
    framing: Literal["wood", "steel", "unknown"] = "wood"
    top_plates_count: Whole = Field(default=2, alias="top_plates", le=4)
    doubled_studs: YesNo = Field(default="no", description="every stud bored is doubled")
    fire_rated: YesNo = Field(default="unknown", description="a rated wall, floor or shaft")
    garage_side: YesNo = Field(default="no", description="between the house and a garage")
    hidden_lines: YesNo = Field(
        default="unknown",
        description="pipes, gas, other wires inside; no: looked, none",
    )


class Corner(Record):
    """Where the right end of the first wall meets the left end of the second."""

    walls: tuple[str, str] = Field(description="first wall's right end meets second's left end")
    kind: Literal["inside", "outside"] = "inside"
    members_count: Whole = Field(default=2, alias="members", le=8)
    edge_in: MaybeLength = Field(
        default=None, alias="edge", description="edge of the bored hole to the nearest face"
    )


class Tee(Record):
    """A partition that meets a wall part way along it, and the members standing there."""

    wall: str
    at_in: Length = Field(alias="at")
    members_count: Whole = Field(default=2, alias="members", le=8)
    edge_in: MaybeLength = Field(default=None, alias="edge")


class Gap(Record):
    """A door or a window in a wall, with the members that frame it."""

    wall: str
    left_in: MaybeLength = Field(
        default=None,
        alias="left",
        description="x of its left edge; asked about where a run goes at its height",
    )
    width_in: Length = Field(alias="width", gt=0)
    height_in: Length = Field(alias="height", gt=0)
    bottom_in: MaybeLength = Field(default=None, alias="bottom", description="sill; 0 for a door")
    header_top_in: MaybeLength = Field(
        default=None, alias="header_top", description="top of the header; a run over goes above it"
    )
    kings_in: tuple[Length, ...] = Field(default=(), alias="kings", description="x of king studs")
    jacks_in: tuple[Length, ...] = Field(default=(), alias="jacks", description="x of jack studs")
    cripples_in: tuple[Length, ...] | None = Field(
        default=None, alias="cripples", description="x of cripples; unstated: on the stud grid"
    )


class Member(Record):
    """A member that does not stand on the stud grid: give `at` for upright, `height` for level."""

    wall: str
    kind: MemberKind
    at_in: MaybeLength = Field(default=None, alias="at", description="x of an upright member")
    height_in: MaybeLength = Field(default=None, alias="height", description="of a level member")
    from_in: MaybeLength = Field(default=None, alias="from", description="where it begins")
    to_in: MaybeLength = Field(default=None, alias="to", description="where it ends")
    depth_in: MaybeLength = Field(default=None, alias="depth", description="of a joist or plate")
    span_in: MaybeLength = Field(default=None, alias="span", description="of a joist")
    hole_at_in: MaybeLength = Field(
        default=None, alias="hole_at", description="joist: from its bearing end to the hole"
    )
    notch_depth_in: MaybeLength = Field(default=None, alias="notch_depth")
    notch_length_in: MaybeLength = Field(default=None, alias="notch_length")
    hole_in: MaybeLength = Field(default=None, alias="hole", description="if not the run's")
    thickness_in: MaybeLength = Field(
        default=None, alias="thickness", description="of a joist; a thick one is notched on top"
    )
    notch_side: Literal["top", "bottom", "unknown"] = Field(
        default="unknown", description="joist: the edge that is notched"
    )
    engineered: YesNo = "no"


class Obstacle(Record):
    """Something inside a bay that the cable must get past."""

    wall: str
    kind: Literal["block", "pipe", "duct", "wire", "other"]
    left_in: Length = Field(alias="left")
    right_in: Length = Field(alias="right")
    bottom_in: Length = Field(alias="bottom")
    top_in: Length = Field(alias="top")


class Level(Record):
    """Open space above or below the room."""

    kind: Literal["attic", "basement", "crawlspace"]
    accessible: YesNo = "unknown"
    height_in: MaybeLength = Field(
        default=None, alias="height", description="attic: where the cable lies, above the floor"
    )
    below_floor_in: MaybeLength = Field(
        default=None,
        alias="below_floor",
        description="basement or crawlspace: where the cable lies, below the finished floor",
    )
    hatch_distance_in: MaybeLength = Field(default=None, alias="hatch_distance")
