"""The hall screen of a game in which a group rests says who plays now, in a real browser."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect
from windows import PHONE, Served, at, opened

from compose.forecast.resting import Standing, _next

WORDS = {"en-GB": ("group", "Resting: "), "fr-FR": ("groupe", "Au repos\u00a0: ")}


def round_over(page: Page, winner: str) -> None:
    page.wait_for_timeout(600)  # sooner a second tap is a slip
    page.locator("#start").click()
    page.wait_for_timeout(300)
    page.locator("#over").click()
    page.locator("#winners").get_by_role("button", name=re.compile(winner)).click()


def groups_on(page: Page, word: str) -> list[int]:
    """The numbers that the screen says, those who play first."""
    told = page.locator("#groups").inner_text().split("(")[0]
    return [int(number) - 1 for number in re.findall(rf"{word} (\d)", told)]


@pytest.mark.parametrize("language", WORDS)
def test_who_plays_and_who_rests_is_as_the_forecast_reckons(
    served: Served, window: Browser, tabs: list[BrowserContext], language: str
) -> None:
    word, resting = WORDS[language]
    page = opened(at(tabs, window, PHONE, language), served, "/hall/lantern-row?with=one+side+rests")
    now = Standing((0, 1), (2,), 0, (0, 0, 0))
    for seat in (0, 1, None, 1, None):
        assert groups_on(page, word)[:3] == [*now.playing, *now.waiting]
        assert resting in page.locator("#groups").inner_text()
        names = page.locator("#counters .called").all_inner_texts()
        assert [int(name[-1]) - 1 for name in names] == list(now.playing)
        round_over(page, f"{word} {now.playing[seat] + 1}" if seat is not None else "draw|galité")
        now = _next(now, seat)
    best = [number for number, won in enumerate(now.won) if won == max(now.won)]
    assert groups_on(page, word)[3:] == best
    page.reload()
    assert groups_on(page, word)[:3] == [*now.playing, *now.waiting], "it is still known after loading anew"


def test_where_all_meet_all_each_pair_meets_once(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, PHONE), served, "/hall/lantern-row?with=all+meet+all")
    met = []
    for _ in range(3):
        met.append(tuple(groups_on(page, "group")[:2]))
        round_over(page, "north")
    assert met == [(0, 1), (0, 2), (1, 2)]


def test_nothing_is_said_of_groups_where_none_rests(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/hall/lantern-row")
    expect(page.locator("#groups")).to_be_hidden()
    assert page.locator("#counters .called").all_inner_texts() == ["north", "south"]
