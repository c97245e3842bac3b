"""`estimator survey` on a pseudo-terminal of 80 x 24, typed into as a person would."""

from __future__ import annotations

import json
import re
import signal
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pexpect
import pytest

from tests.cli.run import ENVIRONMENT, ROOT, estimator

PROMPT = re.compile(r"\r\n(\[[^\r\n]*\] )?> $")
PLAIN = {**ENVIRONMENT, "TERM": "dumb", "ESTIMATOR_HOME": "/nowhere", "COLUMNS": "80"}
# What is typed for S1, worked by hand, one line a question; an empty line is Enter alone.
S1 = (
    "", "", "", "1996", "", "", "1", "18", "2", "15", "14", "", "12'", "34", "15", "8'9", "", "",
    "16", "",
)  # fmt: skip
MOST_ANSWERS = 20
MOST_TYPED = 50
WAIT_S = 30


def begin(folder: Path, *arguments: str) -> pexpect.spawn:
    """Start the survey on a terminal; it waits at its first question."""
    return pexpect.spawn(
        sys.executable, ["-m", "estimator", "survey", *arguments], cwd=str(folder), env=PLAIN,
        dimensions=(24, 80), encoding="utf-8", timeout=WAIT_S,
    )  # fmt: skip


def ask(child: pexpect.spawn) -> str:
    """All that is shown up to the next place to type; "" where the survey has ended."""
    end = child.expect([PROMPT, pexpect.EOF])
    return "" if end else f"{child.before}{child.after}"


def answer(child: pexpect.spawn, line: str) -> str:
    child.sendline(line)
    return ask(child)


@pytest.fixture(scope="module")
def s1(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[str]]:
    """The S1 job from nothing, and every screen on the way."""
    folder = tmp_path_factory.mktemp("s1")
    child = begin(folder, "s1.toml")
    shown = [ask(child)]
    for line in S1[:-1]:
        shown.append(answer(child, line))
    child.sendline(S1[-1])
    child.expect(pexpect.EOF)
    shown.append(child.before)
    return folder, shown


def test_s1_takes_at_most_20_answers_and_50_typed_characters(
    s1: tuple[Path, list[str]],
) -> None:
    _, shown = s1
    assert len(S1) <= MOST_ANSWERS
    assert sum(len(line) + 1 for line in S1) <= MOST_TYPED
    assert "All questions are answered" in shown[-1]


def test_the_readme_shows_what_is_typed_for_s1() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    shown = re.search(r"<!-- typed -->\n```text\n(.*?)```", readme, re.DOTALL)
    assert shown is not None
    first = [line.split()[0] for line in shown[1].splitlines()]
    assert tuple("" if word == "(Enter)" else word for word in first) == S1
    assert f"{sum(len(line) + 1 for line in S1)} keys with Enter" in readme


def test_the_bid_of_s1_has_the_figures_worked_by_hand(s1: tuple[Path, list[str]]) -> None:
    folder, _ = s1
    assert estimator("bid", "s1.toml", folder=folder).returncode == 0
    told = estimator("takeoff", "s1.toml", "--json", folder=folder).stdout
    found = json.loads(told)["takeoff"]
    items = {line["item"]: line["quantity"] for line in found["parts"]}
    wanted = {"cable-14-2": "11", "pigtail-14": "3", "connector-medium": "3"}
    assert {item: items[item] for item in wanted} == wanted
    assert not [item for item in items if "steel" in item]
    assert [run["studs"] for run in found["runs"]] == [4]
    checked = estimator("check", "s1.toml", folder=folder).stdout
    assert "18.0 in3 needed, 18.0" in checked or "18.0 of 18.0" in checked


def test_the_job_number_is_the_name_of_the_file(s1: tuple[Path, list[str]]) -> None:
    assert tomllib.loads((s1[0] / "s1.toml").read_text(encoding="utf-8"))["job"]["id"] == "s1"


def test_no_screen_is_wider_or_higher_than_the_terminal(s1: tuple[Path, list[str]]) -> None:
    _, shown = s1
    for screen in shown:
        lines = screen.split("\r\n")
        assert max(map(len, lines)) <= 80
        assert len(lines) <= 24


