"""What is dragged, merged, lent and asked of the phone itself, in a real browser."""

from __future__ import annotations

from pathlib import Path

import pytest
from desks import BEGIN
from playwright.sync_api import Browser, BrowserContext, Error, Page, expect
from test_share_screen import given_by
from windows import LAPTOP, LONGEST_MS, PHONE, Served, at, opened, settled

from compose.page.kept import FILE, keep_group

# A phone that cannot be kept awake; what it is asked for is counted.
STUBS = """
delete Navigator.prototype.wakeLock;
window.asked = { full: 0, tones: 0 };
Element.prototype.requestFullscreen = () => { window.asked.full += 1; return Promise.resolve(); };
const node = { connect: (next) => next, start: () => { window.asked.tones += 1; }, stop() {}, frequency: {},
  gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} } };
window.AudioContext = class {
  currentTime = 0; resume() {} createOscillator() { return node; } createGain() { return node; }
};
"""


def chips(page: Page) -> list[str]:
    """What stands in the order of the screen, without its number."""
    settled(page)
    return [each.split(".")[-1].strip() for each in page.locator("ol.used .chip-name").all_inner_texts()]


def test_order_is_changed_by_drag_and_by_keys(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/class")
    page.goto(f"{served.home}/remix/lantern-row?with=add+balls&with=best+of+rounds")
    assert chips(page) == ["add balls", "best of rounds"]
    page.drag_and_drop("ol.used li:nth-child(2)", "ol.used li:nth-child(1)")
    expect(page.locator("ol.used .chip-name").first).to_have_text("best of rounds")
    settled(page)
    page.locator("[id='later-best of rounds']").press("Enter")
    expect(page.locator("ol.used .chip-name").first).to_have_text("add balls")
    for slug in ("lantern-row", "toll-stone", "winter-store"):
        page.goto(f"{served.home}/remix/{slug}")
        page.locator("#put").press("Enter")
        expect(page).to_have_url(f"{served.home}/lesson")
    assert chips(page) == ["Lantern Row", "Toll Stone", "Winter Store"]
    page.drag_and_drop("ol.used li:nth-child(3)", "ol.used li:nth-child(1)")
    expect(page.locator("ol.used .chip-name").first).to_contain_text("Winter Store")
    assert chips(page) == ["Winter Store", "Lantern Row", "Toll Stone"]
    page.locator("#later-winter-store-0").press("Enter")
    expect(page.locator("ol.used .chip-name").first).to_contain_text("Lantern Row")
    expect(page.locator("#later-winter-store-0")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("ol.used .chip-name").last).to_contain_text("Winter Store")
    expect(page.locator("#earlier-winter-store-0")).to_be_focused()  # there is no way further
    expect(page.locator("#minutes table, section table.minutes").first).to_contain_text("Winter Store")


def test_a_pack_is_merged_sentence_by_sentence_and_undone(
    served: Served, window: Browser, tabs: list[BrowserContext], tmp_path: Path
) -> None:
    theirs = BEGIN.replace("after 6 min", "after 9 min").replace("row of cones", "row of tall cones")
    (tmp_path / "theirs.zip").write_bytes(given_by(tmp_path / "shelf", theirs))
    page = opened(at(tabs, window, PHONE), served, "/write/new")
    page.locator("#text").fill(
        BEGIN.replace("after 6 min", "after 4 min").replace("row of cones", "row of small cones")
    )
    page.get_by_role("button", name="Keep it").click()
    expect(page.locator("#name")).to_have_text("My Game")
    page.goto(f"{served.home}/share")
    page.locator("#pack").set_input_files(tmp_path / "theirs.zip")
    page.get_by_role("button", name="Look into it").click()
    expect(page.locator("main")).to_contain_text("Changed by both")
    page.get_by_label("Choose sentence by sentence").check()
    page.get_by_role("button", name="Go on").click()
    expect(page.locator("legend").first).to_have_text("At the top of the sheet")
    for words, whose in (("small cones", "Mine"), ("after 9 min", "Theirs")):
        page.locator("fieldset", has_text=words).get_by_label(whose).check()
    page.get_by_role("button", name="Keep it like this").click()
    expect(page.locator("main")).to_contain_text("My Game is kept as you chose")
    sheet = served.shelf / "games" / "my-game.rules"
    assert "small cones" in sheet.read_text() and "after 9 min" in sheet.read_text()
    page.goto(f"{served.home}/share")
    page.get_by_role("button", name="Undo the last change").click()
    settled(page)
    assert "after 4 min" in sheet.read_text()


def test_the_hall_screen_is_lent_to_a_second_device(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/remix/lantern-row")
    page.locator("#put").click()
    page.get_by_role("button", name="Show it in the room").click()
    settled(page)
    if page.get_by_text("in no network").count():
        pytest.skip("this machine is in no network, so that nothing can be lent")
    expect(page.locator("#lending")).to_contain_text("for 90 more minutes")
    address, code = page.locator("#lending .shout").all_inner_texts()
    phone = at(tabs, window, PHONE, has_touch=True).new_page()
    phone.goto(address)
    phone.get_by_label("The code").fill("WRONG2")
    phone.get_by_role("button", name="Open").tap()
    expect(phone.get_by_role("alert")).to_have_text("That is not the code.")
    phone.get_by_label("The code").fill(code)
    phone.get_by_role("button", name="Open").tap()
    phone.locator("#start").tap()
    phone.wait_for_timeout(300)
    phone.locator("#over").tap()
    phone.locator("#winners").get_by_role("button", name="south").tap()
    expect(phone.locator("#note")).to_have_text("The rounds are on the shelf.")
    assert "south" in "".join(each.read_text() for each in (served.shelf / "rounds").glob("*.csv"))
    for path in ("games", "lesson", "static/page.css"):
        answer = phone.request.get(address + path)
        assert answer.status == 404, path
    page.get_by_role("button", name="Take it back now").click()
    expect(page.get_by_role("button", name="Show it in the room")).to_be_visible()
    with pytest.raises(Error, match="ERR_CONNECTION"):
        for _ in range(LONGEST_MS // 500):
            phone.goto(address)
            phone.wait_for_timeout(500)


def test_games_are_filtered_by_kit_age_and_waiting(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    keep_group(served.shelf, "class Mine\n  class of 23\n  ages 5 to 6\n  lesson of 40 min\n  6 cones\n")
    page = opened(at(tabs, window, LAPTOP), served, "/games")
    every = page.locator("li.game").count()
    page.get_by_label("for my pupils’ age").check()
    expect(page).to_have_url(f"{served.home}/games?age=yes")
    expect(page.locator("li.game")).not_to_have_count(every)
    settled(page)
    of_age = page.locator("li.game").count()
    assert 0 < of_age < every
    page.get_by_label("with the kit that I have").check()
    expect(page.locator("li.game")).not_to_have_count(of_age)
    settled(page)
    assert page.locator("li.game").count() < of_age
    page.get_by_label("with the kit that I have").uncheck()
    settled(page)
    page.get_by_label("for my pupils’ age").uncheck()  # so few are of that age that all are looked at at once
    expect(page.locator("li.game")).to_have_count(every)
    settled(page)
    page.get_by_label("hardly anybody waits").check()
    told = page.get_by_role("status").filter(has_text="Working out how long pupils wait")
    expect(told).to_contain_text(" of ")
    page.get_by_label("hardly anybody waits").uncheck()
    expect(told).to_have_count(0)
    (served.shelf / FILE).unlink()


def test_a_phone_is_asked_for_the_whole_screen_and_for_sound(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    context = at(tabs, window, PHONE, has_touch=True)
    context.add_init_script(STUBS)
    page = context.new_page()
    page.clock.install()
    page.goto(f"{served.home}/hall/lantern-row")
    page.locator("#start").tap()
    expect(page.locator("#awake")).to_contain_text("This browser cannot keep the screen awake")
    assert page.evaluate("window.asked") == {"full": 1, "tones": 0}
    page.clock.fast_forward("06:01")
    expect(page.locator("#bell")).not_to_be_empty()
    assert page.evaluate("window.asked.tones") > 0


def test_a_remix_is_given_away_from_the_lesson(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    """The screen says where the pack went, and only then."""
    page = opened(at(tabs, window, PHONE), served, "/remix/lantern-row?with=kick+instead")
    page.get_by_role("button", name="Put into the lesson").click()
    page.wait_for_url("**/lesson")
    page.goto(f"{served.home}/share")
    expect(page.locator("[data-sent]")).to_be_hidden()
    page.get_by_label("Lantern Row Remix (from the lesson)").check()
    with page.expect_download() as pack:
        page.get_by_role("button", name="Make the pack").click()
    assert Path(pack.value.path()).read_bytes().startswith(b"PK")
    expect(page.locator("[data-sent]")).to_be_visible()
