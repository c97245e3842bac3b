"""The workbook file: all parts and their relations in one zip, the same bytes every time."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo
from zlib import crc32

from estimator.outputs.cells import Sheet
from estimator.outputs.charts import chart_xml, drawing_xml
from estimator.outputs.own_file import MAKER, MARK_PART, SHEETS, fingerprint
from estimator.outputs.xlsx_sheets import sheet_xml, table_xml
from estimator.outputs.xlsx_values import clean_text, escape

LONGEST_PROPERTY = 255
_FIXED_TIME = (1980, 1, 1, 0, 0, 0)
_LEVEL = 4
_MOMENTS = ("created", "modified")

_DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_RELATION = f"{_OFFICE}/relationships"
_SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml"
_CONTENT_TYPES = {
    "xl/workbook.xml": f"{_SHEET_TYPE}.sheet.main+xml",
    "xl/styles.xml": f"{_SHEET_TYPE}.styles+xml",
    "xl/worksheets/": f"{_SHEET_TYPE}.worksheet+xml",
    "xl/tables/": f"{_SHEET_TYPE}.table+xml",
    "xl/drawings/": "application/vnd.openxmlformats-officedocument.drawing+xml",
    "xl/charts/": "application/vnd.openxmlformats-officedocument.drawingml.chart+xml",
    "docProps/core.xml": "application/vnd.openxmlformats-package.core-properties+xml",
    "docProps/app.xml": "application/vnd.openxmlformats-officedocument.extended-properties+xml",
}


@dataclass(frozen=True, slots=True)
class Contents:
    """What goes into one file.

    Attributes:
        names: defined names and the cell each stands for. styles: the styles part.
        paper: number of the paper size. job_id: shown at the foot of every page.
        title, subject, creator, dated: the document's properties.
    """

    sheets: tuple[Sheet, ...]
    names: Mapping[str, str]
    styles: str
    paper: int
    job_id: str
    title: str
    subject: str
    creator: str
    dated: date | None


def file_bytes(contents: Contents) -> bytes:
    """Write an .xlsx file. The same contents give the same bytes: no clock, fixed dates inside."""
    parts: dict[str, str] = {}
    for number, sheet in enumerate(contents.sheets, start=1):
        parts |= _sheet_parts(contents, sheet, number, _tables_before(contents.sheets, number))
    parts["xl/styles.xml"] = contents.styles
    parts["xl/workbook.xml"] = _workbook(contents)
    parts["xl/_rels/workbook.xml.rels"] = _workbook_relations(len(contents.sheets))
    parts["docProps/app.xml"] = (
        f'{_DECLARATION}<Properties xmlns="{_OFFICE}/extended-properties">'
        "<Application>estimator</Application></Properties>"
    )
    data = {name: text.encode() for name, text in parts.items()}
    mark = fingerprint({name: crc32(part) for name, part in data.items()})
    data[MARK_PART] = _properties(contents, mark).encode()
    data["_rels/.rels"] = _relations(
        ("officeDocument", "xl/workbook.xml"),
        ("extended-properties", "docProps/app.xml"),
        ("metadata/core-properties", MARK_PART),
    ).encode()
    types = _content_types(data).encode()
    return _zipped({"[Content_Types].xml": types, **data})


def _tables_before(sheets: Sequence[Sheet], number: int) -> int:
    return sum(len(sheet.tables) for sheet in sheets[: number - 1])


def _sheet_parts(contents: Contents, sheet: Sheet, number: int, tables: int) -> dict[str, str]:
    """One sheet with its chart and tables; `tables` is how many earlier sheets hold."""
    name = f"{SHEETS}sheet{number}.xml"
    parts = {name: sheet_xml(sheet, contents.paper, contents.job_id, first=number == 1)}
    related = [("drawing", f"../drawings/drawing{number}.xml")]
    if sheet.picture:
        parts[f"xl/drawings/drawing{number}.xml"] = drawing_xml(sheet.picture)
        chart = _relations(("chart", f"../charts/chart{number}.xml"))
        parts[f"xl/drawings/_rels/drawing{number}.xml.rels"] = chart
        parts[f"xl/charts/chart{number}.xml"] = chart_xml(sheet.picture)
    for at, table in enumerate(sheet.tables, start=tables + 1):
        parts[f"xl/tables/table{at}.xml"] = table_xml(table, at, "".join(sheet.widths))
        related.append(("table", f"../tables/table{at}.xml"))
    if sheet.picture or sheet.tables:
        first = 0 if sheet.picture else 1
        parts[f"{SHEETS}_rels/sheet{number}.xml.rels"] = _relations(*related, skip=first)
    return parts


def _relations(*related: tuple[str, str], skip: int = 0) -> str:
    """Write a relations part: rId1 is the first; those before `skip` keep their number unused."""
    found = "".join(
        f'<Relationship Id="rId{at}" Type="{_relation_type(kind)}" Target="{target}"/>'
        for at, (kind, target) in enumerate(related, start=1)
        if at > skip
    )
    return f'{_DECLARATION}<Relationships xmlns="{_PACKAGE}/relationships">{found}</Relationships>'


def _relation_type(kind: str) -> str:
    """Name a kind of relation in full; those of the package itself hold a slash."""
    return f"{_PACKAGE}/relationships/{kind}" if "/" in kind else f"{_RELATION}/{kind}"


def _workbook(contents: Contents) -> str:
    sheets = "".join(
        f'<sheet name="{sheet.name}" sheetId="{at}" r:id="rId{at}"/>'
        for at, sheet in enumerate(contents.sheets, start=1)
    )
    names = [
        f'<definedName name="{name}">{cell}</definedName>' for name, cell in contents.names.items()
    ]
    for at, sheet in enumerate(contents.sheets):
        first, last = sheet.used.split(":")
        area = f"'{sheet.name}'!{_fixed(first)}:{_fixed(last)}"
        names.append(
            f'<definedName name="_xlnm.Print_Area" localSheetId="{at}">{area}</definedName>'
        )
        if sheet.frozen_rows:
            rows = f"'{sheet.name}'!$1:${sheet.frozen_rows}"
            names.append(
                f'<definedName name="_xlnm.Print_Titles" localSheetId="{at}">{rows}</definedName>'
            )
    return (
        f'{_DECLARATION}<workbook xmlns="{_MAIN}" xmlns:r="{_RELATION}"><workbookPr/>'
        f"<bookViews><workbookView/></bookViews><sheets>{sheets}</sheets>"
        f'<definedNames>{"".join(names)}</definedNames><calcPr calcId="191029" fullCalcOnLoad="1"/>'
        "</workbook>"
    )


def _fixed(place: str) -> str:
    """Write a place such as C12 as $C$12."""
    return f"${place[0]}${place[1:]}"


def _workbook_relations(sheets: int) -> str:
    related = [("worksheet", f"worksheets/sheet{at}.xml") for at in range(1, sheets + 1)]
    return _relations(*related, ("styles", "styles.xml"))


def _properties(contents: Contents, mark: str) -> str:
    """Write the document's properties, the maker's mark among them."""
    dated = ""
    if contents.dated is not None:
        moment = f'xsi:type="dcterms:W3CDTF">{contents.dated.isoformat()}T00:00:00Z'
        dated = "".join(f"<dcterms:{what} {moment}</dcterms:{what}>" for what in _MOMENTS)
    return (
        f'{_DECLARATION}<cp:coreProperties xmlns:cp="{_PACKAGE}/metadata/core-properties" '
        'xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" '
        'xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">'
        f"<dc:title>{_property(contents.title)}</dc:title>"
        f"<dc:subject>{_property(contents.subject)}</dc:subject>"
        f"<dc:creator>{_property(contents.creator)}</dc:creator>"
        f"<dc:identifier>{mark}</dc:identifier>{dated}<cp:category>{MAKER}</cp:category>"
        "</cp:coreProperties>"
    )


def _property(text: str) -> str:
    return escape(clean_text(" ".join(text.split()), LONGEST_PROPERTY))


def _content_types(parts: Mapping[str, bytes]) -> str:
    kinds = "".join(
        f'<Override PartName="/{name}" ContentType="{kind}"/>'
        for name in parts
        for start, kind in _CONTENT_TYPES.items()
        if name.startswith(start) and not name.endswith(".rels")
    )
    return (
        f'{_DECLARATION}<Types xmlns="{_PACKAGE}/content-types"><Default Extension="rels" '
        'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f'<Default Extension="xml" ContentType="application/xml"/>{kinds}</Types>'
    )


def _zipped(parts: Mapping[str, bytes]) -> bytes:
    file = BytesIO()
    with ZipFile(file, "w", ZIP_DEFLATED, compresslevel=_LEVEL) as archive:
        for name, data in parts.items():
            info = ZipInfo(name, _FIXED_TIME)
            info.compress_type = ZIP_DEFLATED
            archive.writestr(info, data, compresslevel=_LEVEL)
    return file.getvalue()
