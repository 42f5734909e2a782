"""The hall screen of a game in which a group rests says who plays now, in a real browser."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect
from windows import PHONE, Served, at, opened

import library
from compose.forecast.resting import Standing, _next

WORDS = {"en-GB": ("group", "Resting: "), "fr-FR": ("groupe", "Au repos\u00a0: ")}


def round_over(page: Page, winner: str) -> None:
    page.wait_for_timeout(600)  # sooner a second tap is a slip
    page.locator("#start").click()
    page.wait_for_timeout(300)
    page.locator("#over").click()
    page.wait_for_timeout(600)  # the buttons of the winners come where this one was
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


def test_on_two_courts_winners_meet_winners(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    """Each court has its counts and its winner, and each round is kept once all courts have told."""
    page = opened(at(tabs, window, PHONE), served, "/hall/lantern-row?with=four+sides+on+two+courts")
    assert groups_on(page, "group") == [0, 1, 2, 3]
    names = page.locator("#counters .called").all_inner_texts()
    assert names == ["north, group 1", "south, group 2", "north, group 3", "south, group 4"]
    for _ in range(5):
        page.get_by_role("button", name="south, group 4, lanterns: one less").click()
    round_over(page, "group 2")
    expect(page.locator("#who")).to_have_text("Court 2: who won?")
    expect(page.locator("#winners .main")).to_have_text("north, group 3")
    page.locator("#back").click()
    assert page.evaluate("localStorage.getItem('ruleweave-rounds')") is None, "no court alone is kept"
    page.wait_for_timeout(600)
    page.locator("#over").click()
    for winner in ("group 2", "group 3"):
        page.locator("#winners").get_by_role("button", name=winner).click()
        page.wait_for_timeout(600)
    assert groups_on(page, "group")[:4] == [1, 2, 0, 3]
    expect(page.locator("#round")).to_contain_text("Round 2")
    expect(page.locator("#note")).to_have_text("The rounds are on the shelf.")


def test_four_groups_on_two_courts_meet_each_other_once(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    sheet = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")
    sheet = sheet.replace("game Lantern Row", "game Four Rows")
    sheet = sheet.replace("\nfinish\n", "\nfinish\n  four sides on two courts, all meet all\n")
    (served.shelf / "games").mkdir(parents=True, exist_ok=True)
    (served.shelf / "games" / "four-rows.rules").write_text(sheet, encoding="utf-8")
    page = opened(at(tabs, window, PHONE), served, "/hall/four-rows")
    met = []
    for _ in range(3):
        now = groups_on(page, "group")[:4]
        met += [tuple(sorted(now[:2])), tuple(sorted(now[2:]))]
        round_over(page, "north")
        page.wait_for_timeout(600)
        page.locator("#winners").get_by_role("button", name=re.compile("north")).click()
    assert sorted(met) == [(0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3)]
