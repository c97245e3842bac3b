"""The crew sheet: all of the takeoff once, worked by hand for two samples, and no money."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from functools import cache

import pytest

from estimator.language import CATALOGS, Language
from estimator.money import show_money
from estimator.outputs.crew_sheet import crew_sheets
from estimator.pricing.records import Bid
from estimator.rules.safety_list import safety_list
from tests.outputs.bid_factory import NAMES, RandomJobs, bid_of, full_bid, sample_bid
from tests.outputs.crew_made import BOTH, english, lines_of, part_texts, texts_of

RANDOM = 25
WORK = ("set-up", "rough-in", "terminate", "test", "close", "paint", "clean-up")
DEEP = {'setback = "1/16 in"': 'setback = "3/4 in"'}
FIGURE = re.compile(r"\d+(?:[.,/]\d+)*")
OF_MONEY = {"price", "prices", "cost", "costs", "rate", "total", "markup", "margin", "tax",
            "profit", "deposit", "invoice"}  # fmt: skip
INSPECTED = ("\n[house]\n", '\n[house]\ninspection_before_closing = "yes"\n')


@cache
def random_bids() -> tuple[Bid, ...]:
    jobs = RandomJobs(20260302)
    return tuple(jobs.bid() for _ in range(RANDOM))


def every_bid() -> Iterator[Bid]:
    yield from map(sample_bid, NAMES)
    yield full_bid()
    yield from random_bids()


def wanted(bid: Bid) -> Counter[str]:
    """What must be on the sheet: boxes, runs, openings and tasks of the takeoff, each once."""
    takeoff, openings = bid.takeoff, bid.survey.openings
    return Counter([
        *(f"box:{box.box_id}" for box in takeoff.boxes),
        *(f"run:{run.run_id}" for run in takeoff.runs),
        *(f"opening:{opening.id}" for opening in openings),
        *(f"task:{task.line_id}" for task in takeoff.tasks),
    ])  # fmt: skip


def test_all_of_the_takeoff_is_on_it_once() -> None:
    for bid in every_bid():
        found = Counter(line.subject for line in lines_of(english(bid)) if line.subject)
        assert found == wanted(bid)


def test_each_line_names_what_it_stands_for() -> None:
    """Box, run and opening by their names; a task by what the labor book calls it."""
    for bid in every_bid():
        called = {f"task:{line.task_line_id}": line.description for line in bid.labor}
        for line in lines_of(english(bid)):
            kind, _, name = line.subject.partition(":")
            assert line.text.startswith(called.get(line.subject, f"{kind.capitalize()} {name}")
                                        if kind else "")  # fmt: skip


def test_the_run_of_s1() -> None:
    """By hand: x 34 to 105 in, height 15 to 3 in: 12 + 71 + 12 = 95 in, two tails of 12: 119 in.

    Studs every 16 in: 48, 64, 80 and 96 lie between.
    """
    assert part_texts(english(sample_bid("nightstand")), "runs") == [
        "Run 1: 14-2 cable from box source to box new, behind the trim. Cut 9'-11\". "
        "In order: down 1'-0\" (wall north, fished), along 5'-11\" (wall north, through bored "
        "holes), up 1'-0\" (wall north, fished); 7'-11\" from box to box. Passes: stud x 4. "
        'Bore 4 members, hole 3/4". Fit: staple x 2.'
    ]


def test_the_boxes_of_s1() -> None:
    """By hand: three cables meet in the old box; each of three joints has a pigtail too: 4."""
    assert part_texts(english(sample_bid("nightstand")), "boxes") == [
        "Box source (there now): receptacle. The box stays. Place: room bedroom, wall north, "
        "2'-10\" from the left end of the wall, middle of the box 1'-3\" above the floor. Feeds "
        "box new by run 1. Pigtail: 3. Wires under each wire connector: 4, 4, 4.",
        "Box new (new): receptacle, in: Old-work box, plastic, single gang, 20 in3. Place: room "
        "bedroom, wall north, 8'-9\" from the left end of the wall, middle of the box 1'-3\" "
        "above the floor. Fed from box source by run 1.",
    ]


def test_the_opening_of_s1_is_behind_the_trim() -> None:
    """By hand: 33 to 106 in is 73 in; its top at 4-1/2 in lies below the trim's 5-1/4 in."""
    assert part_texts(english(sample_bid("nightstand")), "openings") == [
        'Opening strip: 6\'-1" wide, 4 1/2" high. Place: room bedroom, wall north, left edge '
        '2\'-9" from the left end of the wall, lower edge 0" above the floor. Cut the piece out '
        "whole: it goes back. Out of sight when all is back: close it, without finish."
    ]


def test_tasks_of_s1_have_the_hours_of_the_labor_book() -> None:
    """By hand: 2 drops at 0.50 h, 4 members at 0.05 h, 12 ft of trim at 0.05 h."""
    said = part_texts(english(sample_bid("nightstand")), "visits")
    assert "Fish cable in one clear bay, up or down (run 1): 2 ea, about 1 h" in said
    assert "Bore one member, with access (run 1): 4 ea, about 0.2 h" in said
    assert "Take trim off and put it back (run 1): 12 ft, about 0.6 h" in said


