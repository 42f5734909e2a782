"""The whole job in a real browser: by touch, by keys alone, without scripts; on a phone, a tablet and a laptop."""

from __future__ import annotations

from pathlib import Path

import pytest
from desks import BEGIN
from playwright.sync_api import Browser, BrowserContext, Dialog, Page, expect
from windows import LAPTOP, LONGEST_MS, PHONE, TABLET, Served, at, opened, settled

from compose.page.kept import FILE

ABOUT = "Two sides clear each other's row of cones."
HOSTILE = BEGIN.replace(ABOUT, "<img src=x onerror=alert(1)><script>alert(2)</script>")
SCREENS = (
    *("/class", "/games", "/remix/heron-and-pike?with=nobody+is+out"),
    "/why/heron-and-pike?with=nobody+is+out&finding=r0",
    *("/paper/lantern-row", "/lesson", "/write", "/write/new", "/share", "/hall/lantern-row"),
)


def test_the_whole_job_by_touch_on_a_phone(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, PHONE, has_touch=True), served, "/class")
    page.get_by_label("How many pupils").fill("26")
    page.locator("summary", has_text="Balls").tap()
    page.get_by_role("button", name="foam balls: more", exact=True).tap()
    expect(page.get_by_label("foam balls", exact=True)).to_have_value("1")
    page.get_by_label("foam balls", exact=True).fill("0")
    page.locator("button.main").tap()
    expect(page).to_have_url(f"{served.home}/games")
    assert "class of 26" in (served.shelf / FILE).read_text()
    page.get_by_role("link", name="Lantern Row", exact=True).last.tap()
    settled(page)
    page.locator("summary", has_text="Task").tap()
    page.get_by_role("link", name="kick instead").tap()
    expect(page.locator("#name")).to_have_text("Lantern Row Remix")
    expect(page.locator("#odds")).to_contain_text("A round lasts")
    expect(page.locator("#verdict")).to_contain_text("the rules work")
    with page.expect_download() as card:
        page.get_by_role("link", name="Print").tap()
        page.get_by_role("link", name="Card One page").tap()
    assert Path(card.value.path()).read_bytes().startswith(b"%PDF")
    page.go_back()
    page.get_by_role("button", name="Put into the lesson").tap()
    expect(page).to_have_url(f"{served.home}/lesson")
    settled(page)
    expect(page.locator("ol.used li")).to_have_count(1)
    page.get_by_role("link", name="In the hall").tap()
    page.locator("#start").tap()
    page.wait_for_timeout(300)
    page.get_by_role("button", name="north, lanterns: one less").tap()
    page.get_by_role("button", name="Round over").tap()
    expect(page.locator("#waited")).to_be_hidden()  # nobody is ever sent to wait in this game
    page.locator("#winners").get_by_role("button", name="north").tap()
    expect(page.locator("#note")).to_have_text("The rounds are on the shelf.")
    assert "north" in (served.shelf / "rounds" / "lantern-row.csv").read_text()


def reach(page: Page, name: str) -> None:
    """Press Tab until something of that name has the focus, then Enter."""
    for _ in range(220):
        page.keyboard.press("Tab")
        words = page.evaluate(
            "document.activeElement.getAttribute('aria-label') || document.activeElement.innerText || ''"
        )
        if str(words).strip().startswith(name):
            page.keyboard.press("Enter")
            return
    pytest.fail(f"no key leads to {name}")


