"""The electrical side: boxes, the circuit, and the runs of cable with their legs."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from estimator.survey.fields import (
    Gangs,
    Length,
    MaybeInt,
    MaybeLength,
    MaybeText,
    MaybeVolume,
    NotNegative,
    Positive,
    Record,
    Whole,
    YesNo,
)

Device = Literal[
    "receptacle", "gfci receptacle", "afci receptacle", "switch", "three-way switch",
    "luminaire", "none",
]  # fmt: skip
Method = Literal["bored", "notched", "fished", "exposed"]
Way = Literal["wall", "trim", "over", "under", "through"]


class Box(Record):
    """One outlet, switch or light box, standing or planned."""

    id: str = Field(min_length=1)
    wall: str | None = Field(default=None, description="leave out in the quick form")
    x_in: MaybeLength = Field(default=None, alias="x", description="from the wall's left end")
    height_in: MaybeLength = Field(default=None, alias="height", description="floor to box centre")
    out_in: MaybeLength = Field(
        default=None, alias="out", description="ceiling box: distance out from the wall"
    )
    room: str | None = Field(default=None, description="where it opens, if not the wall's room")
    existing: bool = False
    mount: Literal["wall", "ceiling"] = "wall"
    gangs_count: Gangs = Field(default=1, alias="gangs")
    volume_in3: MaybeVolume = Field(
        default=None, alias="volume", description="as stamped; for a new box leave out to size it"
    )
    replacement_volume_in3: MaybeVolume = Field(
        default=None,
        alias="replacement_volume",
        description="existing box: least volume of the box that replaces it if it is too small",
    )
    clamps: YesNo = "unknown"
    metal: YesNo = "unknown"
    depth_in: MaybeLength = Field(default=None, alias="depth")
    device: Device = "receptacle"
    device_rating_a: MaybeInt = Field(default=None, alias="device_rating")
    cables: tuple[str, ...] = Field(
        default=(), description="kinds of cable already in it; say unknown_cables if not seen"
    )
    unknown_cables: bool = Field(default=False, description="nobody has looked inside")
    reuse_plate: bool = Field(default=True, description="existing box: keep its device and plate")


class Circuit(Record):
    """The branch circuit that feeds the source box."""

    breaker_a: MaybeInt = Field(default=None, alias="breaker")
    wire: MaybeText = Field(
        default=None, description='smallest wire on it: "14", "12", "10", "2.5 mm2" or unknown'
    )
    serves: tuple[str, ...] = ()
    protection: tuple[Literal["afci", "gfci"], ...] = ()
    grounded: YesNo = "unknown"
    aluminum: YesNo = "unknown"


class Leg(Record):
    """One straight piece of a run, typed with what it passes (the quick form)."""

    go: Literal["up", "down", "along", "across", "through"]
    length_in: Length = Field(alias="length", ge=0)
    method: Method | None = Field(default=None, description="if other than the run's")
    studs_count: Whole = Field(default=0, alias="studs")
    members: dict[str, Whole] = Field(
        default_factory=dict, description='other members passed, such as {"king": 2, "nog": 1}'
    )
    corners_count: Whole = Field(default=0, alias="corners")
    corner_members_count: MaybeInt = Field(
        default=None, alias="corner_members", description="unstated: two for each corner"
    )
    corner_edge_in: MaybeLength = Field(default=None, alias="corner_edge")
    obstacles_count: Whole = Field(default=0, alias="obstacles")
    plates_count: Whole = Field(default=0, alias="plates", description="wall plates, one hole")
    floor_holes_count: Whole = Field(default=0, alias="floor_holes")


class Run(Record):
    """One cable from box to box."""

    id: str = Field(min_length=1)
    from_box: str = Field(alias="from")
    to_box: str = Field(alias="to")
    cable: str = Field(description='kind: "14-2", "12-2", "2.5 mm2 2-core and earth" ...')
    route: str | None = Field(default=None, description="the way it belongs to, if several")
    way: Way | None = Field(default=None, description="leave out when legs are typed")
    legs: tuple[Leg, ...] = Field(default=(), description="quick form: typed legs")
    walls: tuple[str, ...] = Field(default=(), description="walls passed in order, if several")
    height_in: MaybeLength = Field(default=None, alias="height", description="of the level part")
    level: Literal["attic", "basement", "crawlspace"] | None = None
    method: Method = "fished"
    stud_depth_in: MaybeLength = Field(default=None, alias="stud_depth")
    hole_in: MaybeLength = Field(default=None, alias="hole", description="if not the shop's")
    edge_in: MaybeLength = Field(
        default=None, alias="edge", description="hole edge to nearest face; unstated: centred"
    )
    tail_in: MaybeLength = Field(default=None, alias="tail", description="cable left at each box")
    corner_extra_in: MaybeLength = Field(default=None, alias="corner_extra")
    obstacle_extra_in: MaybeLength = Field(default=None, alias="obstacle_extra")
    stapled_at: tuple[str, ...] = Field(
        default=(), description="boxes beside which the opened wall lets the cable be stapled"
    )
    trim_length_in: MaybeLength = Field(
        default=None, alias="trim_length", description="baseboard taken off and put back"
    )
    caulk_length_in: MaybeLength = Field(default=None, alias="caulk_length")


class TruckStock(Record):
    """Something already in the truck: a length of cable, or a number of pieces."""

    item: str
    length_in: MaybeLength = Field(default=None, alias="length", description="one piece of cable")
    quantity: Positive | None = None
    unit_cost: NotNegative | None = Field(default=None, description="what it is charged at")
