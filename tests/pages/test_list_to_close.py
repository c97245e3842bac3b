"""From the phone to the end of the month: the file that the page saves begins a close-out file."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from shutil import copy
from typing import Any

import pytest

from estimator.outputs.shopping_page import shopping_page
from tests.cli.run import NIGHTSTAND, changed, estimator
from tests.outputs.bid_factory import sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]


def saved(browse: Browse, folder: Path, page: str) -> str:
    """The file that is saved after one price was typed; gives its text."""
    opened = browse(page, accept_downloads=True)
    opened.page.locator(".price").first.fill("3.05")
    with opened.page.expect_download() as download:
        opened.page.locator("#save").click()
    download.value.save_as(folder / "paid-S1.toml")
    return (folder / "paid-S1.toml").read_text(encoding="utf-8")


def run(folder: Path, *arguments: str) -> dict[str, Any]:
    ran = estimator(*arguments, "--json", folder=folder)
    assert (ran.returncode, ran.stderr) == (0, "")
    return dict(json.loads(ran.stdout))


def bought(folder: Path) -> list[str]:
    """What `change` counts as bought by the file."""
    job = changed(folder, 'finish = "gypsum board"', 'finish = "plaster"')
    found = run(folder, "change", str(NIGHTSTAND), str(job), "--bought", "paid-S1.toml")
    return [part["item"] for part in found["bought"]["parts"]]


def test_the_saved_file_closes_the_job_beside_its_job_file(browse: Browse, tmp_path: Path) -> None:
    copy(NIGHTSTAND, tmp_path / "nightstand.toml")
    made = estimator("shopping-list", "nightstand.toml", "--page", "list.html", folder=tmp_path)
    assert made.returncode == 0
    page = (tmp_path / "list.html").read_text(encoding="utf-8")
    head = tomllib.loads(saved(browse, tmp_path, page))["close_out"]
    today = datetime.now().astimezone().date()
    assert head == {"job": "S1", "date": today, "estimate": "nightstand.toml"}
    estimate = run(tmp_path, "close-out", "paid-S1.toml")["close_out"]["estimate"]
    assert (estimate["job"], estimate["source"]) == ("S1", "nightstand.toml")
    assert bought(tmp_path) == ["box-old-work-1g-20"]


def test_without_the_name_of_the_job_file_the_head_says_to_put_it_in(
    browse: Browse, tmp_path: Path
) -> None:
    text = saved(browse, tmp_path, shopping_page(sample_bid("nightstand")))
    assert '\n# Put the name of the job file here: estimate = "my-job.toml"\n' in text
    assert bought(tmp_path) == ["box-old-work-1g-20"]


@pytest.mark.parametrize("name", ['my "job".toml', "a</script>.toml", "été 1.toml"])
def test_any_name_of_a_job_file_stays_as_it_is(browse: Browse, tmp_path: Path, name: str) -> None:
    text = saved(browse, tmp_path, shopping_page(sample_bid("nightstand"), name))
    assert tomllib.loads(text)["close_out"]["estimate"] == name
