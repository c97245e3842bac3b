"""What the spreadsheet library cannot write of charts: words for those who cannot see them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from estimator.outputs.xlsx_values import clean_text, escape

_DRAWING = "xl/drawings/drawing{}.xml"
_CHARTS = "xl/charts/"
_LONGEST = 4_000
# A chart as the library writes it: numbered, and without a description.
_FRAME = re.compile(r'<cNvPr id="([0-9]+)" name="Chart [0-9]+" ?/>')
_WRAPPED = "<dLbls><txPr><a:bodyPr />"
_ONE_LINE = '<dLbls><txPr><a:bodyPr wrap="none" />'
_SCATTER = b"<scatterChart>"


class NoPlaceForWords(RuntimeError):
    """The library wrote charts in another way than this module knows."""


def describe(parts: dict[str, bytes], said: Sequence[Sequence[tuple[str, str]]]) -> None:
    """Write name and description of every chart, and keep labels of drawings on one line.

    Args:
        parts: of the file, by name; they are changed.
        said: for each sheet that has charts, in order, the name and the words of each of them.

    Raises:
        NoPlaceForWords: a sheet whose charts are not as many as their descriptions.
    """
    for number, listed in enumerate(said, start=1):
        name = _DRAWING.format(number)
        parts[name] = _described(parts[name].decode(), iter(listed), len(listed)).encode()
    for name, part in parts.items():
        if name.startswith(_CHARTS) and _SCATTER in part:
            parts[name] = part.replace(_WRAPPED.encode(), _ONE_LINE.encode())


def _described(xml: str, said: Iterator[tuple[str, str]], expected: int) -> str:
    def frame(found: re.Match[str]) -> str:
        name, words = next(said, ("", ""))
        shown, long = (_attribute(text) for text in (name, words))
        return f'<cNvPr id="{found.group(1)}" name="{shown}" descr="{long}" />'

    text, count = _FRAME.subn(frame, xml)
    if count != expected:
        raise NoPlaceForWords(f"{count} charts, {expected} descriptions")
    return text


def _attribute(text: str) -> str:
    cleaned = clean_text(" ".join(text.split()), _LONGEST)
    return escape(cleaned).replace('"', "&quot;")
