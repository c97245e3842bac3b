"""`estimator compare`: the terminal's page, its JSON, and where own work is not offered."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner, Result

from estimator.cli.app import app
from estimator.outputs.json_out import compare_json, document_schema
from estimator.outputs.text_compare import compare_text
from estimator.outputs.text_layout import COLUMNS
from estimator.pricing.records import Bid
from tests.cli.run import NIGHTSTAND
from tests.worked.compare_job import S21, with_compare

FORBIDDEN = ("own_hours = 9.5", 'own_hours = 9.5\nforbidden = "Town code 12"')
RANGE = ("own_hours = 9.5", "own_hours = 9.5\nown_hours_low = 7\nown_hours_high = 12")
LONG = "A firm with a name that is a good deal longer than any column of this page is wide, Ltd"
HIRE = '\n[[compare.hire]]\nname = "Firm"\nquote = '
# S14 with a named way that nobody can get into.
NO_CRAWL = ('accessible = "yes"', 'accessible = "no"')


def lines(bid: Bid) -> list[str]:
    return compare_text(bid)


def shown(*changes: tuple[str, str], text: str = S21, sample: str = "nightstand") -> str:
    """The page as one text, every run of spaces made one."""
    return " ".join(" ".join(lines(with_compare(text, *changes, sample=sample))).split())


def run(folder: Path, text: str, *more: str) -> Result:
    """The command on a job file of its own."""
    path = folder / "job.toml"
    path.write_text(NIGHTSTAND.read_text(encoding="utf-8") + text, encoding="utf-8")
    return CliRunner().invoke(app, ["compare", str(path), *more], prog_name="estimator")


def test_this_bid_is_written_small_inside_a_sentence() -> None:
    page = shown(text="")
    assert "Hire: this bid" in page and " less than this bid, all in." in page
    assert "This bid takes 1.5 h of yours" in page


@pytest.mark.parametrize(
    "want",
    [
        "Cash All in Do it yourself Parts $41.30 $41.30",
        "Tool: Saw that cuts flush $87.00 $43.50",
        "A mistake put right $0.00 $52.50",
        "Your time, 9.5 h $0.00 $171.00 Together $202.90 $382.90",
        "Hire: Sample electrician Quote $365.00 $365.00",
        "Not in it: patch and paint $180.00 $180.00",
        "Your time, 1.5 h $0.00 $27.00 Together $545.00 $572.00",
        "Doing it yourself costs $189.10 less than Sample electrician, all in. Break-even: an hour "
        "of yours worth $41.64; below this, doing it yourself costs less; above it, hiring. "
        "= ($545.00 - $211.90, before time) / (9.5 h - 1.5 h)",
        "What money does not show",
        "[24 Delaware Code 1417, homeowner's electrical permit]",
        "Turn the power off and prove it dead",
    ],
)
def test_the_page_of_the_worked_comparison(want: str) -> None:
    """S21, worked by hand."""
    assert want in shown()


def test_a_page_with_nothing_to_assume_or_to_rank_does_not_say_so() -> None:
    said = shown()
    for words in ("Ways, best first", "so assumed", "Left out", "left out above", "uncertain"):
        assert words not in said


def test_uncertain_hours_give_a_range() -> None:
    """333.10 / 5.5 and 333.10 / 10.5."""
    assert (
        "The hours are uncertain: $60.56 if it takes you 7 h, $31.72 if it takes you 12 h."
        in shown(RANGE)
    )


@pytest.mark.parametrize(
    ("changes", "want"),
    [
        (("quote = 365.00", "quote = 100.00"), "Hiring (Sample electrician) costs $75.90 less"),
        (("quote = 365.00", "quote = 175.90"), "cost the same, all in."),
        (("quote = 365.00", 'quote = "unknown"'), "Sample electrician: the quote is not known"),
        (("\nown_hours = 9.5", "\nown_hours = 1.5"), "There is no break-even: doing it yourself"),
        (("permit = 65.00", 'permit = "unknown"'), "What is left out above is not in this."),
        (("own_hours = 1.5", 'own_hours = 1.5\nnotes = "Call again"'), "Note: Call again"),
    ],
)
def test_what_else_a_page_may_say(changes: tuple[str, str], want: str) -> None:
    assert want in shown(changes)


def test_what_a_bid_says_nothing_of_is_asked_about() -> None:
    """Clean-up 0.25, 0.5, 1 h, lived in x 1.175: 3.25 / 6 x 1.175 = 0.636458 h at 85.00."""
    said = shown(text=HIRE + "500")
    assert "Not said in a bid: ask" in said
    assert "- Firm: clean-up, about $54.10 if not in it" in said
    assert "Firm: permit; what it costs if not in it is not known." in said


def test_ways_are_ranked_with_their_reasons() -> None:
    """S14: C, A, B."""
    said = shown(text="", sample="door-in-the-way")
    places = [said.index(f" {rank}. {way}") for rank, way in ((1, "C"), (2, "A"), (3, "B"))]
    assert places == sorted(places)
    assert "14 ft of 14-2, 0 members, 0 openings; findings: " in said
    assert "23 ft of 14-2, 6 members, 1 opening; findings: " in said
    assert "53 ft of 14-2, 38 members, 0 openings; findings: " in said
    assert "Why: costs " in said


def test_without_a_way_into_the_crawlspace_a_is_first() -> None:
    said = shown(NO_CRAWL, text="", sample="door-in-the-way")
    assert "1. A (this bid)" in said
    assert "Why: blocked by level-access:run C; costs " in said


@pytest.mark.parametrize("text", ["", S21, S21.replace("Sample electrician", LONG)])
@pytest.mark.parametrize("sample", ["nightstand", "door-in-the-way", "lounge"])
def test_no_line_is_wider_than_80_columns(text: str, sample: str) -> None:
    page = lines(with_compare(text.replace("Saw that", LONG), sample=sample))
    assert max(map(len, page)) < COLUMNS


def test_where_it_is_forbidden_the_figures_of_own_work_are_withheld() -> None:
    said = shown(FORBIDDEN)
    assert "Doing it yourself is not offered for this job. Its figures are withheld. Why: " in said
    assert "- A local rule named in the job: Town code 12" in said
    assert "Together $545.00 $572.00" in said
    for figure in ("202.90", "382.90", "189.10", "41.64", "9.5 h", "Break-even"):
        assert figure not in said


def test_a_local_rule_against_it_is_no_error(tmp_path: Path) -> None:
    done = run(tmp_path, S21.replace(*FORBIDDEN))
    assert done.exit_code == 0
    assert "not offered" in done.stdout


def test_a_finding_that_stops_the_bid_withholds_own_work_and_ends_with_1() -> None:
    """14 AWG copper on a 20 A breaker: NEC 240.4(D) ends at 15 A."""
    said = shown(("breaker = 15", "breaker = 20"))
    assert "is not offered" in said and "breaker-wire:circuit" in said
    assert "$202.90" not in said


def read(text: str) -> Any:
    return json.loads(text, parse_float=pytest.fail)


@pytest.mark.parametrize("text", ["", S21, S21.replace(*FORBIDDEN), HIRE + '"unknown"'])
def test_json_holds_against_its_schema(text: str) -> None:
    document = read(compare_json(with_compare(text), ("a note",)))
    Draft202012Validator(document_schema("compare")).validate(document)
    assert (document["schema"], document["notes"]) == ("estimator-compare-1", ["a note"])


def test_figures_of_the_json_are_exact() -> None:
    made = read(compare_json(with_compare(S21), ()))["comparison"]
    own, (hire,), (against,) = made["own_column"], made["hires"], made["against"]
    assert (own["cash"], own["before_time"], own["all_in"]) == ("202.90", "211.90", "382.90")
    assert (hire["cash"], hire["all_in"]) == ("545.00", "572.00")
    assert (against["better"], against["by"], against["break_even"]) == ("own", "189.10", "41.64")


def test_json_withholds_own_work_too() -> None:
    made = read(compare_json(with_compare(S21, FORBIDDEN), ()))["comparison"]
    assert made["stops"] == ["A local rule named in the job: Town code 12"]
    assert (made["own"], made["own_column"], made["against"]) == (None, None, [])


def test_json_of_ways_has_findings_openings_and_reasons() -> None:
    routes = read(compare_json(with_compare("", sample="door-in-the-way"), ()))["routes"]
    assert [each["route"] for each in routes] == ["C", "A", "B"]
    assert [each["openings"] for each in routes] == [0, 1, 0]
    assert set(routes[0]["findings"]) == {
        "failed", "put_right", "accepted", "unknown", "notes", "passed",
    }  # fmt: skip
    assert all(each["why"] for each in routes)


def test_the_command_prints_text_and_json(tmp_path: Path) -> None:
    assert "Together" in run(tmp_path, S21).stdout
    assert read(run(tmp_path, S21, "--json").stdout)["schema"] == "estimator-compare-1"
