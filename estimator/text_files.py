"""Text files that people edit: read as UTF-8, or refused with what to do instead."""

from __future__ import annotations

import codecs
import stat
from pathlib import Path

from estimator.problems import InputError, Problem

MOST_BYTES = 1_000_000_000
_WORKBOOK_START = b"PK\x03\x04"
_UTF16_STARTS = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
_SAVE_AS_UTF8 = 'Save it again as "CSV UTF-8", or as plain text with the encoding UTF-8.'


def read_text(path: Path, name: str) -> str:
    """Read a whole text file; a byte order mark at its start is dropped.

    Line ends stay as they are in the file.

    Args:
        path: the file.
        name: what to call it in problems.

    Raises:
        InputError: no such file, a folder, not readable, too large, or not UTF-8 text.
    """
    return decode_text(read_bytes(path, name), name)


def read_bytes(path: Path, name: str) -> bytes:
    """Read a whole file, or raise InputError with one plain line that says why not."""
    try:
        mode, size = path.stat().st_mode, path.stat().st_size
        if not (stat.S_ISREG(mode) or stat.S_ISFIFO(mode)):
            raise _refused(name, "is a folder or a device, not a file.", "Name the file itself.")
        if size > MOST_BYTES:
            raise _refused(name, f"is too large to read ({size} bytes).", "Use a smaller file.")
        return path.read_bytes()
    except FileNotFoundError:
        raise _refused(name, "there is no such file.", "Check the name and the folder.") from None
    except PermissionError:
        raise _refused(name, "may not be read.", "Check who may read this file.") from None
    except (OSError, ValueError):
        raise _refused(name, "could not be read.", "Check the name and the disk.") from None


def decode_text(raw: bytes, name: str) -> str:
    """Decode UTF-8 bytes, with or without a byte order mark.

    Raises:
        InputError: the bytes are a workbook, UTF-16, or not UTF-8; the line is named.
    """
    if raw.startswith(_WORKBOOK_START):
        raise _refused(name, "is a workbook or a zip archive, not plain text.", _SAVE_AS_UTF8)
    if raw.startswith(_UTF16_STARTS):
        raise _refused(name, "is written in UTF-16, not UTF-8.", _SAVE_AS_UTF8)
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        seen = raw[error.start : error.start + 1].decode("latin-1")
        read = f"holds a character that is not UTF-8 (it may be meant as {seen})."
        raise _refused(f"{name}: line {line}", read, _SAVE_AS_UTF8) from None


def decode_any(raw: bytes, name: str) -> str:
    """Decode a file that somebody else wrote: UTF-8, UTF-16 with its mark, else Windows-1252.

    Raises:
        InputError: the bytes are a workbook, or UTF-16 that is broken off.
    """
    if raw.startswith(_WORKBOOK_START):
        raise _refused(name, "is a workbook or a zip archive, not plain text.", _SAVE_AS_UTF8)
    try:
        if raw.startswith(_UTF16_STARTS):
            return raw.decode("utf-16")
    except UnicodeDecodeError:
        raise _refused(name, "is broken off: half a character is missing.", _SAVE_AS_UTF8) from None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return raw.decode("cp1252", "replace")


def _refused(where: str, read: str, write: str) -> InputError:
    """One problem as an error."""
    return InputError([Problem(where, read, write)])
