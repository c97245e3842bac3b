"""What axe-core cannot see of a page: sizes, spacing, focus, keys, colors forced by the system.

Points are from WCAG 2.2, levels A and AA, by number.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import estimator
from tests.pages.browsing import Opened
from tests.pages.test_pages_alone import PAGES, made

Browse = Callable[..., Opened]
EVERY = pytest.mark.parametrize("name", PAGES)
SIZES = pytest.mark.parametrize("size", ["phone", "laptop"])
TARGETS = "a, button, input, textarea, select, summary"
LEAST_PX = 24  # 2.5.8
SPACED = """
* { line-height: 1.5 !important; letter-spacing: 0.12em !important; }
* { word-spacing: 0.16em !important; }
p, li, dd { margin-bottom: 2em !important; }
"""  # 1.4.12, as the criterion lists it
FAULTS = {
    "wcag2a, text for pictures": ("image-alt", "<img src='data:,'>"),
    "wcag2aa, contrast": ("color-contrast", "<p style='color: #999'>Pale words</p>"),
    "wcag21aa, purpose of a field": (
        "autocomplete-valid", "<label>Name <input autocomplete='nonsense'></label>"
    ),
    "wcag22aa, size of targets": (
        "target-size",
        "<p><button style='all: unset; width: 9px; height: 9px; display: inline-block'>A</button>"
        "<button style='all: unset; width: 9px; height: 9px; display: inline-block'>B</button></p>",
    ),
    "best practice, order of headings": ("heading-order", "<h5>Far too small</h5>"),
}  # fmt: skip
_CUT_OFF = """() => [...document.querySelectorAll("body *")].filter((each) => {
  const look = getComputedStyle(each);
  if (each.matches(".unseen, .wide") || each.closest("svg") || !each.getClientRects().length) {
    return false;
  }
  const clips = [look.overflowX, look.overflowY].some((way) => way !== "visible");
  const editable = each.matches("input, textarea");
  return clips && !editable
    && (each.scrollWidth > each.clientWidth + 1 || each.scrollHeight > each.clientHeight + 1);
}).map((each) => each.outerHTML)"""
_OVER_EACH_OTHER = """() => {
  const lines = [...document.querySelectorAll("h1, h2, h3, p, label, dt, dd, summary, button")]
    .filter((each) => each.getClientRects().length && each.innerText.trim()
      && !each.closest(".bar, .unseen, .skip"));
  const boxes = lines.map((each) => each.getBoundingClientRect());
  const found = [];
  for (let one = 0; one < boxes.length; one += 1) {
    for (let two = one + 1; two < boxes.length; two += 1) {
      const a = boxes[one], b = boxes[two];
      const meet = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
        && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
      if (meet && !lines[one].contains(lines[two]) && !lines[two].contains(lines[one])) {
        found.push(lines[one].innerText + " / " + lines[two].innerText);
      }
    }
  }
  return found;
}"""


def unfolded(opened: Opened) -> Any:
    """The page with everything that can be unfolded in sight."""
    opened.page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true; })")
    return opened.page


def test_every_page_of_the_tool_is_held_to_the_points() -> None:
    """Whoever puts a page together by `whole_page` is named in PAGES."""
    folder = Path(estimator.__file__).parent
    makers = {
        node.name
        for path in folder.rglob("*.py")
        for node in ast.parse(path.read_text(encoding="utf-8")).body
        if isinstance(node, ast.FunctionDef) and node.name != "whole_page"
        and any(isinstance(each, ast.Name) and each.id == "whole_page" for each in ast.walk(node))
    }  # fmt: skip
    assert makers == {page.__name__ for page in PAGES.values()}


@pytest.mark.parametrize(("rule", "fault"), FAULTS.values(), ids=FAULTS)
def test_axe_core_is_asked_for_every_kind_of_rule(browse: Browse, rule: str, fault: str) -> None:
    opened = browse(made("bid"), "laptop", bypass_csp=True)
    opened.page.evaluate(
        "(fault) => document.querySelector('main').insertAdjacentHTML('beforeend', fault)", fault
    )
    assert {each.split(":")[0] for each in opened.broken_rules()} == {rule}


@EVERY
@SIZES
def test_what_is_pressed_is_large_enough_for_a_finger(browse: Browse, name: str, size: str) -> None:
    """2.5.8: 24 by 24 pixels, without use of any of its exceptions."""
    page = unfolded(browse(made(name), size))
    boxes = [(each.bounding_box(), each.evaluate("(each) => each.outerHTML"))
             for each in page.locator(TARGETS).all() if each.is_visible()]  # fmt: skip
    assert boxes
    small = [html for box, html in boxes if min(box["width"], box["height"]) < LEAST_PX]
    assert [html for html in small if 'class="skip"' not in html] == []


@EVERY
def test_more_room_between_letters_words_and_lines_cuts_nothing_off(
    browse: Browse, name: str
) -> None:
    """1.4.12."""
    opened = browse(made(name), "phone", bypass_csp=True)
    page = unfolded(opened)
    page.add_style_tag(content=SPACED)
    assert page.evaluate(_CUT_OFF) == []
    assert page.evaluate(_OVER_EACH_OTHER) == []
    assert not opened.scrolls_sideways()


@EVERY
@SIZES
def test_letters_twice_as_large_cut_nothing_off(browse: Browse, name: str, size: str) -> None:
    """1.4.4: text resized to 200 %."""
    opened = browse(made(name), size, bypass_csp=True)
    page = unfolded(opened)
    page.add_style_tag(content="html { font-size: 2.25rem !important; }")
    assert page.evaluate(_CUT_OFF) == []
    assert page.evaluate(_OVER_EACH_OTHER) == []
    assert not opened.scrolls_sideways()


def focus_changes(opened: Opened, steps: int) -> list[bool]:
    """Whether each of the first things that the tab key reaches looks otherwise with the focus."""
    changed = []
    for _ in range(steps):
        opened.page.keyboard.press("Tab")
        box = opened.page.evaluate(_AROUND)
        if box is None:
            continue
        focused = opened.page.screenshot(clip=box)
        style = opened.page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        without = opened.page.add_style_tag(content=":focus { outline: none !important;"
                                                    " box-shadow: none !important; }")  # fmt: skip
        changed.append(style != "none" and opened.page.screenshot(clip=box) != focused)
        without.evaluate("(style) => style.remove()")
    return changed


_AROUND = """() => {
  const box = document.activeElement.getBoundingClientRect(), edge = 8;
  const left = Math.max(box.left - edge, 0), top = Math.max(box.top - edge, 0);
  const right = Math.min(box.right + edge, innerWidth);
  const bottom = Math.min(box.bottom + edge, innerHeight);
  return document.activeElement === document.body ? null
    : { x: left, y: top, width: right - left, height: bottom - top };
}"""


@EVERY
@pytest.mark.parametrize("forced", ["none", "active"])
def test_the_focus_can_be_seen_on_whatever_has_it(browse: Browse, name: str, forced: str) -> None:
    """2.4.7, with the page's colors and with those that a system forces on it."""
    opened = browse(made(name), "phone", bypass_csp=True, forced_colors=forced, color_scheme="dark")
    changes = focus_changes(opened, 8)
    assert len(changes) >= 3
    assert all(changes)


