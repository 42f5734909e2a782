"""Slips of a hurried teacher in a real browser: two quick taps, a wrong screen, loading anew, a slow program."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from desks import BEGIN
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect
from windows import LAPTOP, PHONE, Served, at, opened, settled

from compose.page.guard import MOST_SENT

# A winner lies wherever a second tap may come down.
COVERED = """() => {
  const look = new CSSStyleSheet();
  look.replaceSync("#winners button:first-child { position: fixed; inset: 0; }");
  document.adoptedStyleSheets = [look];
}"""
MINE = re.compile("note: Mine")


def typed(page: Page) -> None:
    page.locator("#text").press("Control+End")
    page.keyboard.type("\nnote: Mine.")
    settled(page)


def test_what_is_typed_is_there_after_another_screen_and_loading_anew(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/write/new")
    typed(page)
    page.get_by_role("button", name="Look at it").click()
    settled(page)
    page.reload()
    expect(page.locator("#text")).to_have_value(MINE)
    page.locator(".ways a[href='/games']").click()
    settled(page)
    page.go_back()
    expect(page.locator("#text")).to_have_value(MINE)
    page.get_by_role("button", name="Keep it").click()
    page.wait_for_url("**/remix/**")
    page.goto(f"{served.home}/write/new")
    expect(page.locator("#text")).not_to_have_value(MINE)
    typed(page)
    page.reload()
    page.locator("#again button").click()
    expect(page.locator("#text")).not_to_have_value(MINE)
    expect(page.locator("#again")).to_be_hidden()


def test_the_class_that_is_not_kept_yet_is_there_again(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/class")
    page.locator("#pupils").fill("23")
    page.locator("#hall").select_option(index=2)
    page.locator("summary", has_text="Balls").click()
    page.get_by_role("button", name="foam balls: more", exact=True).click()
    hall = page.locator("#hall").input_value()
    page.locator(".ways a[href='/games']").click()
    settled(page)
    page.go_back()
    expect(page.locator("#pupils")).to_have_value("23")
    expect(page.locator("#hall")).to_have_value(hall)
    expect(page.get_by_label("foam balls", exact=True)).to_have_value("1")


def test_two_quick_taps_make_one_change(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/write/new")
    for title in ("Kept One", "Kept Two"):
        page.goto(f"{served.home}/write/new")
        page.locator("#text").fill(BEGIN.replace("My Game", title))
        page.get_by_role("button", name="Keep it").dblclick()
        page.wait_for_url("**/remix/**")
    page.goto(f"{served.home}/share")
    page.route("**/share/undo", lambda route: (page.wait_for_timeout(300), route.continue_()))
    page.get_by_role("button", name="Undo the last").dblclick()
    settled(page)
    page.wait_for_timeout(500)
    assert [each.name for each in (served.shelf / "games").glob("kept-*.rules")] == ["kept-one.rules"]


@pytest.mark.parametrize("size", [PHONE, LAPTOP], ids=["phone", "laptop"])
def test_two_quick_taps_in_the_hall_start_once_and_choose_no_winner(
    served: Served, window: Browser, tabs: list[BrowserContext], size: dict[str, int]
) -> None:
    page = at(tabs, window, size).new_page()
    page.goto(f"{served.home}/hall/toll-stone")
    page.locator("#start").dblclick()
    expect(page.locator("#start")).to_have_text("Stop")
    page.wait_for_timeout(600)
    before = page.locator("#round").inner_text()
    page.evaluate(COVERED)
    page.locator("#over").dblclick()
    page.wait_for_timeout(600)
    expect(page.locator("#ended")).to_be_visible()
    expect(page.locator("#round")).to_have_text(before)
    page.locator("#winners button").first.click()
    expect(page.locator("#ended")).to_be_hidden()


def test_loading_anew_stays_at_the_game_of_the_lesson(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/lesson")
    for slug in ("toll-stone", "winter-store"):
        page.goto(f"{served.home}/remix/{slug}")
        page.locator("#put").click()
        page.wait_for_url("**/lesson")
    page.goto(f"{served.home}/hall/toll-stone?in=0")
    page.locator("#next").click()
    page.locator("#start").click()
    page.wait_for_timeout(1200)
    page.reload()
    expect(page.locator("#title")).to_have_text("Winter Store")
    expect(page.locator("#start")).to_have_text("Stop")
    for _ in range(2):
        page.goto(f"{served.home}/lesson")
        page.locator("[id^='out-']").first.click()
        settled(page)


def played(page: Page, winner: str) -> None:
    page.locator("#start").click()
    page.wait_for_timeout(300)
    page.locator("#over").click()
    page.locator("#winners").get_by_role("button", name=winner).click()


def test_a_round_that_ends_while_another_one_is_sent_is_kept(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = at(tabs, window, PHONE).new_page()
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/hall/rounds", hold)
    page.goto(f"{served.home}/hall/lantern-row")
    for winner in ("north", "south"):
        played(page, winner)
        page.wait_for_timeout(600)
    assert len(held) >= 2
    held[0].continue_()
    expect(page.locator("#kept")).to_contain_text("One round is kept")
    page.unroute("**/hall/rounds")
    page.reload()
    expect(page.locator("#note")).to_have_text("The rounds are on the shelf.")
    seen = (served.shelf / "rounds" / "lantern-row.csv").read_text()
    assert "north" in seen and "south" in seen


def test_a_round_that_is_refused_keeps_no_other_one_back(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = at(tabs, window, PHONE).new_page()
    page.goto(f"{served.home}/hall/toll-stone")
    wrong = {"slug": "gone", "uses": [], "content": "", "pupils": 24, "day": "2026-01-15", "length_s": 9, "waited": 0}
    page.evaluate("each => localStorage.setItem('ruleweave-rounds', JSON.stringify([each]))", {**wrong, "winner": "x"})
    played(page, "west")
    expect(page.locator("#note")).to_contain_text("could not be sent")
    expect(page.locator("#kept")).to_contain_text("One round is kept")
    assert "west" in (served.shelf / "rounds" / "toll-stone.csv").read_text()


def test_a_file_that_is_too_large_is_said_to_be_so(
    served: Served, window: Browser, tabs: list[BrowserContext], tmp_path: Path
) -> None:
    (tmp_path / "large.zip").write_bytes(bytes(MOST_SENT))
    page = opened(at(tabs, window, LAPTOP), served, "/share")
    page.locator("#pack").set_input_files(tmp_path / "large.zip")
    page.get_by_role("button", name="Look into it").click()
    expect(page.locator("#voice.seen")).to_have_text("This file is too large: at most 16 MB are taken.")
    page.evaluate("document.getElementById('voice').dataset.most = '1e9'")  # as if the bound were not known here
    page.route("**/share/look", lambda route: route.fulfill(status=413, body="That is too large."))
    page.get_by_role("button", name="Look into it").click()
    expect(page.locator("#voice.seen")).to_have_text("That is too large.")
