"""Files that are no form, are dangerous, or are too large: refused in plain words."""

from __future__ import annotations

import re
import sys
import zipfile
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from io import BytesIO
from pathlib import Path
from random import Random

import pytest

from estimator.form.reader import read_form
from estimator.outputs.form_book import form_workbook
from estimator.problems import InputError
from estimator.survey.reader import read_job
from tests.form.made_form import sample

Parts = dict[str, bytes]
BOMB = 200_000_000


@cache
def _form() -> bytes:
    return form_workbook(sample("nightstand"))


def parts() -> Parts:
    with zipfile.ZipFile(BytesIO(_form())) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def zipped(made: Parts) -> bytes:
    stream = BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, part in made.items():
            archive.writestr(name, part)
    return stream.getvalue()


def said(data: bytes, folder: Path) -> str:
    path = folder / "job.xlsx"
    path.write_bytes(data)
    with pytest.raises(InputError) as caught:
        read_form(path)
    return str(caught.value.problems[0])


def macro(made: Parts) -> Parts:
    return made | {"xl/vbaProject.bin": b"\xd0\xcf\x11\xe0"}


def macro_type(made: Parts) -> Parts:
    name = "[Content_Types].xml"
    return made | {name: made[name].replace(b"sheet.main+xml", b"sheet.macroEnabled.main+xml")}


def bomb(made: Parts) -> Parts:
    return made | {"xl/media/big.bin": b"\0" * BOMB}


def entities(made: Parts) -> Parts:
    name = "xl/worksheets/sheet1.xml"
    declared = b'<!DOCTYPE x [<!ENTITY a "aaaa">]>'
    return made | {name: declared + made[name]}


def many(made: Parts) -> Parts:
    return made | {f"xl/media/{number}.bin": b"" for number in range(600)}


def broken(made: Parts) -> Parts:
    return made | {"xl/worksheets/sheet1.xml": b"<worksheet><oops"}


def headless(made: Parts) -> Parts:
    return {name: part for name, part in made.items() if name != "xl/workbook.xml"}


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (macro, "macros"),
        (macro_type, "macros"),
        (bomb, "too large"),
        (entities, "declarations"),
        (many, "too large"),
        (broken, "damaged"),
        (headless, "not a workbook of this kind"),
    ],
)
def test_a_changed_file_is_refused(
    change: Callable[[Parts], Parts], words: str, tmp_path: Path
) -> None:
    assert words in said(zipped(change(parts())), tmp_path)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"format = 1\n", "is not a workbook"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600, "password"),
        (b"PK\x03\x04 and nothing more", "damaged"),
        (b"", "is not a workbook"),
    ],
)
def test_what_is_no_workbook_is_refused(data: bytes, words: str, tmp_path: Path) -> None:
    assert words in said(data, tmp_path)


def test_a_lie_about_a_part_s_size_is_found_out(tmp_path: Path) -> None:
    """The zip's list says 10 bytes; the part unpacks to far more."""
    data = zipped(bomb(parts()))
    told = data.replace(BOMB.to_bytes(4, "little"), (10).to_bytes(4, "little"))
    assert told != data
    assert re.search("too large|damaged", said(told, tmp_path))


def test_links_to_other_files_are_not_followed(tmp_path: Path) -> None:
    """A formula that points into another file counts as the value stored beside it."""
    other = tmp_path / "other.xlsx"
    other.write_bytes(zipped(parts()))
    made = parts()
    relation = (
        b'<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        b'<Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/'
        b'relationships/externalLinkPath" Target="other.xlsx" TargetMode="External"/>'
        b"</Relationships>"
    )
    made["xl/externalLinks/externalLink1.xml"] = b"<externalLink/>"
    made["xl/externalLinks/_rels/externalLink1.xml.rels"] = relation
    (tmp_path / "job.xlsx").write_bytes(zipped(made))
    opened: list[str] = []
    sys.addaudithook(lambda event, seen: opened.append(str(seen[0])) if event == "open" else None)
    assert read_form(tmp_path / "job.xlsx").survey.job.id == "S1"
    assert str(tmp_path / "job.xlsx") in opened
    assert str(other) not in opened


def test_a_long_sheet_is_read_to_a_limit_and_says_so(tmp_path: Path) -> None:
    from tests.form.made_form import book, read

    opened = book("nightstand")
    opened["Walls"].cell(1_000_000, 1).value = "far down"
    job = read(opened, tmp_path)
    assert len(job.survey.walls) == 1
    assert any("Walls".lower() in note and "2000 rows" in note for note in job.notes)


@pytest.mark.parametrize("name", ["job.xlsm", "job.xls", "job.ods"])
def test_other_workbooks_are_told_what_to_do(name: str, tmp_path: Path) -> None:
    import estimator.cli.app  # noqa: F401 - it says which files are forms

    (tmp_path / name).write_bytes(b"PK\x03\x04")
    with pytest.raises(InputError, match="Save it as"):
        read_job(tmp_path / name)


def test_a_workbook_of_something_else_is_no_form(tmp_path: Path) -> None:
    from openpyxl import Workbook

    other = Workbook()
    other.save(tmp_path / "job.xlsx")
    assert "none of the form's sheets" in said((tmp_path / "job.xlsx").read_bytes(), tmp_path)


def test_an_empty_form_says_where_to_begin(tmp_path: Path) -> None:
    assert "not filled in yet" in said(form_workbook(), tmp_path)


@pytest.mark.parametrize("seed", range(12))
def test_a_damaged_file_is_read_or_refused_and_nothing_else(seed: int, tmp_path: Path) -> None:
    """A few characters of one part are changed; no traceback may come of it."""
    chance = Random(seed)
    made = parts()
    name = chance.choice(sorted(made))
    part = bytearray(made[name])
    for _ in range(3):
        part[chance.randrange(len(part))] = chance.choice(b'<>"0=9ax/ &')
    path = tmp_path / "job.xlsx"
    path.write_bytes(zipped(made | {name: bytes(part)}))
    with suppress(InputError):
        read_form(path)
