"""The shopping list in any language: nothing on it is left untold, and no figure changes."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from html.parser import HTMLParser
from importlib.resources import files

import pytest

from estimator.language import Language
from estimator.outputs.cells import Placed
from estimator.outputs.draft import Draft
from estimator.outputs.shopping_items import items_of
from estimator.outputs.shopping_page import list_hash, shopping_page
from estimator.outputs.shopping_sheet import write_shopping
from estimator.outputs.takeoff_sheet import write_takeoff
from estimator.outputs.text_message import message_text
from estimator.outputs.text_shopping import shopping_text
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, bid_of, full_bid, sample_bid
from tests.outputs.spreadsheet import cells, opened, reckoned
from tests.words.marked import CLOSE, OPEN, Marked, bare

JOBS = pytest.mark.parametrize("name", [*NAMES, "full", "job's own price"])
_OWN_PRICE = '\n[overrides.prices]\n"cable-14-2" = 0.55\n'
_QUOTED = re.compile(r'"((?:[^"]|"")*)"')


@dataclass(frozen=True, slots=True)
class Small(Language):
    """A language of a few sentences; all others stay English."""

    few: Mapping[str, str] = field(default_factory=dict)

    def sentence(self, english: str, plural: str, count: int | None) -> str:
        return self.few.get(english, plural if plural and count != 1 else english)


@cache
def bid_named(name: str) -> Bid:
    """A sample, the job with everything in it, or one that gives a price itself."""
    if name == "job's own price":
        return bid_of("nightstand", more=_OWN_PRICE)
    return full_bid() if name == "full" else sample_bid(name)


def in_language(bid: Bid, language: Language) -> Bid:
    return replace(bid, books=replace(bid.books, language=language))


def own_words(bid: Bid) -> tuple[str, ...]:
    """Texts that no language touches: the job's own, keys of items, and suppliers."""
    job = bid.survey.job
    keys = [line.item for line in bid.shopping]
    shops = [str(pack.supplier) for line in bid.shopping for pack in line.packs]
    sellers = [
        row.supplier for line in bid.shopping for row in bid.books.materials.get(line.item, ())
    ]
    own = [job.id, job.title, job.customer, *keys, *shops, *sellers]
    return tuple(each for each in own if each and each != "priced by the job")


def unmarked(text: str) -> str:
    return text.replace(OPEN, "").replace(CLOSE, "")


def left_bare(bid: Bid, texts: list[str]) -> list[str]:
    return [left for text in texts if (left := bare(text, own_words(bid)))]


def placed(bid: Bid) -> list[Placed]:
    """The cells of the Shopping list sheet."""
    draft = Draft.of(bid)
    write_takeoff(draft)
    return write_shopping(draft).placed


@JOBS
def test_every_text_of_the_sheet_is_told(name: str) -> None:
    bid = in_language(bid_named(name), Marked())
    texts = [cell.value for cell in placed(bid) if isinstance(cell.value, str)]
    assert len(texts) > 50
    assert left_bare(bid, texts) == []


@JOBS
def test_words_in_formulas_are_told(name: str) -> None:
    bid = in_language(bid_named(name), Marked())
    found = [word for cell in placed(bid) for word in _QUOTED.findall(cell.formula) if word]
    assert set(found) == {f"{OPEN}unknown{CLOSE}"}


@JOBS
def test_figures_of_the_sheet_are_the_same_in_any_language(name: str) -> None:
    told, english = (placed(each) for each in both(name))
    assert [as_english(cell) for cell in told] == english


def both(name: str) -> tuple[Bid, Bid]:
    return in_language(bid_named(name), Marked()), bid_named(name)


def as_english(cell: Placed) -> Placed:
    """The cell without marks; every other difference stays."""
    value = unmarked(cell.value) if isinstance(cell.value, str) else cell.value
    return cell._replace(value=value, formula=unmarked(cell.formula))


