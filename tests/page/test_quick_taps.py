"""Taps that follow each other more quickly than the program answers, in a real browser."""

from __future__ import annotations

import re

from playwright.sync_api import Browser, BrowserContext, Page, expect
from test_why_screen import STUCK
from windows import LAPTOP, PHONE, Served, at, opened, settled


def tap(page: Page, *ids: str) -> None:
    """All of them at once: nothing is answered between them."""
    page.evaluate("ids => ids.forEach(id => document.getElementById(id).click())", ids)


def test_taps_that_do_not_wait_all_count(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    """Each begins where the one before leads, also a tap on what is to be done with the remix."""

    page = opened(at(tabs, window, LAPTOP), served, "/remix/lantern-row?with=add+balls%2C+n+6")
    more, less = "more-1-add balls", "less-1-add balls"
    tap(page, *[more, less] * 5, more, more)
    settled(page)
    expect(page.locator(".amount b")).to_have_text("8")
    page.route("**/choices?*", lambda route: route.fulfill(status=499))  # which changes fit is never found out
    page.locator("#choice-add-balls").click()
    expect(page.locator("#choice-add-balls")).not_to_have_attribute("aria-current", "true")
    tap(page, "choice-best-of-rounds", "choice-kick-instead", "put")
    expect(page.locator("ol.used li").last).to_contain_text("best of rounds and kick instead")
    page.get_by_role("button", name="Take Lantern Row out").last.click()


def test_moves_of_the_lesson_and_of_a_line_of_play_all_count(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/lesson")
    for slug in ("toll-stone", "winter-store", "burr-toss"):
        page.goto(f"{served.home}/remix/{slug}")
        tap(page, "put")
        expect(page).to_have_url(f"{served.home}/lesson")
    tap(page, "earlier-burr-toss-0", "earlier-burr-toss-0", "later-toll-stone-0")
    order = page.locator("ol.used .chip-name a")
    expect(order).to_have_text(["1. Burr Toss", "2. Winter Store", "3. Toll Stone"])
    tap(page, "out-burr-toss-0", "out-toll-stone-0")
    expect(order).to_have_text(["1. Winter Store"])
    tap(page, "out-winter-store-0")
    (served.shelf / "games").mkdir(exist_ok=True)
    (served.shelf / "games" / "stuck-row.rules").write_text(STUCK, encoding="utf-8")
    page.goto(f"{served.home}/why/stuck-row?finding=r0")
    tap(page, "on", "on")
    expect(page).to_have_url(f"{served.home}/why/stuck-row?finding=r0&step=2")


def test_another_screen_of_a_game_begins_at_its_top(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE), served, "/remix/lantern-row?with=add+balls")
    for id in ("as-sheet", "print"):
        page.locator(f"#{id}").scroll_into_view_if_needed()
        page.locator(f"#{id}").click()
        page.wait_for_url(lambda url: "/remix/" not in url)
        settled(page)
        assert page.evaluate("scrollY") == 0
        page.go_back()
        page.wait_for_url("**/remix/**")
        settled(page)


def test_a_tap_is_not_lost_where_the_program_put_its_answer_off(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    """What was changed is changed once, and only what is shown then is asked for again."""
    page = opened(at(tabs, window, LAPTOP), served, "/remix/winter-store")
    late = [True, True]
    page.route("**/lesson", lambda route: route.fulfill(status=499) if late and late.pop() else route.continue_())
    tap(page, "put")
    expect(page).to_have_url(f"{served.home}/lesson")
    expect(page.locator("ol.used li")).to_have_count(1)
    tap(page, "out-winter-store-0")
    expect(page.locator("ol.used li")).to_have_count(0)


def test_what_is_typed_on_while_an_answer_is_on_its_way_stays(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/write/new")
    page.route("**/write/work", lambda route: (page.wait_for_timeout(500), route.continue_()))
    page.locator("#text").focus()
    page.keyboard.press("Control+End")
    page.get_by_role("button", name="Look at it").evaluate("button => button.click()")
    page.keyboard.type("\nnote: Written on.")
    expect(page.locator("#room")).not_to_have_attribute("aria-busy", "true")
    expect(page.locator("#text")).to_have_value(re.compile("Written on"))


def test_a_change_is_made_whatever_is_tapped_next(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/remix/toll-stone")
    page.route("**/lesson/add", lambda route: (page.wait_for_timeout(500), route.continue_()))
    tap(page, "put")
    page.locator(".ways a[href='/lesson']").evaluate("link => link.click()")
    expect(page).to_have_url(f"{served.home}/lesson")
    expect(page.locator("ol.used li")).to_have_count(1)
    tap(page, "out-toll-stone-0")
    expect(page.locator("ol.used li")).to_have_count(0)
