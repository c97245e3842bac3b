"""Measures in a job: bare units, decimal commas, remarks, and unknown wherever it may stand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.survey.reader import survey_from
from estimator.survey.records import Survey
from tests.survey.made_job import changed, problems, read, survey, values

GB = 'country = "GB"\nunits = "metric"'


def first_length(*job_lines: str, length: str) -> Fraction:
    """Length of the first wall, in a job with these lines in its head."""
    head = 'title = "One more outlet"\n' + "\n".join(job_lines)
    text = changed(
        ('title = "One more outlet"', head),
        ('length = "12 ft"', f"length = {length}"),
        ('cables = ["14-2"]', "cables = []"),
        ('cable = "14-2"', 'cable = "2.5 mm2 2-core and earth"' if GB in head else 'cable="14-2"'),
        ('volume = "18 in3"', 'volume = "unknown"'),
    )
    return survey(text).walls[0].length_in


@pytest.mark.parametrize(
    ("lines", "length", "want_in"),
    [
        ((), "150", Fraction(150)),
        ((), '"150"', Fraction(150)),
        ((), "150.5", Fraction(301, 2)),
        (('bare_unit = "ft"',), "12", Fraction(144)),
        (('bare_unit = "ft"',), "12.5", Fraction(150)),
        (('bare_unit = "mm"',), "3810", Fraction(150)),
        (('bare_unit = "cm"',), "381", Fraction(150)),
        (('bare_unit = "m"',), "3.81", Fraction(150)),
        ((GB,), "3810", Fraction(150)),
        ((GB, 'bare_unit = "m"'), "3.81", Fraction(150)),
        ((GB,), '"150 in"', Fraction(150)),
        ((), '"3.81 m"', Fraction(150)),
    ],
)
def test_bare_numbers_are_in_the_unit_of_the_job(
    lines: tuple[str, ...], length: str, want_in: Fraction
) -> None:
    """Worked by hand: 1 ft = 12 in and 1 in = 25.4 mm, so 3810 mm = 150 in."""
    assert first_length(*lines, length=length) == want_in


@pytest.mark.parametrize("locale", ["de_DE", "de-DE", "fr_CA", "en_ZA", "pt_BR"])
def test_a_locale_with_decimal_commas_reads_them(locale: str) -> None:
    """Decimal marks by CLDR: comma in these locales."""
    assert first_length(f'locale = "{locale}"', length='"3,81 m"') == 150


@pytest.mark.parametrize("locale", ["en_US", "en_GB", "es_MX", "de_CH"])
def test_a_locale_with_decimal_points_asks(locale: str) -> None:
    """Decimal marks by CLDR: point in these locales."""
    swaps = ("[circuit]", f'locale = "{locale}"\n[circuit]'), ('"12 ft"', '"3,81 m"')
    assert "Write 3.81" in problems(changed(*swaps))[0].write


def test_a_decimal_comma_serves_volumes_and_areas_too() -> None:
    text = changed(
        ("[circuit]", 'locale = "de_DE"\n[circuit]'),
        ('volume = "18 in3"', 'volume = "18,5 in3"'),
        ("[finish]", '[finish]\npaint_area = "1,5 ft2"'),
    )
    job = survey(text)
    assert job.boxes[0].volume_in3 == Decimal("18.5")
    assert job.finish.paint_area_in2 == 216


@pytest.mark.parametrize(
    ("typed", "want"),
    [
        ('"18 in3"', "18.0"),
        ("18", "18.0"),
        ("18.25", "18.25"),
        ('"295 mL"', "18.002005"),
        ('"18.0"', "18.0"),
    ],
)
def test_volumes_as_stamped(typed: str, want: str) -> None:
    """Worked by hand: 295 cm3 / 16.387064 = 18.0020045..."""
    text = changed(('volume = "18 in3"', f"volume = {typed}"))
    assert str(survey(text).boxes[0].volume_in3) == want


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ('"0\' 33\\""', "33\" after 0' is a whole foot or more"),
        ("\"12''\"", "Two apostrophes are read as inches"),
    ],
)
def test_a_length_read_with_a_remark_is_echoed(typed: str, said: str) -> None:
    (note,) = read(changed(('height = "100 in"', f"height = {typed}"))).notes
    assert note.startswith('height "')
    assert "was read as" in note
    assert said in note


def test_decimal_feet_are_echoed_with_what_else_they_may_mean() -> None:
    """12.6 ft = 12 ft 7.2 in, nearest sixteenth 3/16 (worked by hand; scenario table)."""
    swaps = ("[circuit]", 'bare_unit = "ft"\n[circuit]'), ('length = "12 ft"', "length = 12.6")
    (note,) = read(changed(*swaps)).notes
    assert "12'-7 3/16\"" in note
    assert "12'-6\"" in note


def test_a_plain_job_has_no_remarks() -> None:
    assert read(changed(("[job]", "[job]"))).notes == ()


LENGTHS = {
    "walls": "height stud_depth spacing layout_from finish_thickness trim_height",
    "corners": "edge",
    "tees": "edge",
    "windows": "left bottom header_top",
    "members": "at height from to",
    "levels": "height below_floor hatch_distance",
    "boxes": "x height out depth volume replacement_volume",
    "runs": "height stud_depth hole edge tail corner_extra obstacle_extra trim_length caulk_length",
    "openings": "left right bottom top",
}
WORDS = {
    "walls": "bearing exterior insulated finish framing",
    "levels": "accessible",
    "boxes": "clamps metal",
    "openings": "hidden",
}
NUMBERS = {"walls": "stud", "boxes": "device_rating"}
SINGLE = {
    ("job", "year_built"): None,
    ("job", "occupied"): "unknown",
    ("circuit", "breaker"): None,
    ("circuit", "wire"): None,
    ("circuit", "grounded"): "unknown",
    ("circuit", "material"): "unknown",
    ("circuit", "kind"): "unknown",
    ("circuit", "multiwire"): "unknown",
    ("circuit", "load"): None,
    ("finish", "paint_area"): None,
}


def _listed(table: dict[str, str]) -> list[tuple[str, str]]:
    return [(name, key) for name, keys in table.items() for key in keys.split()]


def _said(made: Survey, table: str, key: str) -> Any:
    """What a survey holds at a key of the first of its tables, as the file names them."""
    rows = getattr(made, table)
    row = rows[0] if isinstance(rows, tuple) else rows
    return row.model_dump(by_alias=True)[key]


def _quick(raw: dict[str, Any]) -> dict[str, Any]:
    """The same job with its run typed, so that no box needs a place; openings by their size."""
    raw["runs"][0] |= {"legs": [{"go": "along", "length": 71, "studs": 4}]}
    del raw["runs"][0]["way"]
    raw["openings"][0] |= {"width": 73, "height": 4}
    return raw


@pytest.mark.parametrize(("table", "key"), _listed(LENGTHS) + _listed(NUMBERS))
def test_unknown_may_stand_for_a_figure(table: str, key: str) -> None:
    raw = _quick(values(changed(("[job]", "[job]"))))
    raw[table][0][key] = "unknown"
    assert _said(survey_from(raw), table, key) is None


@pytest.mark.parametrize(("table", "key"), _listed(WORDS))
def test_unknown_may_stand_for_a_word(table: str, key: str) -> None:
    raw = values(changed(("[job]", "[job]")))
    raw[table][0][key] = "unknown"
    assert _said(survey_from(raw), table, key) == "unknown"


@pytest.mark.parametrize(("place", "want"), SINGLE.items())
def test_unknown_of_the_whole_job(place: tuple[str, str], want: str | None) -> None:
    raw = values(changed(("[job]", "[job]")))
    raw[place[0]][place[1]] = "unknown"
    assert _said(survey_from(raw), *place) == want


@pytest.mark.parametrize("key", ["corner_members", "corner_edge"])
def test_unknown_in_a_typed_leg(key: str) -> None:
    raw = _quick(values(changed(("[job]", "[job]"))))
    raw["runs"][0]["legs"][0][key] = "unknown"
    leg = survey_from(raw).runs[0].legs[0].model_dump(by_alias=True)
    assert leg[key] is None


@pytest.mark.parametrize(("typed", "want"), [(True, "yes"), (False, "no"), ("yes", "yes")])
def test_true_and_false_say_yes_and_no(typed: object, want: str) -> None:
    raw = values(changed(("[job]", "[job]")))
    raw["boxes"][0]["clamps"] = typed
    assert survey_from(raw).boxes[0].clamps == want


def test_a_country_in_small_letters_is_the_same_country() -> None:
    assert survey(changed(("[circuit]", 'country = "us"\n[circuit]'))).job.country == "US"