def test_the_runs_of_s2() -> None:
    """By hand: 120 - 78 = 42 in and 23 in round the corner, + 6 in + 2 x 10 in = 91 in to cut.

    Then 87 - 23 = 64 in and 30 - 16 = 14 in up, + 20 in = 98 in. Studs at 80, 96, 112 and 16 in
    on the first run, 32, 48, 64 and 80 in on the second.
    """
    first, second = part_texts(english(sample_bid("printer-corner")), "runs")
    assert "box source to box A, in the wall. Cut 7'-7\". In order: along 3'-6\"" in first
    assert "Passes: stud x 4, corner stud x 2, corner x 1. Bore 6 members" in first
    assert "Fit: protection plate x 2, staple x 2." in first
    assert "box A to box B, in the wall. Cut 8'-2\". In order: along 5'-4\"" in second
    assert "up 1'-2\" (wall north, fished); 6'-6\" from box to box. Passes: stud x 4." in second


def test_a_box_in_the_middle_of_s2_says_both_its_neighbors() -> None:
    said = part_texts(english(sample_bid("printer-corner")), "boxes")[1]
    assert said.startswith("Box A (new): receptacle")
    assert "Fed from box source by run 1. Feeds box B by run 2." in said


def test_the_visits_of_s2_in_order_with_their_waits() -> None:
    """From visits.csv for compound that dries and painted walls; 24 h between the coats."""
    (part,) = (each for each in english(sample_bid("printer-corner")).parts if each.key == "visits")
    assert [group.title for group in part.groups] == [
        "Visit 1: Run the cable, close the openings, tape and first coat. Then about 24 h to dry.",
        "Visit 2: Second coat. Then about 24 h to dry.",
        "Visit 3: Third coat. Then about 24 h to dry.",
        "Visit 4: Sand, prime and paint.",
    ]
    closing = [line.text for line in part.groups[0].lines if "Patch an opening" in line.text]
    assert all(text.endswith("on visits 1, 2, 3") for text in closing)
    assert len(closing) == 2 * 2


def test_an_inspector_parts_the_first_visit() -> None:
    """Cable comes before the inspector, closing after; so tasks of closing begin on visit 2."""
    (part,) = (each for each in english(bid_of("printer-corner", dict([INSPECTED]))).parts
               if each.key == "visits")  # fmt: skip
    assert "inspector" in part.groups[0].title
    assert not [line for line in part.groups[0].lines if "Patch an opening" in line.text]
    assert [line for line in part.groups[1].lines if "on visits 2, 3, 4" in line.text]


def test_cautions_come_first_and_tests_after_the_work() -> None:
    keys = [part.key for part in english(full_bid()).parts]
    assert (keys[0], keys[-2:]) == ("cautions", ["tests", "notes"])
    said = part_texts(english(sample_bid("nightstand")), "cautions")
    assert said[:2] == ["Turn off the breaker: 15 A, bedroom.", "Open and prove dead: source."]


@pytest.mark.parametrize(
    ("changes", "want"),
    [
        ({"breaker = 15": 'breaker = "unknown"'},
         "Turn off the breaker of: bedroom. Nobody read its rating."),
        ({'serves = ["bedroom"]': "serves = []"}, "Turn off the breaker: 15 A."),
        ({"breaker = 15": 'breaker = "unknown"', 'serves = ["bedroom"]': "serves = []"},
         "Turn off the breaker. Nobody read its rating."),
    ],
    ids=["rating", "serves", "neither"],
)  # fmt: skip
def test_what_nobody_knows_of_the_breaker_is_said(changes: dict[str, str], want: str) -> None:
    assert part_texts(english(bid_of("nightstand", changes)), "cautions")[0] == want


@pytest.mark.parametrize("name", NAMES)
def test_every_line_of_the_safety_list_is_on_it(name: str) -> None:
    bid = sample_bid(name)
    said = Counter(texts_of(english(bid)))
    for heading, texts in safety_list(bid.survey, bid.findings)[1:]:
        assert heading == "After the work" or said[heading] == 1
        assert [said[text] for text in texts] == [1] * len(texts)


def test_what_nobody_measured_is_looked_at_first() -> None:
    said = part_texts(english(full_bid()), "look-first")
    assert "Box source: the cables in it. Taken: 2 cables of the new kind." in said
    assert len(said) == len(full_bid().takeoff.assumptions)


def test_a_job_that_was_measured_says_so() -> None:
    read = {'kind = "general"\nmultiwire': 'kind = "general"\nprotection = ["afci"]\nmultiwire'}
    said = part_texts(english(bid_of("nightstand", read)), "look-first")
    assert said == ["Nothing: all that the job hangs on was measured."]


def test_what_is_put_right_is_named() -> None:
    bare = {'kind = "general"\nmultiwire': 'kind = "general"\nprotection = []\nmultiwire'}
    (said,) = part_texts(english(bid_of("nightstand", bare)), "put-right")
    assert said.startswith("Arc-fault protection, circuit: ")
    assert "receptacle" in said


