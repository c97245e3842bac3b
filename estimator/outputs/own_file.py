"""Whether a file is a bid workbook of this tool that nobody has changed since it was written."""

from __future__ import annotations

from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path
from zipfile import BadZipFile, ZipFile

MAKER = "estimator bid workbook"
MARK_PART = "docProps/core.xml"
SHEETS = "xl/worksheets/"
_MOST_PARTS, _MOST_MARK_BYTES = 500, 20_000
_MARK_DIGITS = 16


def fingerprint(sums: Mapping[str, int]) -> str:
    """Shorten the check sums of all sheet parts to one word, which the mark part holds."""
    sheets = sorted((name, total) for name, total in sums.items() if name.startswith(SHEETS))
    return sha256(repr(sheets).encode()).hexdigest()[:_MARK_DIGITS]


def is_own_file(path: Path) -> bool:
    """Say whether a file may be replaced without asking.

    Only the zip's list of parts and one small part are read. A file that is no zip, is broken,
    or was saved again by a spreadsheet program is not ours to replace.
    """
    try:
        with ZipFile(path) as archive:
            parts = archive.infolist()
            if len(parts) > _MOST_PARTS or archive.getinfo(MARK_PART).file_size > _MOST_MARK_BYTES:
                return False
            mark = archive.read(MARK_PART).decode("utf-8", "replace")
    except (OSError, KeyError, BadZipFile, NotImplementedError, RuntimeError, ValueError, EOFError):
        return False
    sums = {part.filename: part.CRC for part in parts}
    return f">{MAKER}<" in mark and f">{fingerprint(sums)}<" in mark
