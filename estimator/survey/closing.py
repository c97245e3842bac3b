"""Openings cut in the finish, and how far the finish is brought back."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from estimator.survey.fields import MaybeArea, MaybeLength, Record


class Opening(Record):
    """One hole cut in the finish: by its edges on a wall, or by width and height alone."""

    id: str = Field(min_length=1)
    wall: str | None = None
    room: str | None = Field(default=None, description="if not the wall's room")
    route: str | None = None
    left_in: MaybeLength = Field(default=None, alias="left")
    right_in: MaybeLength = Field(default=None, alias="right")
    bottom_in: MaybeLength = Field(default=None, alias="bottom")
    top_in: MaybeLength = Field(default=None, alias="top")
    width_in: MaybeLength = Field(default=None, alias="width", gt=0)
    height_in: MaybeLength = Field(default=None, alias="height", gt=0)
    surface: Literal["wall", "ceiling"] = "wall"
    fill: Literal["re-set", "new board", "mesh", "plaster"] = Field(
        default="re-set", description="re-set: the piece cut out goes back"
    )
    hidden: Literal["yes", "no", "partly", "unknown"] = Field(
        default="unknown", description="behind trim; unknown: judged by the trim's height"
    )
    cut_out: Literal["clean", "hammered"] = "clean"
    joins_left: str | None = Field(default=None, description="opening that shares its left edge")
    joins_right: str | None = Field(default=None, description="opening that shares its right edge")

    @model_validator(mode="after")
    def _has_a_size(self) -> Self:
        across = self.width_in is not None or None not in (self.left_in, self.right_in)
        up = self.height_in is not None or None not in (self.bottom_in, self.top_in)
        if not (across and up):
            raise PydanticCustomError(
                "record",
                "{reason}|{hint}",
                {
                    "reason": f'opening "{self.id}" has no full size',
                    "hint": "Give left and right (or width), and bottom and top (or height).",
                },
            )
        return self


class FinishScope(Record):
    """How far the walls are brought back, and with what."""

    scope: Literal["none", "closed", "taped", "painted"] = "painted"
    compound: Literal["drying", "setting"] = "drying"
    room_condition: Literal["cool or damp", "ordinary", "warm and dry", "unknown"] = Field(
        default="unknown", description="how fast compound dries there; unknown: ordinary is taken"
    )
    paint: Literal["wall", "spot", "none"] = "wall"
    texture: bool = False
    paint_walls: tuple[str, ...] = Field(
        default=(), description="walls painted; unstated: those with a visible opening"
    )
    paint_area_in2: MaybeArea = Field(
        default=None,
        alias="paint_area",
        description='quick form: the area painted, such as "156 ft2"',
    )