def test_a_box_that_is_too_small_is_taken_out() -> None:
    """By hand: 9 x 2.00 in3 do not go into 14 in3."""
    bid = bid_of("nightstand", {'volume = "18.0 in3"': 'volume = "14 in3"'})
    assert "receptacle. Take the old box out and fit: " in part_texts(english(bid), "boxes")[0]


def test_a_box_that_sits_too_deep_gets_an_extender() -> None:
    bid = bid_of("nightstand", {'setback = "1/16 in"': 'setback = "3/4 in"'})
    assert "The box stays and gets an extender." in part_texts(english(bid), "boxes")[0]


def test_notes_ask_for_what_the_close_out_file_holds() -> None:
    """Hours: date, who, phase, quantity, hours. Stock: date, what, move, quantity, unit."""
    groups = english(sample_bid("nightstand")).parts[-1].groups
    assert groups[1].headers == ("Date", "Who", "Phase", "How much was done", "Hours")
    assert groups[2].headers == ("Date", "What", "Taken or put back", "Quantity", "Unit")
    phases = [row.cells[2] for row in groups[1].rows if row.cells[2]]
    assert sorted(phases) == sorted({line.phase for line in sample_bid("nightstand").labor})


def money_of(bid: Bid) -> set[str]:
    """Sums as money is shown: of the price, of packs, of the rate."""
    price, job = bid.price, bid.survey.job
    sums = [price.total, price.labor, price.materials_cost, price.labor_rate_per_hour]
    sums += [pack.price_each for line in bid.shopping for pack in line.packs]
    return {show_money(amount, bid.books.shop.currency, job.locale) for amount in sums}


def test_no_money_stands_on_it() -> None:
    for bid in every_bid():
        text = "\n".join(texts_of(english(bid)))
        assert not re.search(r"[$\u00a3\u20ac]|USD|GBP|EUR", text)
        assert [each for each in money_of(bid) if each in text] == []
        assert set(re.findall(r"[a-z]+", text.lower())) & OF_MONEY == set()


def test_a_rate_and_a_total_that_nothing_else_has_are_not_told() -> None:
    odd = "\n[settings.price]\nlabor_rate_per_hour = 87.31\n"
    bid = bid_of("nightstand", more=odd)
    text = "\n".join(texts_of(english(bid)))
    assert f"{bid.price.labor_rate_per_hour}" == "87.31"
    assert "87.31" not in text
    assert f"{bid.price.total:f}" not in text


def figures(text: str) -> Counter[str]:
    return Counter(FIGURE.findall(text))


def test_another_grammar_changes_no_figure() -> None:
    for bid in every_bid():
        first, second = crew_sheets(bid, BOTH)
        for one, other in zip(texts_of(first), texts_of(second), strict=True):
            assert figures(one) == figures(other)


@pytest.mark.parametrize(
    "code", [code for code in ("es", "fr") if (CATALOGS / f"{code}.po").exists()]
)
def test_no_language_changes_a_figure(code: str) -> None:
    for bid in every_bid():
        first, second = crew_sheets(bid, (BOTH[0], Language(code)))
        for one, other in zip(texts_of(first), texts_of(second), strict=True):
            assert figures(one) == figures(other)


def test_the_sheets_of_two_languages_are_alike_line_by_line() -> None:
    first, second = crew_sheets(full_bid(), BOTH)
    assert [line.subject for line in lines_of(first)] == [line.subject for line in lines_of(second)]
    assert first.language == "en"
    assert second.language == "es"


@pytest.mark.parametrize("fill", ["re-set", "new board", "mesh", "plaster"])
def test_each_way_to_close_an_opening_is_said(fill: str) -> None:
    bid = bid_of("nightstand", {'fill = "re-set"': f'fill = "{fill}"'})
    want = {"re-set": "goes back", "new board": "drywall", "mesh": "mesh", "plaster": "plaster"}
    assert want[fill] in part_texts(english(bid), "openings")[0]


def test_a_socket_is_called_so_where_people_do() -> None:
    """S10 is in Great Britain; its lengths are metric."""
    said = part_texts(english(sample_bid("lounge")), "boxes")[1]
    assert said.startswith("Box 1 (new): socket, in: ")
    assert "2750 mm from the left end of the wall" in said


@pytest.mark.parametrize("name", [*NAMES, "put right"])
def test_tasks_of_a_visit_stand_in_the_order_of_the_work(name: str) -> None:
    """Clean-up is last: what a remedy adds stands with the work it belongs to."""
    bid = bid_of("nightstand", DEEP) if name == "put right" else sample_bid(name)
    phases = {f"task:{line.task_line_id}": line.phase for line in bid.labor}
    part = next(part for part in english(bid).parts if part.key == "visits")
    for group in part.groups:
        order = [WORK.index(phases[line.subject]) for line in group.lines if line.subject in phases]
        assert order == sorted(order)
