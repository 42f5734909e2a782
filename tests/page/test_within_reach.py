"""What one needs while changing or writing is in sight: the way back, the verdict, the line of a mistake."""

from __future__ import annotations

import pytest
from desks import BEGIN
from playwright.sync_api import Browser, BrowserContext, Page, expect
from windows import LAPTOP, PHONE, TABLET, Served, at, opened

SIZES = pytest.mark.parametrize("size", [PHONE, TABLET, LAPTOP], ids=["phone", "tablet", "laptop"])
SLIP = BEGIN.replace("players underarm throw a foam ball", "players underarm thro a foam ball")
LINE = next(number for number, line in enumerate(SLIP.splitlines(), 1) if "thro a" in line)
HIT = """each => { const box = each.getBoundingClientRect();
  return each.contains(document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2)); }"""
CUT = """() => [...document.querySelectorAll(".at-hand, .at-hand *")].filter(each =>
  each.checkVisibility() && each.clientWidth && each.scrollWidth > each.clientWidth + 1).map(each => each.innerText)"""


@SIZES
@pytest.mark.parametrize("language", ["en-GB", "fr-FR"])
def test_the_way_back_and_the_verdict_are_at_hand_wherever_one_has_scrolled(
    served: Served, window: Browser, tabs: list[BrowserContext], size: dict[str, int], language: str
) -> None:
    context = at(tabs, window, size, language)
    page = opened(context, served, "/remix/heron-and-pike?with=nobody+is+out&was=-&next=-")
    for part in (0, 0.3, 0.6, 1):
        page.evaluate(f"scrollTo(0, {part} * document.documentElement.scrollHeight)")
        if part:
            expect(page.locator("#echo")).to_be_visible()
        for way in ("undo", "redo"):
            box = page.locator(f"#{way}").bounding_box()
            assert box
            assert box["y"] > size["height"] / 2, "the thumb is below"
            assert page.locator(f"#{way}").evaluate(HIT)
        assert page.evaluate(CUT) == []
        bar = page.locator(".at-hand").bounding_box()
        assert bar
        assert bar["height"] < 120, "the bar leaves room for what it speaks of"


def test_the_first_look_at_a_game_has_no_bar(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, PHONE), served, "/remix/lantern-row")
    expect(page.locator("#verdict")).to_be_in_viewport()
    expect(page.locator(".at-hand")).to_be_hidden()


def _numbered(page: Page) -> None:
    """Each line of the text has its number, at its height."""
    shown = page.locator("#text").input_value().split("\n")
    assert page.locator(".row").count() >= len(shown)
    assert page.locator(f"#line-{LINE}").evaluate("each => getComputedStyle(each, '::before').content") != "none"
    heights = [page.locator(each).evaluate("each => each.scrollHeight") for each in (".colours", "#text")]
    assert abs(heights[0] - heights[1]) <= 1


@SIZES
def test_a_tap_on_a_mistake_leads_to_its_line(
    served: Served, window: Browser, tabs: list[BrowserContext], size: dict[str, int]
) -> None:
    page = opened(at(tabs, window, size), served, "/write/new")
    page.locator("#text").fill(SLIP.replace("court 18 m", "# " + "a line that is long " * 12 + "\n  court 18 m"))
    told = page.locator(".finding", has_text="thro").first.locator(".to-line")
    expect(told).to_contain_text(f"{LINE + 1}")
    _numbered(page)
    told.click()
    row = page.locator(f"#line-{LINE + 1}")
    expect(row).to_be_in_viewport()
    expect(row).to_have_text("  players underarm thro a foam ball at the cones of the other side")
    assert "thro" in page.locator("#text").evaluate("each => each.value.slice(each.selectionStart, each.selectionEnd)")
    expect(page.locator("#text")).to_be_focused()


def test_without_scripts_a_mistake_leads_to_the_number_of_its_line(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = at(tabs, window, TABLET, java_script_enabled=False).new_page()
    page.goto(f"{served.home}/write/new")
    page.locator("#text").fill(SLIP)
    page.get_by_role("button", name="Look at it").click()
    page.locator(".to-line").first.click()
    row = page.locator(f"#line-{LINE}")
    expect(row).to_be_in_viewport()
    box, area = row.bounding_box(), page.locator("#text").bounding_box()
    assert box
    assert area
    high = box["height"]
    assert abs(box["y"] - area["y"] - high * (LINE - 1)) < high, "the number stands beside its line"
    assert page.locator(".row").count() * high <= area["height"], "the text does not scroll away from its numbers"
