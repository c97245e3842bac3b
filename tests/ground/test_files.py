"""Writing in one step: whatever goes wrong, the old file is whole and one line says what."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pytest

from estimator.files import replace_file
from estimator.problems import InputError, Problem

ROOT = Path(__file__).parents[2]
OLD, NEW = b"old" * 1_000, b"new" * 1_000_000
WRITER = """
import sys
from pathlib import Path
from estimator.files import replace_file
print("begun", flush=True)
while True:
    replace_file(Path(sys.argv[1]), b"new" * 1_000_000)
"""


def problem(path: Path) -> Problem:
    """The one problem that a refused write reports."""
    with pytest.raises(InputError) as caught:
        replace_file(path, NEW)
    (found,) = caught.value.problems
    return found


def test_a_new_file_is_written(tmp_path: Path) -> None:
    replace_file(tmp_path / "bid.xlsx", NEW)
    assert (tmp_path / "bid.xlsx").read_bytes() == NEW
    assert len(list(tmp_path.iterdir())) == 1


def test_an_old_file_is_replaced_and_keeps_its_permissions(tmp_path: Path) -> None:
    path = tmp_path / "bid.xlsx"
    path.write_bytes(OLD)
    path.chmod(0o640)
    replace_file(path, NEW)
    assert path.read_bytes() == NEW
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_new_file_has_the_permissions_that_are_usual(tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.touch()
    replace_file(tmp_path / "bid.xlsx", NEW)
    assert (tmp_path / "bid.xlsx").stat().st_mode == other.stat().st_mode


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system cannot kill outright")
@pytest.mark.parametrize("wait_s", [0.0, 0.003, 0.01, 0.02, 0.03, 0.05])
def test_killed_at_any_moment_the_file_is_whole(tmp_path: Path, wait_s: float) -> None:
    path = tmp_path / "bid.xlsx"
    path.write_bytes(OLD)
    command = [sys.executable, "-c", WRITER, str(path)]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE) as writer:
        assert writer.stdout is not None
        writer.stdout.readline()
        time.sleep(wait_s)
        writer.send_signal(signal.SIGKILL)
    assert path.read_bytes() in (OLD, NEW)


STEPS = [(os, "fsync"), (tempfile, "mkstemp"), (Path, "replace")]
REFUSALS = [
    (errno.ENOSPC, "the disk is full"),
    (errno.EROFS, "the disk is read-only"),
    (errno.EACCES, "writing is not allowed there, or the file is open in another program"),
    (errno.EPERM, "writing is not allowed there"),
    (errno.EIO, "the file could not be written"),
]


@pytest.mark.parametrize(("number", "read"), REFUSALS)
@pytest.mark.parametrize(("owner", "step"), STEPS, ids=["disk", "folder", "name"])
def test_a_refused_write_leaves_the_old_file_and_nothing_else(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    owner: object,
    step: str,
    number: int,
    read: str,
) -> None:
    path = tmp_path / "bid.xlsx"
    path.write_bytes(OLD)

    def refuse(*_: object, **__: object) -> None:
        raise OSError(number, "refused")

    monkeypatch.setattr(owner, step, refuse)
    assert (problem(path).where, problem(path).read) == (str(path), read)
    monkeypatch.undo()
    assert path.read_bytes() == OLD
    assert list(tmp_path.iterdir()) == [path]


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    found = problem(tmp_path / "nowhere" / "bid.xlsx")
    assert found.read == "the folder does not exist"
    assert found.write == "Make the folder first, or choose another."


def test_a_folder_is_not_a_file(tmp_path: Path) -> None:
    assert problem(tmp_path).read == "this is a folder, not a file"


def test_a_part_of_the_path_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    assert problem(tmp_path / "file" / "bid.xlsx").read == "a part of the path is a file"


def test_a_name_that_is_too_long_is_told(tmp_path: Path) -> None:
    assert problem(tmp_path / ("long" * 80)).read == "the name is too long"


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the administrator may write anywhere"
)
def test_a_read_only_folder_refuses(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    assert problem(tmp_path / "bid.xlsx").read.startswith("writing is not allowed there")