def test_the_whole_job_by_keys_alone_on_a_laptop(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/games")
    reach(page, "Heron and Pike")
    expect(page.locator("#name")).to_have_text("Heron and Pike")
    settled(page)
    reach(page, "Equipment")
    reach(page, "add balls")
    expect(page.locator("#name")).to_have_text("Heron and Pike Remix")
    settled(page)
    page.locator("#room").focus()
    reach(page, "more")
    expect(page.locator(".amount b")).to_have_text("3")
    settled(page)
    page.locator("#room").focus()
    reach(page, "Undo")
    expect(page.locator(".amount b")).to_have_text("2")
    page.goto(f"{served.home}/write/new")
    upto = BEGIN.partition("\ncare\n")[0]
    page.locator("#text").fill(upto)
    page.locator("#text").focus()
    page.keyboard.press("Control+End")
    page.keyboard.type("  a side win")
    page.keyboard.press("Control+Space")
    expect(page.locator("#completions button").first).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#text")).to_have_value(upto + "  a side wins when the other side has no lanterns standing")
    expect(page.locator("#told")).to_contain_text("lantern")
    page.locator("#text").fill(BEGIN.replace("underarm throw a", "underarm thro a"))
    expect(page.locator("#told")).to_contain_text("Write it so")
    reach(page, "Write it so")
    expect(page.locator("#text")).to_have_value(BEGIN)
    reach(page, "Keep it")
    expect(page.locator("#name")).to_have_text("My Game")


def test_the_whole_job_without_scripts_on_a_tablet(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = at(tabs, window, TABLET, java_script_enabled=False).new_page()
    page.goto(f"{served.home}/class")
    page.get_by_label("How many pupils").fill("24")
    page.locator("button.main").click()
    page.wait_for_url("**whole=yes")
    page.get_by_role("link", name="Lantern Row", exact=True).last.click()
    page.wait_for_url("**whole=yes")
    expect(page.locator("#odds")).to_contain_text("A round lasts")
    page.locator("summary", has_text="Task").click()
    page.get_by_role("link", name="kick instead").click()
    page.wait_for_url("**whole=yes")
    expect(page.locator("#name")).to_have_text("Lantern Row Remix")
    page.get_by_role("link", name="Undo").click()
    expect(page.locator("#name")).to_have_text("Lantern Row")
    page.wait_for_url("**whole=yes")
    page.goto(f"{served.home}/write/new")
    page.locator("#text").fill(BEGIN.replace("underarm throw a", "underarm thro a").replace("My Game", "Our Game"))
    page.get_by_role("button", name="Look at it").click()
    page.get_by_role("button", name="Write it so").click()
    page.get_by_role("button", name="Keep it").click()
    expect(page.locator("#name")).to_have_text("Our Game")
    page.wait_for_url("**whole=yes")  # without scripts the page asks again by itself until all is known
    page.goto(f"{served.home}/share")
    page.get_by_label("Our Game").check()
    with page.expect_download() as given:
        page.get_by_role("button", name="Make the pack").click()
    page.locator("#pack").set_input_files(given.value.path())
    page.get_by_role("button", name="Look into it").click()
    expect(page.locator("main")).to_contain_text("The same as yours")


@pytest.mark.sample(1)
@pytest.mark.parametrize("size", [PHONE, TABLET, LAPTOP], ids=["phone", "tablet", "laptop"])
def test_no_screen_keeps_anybody_out(
    served: Served, window: Browser, tabs: list[BrowserContext], size: dict[str, int]
) -> None:
    from axe_playwright_python.sync_playwright import Axe

    for language, paths in (("en-GB", SCREENS), ("fr-FR", SCREENS[::3])):
        context = window.new_context(viewport=size, locale=language, bypass_csp=True)  # the looker is a script
        tabs.append(context)
        page = context.new_page()
        page.set_default_timeout(LONGEST_MS)
        for path in paths:
            page.goto(served.home + path)
            settled(page)
            assert page.evaluate("document.documentElement.scrollWidth") <= size["width"], f"{path} scrolls sideways"
            found = Axe().run(page)
            assert not found.violations_count, f"{path}: {found.generate_report()}"


def test_paper_shows_the_answer_and_no_buttons(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    page = opened(at(tabs, window, LAPTOP), served, "/remix/lantern-row?with=kick+instead")
    page.emulate_media(media="print")
    expect(page.locator("#verdict")).to_be_visible()
    for hidden in (".head", ".choose", ".at-hand", ".doing"):
        expect(page.locator(hidden).first).to_be_hidden()


def test_two_tabs_do_not_disturb_each_other(served: Served, window: Browser, tabs: list[BrowserContext]) -> None:
    context = at(tabs, window, LAPTOP)
    one, other = context.new_page(), context.new_page()
    one.goto(f"{served.home}/remix/lantern-row?with=add+balls")
    other.goto(f"{served.home}/remix/heron-and-pike")
    for page, name in ((one, "Lantern Row Remix"), (other, "Heron and Pike")):
        settled(page)
        expect(page.locator("#name")).to_have_text(name)
        expect(page.locator("#odds")).to_contain_text("A round lasts")


def test_nothing_is_lost_when_the_program_is_killed(
    window: Browser, tabs: list[BrowserContext], tmp_path: Path
) -> None:
    served = Served(tmp_path)
    page = opened(at(tabs, window, PHONE), served, "/write/new")
    page.locator("#text").fill(BEGIN.replace("My Game", "Typed Before"))
    hall = opened(at(tabs, window, PHONE), served, "/hall/lantern-row")
    hall.locator("#start").click()
    hall.wait_for_timeout(300)
    served.kill()
    hall.locator("#over").click()
    hall.locator("#winners").get_by_role("button", name="north").click()
    expect(hall.locator("#note")).to_contain_text("They stay here")
    page.get_by_role("button", name="Keep it").click()
    expect(page.locator("#voice")).to_contain_text("does not answer")
    served.start()
    page.get_by_role("button", name="Keep it").click()
    page.get_by_role("button", name="Do it now").click()
    expect(page.locator("#name")).to_have_text("Typed Before")
    hall.locator("#send").click()
    expect(hall.locator("#note")).to_contain_text("open it anew")
    hall.reload()
    expect(hall.locator("#note")).to_have_text("The rounds are on the shelf.")
    served.stop()


def test_a_hostile_sheet_is_only_text_in_every_screen(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    folder = served.shelf / "games"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "my-trap.rules").write_text(HOSTILE.replace("My Game", "My Trap"), encoding="utf-8")
    context = at(tabs, window, LAPTOP)
    page = context.new_page()
    alerts: list[Dialog] = []
    page.on("dialog", lambda dialog: (alerts.append(dialog), dialog.dismiss()))
    for path in ("/games", "/remix/my-trap", "/write/sheet/my-trap", "/share", "/hall/my-trap", "/paper/my-trap"):
        page.goto(served.home + path)
        settled(page)
        assert page.locator("img[src=x], main script:not([type])").count() in (0, 1 if path.startswith("/hall") else 0)
        assert page.locator("img[src=x]").count() == 0
    assert not alerts
    (folder / "my-trap.rules").unlink()
