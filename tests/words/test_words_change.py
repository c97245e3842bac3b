"""The customer's page of a change order in other languages: nothing untold, no figure changed."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from dataclasses import replace
from functools import cache

import pytest

from estimator.language import ENGLISH, Language
from estimator.outputs.cells import Placed, Sheet
from estimator.outputs.change_book import READING_ORDER, change_workbook
from estimator.outputs.draft import Draft
from estimator.pricing.books_for import books_for
from estimator.pricing.change import change_order
from estimator.pricing.change_records import ChangeOrder
from estimator.survey.differences import changed_facts
from estimator.survey.field_words import choices, keys
from tests.outputs.bid_factory import SAMPLES, bid_of, job
from tests.outputs.spreadsheet import opened
from tests.outputs.test_change_book import orders
from tests.pricing.change_case import changed
from tests.pricing.change_case import figures as figures_of
from tests.words.marked import Marked, bare

CAPPED = '\n[settings.terms]\nprice_form = "not-to-exceed"\nnot_to_exceed_pct = 12.5\n'
FOUND = {
    "year_built = 1996": "year_built = 1964",
    'finish = "gypsum board"': 'finish = "plaster"',
    'x = "8\' 9\\""': 'x = "10\' 9\\""',
    'right = "106 in"': 'right = "130 in"',
    'insulated = "no"': 'insulated = "unknown"',
    "date = 2026-03-02": "date = 2026-03-09",
}
ELSEWHERE = Marked("es")
UNITS = ("ft", "in", "in3", "ft2", "mm")


@cache
def found_order() -> ChangeOrder:
    """Plaster, an older house, a longer run, as two job files state it."""
    path = SAMPLES / "nightstand.toml"
    text = path.read_text(encoding="utf-8") + CAPPED
    after = text
    for old, new in FOUND.items():
        assert old in after
        after = after.replace(old, new)
    facts = changed_facts(tomllib.loads(text), tomllib.loads(after))
    second = job("nightstand", FOUND, CAPPED)
    before = bid_of("nightstand", more=CAPPED)
    return change_order(
        before, second.survey, books_for(second), facts=facts, why="plaster behind the board"
    )


OPEN_CHECKS = (
    ("year_built = 1996", 'year_built = "unknown"'),
    ('volume = "18.0 in3"', 'volume = "unknown"'),
    ('trim_height = "5-1/4 in"', 'trim_height = "unknown"'),
)


@cache
def unknown_order() -> ChangeOrder:
    """An old box without a mark, in a house whose age nobody knows."""
    return changed(figures_of(), changes=OPEN_CHECKS)


def order_of(name: str) -> ChangeOrder:
    made = {"found": found_order, "unknown": unknown_order}
    return made[name]() if name in made else orders()[name]


CASES = ("found", "unknown", "more", "less", "lists", "stated", "allowance", "capped", "vat")


def told(order: ChangeOrder, language: Language) -> ChangeOrder:
    books = replace(order.after.books, language=language)
    return replace(order, after=replace(order.after, books=books))


def sheets(order: ChangeOrder, language: Language) -> list[Sheet]:
    """All sheets of the workbook."""
    made = told(order, language)
    draft = Draft.of(made.after)
    return [write(draft, made) for write in READING_ORDER]


def texts(sheet: Sheet) -> list[str]:
    return [cell.value for cell in sheet.placed if isinstance(cell.value, str)]


def own(order: ChangeOrder) -> tuple[str, ...]:
    """What the job and the shop wrote themselves."""
    about, terms = order.after.survey.job, order.after.books.shop.terms
    typed = (about.title, about.customer, about.address, order.why, terms.firm_name,
             terms.firm_contact, terms.firm_license)  # fmt: skip
    return (
        *(text for text in typed if text),
        "north",
        "source",
        "strip",
        "new",
        "S1",
        *UNITS,
    )


@pytest.mark.parametrize("name", CASES)
def test_nothing_on_the_page_is_left_untold(name: str) -> None:
    order = order_of(name)
    page = sheets(order, ELSEWHERE)[0]
    assert [text for text in (page.name, *texts(page)) if bare(text, own(order))] == []


def figures(text: str) -> Counter[str]:
    return Counter(re.findall(r"\d+", text))


def amounts(sheet: Sheet) -> list[Placed]:
    return [cell for cell in sheet.placed if not isinstance(cell.value, str)]


@pytest.mark.parametrize("name", CASES)
def test_figures_are_the_same_in_every_language(name: str) -> None:
    order = order_of(name)
    english, other = sheets(order, ENGLISH)[0], sheets(order, ELSEWHERE)[0]
    pairs = list(zip(texts(english), texts(other), strict=True))
    assert [pair for pair in pairs if figures(pair[0]) != figures(pair[1])] == []
    assert amounts(english) == amounts(other)


def test_the_other_sheets_stay_english() -> None:
    english, other = (sheets(found_order(), each)[1:] for each in (ENGLISH, ELSEWHERE))
    assert [(each.name, texts(each)) for each in other] == [
        (each.name, texts(each)) for each in english
    ]


def test_the_workbook_opens_with_the_page_in_its_language() -> None:
    book = opened(change_workbook(told(found_order(), ELSEWHERE)))
    assert (bare(book.sheetnames[0]), bare(book.sheetnames[1])) == ("", "Lines")


def test_facts_are_told_in_the_words_of_their_fields() -> None:
    """Keys and words to choose from are the tool's own; ids and figures are the job's."""
    say = Marked().say
    facts = {each.about: (say(each.about), say(each.before), say(each.after))
             for each in found_order().facts}  # fmt: skip
    assert facts["walls north: finish"] == (
        "\u27e6walls\u27e7 north: \u27e6finish\u27e7",
        "\u27e6gypsum board\u27e7",
        "\u27e6plaster\u27e7",
    )
    assert facts["job: year built"][1:] == ("1996", "1964")


def test_a_key_that_somebody_made_up_stays_as_typed() -> None:
    new = {"overrides": {"hours": {"pull-bored": 1}}, "walls": [{"id": "a", "finish": "mud"}]}
    marked = Marked()
    said = [(marked.say(each.about), marked.say(each.after)) for each in changed_facts({}, new)]
    assert said == [
        ("\u27e6overrides\u27e7: \u27e6hours\u27e7: pull-bored", "1"),
        ("\u27e6walls\u27e7 a: \u27e6finish\u27e7", "mud"),
    ]


def test_words_of_job_files_are_known() -> None:
    """Some of each kind, read in the README's tables of fields."""
    assert {"walls", "height", "cables", "disturbed_before", "legs"} <= keys()
    assert {"yes", "no", "unknown", "plaster", "crawlspace", "three-way switch"} <= choices()
    assert "settings" not in choices()


def checks_in(language: Language) -> list[str]:
    """What the page says of a box without a mark and of old paint."""
    page = sheets(unknown_order(), language)[0]
    return [text for text in texts(page) if "its volume is unknown" in text or "ft2" in text]


def test_figures_of_open_checks_are_told() -> None:
    assert checks_in(ENGLISH) != []
    assert [each for each in checks_in(ELSEWHERE) if "Checked again" in each] == []
    assert len(checks_in(ELSEWHERE)) == len(checks_in(ENGLISH))


def test_figures_that_can_only_be_said_in_english_stand_on_another_sheet() -> None:
    order = found_order()
    check = replace(order.rechecks[1], verdict_after="fail", figures_after="4 studs, 0.2 hours")
    one = replace(order, rechecks=(check,))
    there, here = texts(sheets(one, ELSEWHERE)[0]), texts(sheets(one, ENGLISH)[0])
    assert not any("4 studs" in text for text in there)
    assert any("Checked again" in text for text in there)
    assert any("4 studs, 0.2 hours" in text for text in here)
