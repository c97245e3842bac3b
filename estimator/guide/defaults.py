"""What Enter takes, which answers there are to choose from, and which questions are asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import get_args

from estimator.guide.questions import NO_NAME, UNKNOWN, YES_NO, Answers, Question, by_key, listed
from estimator.guide.title_words import title_said, work_said
from estimator.guide.wires import cable_of, wire_of, wires
from estimator.measures import MM_PER_IN
from estimator.survey.locales import is_locale
from estimator.survey.place import RoomUse
from estimator.tables.facts import cable_kinds, devices
from estimator.tables.local_words import Say, local_words
from estimator.units import LengthUnit, MeasureError, System, read_length, write_length

INCH_COUNTRIES = ("US", "CA")
OTHER_LOCALES = {"FR": "fr_FR", "DE": "de_DE", "ES": "es_ES", "IT": "it_IT", "NL": "nl_NL"}
IN_WALL = ("trim", "wall")
DEVICE = ".device"
# What a strip is wider than the way between the boxes: about 1 in beyond the middle of each.
STRIP_BEYOND_IN: Mapping[str, Fraction] = {"us": Fraction(2), "metric": 50 / MM_PER_IN}
# Usual measures of a plan, not of a house: in inch houses, and in metric ones.
RUN_HEIGHT = {"us": "3 in", "metric": "75 mm"}
TRIM_STRIP = {"us": "4-1/2 in", "metric": "115 mm"}
WALL_STRIP = {"us": "6 in", "metric": "150 mm"}
ATTIC_HEIGHT = {"us": "8 ft 4 in", "metric": "2500 mm"}
BELOW_FLOOR = {"us": "10 in", "metric": "250 mm"}
SPACING = {"us": "16 in", "metric": "600 mm"}

_ZERO = Fraction(0)
_PARTS = 4

Worked = Callable[[Answers], str]


def default_of(question: Question, answers: Answers) -> str:
    """The answer that Enter takes; "" where there is none."""
    if not question.default.startswith("="):
        return question.default
    name = question.default.removeprefix("=")
    return WORKED[name](answers) if name in WORKED else value_of(name, answers)


def value_of(key: str, answers: Answers) -> str:
    """What was answered, or else what Enter would take."""
    return answers[key] if key in answers else default_of(by_key()[key], answers)


def stand_in(question: Question, answers: Answers, guess: str) -> str:
    """What stands in for an answer that is not there yet: a guess of the list, or the default."""
    if guess.startswith("="):
        return WORKED[guess.removeprefix("=")](answers)
    return guess or default_of(question, answers)


def choices_of(question: Question, answers: Answers) -> Mapping[str, str]:
    """The words that a question may be answered with, each with what it means."""
    if question.kind == "yes-no":
        return YES_NO
    if question.choices.startswith("="):
        return LISTS[question.choices.removeprefix("=")](answers)
    say, units = say_here(answers), value_of("units", answers)
    missing = set(devices("us")) - set(devices(units)) if question.path.endswith(DEVICE) else ()
    found = listed(question.choices)
    return {value: say(words) for value, words in found.items() if value not in missing}


def say_here(answers: Answers) -> Say:
    """Says a sentence in the trade words of the house's country."""
    return local_words(value_of("country", answers), value_of("locale", answers))


def is_asked(question: Question, answers: Answers) -> bool:
    """True where the other answers make a question one to ask; asking more is not looked at."""
    return all(_holds(each, answers) for each in question.when.split(" & ") if each)


def _holds(condition: str, answers: Answers) -> bool:
    key, _, wanted = condition.partition("=")
    is_one = value_of(key.removesuffix("!"), answers) in wanted.split("|")
    return is_one is not key.endswith("!")


def system_of(answers: Answers) -> System:
    """The units that a job is measured in."""
    return "metric" if value_of("units", answers) == "metric" else "us"


def bare_unit(answers: Answers) -> LengthUnit:
    """The unit of a number that is written alone."""
    return "mm" if system_of(answers) == "metric" else "in"


def length_in(key: str, answers: Answers) -> Fraction | None:
    """A length that was answered, or is taken by default; None where it is unknown."""
    return read_in(value_of(key, answers), bare_unit(answers))


def read_in(text: str, unit: LengthUnit) -> Fraction | None:
    """A length in inches; None where the text is none."""
    if text in ("", UNKNOWN):
        return None
    try:
        return read_length(text, bare_unit=unit).inches
    except MeasureError:
        return None


def has_places(answers: Answers) -> bool:
    """True where the wall is measured, so that each box has a place on it."""
    return value_of("wall_length", answers) != UNKNOWN


