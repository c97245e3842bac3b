"""The survey itself: one job, everything measured for it, and what the job overrides."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field

from estimator.survey.allowances import Allowance
from estimator.survey.closing import FinishScope, Opening
from estimator.survey.compare import Compare
from estimator.survey.electrical import Box, Circuit, Run, TruckStock
from estimator.survey.fields import Amount, Country, Day, LocaleName, MaybeInt, Record, Trips, YesNo
from estimator.survey.place import Corner, Gap, Level, Member, Obstacle, Room, Tee, Wall
from estimator.survey.risks import Risk
from estimator.survey.versions import Version

BareUnit = Literal["in", "ft", "mm", "cm", "m"]


class Job(Record):
    """Who, where, when, and which conventions the numbers follow."""

    id: str = Field(min_length=1, description="job number on every sheet")
    title: str = Field(min_length=1)
    customer: str = "Sample customer"
    address: str = ""
    scope: str = Field(default="", description="the work in one sentence, for the customer")
    bid_date: Day | None = Field(default=None, alias="date")
    start_date: Day | None = Field(
        default=None, alias="start", description="first day of the work, such as 2026-03-16"
    )
    country: Country = Field(default="US", min_length=2, max_length=2, description="ISO 3166-1")
    locale: LocaleName = Field(default="en_US", description="how money and dates are shown")
    units: Literal["us", "metric"] = "us"
    bare_unit: BareUnit | None = Field(
        default=None, description="unit of a bare number; unstated: in, or mm in a metric job"
    )
    edition: str = Field(default="nec-2023", description="electrical rules it is held against")
    building_edition: str = Field(default="irc-2021", description="building rules")
    year_built: MaybeInt = None
    occupied: YesNo = "unknown"
    route: str | None = Field(default=None, description="the way chosen, where there are several")


class BookFiles(Record):
    """Which books price the job; paths are relative to the job file."""

    folder: str | None = None
    materials: str | None = None
    labor: str | None = None
    shop: str | None = None
    accounts: str | None = None


class Acceptance(Record):
    """A finding somebody decided to live with, or a remedy somebody declined, and why."""

    finding: str = Field(description='finding id such as "box-fill:source"')
    reason: str = Field(min_length=1)
    decision: Literal["accept", "decline remedy"] = "accept"


class Amendment(Record):
    """A local change to one rule: it is off, or only a note, or one of its figures differs."""

    rule: str = Field(description="rule id such as afci-extension")
    change: Literal["off", "note", "figure"] = "off"
    figure: str = Field(default="", description="name of the figure, as the check prints it")
    value: str = ""
    reason: str = Field(min_length=1, description="the ordinance or office it comes from")


class House(Record):
    """What is known of the building and the permit."""

    permit: Literal["needed", "not needed", "unknown"] = "unknown"
    inspection_before_closing: YesNo = "unknown"
    inspection_wait_days: MaybeInt = Field(
        default=None, description="working days until the inspector comes; unstated: the shop's"
    )
    asbestos_tested: Literal["none found", "found", "no", "unknown"] = "unknown"
    lead_tested: Literal["none found", "found", "no", "unknown"] = "unknown"
    work_for_pay: YesNo = "yes"
    local_survey_first: YesNo = "unknown"


class Overrides(Record):
    """Figures the job knows better than the books."""

    labor_hours: Amount | None = Field(default=None, description="charged hours in all")
    materials_cost: Amount | None = None
    trips: Trips | None = None
    hours: dict[str, Amount] = Field(
        default_factory=dict, description="hours for one unit of a task, by task key"
    )
    prices: dict[str, Amount] = Field(
        default_factory=dict, description="price of one unit of an item, by item key"
    )


class Guide(Record):
    """What `estimator survey` keeps of its questions where no other field holds it."""

    more: YesNo = Field(default="unknown", description="answer the questions of the second part")
    way: Literal["trim", "wall", "attic", "basement", "crawlspace", "through"] | None = Field(
        default=None, description="the way as it was answered, where its legs are typed"
    )
    opened: YesNo = Field(
        default="unknown", description="is the wall cut open along the way, as it was answered"
    )
    answered: tuple[str, ...] = Field(default=(), description="questions that were answered")


class Survey(Record):
    """Everything measured for one job."""

    format: Literal[1] = Field(default=1, description="version of this file's form")
    job: Job
    circuit: Circuit = Field(default_factory=Circuit)
    rooms: tuple[Room, ...] = ()
    walls: tuple[Wall, ...] = ()
    corners: tuple[Corner, ...] = ()
    tees: tuple[Tee, ...] = ()
    doors: tuple[Gap, ...] = ()
    windows: tuple[Gap, ...] = ()
    members: tuple[Member, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    levels: tuple[Level, ...] = ()
    boxes: tuple[Box, ...] = Field(min_length=1)
    runs: tuple[Run, ...] = Field(min_length=1)
    openings: tuple[Opening, ...] = ()
    finish: FinishScope = Field(default_factory=FinishScope)
    truck_stock: tuple[TruckStock, ...] = ()
    overrides: Overrides = Field(default_factory=Overrides)
    allowances: tuple[Allowance, ...] = ()
    risks: tuple[Risk, ...] = ()
    acceptances: tuple[Acceptance, ...] = ()
    amendments: tuple[Amendment, ...] = ()
    house: House = Field(default_factory=House)
    compare: Compare = Field(default_factory=Compare)
    versions: tuple[Version, ...] = ()
    guide: Guide = Field(default_factory=Guide)
    books: BookFiles = Field(default_factory=BookFiles)
    settings: dict[str, Any] = Field(
        default_factory=dict, description="laid over shop.toml, section by section"
    )
