"""Reads TOML text into plain values; what is wrong with it is said in plain words."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any

from estimator.problems import InputError, Problem
from estimator.text_files import read_text
from estimator.toml_lines import TomlPath, line_of, repeated_keys
from estimator.typed_dates import date_advice

MOST_DIGITS = 30
SHOWN_CHARS = 60

_PLACE = re.compile(r"\(at line (\d+), column (\d+)\)\s*$")
_QUOTED_INCHES = "Put text with inch marks between three apostrophes: '''12'-6 1/2\"'''."
_ONE_A_LINE = 'Write one setting on a line: name = value, with text and measures in "quotes".'
_QUOTE = 'Put text and measures in quotes: "12\' 6", "3/4 in", "unknown".'
_CLOSE = "Close what was opened: each quote, [ and { needs its partner, with commas between."
_CLASH = "This name, or a part of it, was already given as something else. Use another name."
_STILL_OPEN = {
    "[": "The [ on line {line} is still open here. Close it with ], with commas between values.",
    "{": "The {{ on line {line} is still open here. Keep all of {{ ... }} on one line.",
    "text": "The text begun with three marks on line {line} has no end. End it so too.",
}
# Finished text and comments; text without an end; what opens; what closes.
_TOKEN = re.compile(
    r"""(?:\'\'\'.*?\'\'\'|\"{3}.*?\"{3})|(\'\'\'|\"{3})"""
    r"""|"(?:\\.|[^"\\\n])*"|'[^'\n]*'|\#[^\n]*|([\[{])|([\]}])""",
    re.DOTALL,
)

_BARE_DATE = re.compile(r"=\s*\d{1,2}[/.-]\d{1,2}[/.-]\d{4}")

# How the parser begins to say that a name is taken.
_CLASH_STARTS = ("Cannot", "Duplicate")

# What the line looks like, and what to do about it; the first that fits is said.
_ADVICE: tuple[tuple[re.Pattern[str], str], ...] = tuple(
    (re.compile(pattern, re.IGNORECASE), advice)
    for pattern, advice in (
        (r"[\u201c\u201d\u2018\u2019]", 'Use straight quotes (") instead of curly ones.'),
        (r"=\s*(yes|no|on|off|true|false)\b", "Write true or false, in small letters."),
        (r"^\s*\[+[^\]]*$", "Close the heading with ] (or with ]] where it began with [[)."),
        (r"^\s*\[\[[^\]]*\]\s*$", "Close the heading with ]], as it began with [[."),
        (r"^\s*[\w.-]+(\s+[\w.-]+)+\s*=", "Write the name as one word, such as firm_name."),
        (r"^[^=]*$", _ONE_A_LINE),
        (r"^\s*=", "Write a name before the = sign."),
        (r"^[^=\"']*[^\x00-\x7f=][^=]*=", "Write names with letters a to z, digits, - and _."),
        (r"=\s*$", 'Write a value after the = sign, or "unknown".'),
        (r"=\s*'''|=\s*\"\"\"", "End the text with the same three marks that it began with."),
        (r"=\s*\"[^\"]*\"[^\"]*\"", _QUOTED_INCHES),
        (r"=\s*'[^']*'[^']*['\"]", _QUOTED_INCHES),
        (r"=\s*\"[^\"]*\\", "Write a backslash twice, or put the text in single quotes."),
        (r"=\s*[\"'][^\"']*$", "End the text on its line with the mark that it began with."),
        (r"=\s*-?\d+,\d+\s*$", "Write a decimal point (12.5), or put the number in quotes."),
        (r"=\s*-?(\d+\.|\.\d+)\s*$", "Write a digit on both sides of the point, such as 0.5."),
        (r"=\s*0\d+\s*$", "Leave out the zero in front of the number."),
        (r"=\s*\d{4}-\d+-\d+", "Write a date as 2026-03-09, with a real month and day."),
        (r"=\s*[\[{](.*[=,\[])?\s*(?!true\b|false\b|\w+\s*=)[a-z]", _QUOTE),
        (r"=\s*[\[{]", _CLOSE),
        (r"=\s*[^\"'\[{\s]", _QUOTE),
    )
)


def read_toml(source: Path | str, name: str) -> dict[str, Any]:
    """Read a TOML file, or text that was read before, into plain values.

    Numbers with decimals become Decimal, so none is changed on the way.

    Args:
        source: the file (a Path) or its text (a str).
        name: what to call it in problems.

    Raises:
        InputError: the file cannot be read, or the text is not good TOML; the problem gives
            line, column, the line itself and what to write.
    """
    text = read_text(source, name) if isinstance(source, Path) else source
    odd: list[str] = []

    def exact(number: str) -> Decimal:
        value = _decimal(number)
        if value is None:
            odd.append(number)
        return value or Decimal(0)

    try:
        values = tomllib.loads(text, parse_float=exact)
    except RecursionError:
        read = "lists or tables stand inside each other too deep."
        raise InputError([Problem(name, read, "Use fewer brackets.")]) from None
    except ValueError as error:
        raise InputError(_syntax_problems(text, name, str(error))) from None
    if odd:
        raise InputError(_number_problems(text, name, odd))
    return values


