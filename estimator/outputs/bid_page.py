"""The customer's page: what the Bid sheet says, read from that very sheet, and the wall drawing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from estimator.drawing.draw import draw
from estimator.drawing.records import Drawing
from estimator.guide.title_words import title_of
from estimator.language import Language
from estimator.measures import to_decimal
from estimator.money import minor_unit, show_date, show_money
from estimator.outputs import looks
from estimator.outputs.bid_sheet import write_bid_sheet
from estimator.outputs.cells import Placed, Sheet
from estimator.outputs.draft import Draft
from estimator.outputs.drawing_svg import key_items, titled_elevation
from estimator.outputs.markup import safe
from estimator.outputs.page import whole_page
from estimator.outputs.xlsx_values import day_of
from estimator.pricing.records import Bid
from estimator.saying import said

_STYLES = ("base.css", "bid.css")
_LABEL, _WORDS, _AMOUNT = 1, 2, 3


@dataclass(slots=True)
class _Part:
    """One section of the sheet, row by row; the first has no title.

    Attributes:
        rows: label, words, amount, and whether the sheet makes it stand out.
        numbered: the number each row of a list begins with.
        signed: lines to sign on.
    """

    title: str
    rows: list[tuple[str, str, str, bool]] = field(default_factory=list)
    numbered: list[tuple[int, str]] = field(default_factory=list)
    signed: list[str] = field(default_factory=list)


def bid_page(bid: Bid) -> str:
    """Write the page: the words and amounts of the Bid sheet, and nothing of what things cost.

    Raises:
        InputError: a currency that is not on file.
    """
    job, shop = bid.survey.job, bid.books.shop
    sheet = write_bid_sheet(Draft.of(bid))
    head, *parts = _parts(bid, sheet)
    drawing = draw(bid.survey, shop.practice, bid.books.language)
    lines = [
        *_head(bid, head),
        "<main>",
        *(line for at, part in enumerate(parts, start=1) for line in _section(part, f"part{at}")),
        *_drawing(drawing, bid.books.language),
        "</main>",
    ]
    title = bid.books.language.say(
        said("Bid {number}: {title}", number=job.id, title=title_of(bid.survey))
    )
    lang = bid.books.language.code
    return whole_page(title, "\n".join(lines), _STYLES, (), lang=lang)


def _parts(bid: Bid, sheet: Sheet) -> list[_Part]:
    """The sheet's rows by section."""
    rows: dict[int, dict[int, Placed]] = {}
    for cell in sheet.placed:
        rows.setdefault(cell.row, {})[cell.column] = cell
    parts = [_Part("")]
    for row in rows.values():
        first = row.get(_LABEL)
        if first is not None and first.look is looks.SECTION:
            parts.append(_Part(str(first.value)))
        elif first is None or first.look is not looks.TITLE:
            _take(bid, parts[-1], row)
    return parts


def _take(bid: Bid, part: _Part, row: dict[int, Placed]) -> None:
    """Put one row of the sheet where it belongs on the page."""
    label, said, amount = (_shown(bid, row.get(at)) for at in (_LABEL, _WORDS, _AMOUNT))
    first = row.get(_LABEL)
    if first is not None and first.look is looks.NUMBERED:
        part.numbered.append((int(label.strip(". ")), said))
    elif _WORDS in row and row[_WORDS].look is looks.RULE:
        part.signed.append(label)
    else:
        total = _AMOUNT in row and row[_AMOUNT].look is looks.total(looks.MONEY)
        part.rows.append((label, said, amount, total))


def _shown(bid: Bid, cell: Placed | None) -> str:
    """What a cell shows: money, days and words in the job's locale."""
    if cell is None or cell.value is None:
        return ""
    if isinstance(cell.value, str):
        return cell.value
    job, currency = bid.survey.job, bid.books.shop.currency
    if cell.look.form == looks.DATE:
        return show_date(day_of(int(cell.value)), bid.books.language.dates(job.locale))
    return show_money(to_decimal(cell.value, minor_unit(currency)), currency, job.locale)


def _head(bid: Bid, part: _Part) -> Iterator[str]:
    """Who bids, for whom, and until when."""
    say = bid.books.language.say
    yield f'<a class="skip" href="#part1">{safe(say(said("Go to the work")))}</a>'
    yield "<header>"
    title = said("Bid: {title}", title=title_of(bid.survey))
    yield f"<h1>{safe(say(title))}</h1>"
    yield from _pairs(part)
    yield "</header>"


def _section(part: _Part, mark: str) -> Iterator[str]:
    yield f'<section aria-labelledby="{mark}">'
    yield f'<h2 id="{mark}">{safe(part.title)}</h2>'
    if part.numbered:
        yield f'<ol start="{part.numbered[0][0]}">'
        yield from (f"<li>{_lines(told)}</li>" for _, told in part.numbered)
        yield "</ol>"
    yield from _pairs(part)
    for who in part.signed:
        yield f'<p class="sign">{safe(who)}</p>'
    yield "</section>"


def _pairs(part: _Part) -> Iterator[str]:
    """Names with what they are; an amount stands beside its name."""
    named = [row for row in part.rows if row[0]]
    yield from (f"<p>{_lines(told)}</p>" for label, told, *_ in part.rows if not label)
    if not named:
        return
    yield "<dl>"
    for label, told, amount, total in named:
        strong = ' class="strong"' if total else ""
        yield f"<div{strong}><dt>{safe(label)}</dt>"
        if amount:
            yield f'<dd class="amount">{safe(amount)}</dd>'
        yield f"<dd>{_lines(told)}</dd></div>"
    yield "</dl>"


def _lines(text: str) -> str:
    """Text whose line ends are kept."""
    return "<br>".join(safe(line) for line in text.split("\n"))


def _drawing(drawing: Drawing, language: Language) -> Iterator[str]:
    """Every wall as a picture, the key, and the same in words."""

    def told(text: str) -> str:
        return safe(language.say(text))

    yield '<section aria-labelledby="drawing" class="drawing">'
    yield f'<h2 id="drawing">{told(said("The walls, drawn to scale"))}</h2>'
    for at, view in enumerate(drawing.elevations, start=1):
        yield from titled_elevation(view, at, told(view.title), language)
        yield f"<details><summary>{told(said('The same in words'))}"
        yield f'<span class="unseen">: {told(view.title)}</span></summary><ul>'
        yield from (f"<li>{told(text)}</li>" for text in view.said)
        yield "</ul></details>"
    yield from (f"<p>{told(text)}</p>" for text in drawing.remarks)
    yield f"<h3>{told(said('How to read the lines'))}</h3>"
    yield '<ul class="key">'
    yield from (f"<li>{swatch} {safe(key)}</li>" for swatch, key in key_items(drawing, language))
    yield "</ul></section>"
