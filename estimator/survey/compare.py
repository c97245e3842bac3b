"""Doing the work yourself against hiring it out: what the owner of the house wrote down."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator
from pydantic_core import PydanticCustomError

from estimator.survey.fields import UNKNOWN, Amount, MaybeNumber, NotNegative, Record

ALL_PCT = 100
HirePart = Literal["materials", "permit", "wiring", "patch", "paint", "patch and paint", "clean-up"]


_WHOLE: dict[str, tuple[str, ...]] = {"patch and paint": ("patch", "paint")}


def _no_sign(value: object) -> object:
    """Take a percent sign off: 50 and "50 %" are the same."""
    return value.removesuffix("%").strip() if isinstance(value, str) else value


def _if_known(value: object) -> object:
    return None if value == UNKNOWN else value


Share = Annotated[NotNegative, Field(le=ALL_PCT), BeforeValidator(_no_sign)]
MaybeShare = Annotated[
    Share | None,
    BeforeValidator(_if_known),
    WithJsonSchema(
        {
            "type": ["number", "string"],
            "description": 'a percentage (10 is 10 %), or "unknown"',
        }
    ),
]


def _refuse(reason: str, hint: str) -> PydanticCustomError:
    return PydanticCustomError("record", "{reason}|{hint}", {"reason": reason, "hint": hint})


class Tool(Record):
    """A tool for doing it yourself."""

    name: str = Field(min_length=1, description="what it is")
    price: MaybeNumber = Field(default=None, description="what it costs, tax included")
    have: Literal["buy", "borrow", "own"] = Field(
        default="buy", description="only a tool to buy costs something"
    )
    keep_pct: Share = Field(
        default=Decimal(0), description="share of its price that stays yours: later use, or resale"
    )


class Hire(Record):
    """One bid of somebody who would do the work."""

    name: str = Field(min_length=1, description="who bids")
    quote: MaybeNumber = Field(description="what the bid asks for")
    tax: MaybeNumber = Field(
        default=Decimal(0), description="tax that comes on top of the quote; 0: it is in it"
    )
    includes: tuple[HirePart, ...] = Field(default=(), description="what the bid says is in it")
    excludes: tuple[HirePart, ...] = Field(
        default=(), description="what it says is not; each is priced from the takeoff, or below"
    )
    prices: dict[HirePart, Amount] = Field(
        default_factory=dict, description="what you would pay for a part it excludes, by part"
    )
    extras: dict[str, Amount] = Field(
        default_factory=dict, description="whatever else you would pay beside it, by name"
    )
    own_hours: MaybeNumber = Field(
        default=None, description="hours of yours: asking, letting in, looking on"
    )
    notes: str = Field(default="", description="anything to remember about it")

    @model_validator(mode="after")
    def _parts_agree(self) -> Self:
        named = [*self.includes, *self.excludes]
        parts = [part for each in named for part in _WHOLE.get(each, (each,))]
        twice = [part for part in parts if parts.count(part) > 1]
        if twice:
            hint = "Name each part once, in one of the two lists."
            raise _refuse(f'"{twice[0]}" stands twice in includes and excludes', hint)
        stray = [part for part in self.prices if part not in self.excludes]
        if stray:
            hint = f'Add "{stray[0]}" to excludes, or put its price in extras.'
            raise _refuse(f'"{stray[0]}" has a price and is not in excludes', hint)
        return self


class Compare(Record):
    """Doing it yourself against hiring; what is left out comes from the takeoff and the shop."""

    own_hour: MaybeNumber = Field(default=None, description="what an hour of yours is worth to you")
    pace: MaybeNumber = Field(
        default=None, gt=0, description="your hours for one likely hour; unstated: the shop's"
    )
    own_hours: MaybeNumber = Field(default=None, description="hours it takes you, in place of that")
    own_hours_low: MaybeNumber = Field(default=None, description="if all goes well")
    own_hours_high: MaybeNumber = Field(default=None, description="if it does not")
    materials: MaybeNumber = Field(default=None, description="what you pay for parts, with tax")
    consumables: MaybeNumber = Field(
        default=None, description="what you pay for blades, sheets and small items, with tax"
    )
    tax_pct: MaybeShare = Field(
        default=None, description="sales tax at the counter; unstated: from the shop's tax settings"
    )
    permit: MaybeNumber = Field(default=None, description="what a permit costs an owner")
    own_patch_paint: MaybeNumber = Field(
        default=None,
        description="what you pay somebody to patch and paint; unstated: you do that too",
    )
    rework_chance_pct: MaybeShare = Field(
        default=None, description="chance that somebody has to put a mistake right"
    )
    rework_cost: MaybeNumber = Field(default=None, description="what that would cost")
    forbidden: str = Field(
        default="",
        description="a local rule that keeps you from doing it yourself, in your words",
    )
    tools: tuple[Tool, ...] = ()
    hire: tuple[Hire, ...] = ()

    @model_validator(mode="after")
    def _hours_in_order(self) -> Self:
        named = (self.own_hours_low, self.own_hours, self.own_hours_high)
        known = [hours for hours in named if hours is not None]
        if known != sorted(known):
            hint = "Write own_hours_low, own_hours and own_hours_high from least to most."
            raise _refuse("your hours are not in order", hint)
        return self