def apart_in(answers: Answers) -> Fraction | None:
    """How far the boxes are apart along the wall; None where that is unknown."""
    if not has_places(answers):
        return length_in("distance", answers)
    start, end = length_in("source_x", answers), length_in("new_x", answers)
    return None if start is None or end is None else abs(end - start)


def _quarter(answers: Answers) -> str:
    """A place a quarter along the wall: stands in until the box is measured."""
    return write_length((length_in("wall_length", answers) or _ZERO) / _PARTS, system_of(answers))


def _near(answers: Answers) -> str:
    """A place a quarter of the wall from the source, to the side with more room."""
    wall, source = _wall_and_source(answers)
    step = wall / _PARTS
    place = source + step if source <= wall / 2 else source - step
    return write_length(max(place, _ZERO), system_of(answers))


def _far(answers: Answers) -> str:
    """The end of the wall that is farther from the source."""
    wall, source = _wall_and_source(answers)
    return write_length(wall if source <= wall / 2 else _ZERO, system_of(answers))


def _wall_and_source(answers: Answers) -> tuple[Fraction, Fraction]:
    wall = length_in("wall_length", answers) or _ZERO
    return wall, length_in("source_x", answers) or wall / _PARTS


def _units(answers: Answers) -> str:
    return "us" if value_of("country", answers) in INCH_COUNTRIES else "metric"


def _locale(answers: Answers) -> str:
    country = value_of("country", answers)
    name = OTHER_LOCALES.get(country, f"en_{country}")
    return name if is_locale(name) else "en_US"


def _title(answers: Answers) -> str:
    device, room = say_here(answers)(value_of("device", answers)), value_of("room", answers)
    return str(title_said(device, room))


def _work(answers: Answers) -> str:
    device, room = say_here(answers)(value_of("device", answers)), value_of("room", answers)
    return str(work_said(device, room))


def _room_use(answers: Answers) -> str:
    room = value_of("room", answers).lower()
    return room if room in get_args(RoomUse) else UNKNOWN


def _is_opened(answers: Answers) -> str:
    return "yes" if value_of("way", answers) in IN_WALL else "no"


def _method(answers: Answers) -> str:
    is_cut = value_of("opened", answers) == "yes"
    return "bored" if value_of("way", answers) in IN_WALL and is_cut else "fished"


def _opening_width(answers: Answers) -> str:
    apart = apart_in(answers)
    system = system_of(answers)
    return "" if apart is None else write_length(apart + STRIP_BEYOND_IN[system], system)


def _opening_height(answers: Answers) -> str:
    strips = TRIM_STRIP if value_of("way", answers) == "trim" else WALL_STRIP
    return strips[system_of(answers)]


def _hidden(answers: Answers) -> str:
    return "yes" if value_of("way", answers) == "trim" else "no"


def _trim_length(answers: Answers) -> str:
    wall = value_of("wall_length", answers)
    return _opening_width(answers) if wall == UNKNOWN else wall


def _paint(answers: Answers) -> str:
    is_seen = value_of("opened", answers) == "yes" and value_of("hidden", answers) != "yes"
    return "wall" if is_seen and value_of("scope", answers) == "painted" else "none"


def _plan(measures: Mapping[str, str]) -> Worked:
    return lambda answers: measures[system_of(answers)]


def _wire(answers: Answers) -> str:
    return wire_of(value_of("breaker", answers), value_of("units", answers))


def _cable(answers: Answers) -> str:
    wire = value_of("wire", answers)
    return cable_of(_wire(answers) if wire == UNKNOWN else wire, value_of("units", answers))


WORKED: Mapping[str, Worked] = {
    "attic_height": _plan(ATTIC_HEIGHT),
    "below_floor": _plan(BELOW_FLOOR),
    "cable": _cable,
    "far": _far,
    "hidden": _hidden,
    "job_number": lambda _: NO_NAME,
    "locale": _locale,
    "method": _method,
    "near": _near,
    "opened": _is_opened,
    "opening_height": _opening_height,
    "opening_width": _opening_width,
    "paint": _paint,
    "quarter": _quarter,
    "room_use": _room_use,
    "run_height": _plan(RUN_HEIGHT),
    "spacing": _plan(SPACING),
    "title": _title,
    "trim_length": _trim_length,
    "units": _units,
    "wire": _wire,
    "work": _work,
}


def _cables(answers: Answers) -> Mapping[str, str]:
    units = value_of("units", answers)
    return {name: kind.description for name, kind in cable_kinds().items() if kind.units == units}


LISTS: Mapping[str, Callable[[Answers], Mapping[str, str]]] = {
    "cables": _cables,
    "room_uses": lambda _: {use: use for use in get_args(RoomUse) if use != UNKNOWN},
    "wires": lambda answers: wires(value_of("units", answers)),
}
