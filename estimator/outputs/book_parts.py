"""The parts of a saved workbook: results put beside their formulas, properties, one packing."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo
from zlib import crc32

from openpyxl.packaging.core import DocumentProperties
from openpyxl.xml.functions import tostring

from estimator.outputs.book_described import describe
from estimator.outputs.own_file import MAKER, MARK_PART, SHEETS, fingerprint
from estimator.outputs.xlsx_values import clean_text, escape

LONGEST_PROPERTY = 255
LANGUAGE = "en"
"""What a screen reader should read a file as, unless told otherwise."""
_FIXED_TIME = (1980, 1, 1, 0, 0, 0)
_LEVEL = 4
# A formula as the library writes it: with an empty result behind it.
_FORMULA = re.compile(r'<c r="([A-Z]+[0-9]+)"([^>]*)>(<f>[^<]*</f>)<v ?/?>(?:</v>)?</c>')


# What a file of a job without a date says of its making; left out, the library puts in the clock.
_NO_DATE = datetime(1980, 1, 1)


class NoPlaceForResult(RuntimeError):
    """The library wrote formulas in another way than this module knows."""


@dataclass(frozen=True, slots=True)
class Properties:
    """What the document says of itself, the language of its words among it."""

    title: str
    subject: str
    creator: str
    dated: date | None
    language: str = LANGUAGE


def finished(
    saved: bytes,
    results: Sequence[Mapping[str, str | Decimal]],
    charts: Sequence[Sequence[tuple[str, str]]],
    properties: Properties,
) -> bytes:
    """Put each result beside its formula, mark the file as ours, and pack it.

    Args:
        saved: the file as the library wrote it.
        results: for each sheet in order, the value of every formula by its place.
        charts: for each sheet that has charts, the name and the words of each of them.
        properties: of the document; nothing in the file tells when it was written.

    Raises:
        NoPlaceForResult: a formula that no result could be put beside.
    """
    with ZipFile(BytesIO(saved)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    for number, values in enumerate(results, start=1):
        name = f"{SHEETS}sheet{number}.xml"
        parts[name] = with_results(parts[name].decode(), values).encode()
    describe(parts, charts)
    mark = fingerprint({name: crc32(part) for name, part in parts.items()})
    parts[MARK_PART] = _core(properties, mark)
    return _packed(parts)


def with_results(sheet_xml: str, values: Mapping[str, str | Decimal]) -> str:
    """Write the engine's value behind every formula of a sheet; text is marked as text.

    Raises:
        NoPlaceForResult: a formula that no result could be put beside.
    """

    def filled(found: re.Match[str]) -> str:
        place, marks, formula = found.groups()
        value = values[place]
        if isinstance(value, str):
            marks, shown = f'{marks} t="str"', escape(value)
        else:
            shown = f"{value:f}"
        return f'<c r="{place}"{marks}>{formula}<v>{shown}</v></c>'

    text, count = _FORMULA.subn(filled, sheet_xml)
    if count != len(values):
        raise NoPlaceForResult(f"{count} of {len(values)} formulas have their result")
    return text


def _core(properties: Properties, mark: str) -> bytes:
    """The document's properties, the maker's mark among them."""
    moment = _NO_DATE
    if properties.dated is not None:
        moment = datetime.combine(properties.dated, datetime.min.time())
    core = DocumentProperties(
        title=_property(properties.title),
        subject=_property(properties.subject),
        creator=_property(properties.creator),
        language=properties.language,
        identifier=mark,
        category=MAKER,
        created=moment,
        modified=moment,
    )
    written: str | bytes = tostring(core.to_tree())
    return written.encode() if isinstance(written, str) else written


def _property(text: str) -> str:
    return clean_text(" ".join(text.split()), LONGEST_PROPERTY)


def _packed(parts: Mapping[str, bytes]) -> bytes:
    file = BytesIO()
    with ZipFile(file, "w", ZIP_DEFLATED, compresslevel=_LEVEL) as archive:
        for name, data in parts.items():
            info = ZipInfo(name, _FIXED_TIME)
            info.compress_type = ZIP_DEFLATED
            archive.writestr(info, data, compresslevel=_LEVEL)
    return file.getvalue()