_REACHABLE = """() => [...document.querySelectorAll("*")]
  .map((each, at) => [each, at])
  .filter(([each]) => each.matches("a[href], button, input, textarea, summary, [tabindex='0']")
    && each.checkVisibility() && !each.matches("input[type=radio]:not(:checked)"))
  .map(([, at]) => at)"""


@EVERY
def test_the_focus_goes_in_reading_order_and_is_never_caught(browse: Browse, name: str) -> None:
    """2.4.3 and 2.1.2: the tab key reaches everything in the order of the page.

    Of a row of choices one is reached, and the rest from there by the arrow keys.
    """
    page = browse(made(name)).page
    visible = page.evaluate(_REACHABLE)
    reached = []
    for _ in range(2 * len(visible)):  # a field for a date takes more steps than one
        page.keyboard.press("Tab")
        reached.append(page.evaluate("[...document.querySelectorAll('*')]"
                                     ".indexOf(document.activeElement)"))  # fmt: skip
    assert [*dict.fromkeys(reached)][: len(visible)] == visible


def test_all_works_by_keys_alone(browse: Browse) -> None:
    """2.1.1: a box is ticked and a reason unfolded without a pointer."""
    page = browse(made("shopping list")).page
    page.locator(".got").first.focus()
    page.keyboard.press("Space")
    assert page.locator(".got").first.is_checked()
    page.locator("summary").first.focus()
    page.keyboard.press("Enter")
    assert page.locator("details p").first.is_visible()


def test_changes_are_said_without_moving_the_focus(browse: Browse) -> None:
    """4.1.3: the sum and what was done are told as status messages."""
    page = browse(made("shopping list")).page
    for told in ("#sum", "#status"):
        live = page.locator(told).evaluate(
            "(each) => Boolean(each.closest('[role=status], [aria-live=polite], output'))"
        )
        assert live


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_drawing_can_be_seen_in_colors_that_a_system_forces(browse: Browse, scheme: str) -> None:
    """1.4.11: lines stand on white and are not drawn black on black."""
    opened = browse(made("bid"), "laptop", forced_colors="active", color_scheme=scheme)
    drawn = opened.page.locator(".wide svg, .key svg")
    looks = drawn.evaluate_all("(all) => all.map((each) => getComputedStyle(each).backgroundColor)")
    assert looks and set(looks) == {"rgb(255, 255, 255)"}
    assert {each.evaluate("(svg) => getComputedStyle(svg).forcedColorAdjust")
            for each in drawn.all()} == {"none"}  # fmt: skip


def test_a_ticked_box_differs_from_an_empty_one_in_forced_colors(browse: Browse) -> None:
    """1.4.1 and 1.4.11."""
    page = browse(made("shopping list"), forced_colors="active", color_scheme="dark").page
    box = page.locator(".got").first
    empty = box.screenshot()
    box.check()
    page.evaluate("document.activeElement.blur()")
    assert box.screenshot() != empty


@EVERY
def test_nothing_moves_times_out_or_asks_for_one_way_of_holding(name: str) -> None:
    """2.2.1, 2.2.2, 2.3.1 and 1.3.4: no motion, no time limit, either way up."""
    text = made(name)
    assert not re.search(r"animation|transition|@keyframes|<marquee|<blink|orientation", text)
    assert not re.search(r"http-equiv=\"refresh\"|setInterval", text)


@EVERY
def test_the_page_names_its_job_and_can_be_made_larger(name: str) -> None:
    """2.4.2, and 1.4.4: no limit to zooming."""
    (title,) = re.findall(r"<title>(.*?)</title>", made(name))
    assert "S2" in title and len(title.split()) > 3
    (view,) = re.findall(r'name="viewport" content="([^"]*)"', made(name))
    assert "scalable" not in view and "maximum" not in view


@EVERY
def test_the_way_past_the_head_of_the_page_is_first(browse: Browse, name: str) -> None:
    """2.4.1: a link to the content, or a page whose headings and landmarks do it."""
    page = browse(made(name)).page
    page.keyboard.press("Tab")
    first = page.evaluate("document.activeElement.getAttribute('href')")
    assert first is None or page.locator(f"main{first}, main {first}").count() == 1
    assert page.locator("main").count() == 1 and page.locator("main h2").count() > 1
