"""One typed answer: read, echoed in plain form, or refused with what to write instead."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from estimator.guide.defaults import (
    DEVICE,
    bare_unit,
    choices_of,
    default_of,
    say_here,
    system_of,
    value_of,
)
from estimator.guide.questions import LONGEST_TEXT, UNKNOWN, Answers, Question
from estimator.survey.locales import country_code, locale_name, writes_comma
from estimator.survey.messages import printable
from estimator.units import (
    LengthUnit,
    MeasureError,
    in3_to_cm3,
    read_area,
    read_length,
    read_volume,
    show_area,
    show_length,
    to_decimal,
)

LARGEST_NUMBER = 9999
NOBODY_KNOWS = (UNKNOWN, "unk", "u", "dont know", "don't know")
WIRES = "=wires"
ALSO_CALLED = {"outlet": "receptacle", "an outlet": "receptacle", "socket": "receptacle"}
FEET_AND_INCHES = re.compile(r"^(\d+)'-(.*)\"$")


class AnswerRefused(ValueError):
    """An answer that cannot be taken: what was read, and what to write instead."""

    def __init__(self, read: str, write: str) -> None:
        self.read = read
        self.write = write
        super().__init__(f"{read} {write}")


@dataclass(frozen=True, slots=True)
class Answer:
    """An answer as it is kept, and as it is said back.

    Attributes:
        value: as it goes into the answers. echo: in plain words. notes: what to look at again.
    """

    value: str
    echo: str
    notes: tuple[str, ...] = ()


def read_answer(question: Question, typed: str, answers: Answers) -> Answer:
    """Read one answer; nothing typed takes the default.

    Raises:
        AnswerRefused: with what to write instead.
    """
    text = typed.strip() or default_of(question, answers)
    if not text:
        raise AnswerRefused("This one has no usual answer.", how_to_write(question, answers))
    if text.lower() in NOBODY_KNOWS and question.kind != "text":
        return _unknown(question, answers)
    return READERS[question.kind](question, text, answers)


def said(question: Question, value: str, answers: Answers) -> str:
    """An answer that is kept, in plain words; as it stands where it can no longer be read."""
    try:
        return read_answer(question, value, answers).echo
    except AnswerRefused:
        return printable(value)


def how_to_write(question: Question, answers: Answers) -> str:
    """What an answer looks like."""
    if question.kind in ("choice", "yes-no"):
        words = ", ".join(map(say_here(answers), choices_of(question, answers)))
        return f"Write one of: {words}{_or_unknown(question)}."
    metric = system_of(answers) == "metric"
    return f"{HOW[question.kind][metric]}{_or_unknown(question)}."


HOW = {
    "text": ("Write a few words", "Write a few words"),
    "number": ("Write a whole number, such as 15", "Write a whole number, such as 20"),
    "length": ("Write it as on the tape, such as 6' 3 or 75 in", "Write it such as 1.9 m or 1900"),
    "volume": ("Write it as stamped, such as 18 or 18 in3", "Write it such as 290 cm3"),
    "area": ("Write it such as 90 ft2", "Write it such as 8.4 m2"),
    "date": ("Write year-month-day, such as 2026-03-02", "Write it such as 2026-03-02"),
}


def _or_unknown(question: Question) -> str:
    return ", or unknown" if question.may_be_unknown else ""


def _unknown(question: Question, answers: Answers) -> Answer:
    if not question.may_be_unknown:
        raise AnswerRefused("This has to be known.", how_to_write(question, answers))
    return Answer(UNKNOWN, UNKNOWN)


def _text(question: Question, text: str, answers: Answers) -> Answer:
    if not text.isprintable() or len(text) > LONGEST_TEXT:
        write = f"Write up to {LONGEST_TEXT} letters on one line."
        raise AnswerRefused("This does not print on one line.", write)
    if question.key == "country":
        return _country(text)
    if question.key == "locale":
        text = locale_name(text)
    if question.may_be_unknown and text.lower() == UNKNOWN:
        return Answer(UNKNOWN, UNKNOWN)
    return Answer(text, text)


def _country(text: str) -> Answer:
    if not re.fullmatch(r"[A-Za-z]{2}", text):
        raise AnswerRefused("This is no country in two letters.", "Write one such as US or CA.")
    code = country_code(text)
    return Answer(code, code)


def _number(question: Question, text: str, answers: Answers) -> Answer:
    number = text.lower().removesuffix(question.unit.lower()).strip() if question.unit else text
    if not re.fullmatch(r"[0-9]{1,4}", number):
        read = f"{_shown(text)} is not a whole number up to {LARGEST_NUMBER}."
        raise AnswerRefused(read, how_to_write(question, answers))
    value = str(int(number))
    return Answer(value, f"{value} {question.unit}".strip())


def _length(question: Question, text: str, answers: Answers) -> Answer:
    unit = bare_unit(answers)
    comma = writes_comma(value_of("locale", answers))
    try:
        reading = read_length(text, bare_unit=unit, decimal_comma=comma)
        is_bare = reading.inches != _other_unit(text, unit, decimal_comma=comma)
    except MeasureError as error:
        raise _refused(text, error) from None
    value = f"{text} {unit}" if is_bare else text
    return Answer(value, plain_length(reading.inches, answers), reading.notes)


def _other_unit(text: str, unit: LengthUnit, *, decimal_comma: bool) -> Fraction | None:
    """The same text where a bare number has another unit; None where it cannot be read so."""
    other: LengthUnit = "in" if unit == "mm" else "mm"
    try:
        return read_length(text, bare_unit=other, decimal_comma=decimal_comma).inches
    except MeasureError:
        return None


def plain_length(inches: Fraction, answers: Answers) -> str:
    """A length in words: 6 ft 3 in, or 1905 mm."""
    shown = show_length(inches, system_of(answers))
    feet = FEET_AND_INCHES.match(shown)
    if feet:
        rest = feet[2].removeprefix("0 ")
        return f"{feet[1]} ft" if rest == "0" else f"{feet[1]} ft {rest} in"
    return shown.replace('"', " in")


def _volume(question: Question, text: str, answers: Answers) -> Answer:
    metric = system_of(answers) == "metric"
    unit = "cm3" if metric else "in3"
    comma = writes_comma(value_of("locale", answers))
    try:
        volume = read_volume(text, bare_unit="cm3" if metric else "in3", decimal_comma=comma)
    except MeasureError as error:
        raise _refused(text, error) from None
    is_bare = bool(re.fullmatch(r"[0-9.,]+", text))
    number = to_decimal(in3_to_cm3(volume) if metric else volume, 1)
    return Answer(f"{text} {unit}" if is_bare else text, f"{number} {unit}")


def _area(question: Question, text: str, answers: Answers) -> Answer:
    metric = system_of(answers) == "metric"
    try:
        area = read_area(text, bare_unit="m2" if metric else "ft2")
    except MeasureError as error:
        raise _refused(text, error) from None
    unit = " m2" if metric else " ft2"
    is_bare = bool(re.fullmatch(r"[0-9.]+", text))
    return Answer(f"{text}{unit}" if is_bare else text, show_area(area, system_of(answers)))


def _refused(text: str, error: MeasureError) -> AnswerRefused:
    reason = error.reason[:1].lower() + error.reason[1:]
    return AnswerRefused(f"{_shown(text)} {reason}.", error.hint)


def _shown(text: str) -> str:
    return f'"{printable(text[:40])}"'


def _choice(question: Question, text: str, answers: Answers) -> Answer:
    """By its number in the list, its word, its meaning, or the beginning of one of these."""
    choices = choices_of(question, answers)
    say = say_here(answers)
    local = {say(value).lower(): value for value in choices}
    typed = _plain(question, text.lower())
    value = local.get(typed) or _picked(choices, typed)
    if value is None and typed.isdecimal() and not any(word.isdecimal() for word in choices):
        write = f"Write 1 to {len(choices)}, or the word: {', '.join(map(say, choices))}"
        read = f"There is no {_shown(text)} in this list."
        raise AnswerRefused(read, f"{write}{_or_unknown(question)}.")
    if value is None:
        read = f"{_shown(text)} is not one of these, or the beginning of more than one."
        raise AnswerRefused(read, how_to_write(question, answers))
    return Answer(value, choices[value])


def _plain(question: Question, text: str) -> str:
    """A choice in the word of the list: #12 is a 12, and an outlet is a receptacle."""
    if question.choices == WIRES:
        return text.removeprefix("#").lstrip()
    return ALSO_CALLED.get(text, text) if question.path.endswith(DEVICE) else text


def _picked(choices: Mapping[str, str], text: str) -> str | None:
    words = list(choices)
    for value, meaning in choices.items():
        if text in (value.lower(), meaning.lower()):
            return value
    if text.isascii() and text.isdigit() and 0 < int(text) <= len(words):
        return words[int(text) - 1]
    found = [
        value
        for value, meaning in choices.items()
        if value.lower().startswith(text) or meaning.lower().startswith(text)
    ]
    return found[0] if len(found) == 1 else None


def _date(question: Question, text: str, answers: Answers) -> Answer:
    try:
        value = date.fromisoformat(text).isoformat()
    except ValueError:
        write = how_to_write(question, answers)
        raise AnswerRefused(f"{_shown(text)} is not a day.", write) from None
    return Answer(value, value)


READERS = {
    "text": _text,
    "number": _number,
    "length": _length,
    "volume": _volume,
    "area": _area,
    "choice": _choice,
    "yes-no": _choice,
    "date": _date,
}
