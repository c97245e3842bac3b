"""A page as it is open in a browser: what it asked for, what went wrong, what axe-core says."""

from __future__ import annotations

from pathlib import Path
from typing import Any

SIZES = {"phone": (360, 640), "laptop": (1366, 768), "narrowest": (320, 256)}
_RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


class Opened:
    """One page in one browser."""

    def __init__(self, context: Any, path: Path) -> None:
        self.context, self.path = context, path
        self.page = context.new_page()
        self.requests: list[str] = []
        self.errors: list[str] = []
        self.page.on("request", lambda request: self.requests.append(request.url))
        self.page.on("pageerror", lambda error: self.errors.append(str(error)))
        self.page.on("console", self._heard)
        self.page.goto(path.as_uri())

    def _heard(self, message: Any) -> None:
        if message.type in ("error", "warning"):
            self.errors.append(message.text)

    def text(self, selector: str) -> str:
        return str(self.page.locator(selector).inner_text())

    def value(self, selector: str) -> str:
        return str(self.page.locator(selector).input_value())

    def broken_rules(self) -> list[str]:
        """What axe-core finds by WCAG 2.2 A and AA and by good practice, in all of the page."""
        from axe_playwright_python.sync_playwright import Axe

        options = {"runOnly": _RULES, "rules": {"target-size": {"enabled": True}}}
        found = Axe().run(self.page, options=options).response
        assert found["passes"]
        return [f"{each['id']}: {node['html']}" for each in found["violations"]
                for node in each["nodes"]]  # fmt: skip

    def scrolls_sideways(self) -> bool:
        return bool(self.page.evaluate(
            "document.scrollingElement.scrollWidth > document.documentElement.clientWidth"
        ))  # fmt: skip

    def hidden_when_focused(self, steps: int) -> list[str]:
        """Goes through the page by the tab key; names what has the focus where nobody sees it."""
        found = []
        for _ in range(steps):
            self.page.keyboard.press("Tab")
            if hidden := self.page.evaluate(_HIDDEN):
                found.append(str(hidden))
        return found


_HIDDEN = """() => {
  const on = document.activeElement, box = on.getBoundingClientRect();
  if (on === document.body) { return ""; }
  const left = Math.max(box.left, 0), top = Math.max(box.top, 0);
  const x = left + Math.min(box.right - left, 20) / 2;
  const y = top + Math.min(Math.min(box.bottom, innerHeight) - top, 40) / 2;
  const seen = document.elementFromPoint(x, y);
  return seen && (seen === on || on.contains(seen)) ? "" : on.outerHTML;
}"""
