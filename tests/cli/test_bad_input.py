"""Bad input and wrong usage: one plain message, the right exit code, never a traceback."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_out import document_schema
from tests.cli.run import ENVIRONMENT, NIGHTSTAND, changed, estimator

WAITS = """
import signal, sys, time
import estimator.survey.reader
from estimator.cli import main

def wait(path):
    print("waiting", flush=True)
    time.sleep(60)

signal.signal(signal.SIGINT, signal.default_int_handler)
estimator.survey.reader.read_job = wait
sys.argv = ["estimator", "check", "job.toml"]
main()
"""
READERS = ("bid", "takeoff", "shopping-list", "check")


def files(folder: Path) -> dict[str, str]:
    """A job of each bad kind, by name."""
    (folder / "folder.toml").mkdir()
    (folder / "binary.toml").write_bytes(bytes(range(256)))
    (folder / "syntax.toml").write_text('[job]\ntitle = "no end\n')
    (folder / "empty.toml").write_text("")
    (folder / "closed.toml").write_text("")
    (folder / "closed.toml").chmod(0)
    return {
        "missing": "missing.toml", "folder": "folder.toml", "binary": "binary.toml",
        "syntax": "syntax.toml", "empty": "empty.toml", "sample": "sample:none",
        "name": "a\nb.toml",
    }  # fmt: skip


@pytest.mark.parametrize("command", READERS)
@pytest.mark.parametrize(
    "kind", ["missing", "folder", "binary", "syntax", "empty", "sample", "name"]
)
def test_a_bad_job_is_told_in_plain_words(command: str, kind: str, tmp_path: Path) -> None:
    done = estimator(command, files(tmp_path)[kind], folder=tmp_path)
    assert (done.returncode, done.stdout) == (1, "")
    assert "Traceback" not in done.stderr
    assert done.stderr.splitlines()[-1].startswith(("1 problem.", "2 problem", "3 problem"))


@pytest.mark.parametrize("kind", ["missing", "folder", "binary", "syntax", "empty"])
def test_bad_input_as_json_holds_against_its_schema(kind: str, tmp_path: Path) -> None:
    done = estimator("bid", files(tmp_path)[kind], "--json", folder=tmp_path)
    document = json.loads(done.stdout)
    Draft202012Validator(document_schema("problems")).validate(document)
    assert (done.returncode, len(document["problems"]) > 0, done.stderr != "") == (1, True, True)


def test_every_problem_is_told_at_once_with_its_line(tmp_path: Path) -> None:
    job = changed(tmp_path, 'spacing = "16 in"', 'spacing = "12-6"')
    job.write_text(job.read_text().replace('bearing = "no"', 'bearing = "maybe"'))
    done = estimator("check", str(job), folder=tmp_path)
    lines, said = job.read_text().splitlines(), " ".join(done.stderr.split())
    for text in ('spacing = "12-6"', 'bearing = "maybe"'):
        assert f"line {lines.index(text) + 1}," in said


@pytest.mark.parametrize(
    "arguments",
    [
        ("bid",),
        ("bod",),
        ("bid", "a.toml", "b.toml"),
        ("bid", "a.toml", "--colour"),
        ("bid", "a.toml", "-o", "bid.txt"),
        ("schema", "nothing"),
        ("survey",),
        ("survey", "--template", "--schema"),
        ("catalog", "check", "one-folder", "another"),
        ("samples", "copy"),
    ],
)
def test_wrong_usage_ends_with_2(arguments: tuple[str, ...], tmp_path: Path) -> None:
    done = estimator(*arguments, folder=tmp_path)
    assert (done.returncode, done.stdout) == (2, "")
    assert "Traceback" not in done.stderr
    assert done.stderr


@pytest.mark.parametrize("output", ["no-such-folder/bid.xlsx", "folder.xlsx", "/proc/bid.xlsx"])
def test_a_workbook_that_cannot_be_written_is_one_problem(output: str, tmp_path: Path) -> None:
    (tmp_path / "folder.xlsx").mkdir()
    done = estimator("bid", str(NIGHTSTAND), "-o", output, folder=tmp_path)
    assert (done.returncode, done.stdout) == (1, "")
    assert "Traceback" not in done.stderr
    assert "1 problem." in done.stderr


def test_a_full_disk_behind_stdout_is_one_problem(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "estimator", "takeoff", str(NIGHTSTAND)]
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(
            command, stdout=full, stderr=subprocess.PIPE, text=True, env=ENVIRONMENT, check=False
        )
    assert (done.returncode, "the disk is full" in done.stderr) == (1, True)
    assert "Traceback" not in done.stderr


def test_a_reader_that_leaves_early_is_no_error(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "estimator", "takeoff", str(NIGHTSTAND), "--json"]
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        command, stdout=writer, stderr=subprocess.PIPE, text=True, env=ENVIRONMENT, check=False
    )
    os.close(writer)
    assert (done.returncode, done.stderr.strip()) == (141, "")


def test_ctrl_c_ends_with_one_line(tmp_path: Path) -> None:
    """The command reads a job that never comes, and is stopped while it waits."""
    running = subprocess.Popen(
        [sys.executable, "-c", WAITS], cwd=tmp_path, env=ENVIRONMENT,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert running.stdout is not None
    assert running.stdout.readline() == "waiting\n"
    running.send_signal(signal.SIGINT)
    _, messages = running.communicate(timeout=30)
    assert (running.returncode, messages) == (130, "Stopped.\n")


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "utf-8"])
def test_a_terminal_of_few_letters_shows_what_it_can(encoding: str, tmp_path: Path) -> None:
    job = changed(tmp_path, 'customer = "Sample customer"', 'customer = "Sänger 東京"')
    command = [sys.executable, "-m", "estimator", "check", str(job)]
    env = {**ENVIRONMENT, "PYTHONIOENCODING": encoding}
    done = subprocess.run(command, capture_output=True, env=env, check=False)
    assert (done.returncode, b"Traceback" in done.stderr) == (0, False)


def test_a_job_cannot_steer_the_terminal(tmp_path: Path) -> None:
    job = changed(tmp_path, 'title = "Nightstand outlet"', 'title = "\\u001b[2J\\u0007gone"')
    done = estimator("check", str(job), folder=tmp_path)
    assert "\x1b" not in done.stdout
    assert "\x07" not in done.stdout
