"""The Assumptions and sources sheet: what was assumed, what was set, what is from where."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, day, line_number, number, words
from estimator.outputs.clear_bid_rows import CLEAR_HEADERS, clear_rows
from estimator.outputs.draft import NOT_STATED, UNKNOWN, Draft

NAME = "Assumptions and sources"
WIDTHS = "6 44 44 26 40"
ASSUMPTION_HEADERS = (
    "Line",
    "What nobody measured",
    "Taken in its place",
    "Moves the price",
    "Checks it stands for",
)
VERSION_HEADERS = ("Line", "Why", "What changed", "Date", "Total with the books of today")
SETTING_HEADERS = ("Line", "Setting", "As written", "Set by")
PRICE_HEADERS = ("Line", "Item bought", "Supplier", "Price dated", "Where the price is from")
HOUR_HEADERS = ("Line", "Task", "What its hours include", "Unit", "Where the hours are from")
RULE_HEADERS = ("Line", "Rule", "Rule book", "Edition", "Held against")
BOOK_HEADERS = ("Line", "Book", "File", "Currency")
_ADVICE = "The settings of the shop stand in shop.toml; a job may lay its own over them."


def write_sources(draft: Draft) -> Sheet:
    """Write the sheet; nothing in it is worked out."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Assumptions and sources", _ADVICE)
    for title, name, headers, rows in (
        ("Assumptions", "Assumptions", ASSUMPTION_HEADERS, _assumptions(draft)),
        ("Versions of this bid", "Versions", VERSION_HEADERS, _versions(draft)),
        ("What a clear bid states", "Clear_bid", CLEAR_HEADERS, clear_rows(draft)),
        ("Where prices are from", "Price_sources", PRICE_HEADERS, _prices(draft)),
        ("Where hours are from", "Hour_sources", HOUR_HEADERS, _hours(draft)),
        ("Rules held against", "Rule_sources", RULE_HEADERS, _rules(draft)),
        ("Books read", "Books_read", BOOK_HEADERS, _books(draft)),
        ("Settings used", "Settings", SETTING_HEADERS, _settings(draft)),
    ):
        sheet.section(title)
        numbered = [[line_number(at), *row] for at, row in enumerate(rows, start=1)]
        if numbered:
            sheet.table(name, headers, numbered)
        else:
            sheet.note("None.")
    return sheet


def _assumptions(draft: Draft) -> Iterator[Row]:
    for each in draft.bid.assumptions:
        moves = "yes" if each.moves_price else "no"
        if each.in_second_total:
            moves = "yes, in the second total"
        checks = ", ".join(each.findings)
        yield [words(each.about), words(each.taken), words(moves), words(checks)]


def _versions(draft: Draft) -> Iterator[Row]:
    """Every version the job file lists."""
    for each in draft.bid.versions:
        changes = "\n".join(f"{one.about}: {one.before} -> {one.after}" for one in each.changes)
        dated = words(NOT_STATED) if each.dated is None else day(each.dated, looks.TEXT_DATE)
        total = (
            words(UNKNOWN) if each.total is None else number(each.total, looks.figure(looks.MONEY))
        )
        why = words(f"Version {each.number}: {each.why}")
        yield [why, words(changes or NOT_STATED), dated, total]


def _settings(draft: Draft) -> Iterator[Row]:
    shop = draft.bid.books.shop
    for key, shown in shop.shown.items():
        yield [words(key), words(shown), words(shop.origin.get(key, NOT_STATED))]


def _prices(draft: Draft) -> Iterator[Row]:
    """The rows of the materials book that were bought from."""
    materials = draft.bid.books.materials
    for line in draft.bid.shopping:
        for pack in line.packs:
            rows = materials.get(line.item, ())
            row = next((row for row in rows if row.supplier == pack.supplier
                        and row.pack_size == pack.pack_size
                        and row.pack_price == pack.price_each), None)  # fmt: skip
            dated = words(NOT_STATED)
            if row is not None and row.priced_on is not None:
                dated = day(row.priced_on, looks.TEXT_DATE)
            source = row.source if row is not None and row.source else NOT_STATED
            yield [
                words(f"{line.item}: {pack.description}"),
                words(pack.supplier),
                dated,
                words(source),
            ]


def _hours(draft: Draft) -> Iterator[Row]:
    """The rows of the labor book that were used, each once."""
    labor = draft.bid.books.labor
    for task in dict.fromkeys(line.task for line in draft.bid.labor):
        row = labor.get(task)
        if row is None:
            yield [words(task), words(""), words(""), words("the job")]
        else:
            yield [
                words(task),
                words(row.includes),
                words(row.unit),
                words(row.source or NOT_STATED),
            ]


def _rules(draft: Draft) -> Iterator[Row]:
    seen: dict[tuple[str, str, str], list[str]] = {}
    for finding in draft.bid.findings:
        key = (finding.rule, finding.cite, finding.edition)
        seen.setdefault(key, []).append(finding.subject)
    for (rule, cite, edition), subjects in seen.items():
        yield [
            words(rule),
            words(cite or NOT_STATED),
            words(edition or NOT_STATED),
            words(", ".join(subjects)),
        ]


def _books(draft: Draft) -> Iterator[Row]:
    books = draft.bid.books
    for book, file in books.files.items():
        yield [words(book), words(file), words(books.shop.currency)]