def show_path(path: TomlPath) -> str:
    """Write a path as people read it.

    >>> show_path(("walls", 1, "height"))
    'walls[1].height'
    """
    shown = "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in path)
    return shown.removeprefix(".")


def toml_place(name: str, text: str | None, path: TomlPath) -> str:
    """Say where a value stands: file, line (where the text is at hand) and dotted name."""
    line = None if text is None else line_of(text, path)
    return (
        f"{name}: {show_path(path)}" if line is None else f"{name}: line {line}, {show_path(path)}"
    )


def fact_place(
    name: str, text: str | None, path: TomlPath, cells: Mapping[TomlPath, str] | None
) -> str:
    """Say where a value stands: its cell where it came from a form, else as `toml_place`."""
    if cells is None:
        return toml_place(name, text, path)
    for length in range(len(path), 0, -1):
        if path[:length] in cells:
            return f"{name}: {cells[path[:length]]}"
    return f"{name}: {show_path(path)}" if path else name


def _decimal(number: str) -> Decimal | None:
    """Read a TOML number with decimals; None for inf, nan and sizes that nobody measures."""
    try:
        value = Decimal(number)
    except InvalidOperation:
        return None
    if not value.is_finite() or abs(value.adjusted()) > MOST_DIGITS:
        return None
    return value


def _number_problems(text: str, name: str, odd: list[str]) -> Iterator[Problem]:
    """One problem for each number that is not finite or not of a usable size."""
    lines = _lines(text)
    for number in dict.fromkeys(odd):
        written = re.compile(rf"(?<![\w.+-]){re.escape(number)}(?![\w.])")
        rows = [row for row, line in enumerate(lines, start=1) if written.search(line)]
        for row in rows or [1]:
            yield Problem(f"{name}: line {row}", f"{number} is not a number that can be used.",
                          "Write an ordinary number, such as 12.5.")  # fmt: skip


def _syntax_problems(text: str, name: str, error: str) -> list[Problem]:
    """Turn a parser's complaint into a place, the line as written, and advice."""
    repeated = list(_repeated_problems(text, name))
    if repeated:
        return repeated
    lines = _lines(text)
    line, column = _place(error, lines)
    where = f"{name}: line {line}, column {column}"
    if error.startswith(_CLASH_STARTS):
        advice = _CLASH
    else:
        advice = _open_advice(lines, line, column) or _advice(lines[line - 1])
    return [Problem(where, f"cannot be read here: {_shown(lines[line - 1])}", advice)]


def _shown(line: str) -> str:
    """Shorten a line so that it prints on one line; what does not print is a question mark."""
    text = "".join(char if char.isprintable() else "?" for char in line.strip())
    return text if len(text) <= SHOWN_CHARS else text[:SHOWN_CHARS] + "..."


def _repeated_problems(text: str, name: str) -> Iterator[Problem]:
    """One problem for each name that was given twice."""
    for path, found in repeated_keys(text):
        rows = ", ".join(str(line) for line in found[:-1])
        read = f"{show_path(path)} stands more than once (already on line {rows})."
        yield Problem(f"{name}: line {found[-1]}", read, "Keep one of them and delete the others.")


def _lines(text: str) -> list[str]:
    """Split a text into lines as an editor counts them."""
    return text.replace("\r\n", "\n").split("\n")


def _place(error: str, lines: list[str]) -> tuple[int, int]:
    """Line and column of a complaint; one at the end belongs to the last line with text."""
    found = _PLACE.search(error)
    if found:
        return min(int(found[1]), len(lines)), int(found[2])
    filled = [row for row, line in enumerate(lines, start=1) if line.strip()]
    row = filled[-1] if filled else 1
    return row, len(lines[row - 1]) + 1


def _open_advice(lines: list[str], line: int, column: int) -> str:
    """Advise where a bracket or a text from an earlier line is still open; else nothing."""
    before = "\n".join((*lines[: line - 1], lines[line - 1][: column - 1]))
    opened: list[tuple[str, int]] = []
    for token in _TOKEN.finditer(before):
        row = before.count("\n", 0, token.start()) + 1
        if token[1]:
            opened.append(("text", row))
        elif token[2]:
            opened.append((token[2], row))
        elif token[3] and opened:
            opened.pop()
    if not opened or opened[-1][1] == line:
        return ""
    kind, row = opened[-1]
    return _STILL_OPEN[kind].format(line=row)


def _advice(line: str) -> str:
    """Say what to write instead, judged by the look of the line."""
    typed = date_advice(line) if _BARE_DATE.search(line) else ""
    return typed or next(
        (advice for pattern, advice in _ADVICE if pattern.search(line)), _ONE_A_LINE
    )
