"""A real Chromium without a window, at the size of a phone or of a laptop."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.outside import need_program
from tests.pages.browsing import SIZES, Opened


@pytest.fixture(scope="session")
def chromium() -> Iterator[Any]:
    """The browser of the system; tests that need it are skipped where it is missing."""
    path = need_program("chromium")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as driver:
        sandbox = ["--no-sandbox"] if os.geteuid() == 0 else []
        browser = driver.chromium.launch(executable_path=path, args=sandbox)
        yield browser
        browser.close()


@pytest.fixture
def browse(chromium: Any, tmp_path: Path) -> Iterator[Callable[..., Opened]]:
    """Opens the text of a page from a file; each call is a browser that knows nothing yet."""
    contexts = []

    def opened(text: str, size: str = "phone", *, script: bool = True, **more: Any) -> Opened:
        wide, high = SIZES[size]
        context = chromium.new_context(
            viewport={"width": wide, "height": high}, java_script_enabled=script, **more
        )
        contexts.append(context)
        path = tmp_path / f"page{len(contexts)}.html"
        path.write_text(text, encoding="utf-8")
        return Opened(context, path)

    yield opened
    for context in contexts:
        context.close()
