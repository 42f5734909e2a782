"""What is being pressed is not taken away by what comes meanwhile: a tap takes a teacher a tenth of a second."""

from __future__ import annotations

import pytest
from playwright.sync_api import APIResponse, Browser, BrowserContext, CDPSession, Locator, Page, Route, expect
from test_why_screen import STUCK
from windows import LAPTOP, LONGEST_MS, PHONE, Served, at, opened, settled

REMIX = "/remix/lantern-row?with=kick+instead"
PARTS = ("odds", "choices", "proof", "rows", "minutes", "mends")


class Held:
    """The parts of a screen that come later, as they stand on their way until they are let through."""

    def __init__(self, page: Page, *parts: str) -> None:
        self._page, self._parts = page, parts or PARTS
        self._held: list[tuple[Route, APIResponse]] = []
        self._open = False
        page.route(lambda url: url.partition("?")[0].endswith(self._parts), self._reached)

    def _reached(self, route: Route) -> None:
        if self._open:
            return route.continue_()
        answer = route.fetch(timeout=LONGEST_MS)
        if self._open:
            return route.fulfill(response=answer)
        self._held.append((route, answer))

    def seen(self) -> None:
        """Wait until one is there and held back."""
        for _ in range(400):
            if self._held:
                return
            self._page.wait_for_timeout(50)
        pytest.fail("nothing was asked for")

    def come(self) -> None:
        """Let them come, and those that are asked for later as well, and give them time to be shown."""
        self._open = True
        for route, answer in self._held:
            route.fulfill(response=answer)
        self._page.wait_for_timeout(500)


def middle(where: Locator) -> tuple[float, float]:
    """The middle of something that is brought into sight."""
    where.scroll_into_view_if_needed()
    box = where.bounding_box()
    assert box
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def finger(session: CDPSession, *points: tuple[float, float]) -> None:
    """Put a finger down, or lift it where no point is given."""
    kind = "touchStart" if points else "touchEnd"
    session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y} for x, y in points]})


def waiting_at(served: Served, context: BrowserContext, path: str, *parts: str) -> tuple[Page, Held]:
    """A tab at a screen whose parts are on their way."""
    page = context.new_page()
    page.set_default_timeout(LONGEST_MS)
    held = Held(page, *parts)
    page.goto(served.home + path)
    held.seen()
    return page, held


def test_a_finger_on_a_button_below_what_grows(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    context = at(tabs, window, PHONE, has_touch=True)
    page, held = waiting_at(served, context, REMIX, "odds")
    page.evaluate("document.querySelector('#odds').style.minHeight = '0'")  # as if there were no room for what comes
    session = context.new_cdp_session(page)
    finger(session, middle(page.locator("#put")))
    held.come()
    expect(page.locator("#odds")).not_to_contain_text("A round lasts")
    finger(session)
    expect(page).to_have_url(f"{served.home}/lesson")
    page.get_by_role("button", name="Take Lantern Row out").click()
    expect(page.locator("ol.used li")).to_have_count(0)


def test_a_mouse_on_a_part_that_comes_anew(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page, held = waiting_at(served, at(tabs, window, LAPTOP), "/remix/lantern-row", "choices")
    page.mouse.move(*middle(page.locator("#choice-longer-court")))
    page.mouse.down()
    held.come()
    page.mouse.up()
    expect(page.locator("ol.used li")).to_contain_text("longer court")
    settled(page)


def test_the_space_bar_and_a_drag(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    path = "/remix/lantern-row?with=add+balls&with=best+of+rounds"
    page, held = waiting_at(served, at(tabs, window, LAPTOP), path)
    page.locator("#put").focus()
    page.keyboard.down(" ")
    held.come()
    expect(page.locator("#odds")).not_to_contain_text("A round lasts")
    page.keyboard.up(" ")
    expect(page).to_have_url(f"{served.home}/lesson")
    page.get_by_role("button", name="Take Lantern Row out").click()
    held = Held(page)
    page.goto(served.home + path)
    held.seen()
    page.mouse.move(*middle(page.locator("ol.used li").nth(1).locator(".chip-name")))
    page.mouse.down()
    x, y = middle(page.locator("ol.used li").nth(0).locator(".chip-name"))
    for step in (2, 1, 0):
        page.mouse.move(x + step, y + step)
    held.come()
    page.mouse.up()
    expect(page.locator("ol.used .chip-name").first).to_have_text("best of rounds")
    settled(page)


def test_nothing_on_any_screen_moves_under_a_finger(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    """Each control that can be seen stays the same one at the same place while it is pressed."""
    (served.shelf / "games").mkdir(parents=True, exist_ok=True)
    (served.shelf / "games" / "stuck-row.rules").write_text(STUCK, encoding="utf-8")
    first = opened(at(tabs, window, LAPTOP), served, "/remix/toll-stone")
    first.locator("#put").click()
    expect(first).to_have_url(f"{served.home}/lesson")
    context = at(tabs, window, PHONE, has_touch=True)
    below = {REMIX: "#put", "/games": "main .game a >> nth=1", "/lesson": "#lending button",
             "/why/stuck-row?finding=r0": "main .step >> nth=-1"}  # fmt: skip
    for path, control in below.items():
        page, held = waiting_at(served, context, path)
        session = context.new_cdp_session(page)
        pressed = page.locator(control)
        point = middle(pressed)
        handle = pressed.element_handle()
        assert handle
        finger(session, point)
        held.come()
        there = "(each, [x, y]) => each.isConnected && each.contains(document.elementFromPoint(x, y))"
        assert page.evaluate(f"([each, point]) => ({there})(each, point)", [handle, list(point)]), path
        session.send("Input.dispatchTouchEvent", {"type": "touchCancel", "touchPoints": []})
        settled(page)
        page.close()
    first.get_by_role("button", name="Take Toll Stone out").click()
    expect(first.locator("ol.used li")).to_have_count(0)
    (served.shelf / "games" / "stuck-row.rules").unlink()


def test_what_lies_below_stays_where_it_is_from_tap_to_tap(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE, has_touch=True), served, "/remix/lantern-row?with=add+balls")
    more = page.locator("[id='more-1-add balls']")
    before = middle(more)
    held = Held(page, "odds")
    more.tap()
    expect(page.locator(".amount b")).to_have_text("3")
    assert middle(page.locator("[id='more-1-add balls']"))[1] == pytest.approx(before[1], abs=60)
    held.come()
    settled(page)
    expect(page.locator("#echo small")).to_contain_text("A round lasts")  # beside the changes, for who is further down


def test_a_list_that_is_open_is_not_taken_away(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page, held = waiting_at(served, at(tabs, window, LAPTOP), "/games?age=yes", "rows")
    skill = page.locator("#skill")
    page.evaluate("document.querySelector('#skill').dataset.mine = 'yes'")
    page.mouse.move(*middle(skill))
    page.mouse.down()
    page.mouse.up()
    held.come()
    expect(skill).to_have_attribute("data-mine", "yes")
    page.locator("#age").focus()
    settled(page)
    expect(skill).not_to_have_attribute("data-mine", "yes")
