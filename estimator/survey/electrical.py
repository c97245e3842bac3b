"""The electrical side: boxes, the circuit, and the runs of cable with their legs."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from estimator.survey.fields import (
    Amount,
    Gangs,
    Length,
    MaybeInt,
    MaybeLength,
    MaybeNumber,
    MaybeText,
    MaybeVolume,
    Positive,
    Record,
    Whole,
    YesNo,
)

Device = Literal[
    "receptacle", "gfci receptacle", "afci receptacle", "damp receptacle", "wet receptacle",
    "damp gfci receptacle", "wet gfci receptacle", "switch", "three-way switch", "luminaire",
    "none",
]  # fmt: skip
CircuitKind = Literal[
    "general", "small appliance", "bathrooms", "one bathroom", "laundry", "garage", "individual",
    "other dwelling", "ten ampere", "unknown",
]  # fmt: skip
GroundEndName = Literal[
    "none", "electrode", "electrode conductor", "panel bar", "other circuit, same panel",
    "service neutral", "other circuit, other panel", "outlet neutral", "ground-fault outlet",
    "water pipe",
]  # fmt: skip
Method = Literal["bored", "notched", "fished", "exposed"]
Way = Literal["wall", "trim", "over", "under", "through"]


class FixtureWires(Record):
    """Wires of a luminaire that enter a box."""

    wire: str
    count: Whole = Field(ge=1)


class BoxSide(Record):
    """One side of a barrier in a box, counted alone."""

    gangs_count: Whole = Field(default=1, alias="gangs", ge=1, le=4, description="its gangs")
    device: Device = Field(default="receptacle", description="what is mounted on that side")
    cables: tuple[str, ...] = Field(default=(), description="kinds of cable that end there")
    takes_new: bool = Field(default=False, description="the new cable enters on that side")


class Contents(Record):
    """What else is in a box, for counting its room; all of it as found or planned."""

    table_box: MaybeText = Field(
        default=None, description='row of the standard metal boxes, such as "DEV-25", if unmarked'
    )
    added_volumes_in3: tuple[MaybeVolume, ...] = Field(
        default=(), alias="added_volumes", description="rings and covers, as marked on them"
    )
    barrier: Literal["none", "metal", "nonmetallic"] = "none"
    sides: tuple[BoxSide, ...] = Field(default=(), description="what is on each side of a barrier")
    luminaire_stud: bool = False
    hickey: bool = False
    terminal_blocks: tuple[str, ...] = Field(default=(), description="largest wire on each")
    loops_count: Whole = Field(default=0, alias="loops", description="unbroken long loops")
    passing_count: Whole = Field(default=0, alias="passing", description="unbroken, no loop")
    through_wire: MaybeText = Field(
        default=None, description="size of the unbroken wires, if not that of the cables"
    )
    fixture_wires: tuple[FixtureWires, ...] = ()
    canopy: bool = Field(default=False, description="a domed canopy covers the box")
    isolated_grounds_count: Whole = Field(default=0, alias="isolated_grounds")
    bonding_jumpers_count: Whole = Field(
        default=0, alias="bonding_jumpers", description="that enter, besides the ground wires"
    )
    yokes_count: MaybeInt = Field(default=None, alias="yokes", description="straps; one a gang")
    wide_gangs_count: Whole = Field(
        default=0, alias="wide_gangs", description="gangs a device wider than one needs"
    )
    device_wire: MaybeText = Field(default=None, description="largest wire on the device")
    wire_connector_count: MaybeInt = Field(
        default=None, alias="wire_connectors", description="found there (counted in Canada)"
    )
    device_depth_in: MaybeLength = Field(default=None, alias="device_depth")
    setback_in: MaybeLength = Field(default=None, alias="setback", description="behind the surface")
    gap_in: MaybeLength = Field(default=None, alias="gap", description="round the box, widest")
    sheath_to_face_in: MaybeLength = Field(
        default=None, alias="sheath_to_face", description="depth from the sheath's end to the face"
    )
    free_in: MaybeLength = Field(
        default=None, alias="free", description="free conductor of the old cables"
    )
    wires_per_screw: MaybeInt = Field(default=None, description="most under one screw")
    push_in_terminals: YesNo = "unknown"
    tab_removed: YesNo = Field(default="unknown", description="split receptacle: tab broken off")
    single_receptacle: YesNo = Field(default="no", description="one outlet on it, not a duplex")
    always_live: YesNo = Field(default="unknown", description="live with every switch off")
    half_switched: YesNo = "unknown"
    neutral_bundle: YesNo = Field(
        default="unknown", description="switch box: whites joined and not on the switch"
    )
    ground_present: YesNo = "unknown"
    buried: YesNo = Field(default="no", description="would be covered by the finish")
    marked_weight_lb: MaybeNumber = Field(
        default=None, alias="marked_weight", description="weight that the box says it holds"
    )
    fan_rated: YesNo = Field(default="unknown", description="the box says it holds a paddle fan")


class Spot(Record):
    """Where an outlet stands, for the rules that go by place."""

    sink_distance_in: MaybeLength = Field(
        default=None, alias="sink_distance", description="shortest cord path to a bowl's edge"
    )
    tub_distance_in: MaybeLength = Field(
        default=None, alias="tub_distance", description="level distance to tub or shower"
    )
    above_tub_in: MaybeLength = Field(
        default=None, alias="above_tub", description="height above its rim or threshold"
    )
    moisture: Literal["dry", "damp", "wet", "unknown"] = "unknown"
    countertop: YesNo = "unknown"
    readily_accessible: YesNo = "yes"
    behind_appliance: YesNo = Field(default="no", description="dedicated space of an appliance")
    storage_clearance_in: MaybeLength = Field(
        default=None, alias="storage_clearance", description="closet light to storage"
    )
    luminaire: Literal[
        "enclosed", "recessed", "fluorescent", "open bulb", "hanging", "track", "unknown"
    ] = "unknown"
    luminaire_weight_lb: MaybeNumber = Field(default=None, alias="luminaire_weight")
    fan: YesNo = "no"
    appliance_distance_in: MaybeLength = Field(default=None, alias="appliance_distance")
    appliance: Literal[
        "none", "refrigerator", "clock", "gas range", "hood", "disposer", "dishwasher",
        "toilet seat", "other",
    ] = "none"  # fmt: skip
    required: YesNo = Field(
        default="unknown", description="the one the code asks for there; no: an extra one"
    )
    in_place_of_light: YesNo = Field(default="no", description="on a wall switch, for a lamp")
    tub_barrier: YesNo = Field(default="no", description="wall or door between it and the tub")
    farthest_wall: YesNo = Field(
        default="no", description="small bath: on the wall farthest from the tub, nowhere else fits"
    )
    above_counter_in: MaybeLength = Field(
        default=None, alias="above_counter", description="height above the counter top"
    )
    below_counter_in: MaybeLength = Field(
        default=None, alias="below_counter", description="how far below the counter top"
    )


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
    replacement: Literal["if too small", "fan box"] = Field(
        default="if too small",
        description="existing box: when it is replaced; a fan box takes its place in any case",
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
    contents: Contents = Field(default_factory=Contents)
    spot: Spot = Field(default_factory=Spot)
    circuit_kind: CircuitKind | None = Field(
        default=None, description="existing box on another circuit than [circuit]: what kind"
    )


class Circuit(Record):
    """The branch circuit that feeds the source box."""

    breaker_a: MaybeInt = Field(default=None, alias="breaker")
    wire: MaybeText = Field(
        default=None, description='smallest wire on it: "14", "12", "10", "2.5 mm2" or unknown'
    )
    material: Literal["copper", "aluminum", "copper-clad", "unknown"] = "unknown"
    kind: CircuitKind = Field(default="unknown", description="what it was put in for")
    serves: tuple[str, ...] = ()
    protection: tuple[Literal["afci", "gfci"], ...] | None = Field(
        default=None, description="upstream, with the kind; [] for none; leave out if not looked at"
    )
    afci_by: Literal["receptacle", "breaker"] = Field(
        default="receptacle",
        description="how missing arc-fault protection is added and priced: a receptacle at the"
        " first outlet, or a breaker, which is a licensed electrician's work",
    )
    grounded: YesNo = "unknown"
    ground_wire: MaybeText = Field(default=None, description="size of its ground wire")
    new_ground_to: GroundEndName = Field(
        default="none", description="ungrounded: where a separate ground will go"
    )
    new_ground_length_in: MaybeLength = Field(
        default=None, alias="new_ground_length", description="way of that separate ground wire"
    )
    multiwire: YesNo = Field(default="unknown", description="two hots share one neutral")
    hots_on_two_legs: YesNo = Field(
        default="unknown", description="multiwire: about 240 V from hot to hot"
    )
    handle_tie: YesNo = "unknown"
    neutral_pigtailed: YesNo = "unknown"
    new_on_hot: Literal["black", "red", "both", "unknown"] = Field(
        default="unknown", description="multiwire: which of the two hots the new outlet takes"
    )
    existing_length_in: MaybeLength = Field(
        default=None, alias="existing_length", description="wire from the breaker to the source"
    )
    load_a: MaybeNumber = Field(default=None, alias="load", description="amperes at the new outlet")
    largest_portable_a: MaybeNumber = Field(
        default=None,
        alias="largest_portable",
        description="amperes of the largest plug-in load, which is in one of the others too",
    )
    fixed_a: MaybeNumber = Field(
        default=None, alias="fixed", description="amperes fastened in place, together"
    )
    continuous_a: MaybeNumber = Field(
        default=None, alias="continuous", description="amperes on for three hours or more"
    )
    other_a: MaybeNumber = Field(
        default=None, alias="other_load", description="amperes of all other load"
    )
    ambient_f: MaybeNumber = Field(
        default=None, alias="ambient", description="hottest place it passes, deg F"
    )


class Leg(Record):
    """One straight piece of a run, typed with what it passes (the quick form)."""

    go: Literal["up", "down", "along", "across", "through"]
    length_in: Length = Field(alias="length")
    method: Method | None = Field(default=None, description="if other than the run's")
    studs_count: MaybeInt = Field(
        default=0, alias="studs", description="unknown: one for each usual spacing is assumed"
    )
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
    notch_depth_in: MaybeLength = Field(default=None, alias="notch_depth")
    joist_depth_in: MaybeLength = Field(
        default=None, alias="joist_depth", description="joists it passes that are not drawn"
    )
    hole_and_notch: YesNo = Field(default="no", description="hole and notch at one section")
    doubled_in_a_row_count: Whole = Field(
        default=0, alias="doubled_in_a_row", description="successive doubled studs so bored"
    )
    cables_in_hole_count: Whole = Field(default=1, alias="cables_in_hole", ge=1)
    hole_sealed: YesNo = Field(default="unknown", description="stud holes foamed or caulked")
    bundled_count: Whole = Field(
        default=1, alias="bundled", ge=1, description="cables side by side"
    )
    bundled_length_in: MaybeLength = Field(default=None, alias="bundled_length")
    in_insulation: YesNo = "unknown"
    moisture: Literal["dry", "damp", "wet", "unknown"] = "dry"
    return_air: Literal["none", "across", "along"] = Field(
        default="none", description="passes a stud or joist space that carries return air"
    )
    bend_radius_in: MaybeLength = Field(default=None, alias="bend_radius")
    parallel_edge_in: MaybeLength = Field(
        default=None, alias="parallel_edge", description="cable along framing: to the face"
    )
    surface_groove: YesNo = Field(default="no", description="shallow groove behind the finish")
    splice_without_box: YesNo = "no"
    trim_length_in: MaybeLength = Field(
        default=None, alias="trim_length", description="baseboard taken off and put back"
    )
    caulk_length_in: MaybeLength = Field(default=None, alias="caulk_length")


class TruckStock(Record):
    """Something already in the truck: a length of cable, or a number of pieces."""

    item: str
    length_in: MaybeLength = Field(default=None, alias="length", description="one piece of cable")
    quantity: Positive | None = None
    unit_cost: Amount | None = Field(default=None, description="what it is charged at")
