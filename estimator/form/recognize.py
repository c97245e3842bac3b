"""Tells a survey form from other workbooks by the names of its sheets, without opening it whole."""

from __future__ import annotations

import re
import zlib
from html import unescape
from pathlib import Path
from zipfile import BadZipFile, ZipFile

_CONTENTS = "xl/workbook.xml"
_SHEET_NAME = re.compile(r'<(?:\w+:)?sheet\s[^>]*?\bname="([^"]*)"')
_MOST_PARTS, _MOST_BYTES = 500, 1_000_000
_BROKEN = (OSError, KeyError, BadZipFile, zlib.error, NotImplementedError, RuntimeError,
           ValueError, EOFError)  # fmt: skip
_OWN = {"questions", "runs"}
"""Sheets that a form has and no other workbook of this tool."""


def is_form(path: Path) -> bool:
    """Say whether a workbook is a survey form; False for what is no workbook or is damaged.

    A form has the sheet Questions or Runs, and another of the form's sheets beside it.
    """
    from estimator.form.reader import known_sheets

    names = {name.strip().lower() for name in _sheet_names(path)}
    return bool(names & _OWN) and len(names & known_sheets()) > 1


def _sheet_names(path: Path) -> list[str]:
    """Read the names of the sheets from the workbook's list of them."""
    try:
        with ZipFile(path) as archive:
            part = archive.getinfo(_CONTENTS)
            if len(archive.infolist()) > _MOST_PARTS or part.file_size > _MOST_BYTES:
                return []
            listed = archive.read(part).decode("utf-8", "replace")
    except _BROKEN:
        return []
    return [unescape(name) for name in _SHEET_NAME.findall(listed)]
