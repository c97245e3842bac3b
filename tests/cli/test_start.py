"""Starting up: what `--help` may load, and what each command says of itself."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
import typer
from typer.testing import CliRunner

from estimator import __version__
from estimator.cli.app import app

HEAVY = ("pandas", "numpy", "openpyxl", "babel", "rich", "tree_sitter")
LOADED = """
import sys
sys.argv = ["estimator", {arguments}]
from estimator.cli import main
try:
    main()
except SystemExit as end:
    assert not end.code, end.code
print("LOADED", [name for name in {heavy} if name in sys.modules])
"""
COLUMNS, ROWS_SHOWN = 80, 24


def leaves(group: typer.Typer, before: str = "") -> Iterator[str]:
    """Every command there is, as it is typed."""
    for command in group.registered_commands:
        name = command.name or ""
        yield f"{before}{name}"
    for inner in group.registered_groups:
        assert inner.typer_instance is not None
        yield from leaves(inner.typer_instance, f"{before}{inner.name} ")


COMMANDS = tuple(leaves(app))


def run(*arguments: str) -> str:
    """The stdout of a command that must end with 0."""
    result = CliRunner().invoke(app, list(arguments), prog_name="estimator")
    assert result.exit_code == 0, result.output
    return result.stdout


@pytest.mark.parametrize(
    ("arguments", "heavy"),
    [
        ('"--help"', (*HEAVY, "pydantic")),
        ('"--version"', HEAVY),  # typer itself may read values with pydantic
        ('"bid", "--help"', HEAVY),
        ("", HEAVY),
    ],
)
def test_help_loads_nothing_heavy(arguments: str, heavy: tuple[str, ...]) -> None:
    code = LOADED.format(arguments=arguments, heavy=heavy)
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "LOADED []"


def test_a_small_book_is_read_without_pandas() -> None:
    job = Path(__file__).parents[2] / "samples" / "nightstand.toml"
    code = LOADED.format(arguments=f'"takeoff", "{job}"', heavy=("pandas", "openpyxl"))
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "LOADED []"


def test_the_look_at_loaded_packages_can_fail() -> None:
    """The schema of a job file needs pydantic: the same look must see it."""
    code = LOADED.format(arguments='"survey", "--schema"', heavy=("pydantic",))
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "pydantic" in done.stdout.splitlines()[-1]


def test_alone_it_says_what_to_type_next() -> None:
    said = run()
    assert "estimator bid sample:nightstand" in said
    assert "  estimator survey\n" in said and "estimator bid my-job.toml" in said


def test_alone_it_fits_a_small_terminal_and_names_commands_there_are() -> None:
    lines = run().splitlines()
    assert len(lines) < ROWS_SHOWN
    assert max(map(len, lines)) <= COLUMNS
    named = re.findall(r"estimator ((?:catalog )?[a-z][a-z-]+)(?!.*finished)", run())
    after = re.search(r"After the bid: estimator (.*)\.", run())
    assert after is not None
    others = re.split(r", | and ", after[1])
    assert {"bid", "survey", "catalog copy", "batch"} <= {*named}
    assert {*named, *others} - {"turns"} <= {*COMMANDS}


@pytest.mark.parametrize("name", COMMANDS)
def test_help_of_each_command_has_an_example(name: str) -> None:
    said = run(*name.split(), "--help")
    assert f"Example: estimator {name}" in said


@pytest.mark.parametrize("name", ["", "catalog", "samples"])
def test_no_line_of_help_is_cut_off(name: str) -> None:
    assert "..." not in run(*name.split(), "--help").replace("[ARGS]...", "")


@pytest.mark.parametrize("name", ("", *COMMANDS))
def test_help_fits_80_columns(name: str) -> None:
    assert max(map(len, run(*name.split(), "--help").splitlines())) <= COLUMNS


def test_the_version_is_printed() -> None:
    assert run("--version") == f"estimator {__version__}\n"


def test_it_runs_as_a_module() -> None:
    command = [sys.executable, "-m", "estimator", "--version"]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert done.stdout == f"estimator {__version__}\n"


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_a_shell_completes_commands(shell: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "estimator", "--show-completion", shell],
        capture_output=True, text=True, check=True,
        env={**os.environ, "_TYPER_COMPLETE_TEST_DISABLE_SHELL_DETECTION": "1"},
    )  # fmt: skip
    assert "_ESTIMATOR_COMPLETE" in done.stdout


def test_completion_offers_the_commands() -> None:
    """As bash asks for it when TAB is pressed after `estimator sh`."""
    asked = {
        "_ESTIMATOR_COMPLETE": "complete_bash",
        "COMP_WORDS": "estimator sh",
        "COMP_CWORD": "1",
    }
    command = [sys.executable, "-m", "estimator"]
    done = subprocess.run(
        command, capture_output=True, text=True, env={**os.environ, **asked}, check=False
    )
    assert done.stdout.split() == ["shopping-list"]


def test_no_colour_is_ever_printed() -> None:
    command = [sys.executable, "-m", "estimator", "--help"]
    env = {**os.environ, "FORCE_COLOR": "1", "TERM": "xterm-256color"}
    done = subprocess.run(command, capture_output=True, text=True, check=True, env=env)
    assert "\x1b" not in done.stdout


def test_the_starter_job_is_printed_as_it_is_stored() -> None:
    stored = Path(__file__).parents[2] / "estimator" / "cli" / "starter.toml"
    assert run("survey", "--template") == stored.read_text(encoding="utf-8")
