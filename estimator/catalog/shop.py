"""Lays settings over each other - shipped, the user's own, the job's - and reads them all."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Context, Decimal
from difflib import get_close_matches
from typing import Any, NamedTuple

from estimator.catalog import setting_keys as keys
from estimator.catalog.setting_keys import (
    DECIMAL_COMMA,
    MARGIN,
    MARKUP,
    SECTIONS,
    SETTINGS,
    UNITS,
    Setting,
)
from estimator.catalog.setting_readers import ElementError, Manner
from estimator.money import markup_from_margin
from estimator.problems import InputError, Problem
from estimator.reading import MeasureError
from estimator.settings import (
    ChangeTerms,
    CompareTerms,
    LedgerTerms,
    Practice,
    PriceTerms,
    RateTerms,
    Shop,
    TaxTerms,
    Terms,
)
from estimator.settings_risk import CalendarTerms, RiskTerms
from estimator.toml_files import fact_place
from estimator.toml_lines import TomlPath, line_of

# A markup worked out from a margin is rounded up here, so that a half cent is never lost.
_UP = Context(prec=20, rounding=ROUND_CEILING)


@dataclass(frozen=True, slots=True)
class Layer:
    """Settings that are laid over those before them.

    Attributes:
        name: file that they stand in, as people know it; it becomes the origin of a setting.
        mapping: sections with settings, as in shop.toml; any of them may be missing.
        text: the file, so that problems can name lines. None where there is no file.
        prefix: where the sections stand in that file: ("settings",) for a job.
        cells: the cell of each place, where the file is a form.
    """

    name: str
    mapping: Mapping[str, Any]
    text: str | None = None
    prefix: TomlPath = ()
    cells: Mapping[TomlPath, str] | None = None

    def path(self, dotted: str, element: int | None = None) -> TomlPath:
        """Say where a setting of this layer, or an element of a list in it, stands."""
        inside = () if element is None else (element,)
        return (*self.prefix, *dotted.split(".", 1), *inside)


@dataclass(frozen=True, slots=True)
class _Given:
    """A setting as written, and the layer that gave it last."""

    layer: Layer
    value: Any


class _Fault(NamedTuple):
    """A problem before it has its line, so that all can be put in the order of the file."""

    layer: Layer
    path: TomlPath
    read: str
    write: str

    def problem(self) -> Problem:
        """Give the problem with its place."""
        layer = self.layer
        where = fact_place(layer.name, layer.text, self.path, layer.cells)
        return Problem(where, self.read, self.write)


def read_shop(layers: Sequence[Layer]) -> Shop:
    """Read the settings that result when each layer is laid over the one before.

    Args:
        layers: the first holds every setting (the shipped shop.toml); the others what differs.

    Raises:
        InputError: unknown settings, values that do not fit, or settings that no layer gives;
            all at once, each with its file and line, in their order.
    """
    faults: list[_Fault] = []
    given = _lay_over(layers, faults)
    values = _read_all(given, faults)
    if not faults:
        faults += _missing(given, layers)
    if faults:
        raise InputError(fault.problem() for fault in _in_order(faults, layers))
    return _shop(given, values)


def _in_order(faults: list[_Fault], layers: Sequence[Layer]) -> list[_Fault]:
    """Sort by layer, then by line."""

    def place(fault: _Fault) -> tuple[int, int]:
        line = None if fault.layer.text is None else line_of(fault.layer.text, fault.path)
        return layers.index(fault.layer), line or 0

    return sorted(faults, key=place)


def read_setting(dotted: str, value: object, manner: Manner) -> Any:  # noqa: ANN401 - by setting
    """Read one setting by its dotted name ("practice.tail"), as shop.toml would give it.

    Raises:
        KeyError: no such setting.
        MeasureError: the value does not fit.
    """
    return SETTINGS[dotted].read(value, manner)


def _lay_over(layers: Sequence[Layer], faults: list[_Fault]) -> dict[str, _Given]:
    """Collect each setting from the last layer that gives it."""
    given: dict[str, _Given] = {}
    for layer in layers:
        found = dict(_settings_of(layer, faults))
        if MARKUP in found and MARGIN in found:
            read = "materials_markup_pct and materials_margin_pct are both given."
            write = "Keep one of them: each follows from the other."
            faults.append(_Fault(layer, layer.path(MARGIN), read, write))
        for one, other in ((MARKUP, MARGIN), (MARGIN, MARKUP)):
            if one in found:
                given.pop(other, None)
        given.update(found)
    return given


def _settings_of(layer: Layer, faults: list[_Fault]) -> Iterator[tuple[str, _Given]]:
    """Walk one layer; what is no setting becomes a fault."""
    for section, content in layer.mapping.items():
        if section not in SECTIONS:
            faults.append(_unknown(layer, section))
        elif not isinstance(content, Mapping):
            write = f"Write [{section}] on a line of its own and the settings below it."
            path = layer.path(section)
            faults.append(_Fault(layer, path, "is not a table of settings.", write))
        else:
            for key, value in content.items():
                dotted = f"{section}.{key}"
                if dotted in SETTINGS:
                    yield dotted, _Given(layer, value)
                else:
                    faults.append(_unknown(layer, dotted))


def _unknown(layer: Layer, dotted: str) -> _Fault:
    """Say that there is no such setting, and name the nearest one."""
    section, _, key = dotted.rpartition(".")
    known = list(SECTIONS.get(section, SECTIONS))
    near = [name for name in SETTINGS if name.endswith(f".{key}")]
    near = near or [f"{section}.{one}".strip(".") for one in get_close_matches(key, known, n=1)]
    write = f"Did you mean {near[0]}?" if near else f"Use one of {', '.join(known)}."
    return _Fault(layer, layer.path(dotted), "there is no such setting.", write)


def _read_all(given: Mapping[str, _Given], faults: list[_Fault]) -> dict[str, Any]:
    """Read every given setting; units and decimal comma first, as the others depend on them."""
    values: dict[str, Any] = {}
    manner = Manner()
    first = [dotted for dotted in (UNITS, DECIMAL_COMMA) if dotted in given]
    for dotted in (*first, *(name for name in given if name not in first)):
        if dotted not in first:
            manner = Manner(values.get(UNITS, "us"), values.get(DECIMAL_COMMA, False))
        layer, value = given[dotted].layer, given[dotted].value
        try:
            values[dotted] = SETTINGS[dotted].read(value, manner)
        except MeasureError as error:
            element = error.element if isinstance(error, ElementError) else None
            path = layer.path(dotted, element)
            faults.append(_Fault(layer, path, f"{error.read}.", error.hint))
    return values


def _missing(given: Mapping[str, _Given], layers: Sequence[Layer]) -> Iterator[_Fault]:
    """Name the settings that no layer gives; a markup may be given as a margin."""
    last = layers[-1] if layers else Layer("shop.toml", {})
    for dotted in SETTINGS:
        if dotted in given or dotted == MARGIN or (dotted == MARKUP and MARGIN in given):
            continue
        write = "Copy its line from the shipped shop.toml."
        yield _Fault(last, last.path(dotted), "this setting is missing.", write)


def _shop(given: Mapping[str, _Given], values: dict[str, Any]) -> Shop:
    """Put the values into their records."""
    if MARGIN in values:
        values[MARKUP] = _UP.plus(markup_from_margin(values[MARGIN]))
    return Shop(
        practice=Practice(**_fields("practice", keys.PRACTICE, values)),
        price=PriceTerms(**_fields("price", keys.PRICE, values)),
        rate=RateTerms(**_fields("rate", keys.RATE, values)),
        tax=TaxTerms(**_fields("tax", keys.TAX, values)),
        terms=Terms(**_fields("terms", keys.TERMS, values)),
        change=ChangeTerms(**_fields("change", keys.CHANGE, values)),
        conditions=_fields("conditions", keys.CONDITIONS, values),
        risk=RiskTerms(**_fields("risk", keys.RISK, values)),
        calendar=CalendarTerms(**_fields("calendar", keys.CALENDAR, values)),
        ledger=LedgerTerms(**_fields("ledger", keys.LEDGER, values)),
        compare=CompareTerms(**_fields("compare", keys.COMPARE, values)),
        origin={dotted: source.layer.name for dotted, source in given.items()},
        shown={dotted: show_setting(source.value) for dotted, source in given.items()},
        **_fields("shop", keys.SHOP, values),
    )


def _fields(
    section: str, settings: Mapping[str, Setting], values: Mapping[str, Any]
) -> dict[str, Any]:
    """Values of one section by the name of their record field."""
    return {setting.field: values[f"{section}.{key}"] for key, setting in settings.items()}


def show_setting(value: object) -> str:
    """Show a setting as it was written, on one line; "none" where nothing is."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Mapping):
        return " ".join(show_setting(part) for part in value.values())
    if isinstance(value, Sequence) and not isinstance(value, str):
        return "; ".join(show_setting(part) for part in value) or "none"
    return f"{value:f}" if isinstance(value, Decimal) else str(value) or "none"
