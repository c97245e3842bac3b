"""What each kind of thing in a drawing is called, one or several of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import get_args

from estimator.drawing.records import LineKind, RectKind
from estimator.saying import Saying, capital, said, several, word
from estimator.survey.place import RoomUse
from estimator.takeoff.amounts import plural

KINDS: Mapping[RectKind | LineKind, Saying] = {
    "wall": said("wall"),
    "plate": said("plate"),
    "stud": said("stud"),
    "king": said("king"),
    "jack": said("jack"),
    "cripple": said("cripple"),
    "post": said("post"),
    "block": said("block"),
    "nog": said("nog"),
    "joist": said("joist"),
    "tee stud": said("tee stud"),
    "header": said("header"),
    "sill": said("sill"),
    "obstacle": said("obstacle"),
    "door": said("door"),
    "window": said("window"),
    "opening": said("opening"),
    "protection plate": said("protection plate"),
    "existing box": said("existing box"),
    "new box": said("new box"),
    "run": said("run"),
    "trim": said("trim"),
    "floor": said("floor"),
    "dimension": said("dimension"),
    "tick": said("tick"),
    "witness": said("witness"),
}
OBSTACLES: Mapping[str, Saying] = {
    "block": said("block"),
    "pipe": said("pipe"),
    "duct": said("duct"),
    "wire": said("wire"),
    "other": said("other"),
}
_COUNTED: Mapping[str, Callable[[int], Saying]] = {
    "stud": lambda count: several(count, "{count} stud", "{count} studs"),
    "king": lambda count: several(count, "{count} king", "{count} kings"),
    "jack": lambda count: several(count, "{count} jack", "{count} jacks"),
    "cripple": lambda count: several(count, "{count} cripple", "{count} cripples"),
    "post": lambda count: several(count, "{count} post", "{count} posts"),
    "block": lambda count: several(count, "{count} block", "{count} blocks"),
    "nog": lambda count: several(count, "{count} nog", "{count} nogs"),
    "plate": lambda count: several(count, "{count} plate", "{count} plates"),
    "joist": lambda count: several(count, "{count} joist", "{count} joists"),
    "tee stud": lambda count: several(count, "{count} tee stud", "{count} tee studs"),
    "corner": lambda count: several(count, "{count} corner", "{count} corners"),
}
OPENING = "opening"
ROOMS = ("room", *get_args(RoomUse))


def counted(count: int, kind: str) -> str:
    """Several of a kind that a cable passes; a kind that somebody made up is called as typed."""
    known = _COUNTED.get(kind)
    return plural(count, kind) if known is None else known(count)


def opening_called(name: str) -> Saying:
    """An opening by its name; one that is only called so is no "opening opening"."""
    if name.casefold() == OPENING:
        return said("opening")
    return said("opening {opening}", opening=name)


def room_called(room: str) -> str:
    """A room by the word for its use; one with a name of its own keeps it."""
    small = room[:1].lower() + room[1:]
    if small not in ROOMS:
        return room
    return word(room) if room == small else capital(word(small))
