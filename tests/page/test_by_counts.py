"""The hall screen offers as the winner whom its counts say, and nobody where something else may decide."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect
from windows import PHONE, Served, at, opened

import library
from compose.page.answers.hall import hall
from compose.page.answers.hall_values import Deciding
from compose.page.answers.values import Asked
from compose.page.kept import USUAL


def deciding(slug: str) -> Deciding:
    path = next(path for path in library.game_paths() if path.stem == slug)
    shown = hall(slug, Asked((path.read_text(encoding="utf-8"),), (), USUAL, "en"))
    assert shown is not None
    return shown.deciding


@pytest.mark.parametrize(
    ("slug", "said"),
    [
        ("lantern-row", Deciding("more", "draw", (("north", "south", "==", 0), ("south", "north", "==", 0)))),
        ("fell-post", Deciding("more", "draw", (("north", "north", ">=", 8), ("south", "south", ">=", 8)))),
        ("sleet-field", Deciding("", "", ())),  # of one side whoever is left has won
        ("four-becks", Deciding("more", "draw", ())),  # the last who stands: that needs the counts of several
    ],
)
def test_the_counts_say_what_the_sheet_lets_them_say(slug: str, said: Deciding) -> None:
    assert deciding(slug) == said


def likely(page: Page, taps: dict[str, int]) -> str:
    """The button that is offered after so many taps less of each."""
    for name, number in taps.items():
        for _ in range(number):
            page.get_by_role("button", name=f"{name}, lanterns: one less").click()
    page.locator("#over").click()
    offered = page.locator("#winners .main").all_inner_texts()
    expect(page.locator("#by-counts")).to_have_text(f"By the counts: {offered[0]}." if offered else "")
    page.locator("#back").click()
    page.wait_for_timeout(600)  # sooner a second tap is a slip
    return offered[0] if offered else ""


def test_the_end_that_has_come_offers_its_winner_and_else_the_bell(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = at(tabs, window, PHONE).new_page()
    page.clock.install()
    page.goto(f"{served.home}/hall/lantern-row")
    assert likely(page, {"north": 2}) == "", "the round has not ended by what is counted"
    assert likely(page, {"south": 5}) == "north"
    page.locator("#new").click()
    page.locator("#start").click()
    page.clock.fast_forward("06:30")
    assert likely(page, {}) == "A draw"
    assert likely(page, {"north": 1}) == "south"


def test_nothing_is_offered_on_a_screen_that_is_opened_anew(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/hall/marten-larders")
    page.locator("#over").click()
    expect(page.locator("#winners .main")).to_have_count(0)