class Told(HTMLParser):
    """Collects what a reader of a page sees or hears."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.script = ""
        self._inside = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._inside = "words" if ("id", "words") in attrs else tag
        seen = ("aria-label", "title", "placeholder", "alt", "data-what", "data-unit")
        self.texts += [value for name, value in attrs if name in seen and value]

    def handle_endtag(self, tag: str) -> None:
        self._inside = ""

    def handle_data(self, data: str) -> None:
        if self._inside == "words":
            self.script = data
        elif self._inside not in ("script", "style"):
            self.texts.append(data)


@JOBS
def test_every_text_of_the_page_is_told(name: str) -> None:
    bid = in_language(bid_named(name), Marked())
    texts = Told(shopping_page(bid)).texts
    assert len(texts) > 50
    assert left_bare(bid, texts) == []


def script_texts(page: str) -> list[str]:
    """What the script says; the places that it fills are left out."""
    words = json.loads(Told(page).script)
    groups = [words.pop("columns"), words.pop("one").values(), words.pop("several").values()]
    lines = [*words.values(), *(line for group in groups for line in group)]
    return [re.sub(r"\{\w+\}", "", line) for line in lines]


def test_all_that_the_script_says_is_told() -> None:
    bid = in_language(sample_bid("nightstand"), Marked())
    texts = script_texts(shopping_page(bid))
    assert len(texts) > 30
    assert left_bare(bid, texts) == []


def test_the_script_has_no_words_of_its_own() -> None:
    """Words with a capital, or two words together; keys of the close-out file are no words."""
    pages = files("estimator.outputs").joinpath("pages")
    names = ("list_numbers.js", "list.js")
    script = "".join(pages.joinpath(name).read_text(encoding="utf-8") for name in names)
    code = re.sub(r"/\*.*?\*/", "", script)
    literals = re.findall(r'"((?:[^"\\\n]|\\.)*)"', code)
    assert len(literals) > 50
    found = [text for text in literals if re.search(r"^[A-Z]|[a-z],? [a-z]", text)]
    assert found == ["use strict"] * len(names)


def test_the_script_is_told_in_words_that_cannot_end_it() -> None:
    hostile = Small(few={"Copied.": "</script><b>"})
    page = shopping_page(in_language(sample_bid("nightstand"), hostile))
    assert json.loads(Told(page).script)["copied"] == "</script><b>"
    assert "</script><b>" not in page


@JOBS
def test_a_page_without_its_marks_is_the_english_page(name: str) -> None:
    """So every amount, quantity and link is the same; a mark may stand before a capital."""
    told, english = (shopping_page(each) for each in both(name))
    assert body(unmarked(told)).casefold() == body(english).casefold()


def body(page: str) -> str:
    return page.partition("<body>")[2]


def test_the_page_names_its_language() -> None:
    page = shopping_page(in_language(sample_bid("nightstand"), Small("fr")))
    assert '<html lang="fr">' in page


def test_ticks_belong_to_the_list_and_not_to_its_language() -> None:
    told, english = both("full")
    assert list_hash(items_of(told)) == list_hash(items_of(english))
    assert f'data-list="{list_hash(items_of(english))}"' in shopping_page(told)


@JOBS
@pytest.mark.parametrize("write", [shopping_text, message_text])
def test_every_line_of_the_texts_is_told(name: str, write: Callable[[Bid], list[str]]) -> None:
    """Lines of a paragraph are put together again: its marks may stand on different lines."""
    told, english = (write(each) for each in both(name))
    bid = bid_named(name)
    upper = tuple(word.upper() for word in own_words(bid))
    assert bare(" ".join(" ".join(told).split()), (*own_words(bid), *upper)) == ""
    assert squeezed(unmarked(" ".join(told))) == squeezed(" ".join(english))


def squeezed(text: str) -> str:
    """Without rules and spaces, which follow the length of words."""
    return re.sub(r"-{3,}|\s", "", text).casefold()


# An apostrophe in the name of a sheet, and a word with signs that mean more in formulas.
FRENCH = {
    "Shopping list": "Liste d'achats", "unknown": 'prix "?" *', "truck": "camion",
    "To get": "À acheter", "no price in the book": "sans prix",
}  # fmt: skip


@cache
def french() -> dict[str, bytes]:
    """Whole workbooks with that sheet in another language."""
    made = {"full": full_bid(), "nightstand": sample_bid("nightstand")}
    return {name: bid_workbook(in_language(bid, Small("fr", few=FRENCH)))
            for name, bid in made.items()}  # fmt: skip


@cache
def french_again() -> dict[str, bytes]:
    return reckoned(french())


@pytest.mark.parametrize("name", ["full", "nightstand"])
def test_formulas_give_the_engines_values_in_another_language(name: str) -> None:
    stored, found = cells(french()[name]), cells(french_again()[name])
    formulas = [place for place, cell in stored.items() if cell.formula]
    assert len([place for place in formulas if place[0] == "Liste d'achats"]) > 30
    wrong = [(place, stored[place].value, found[place].value) for place in formulas
             if not same(stored[place].value, found[place].value)]  # fmt: skip
    assert wrong == []


def test_what_has_no_price_is_counted_by_the_told_word() -> None:
    """The job with everything in it has two items without a price."""
    found = cells(french_again()["full"])
    words = [cell.value for place, cell in found.items() if place[0] == "Liste d'achats"]
    assert 'prix "?" *' in words
    counted = [cell for cell in found.values() if cell.formula.startswith("COUNTIFS(")]
    assert [cell.value for cell in counted if "prix" in cell.formula] == [2]


def same(stored: object, found: object) -> bool:
    """Texts equal; numbers to half a unit of the sixth place."""
    if isinstance(stored, float) and isinstance(found, float):
        return abs(stored - found) <= 0.000_000_5
    return stored is not None and stored == found


def test_two_columns_told_alike_get_names_of_their_own() -> None:
    """A table with two columns of one name is a file that spreadsheet programs call broken."""
    alike = Small(few={"What to get": "Chose", "Item": "chose"})
    bid = in_language(sample_bid("nightstand"), alike)
    data = bid_workbook(bid)
    table = opened(data)["Shopping list"].tables["To_get"]
    names = [column.name for column in table.tableColumns]
    assert names[2:4] == ["Chose", "chose 2"]
    row = table.ref.partition(":")[0].lstrip("A")
    assert cells(data)["Shopping list", f"D{row}"].value == "chose 2"