def test_each_answer_is_said_back_and_the_default_stands_in_brackets(
    s1: tuple[Path, list[str]],
) -> None:
    _, shown = s1
    text = "".join(shown)
    for piece in ("15 A", "2 ft 10 in", "8 ft 9 in", "[1 ft 3 in] > ", "[bedroom] > ", "18.0 in3"):
        assert piece in text


def rough(shown: list[str]) -> Iterator[tuple[float, float]]:
    for screen in shown:
        for low, high in re.findall(r"so far: \$([\d.,]+) to \$([\d.,]+)", screen):
            yield float(low.replace(",", "")), float(high.replace(",", ""))


def test_a_rough_price_comes_after_eight_answers_and_narrows(s1: tuple[Path, list[str]]) -> None:
    _, shown = s1
    assert not list(rough(shown[:8])) and list(rough(shown[8:9]))
    widths = [high - low for low, high in rough(shown)]
    assert widths == sorted(widths, reverse=True)
    assert widths[-1] < widths[0] / 2


def test_the_next_command_to_type_is_shown_and_works(s1: tuple[Path, list[str]]) -> None:
    folder, shown = s1
    assert "estimator bid s1.toml" in shown[-1]
    assert estimator("bid", "s1.toml", "-o", "next.xlsx", folder=folder).returncode == 0


def test_killed_after_every_answer_it_goes_on_and_ends_the_same(
    tmp_path: Path, s1: tuple[Path, list[str]]
) -> None:
    for count, line in enumerate(S1):
        child = begin(tmp_path, "s1.toml")
        shown = ask(child)
        assert count == 0 or f"{count} answers are there" in shown
        assert last_lines(shown) == last_lines(s1[1][count])
        answer(child, line)
        child.kill(signal.SIGKILL)
        child.wait()
    whole = (s1[0] / "s1.toml").read_text(encoding="utf-8")
    pieces = (tmp_path / "s1.toml").read_text(encoding="utf-8")
    assert tomllib.loads(pieces) == tomllib.loads(whole)
    assert not list(tmp_path.glob(".*"))


def last_lines(screen: str) -> list[str]:
    """The question and the prompt, without what was said before."""
    return screen.rpartition("\r\n\r\n")[2].split("\r\n")


def test_help_back_undo_refusals_and_stop(tmp_path: Path) -> None:
    child = begin(tmp_path, "a b.toml")
    ask(child)
    assert "meter plate" not in answer(child, "Ann")
    answer(child, "")
    answer(child, "kitchen")
    assert "Old paint may hold lead" in answer(child, "?")
    assert "not a whole number" in answer(child, "old")
    assert "[kitchen] > " in answer(child, "back")
    assert "year" in answer(child, "hall")
    assert "[kitchen] > " in answer(child, "undo")
    child.sendline("stop")
    child.expect(pexpect.EOF)
    assert "estimator survey 'a b.toml'" in child.before
    room = tomllib.loads((tmp_path / "a b.toml").read_text(encoding="utf-8"))["boxes"][1]["room"]
    assert room == "kitchen"


def test_the_end_of_input_stops_and_loses_nothing(tmp_path: Path) -> None:
    child = begin(tmp_path)
    ask(child)
    answer(child, "Ann")
    child.sendeof()
    child.expect(pexpect.EOF)
    assert "To go on, type" in child.before
    assert "Ann" in (tmp_path / "my-job.toml").read_text(encoding="utf-8")


def test_without_a_terminal_it_says_what_to_do_instead(tmp_path: Path) -> None:
    done = estimator("survey", folder=tmp_path)
    assert done.returncode == 2
    assert "estimator survey --template > my-job.toml" in done.stderr
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    ("name", "text"), [("notes.toml", "a = 1\n"), ("notes.txt", "hello"), ("bad.toml", "a = \n")]
)
def test_a_file_that_is_no_job_is_left_alone(tmp_path: Path, name: str, text: str) -> None:
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    child = begin(tmp_path, name)
    child.expect(pexpect.EOF)
    child.wait()
    assert child.exitstatus == 1
    assert path.read_text(encoding="utf-8") == text
