"""Where the user's own books lie."""

from __future__ import annotations

from pathlib import Path

import pytest
from platformdirs import user_config_dir

from estimator.user_folder import shown_folder, user_books, user_books_in


def test_they_lie_among_the_settings_of_the_user(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("ESTIMATOR_HOME", "")
    assert user_books() == Path(user_config_dir("estimator", appauthor=False)) / "books"


def test_another_folder_may_be_named(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("ESTIMATOR_HOME", str(tmp_path))
    assert user_books() == tmp_path / "books"


@pytest.mark.parametrize(("units", "inside"), [("us", "."), ("metric", "metric")])
def test_metric_books_lie_inside(units: str, inside: str, tmp_path: Path) -> None:
    assert user_books_in(units, tmp_path) == tmp_path / inside


def test_a_home_is_shown_without_the_name_of_its_user(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path / "ann"))
    assert shown_folder(tmp_path / "ann" / "a" / "books") == "~/a/books"
    assert shown_folder(tmp_path / "books") == (tmp_path / "books").as_posix()
