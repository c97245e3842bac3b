"""The crew sheet as one page: to read on a phone, and to print in black and white."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.drawing.draw import draw
from estimator.guide.title_words import title_of
from estimator.language import Language
from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart, CrewSheet
from estimator.outputs.crew_sheet import crew_sheets
from estimator.outputs.drawing_svg import titled_elevation
from estimator.outputs.markup import safe
from estimator.outputs.page import whole_page
from estimator.pricing.records import Bid
from estimator.saying import said

_STYLES = ("base.css", "crew.css")
_SKIP = said("Go to the work")
_WALLS = said("The walls, drawn to scale")
Twins = list[tuple[str, str]]


def crew_page(bid: Bid, languages: Sequence[Language]) -> str:
    """Write the page in one language, or in two with each line beside its twin.

    Nothing that costs or is charged stands in it.
    """
    sheets = crew_sheets(bid, languages)
    body = [
        f'<div class="{"one" if len(sheets) == 1 else "two"}">',
        f'<a class="skip" href="#visits">{_said(_SKIP, languages)}</a>',
        "<header>",
        f"<h1>{_twins([(each.language, each.title) for each in sheets])}</h1>",
        *(f"<p>{_twins(line)}</p>" for line in _heads(sheets)),
        "</header>",
        "<main>",
        *(line for parts in _parts(sheets) for line in _part(sheets, parts)),
        *_walls(bid, languages),
        "</main>",
        "</div>",
    ]
    job, first = bid.survey.job, languages[0]
    title = first.say(
        said("Crew sheet {number}: {title}", number=job.id, title=title_of(bid.survey))
    )
    return whole_page(title, "\n".join(body), _STYLES, (), lang=first.code)


def _heads(sheets: Sequence[CrewSheet]) -> Iterator[Twins]:
    for lines in zip(*(sheet.head for sheet in sheets), strict=True):
        yield _named(sheets, lines)


def _parts(sheets: Sequence[CrewSheet]) -> Iterator[tuple[CrewPart, ...]]:
    return zip(*(sheet.parts for sheet in sheets), strict=True)


def _named(sheets: Sequence[CrewSheet], texts: Sequence[str]) -> Twins:
    return [(sheet.language, text) for sheet, text in zip(sheets, texts, strict=True)]


def _twins(texts: Twins) -> str:
    """A text in each language, marked as such; once where they are the same."""
    if len({text for _, text in texts}) == 1:
        return safe(texts[0][1])
    spans = "".join(f'<span lang="{safe(code)}">{safe(text)}</span>' for code, text in texts)
    return f'<span class="twins">{spans}</span>'


def _said(text: str, languages: Sequence[Language]) -> str:
    return _twins([(language.code, language.say(text)) for language in languages])


def _part(sheets: Sequence[CrewSheet], parts: Sequence[CrewPart]) -> Iterator[str]:
    key = safe(parts[0].key)
    yield f'<section aria-labelledby="{key}-title">'
    yield f'<span id="{key}" tabindex="-1"></span>' if key == "visits" else ""
    yield f'<h2 id="{key}-title">{_twins(_named(sheets, [part.title for part in parts]))}</h2>'
    groups = zip(*(part.groups for part in parts), strict=True)
    for at, group in enumerate(groups, start=1):
        yield from _group(sheets, group, f"{key}{at}")
    yield "</section>"


def _group(sheets: Sequence[CrewSheet], groups: Sequence[CrewGroup], mark: str) -> Iterator[str]:
    if groups[0].title:
        title = _twins(_named(sheets, [group.title for group in groups]))
        yield f'<h3 id="{mark}">{title}</h3>'
    if groups[0].lines:
        yield "<ul>"
        for lines in zip(*(group.lines for group in groups), strict=True):
            yield _line(sheets, lines)
        yield "</ul>"
    if groups[0].headers:
        yield from _table(sheets, groups, mark)


def _line(sheets: Sequence[CrewSheet], lines: Sequence[CrewLine]) -> str:
    kind = ' class="tick"' if lines[0].tick else ""
    room = '<span class="line"></span>' if lines[0].write else ""
    return f"<li{kind}>{_twins(_named(sheets, [line.text for line in lines]))}{room}</li>"


def _table(sheets: Sequence[CrewSheet], groups: Sequence[CrewGroup], mark: str) -> Iterator[str]:
    """A table to write in, with its headers."""
    heads = zip(*(group.headers for group in groups), strict=True)
    yield f'<table aria-labelledby="{mark}">'
    cells = (f'<th scope="col">{_twins(_named(sheets, texts))}</th>' for texts in heads)
    yield f"<thead><tr>{''.join(cells)}</tr></thead>"
    yield "<tbody>"
    for rows in zip(*(group.rows for group in groups), strict=True):
        row = (
            f"<td>{_twins(_named(sheets, texts))}</td>"
            for texts in zip(*(each.cells for each in rows), strict=True)
        )
        yield f"<tr>{''.join(row)}</tr>"
    yield "</tbody></table>"


def _walls(bid: Bid, languages: Sequence[Language]) -> Iterator[str]:
    """Every wall as a picture; the words in the pictures are told in the first language."""
    first, *_ = languages
    drawing = draw(bid.survey, bid.books.shop.practice, first)
    yield '<section aria-labelledby="drawing">'
    yield f'<h2 id="drawing">{_said(_WALLS, languages)}</h2>'
    for at, view in enumerate(drawing.elevations, start=1):
        yield from titled_elevation(view, at, _said(view.title, languages), first)
    yield from (f"<p>{_said(text, languages)}</p>" for text in drawing.remarks)
    yield "</section>"
