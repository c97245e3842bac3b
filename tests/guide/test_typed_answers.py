"""What people type, as it is kept and as it is said back; and what is refused."""

from __future__ import annotations

import pytest

from estimator.guide.questions import by_key
from estimator.guide.typed import AnswerRefused, read_answer


@pytest.mark.parametrize(
    ("key", "typed", "value", "echo"),
    [
        ("source_x", "6' 3", "6' 3", "6 ft 3 in"),
        ("source_x", "6 ft 3 in", "6 ft 3 in", "6 ft 3 in"),
        ("source_x", "75", "75 in", "6 ft 3 in"),
        ("source_x", "12'", "12'", "12 ft"),
        ("source_x", "3 1/2", "3 1/2 in", "3 1/2 in"),
        ("source_x", "1.905 m", "1.905 m", "6 ft 3 in"),
        ("breaker", "15", "15", "15 A"),
        ("breaker", "15 A", "15", "15 A"),
        ("breaker", "15a", "15", "15 A"),
        ("breaker", "unknown", "unknown", "unknown"),
        ("breaker", "", "unknown", "unknown"),
        ("source_volume", "18", "18 in3", "18.0 in3"),
        ("source_volume", "18.0 CU IN", "18.0 CU IN", "18.0 in3"),
        ("wire", "14", "14", "14 AWG"),
        ("wire", "1", "14", "14 AWG"),
        ("wire", "#12", "12", "12 AWG"),
        ("wire", "# 12 AWG", "12", "12 AWG"),
        ("ground_wire", "#14", "14", "14 AWG"),
        ("device", "outlet", "receptacle", "a receptacle"),
        ("source_device", "Outlet", "receptacle", "a receptacle"),
        ("way", "behind", "trim", "behind the baseboard"),
        ("way", "attic", "attic", "up, over through the attic, and down"),
        ("more", "Y", "yes", "yes"),
        ("country", "ca", "CA", "CA"),
        ("country", "uk", "GB", "GB"),
        ("locale", "en_UK", "en_GB", "en_GB"),
        ("customer", "", "Sample customer", "Sample customer"),
        ("date", "2026-03-02", "2026-03-02", "2026-03-02"),
    ],
)
def test_taken(key: str, typed: str, value: str, echo: str) -> None:
    answer = read_answer(by_key()[key], typed, {})
    assert (answer.value, answer.echo) == (value, echo)


@pytest.mark.parametrize(
    ("key", "typed", "instead"),
    [
        ("source_x", "", "75 in"),
        ("source_x", "unknown", "75 in"),
        ("source_x", "12-6", "12'-6"),
        ("source_x", "2x4", "Write"),
        ("source_x", "-3", "Write"),
        ("breaker", "fifteen", "such as 15"),
        ("breaker", "99999", "such as 15"),
        ("way", "b", "Write one of: trim"),
        ("way", "9", "Write 1 to 6, or the word: trim, wall"),
        ("way", "0", "Write 1 to 6, or the word"),
        ("source_box", "8", "Write 1 to 4, or the word: plastic, "),
        ("source_box", "8", ", or unknown."),
        ("wire", "11", "Write one of: 14, 12"),
        ("way", "outlet", "Write one of: trim"),
        ("more", "maybe", "Write one of: yes, no"),
        ("country", "USA", "US or CA"),
        ("date", "March", "2026-03-02"),
        ("customer", "a\x1bb", "letters on one line"),
        ("customer", "x" * 201, "letters on one line"),
    ],
)
def test_refused_with_what_to_write_instead(key: str, typed: str, instead: str) -> None:
    with pytest.raises(AnswerRefused) as refused:
        read_answer(by_key()[key], typed, {})
    assert instead in refused.value.write


def test_a_bare_number_is_millimetres_in_a_metric_house() -> None:
    answer = read_answer(by_key()["source_x"], "950", {"country": "GB"})
    assert (answer.value, answer.echo) == ("950 mm", "950 mm")


def test_what_may_be_meant_otherwise_is_pointed_out() -> None:
    assert read_answer(by_key()["source_x"], "0' 33\"", {}).notes
