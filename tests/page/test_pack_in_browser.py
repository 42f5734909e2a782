"""A pack taken in with fingers or mouse in a real browser: what a tap comes to is seen where it was tapped."""

from __future__ import annotations

from base64 import b64encode
from pathlib import Path

from desks import BEGIN
from playwright.sync_api import Browser, BrowserContext, Page, expect
from test_share_screen import given_by
from windows import PHONE, Served, at, opened, settled

from compose.page.shelved import keep_sheet

DROP = """([selector, pack]) => {
  const data = new DataTransfer();
  data.items.add(new File([Uint8Array.from(atob(pack), (each) => each.charCodeAt(0))], "a.zip"));
  const event = new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true });
  document.querySelector(selector).dispatchEvent(event);
  return event.defaultPrevented;
}"""


def drop(page: Page, selector: str, pack: bytes) -> None:
    """Let a file fall there; it is the page that takes it, for the browser would leave the page."""
    assert page.evaluate(DROP, [selector, b64encode(pack).decode()])
    settled(page)


def test_what_a_tap_comes_to_is_seen(
    served: Served, window: Browser, tabs: list[BrowserContext], tmp_path: Path
) -> None:
    first = given_by(tmp_path / "first", BEGIN)
    other = given_by(tmp_path / "other", BEGIN.replace("after 6 min", "after 9 min").replace("most 10 s", "most 20 s"))
    page = opened(at(tabs, window, PHONE, "fr-FR", has_touch=True), served, "/share")
    drop(page, "[data-drop]", first)
    page.locator("form[action='/share/take'] button.main").tap()
    expect(page.get_by_role("status").filter(has_text="1 feuille")).to_be_in_viewport()
    assert not keep_sheet(served.shelf, BEGIN.replace("after 6 min", "after 4 min"), "my-game").wrong
    page.goto(f"{served.home}/share")
    settled(page)
    drop(page, "h1", other)
    page.locator("form[action='/share/take'] button.main").tap()
    keep = page.locator("form[action='/share/merge'] button.main")
    keep.tap()
    expect(page.get_by_role("alert")).to_be_in_viewport()
    for each in page.locator("input[value=theirs]").all():
        each.check()
    keep.tap()
    expect(page.get_by_role("status").filter(has_text="My Game")).to_be_in_viewport()
    page.goto(f"{served.home}/share")
    settled(page)
    page.locator("form[action='/share/undo'] button").tap()
    expect(page.locator("main [role=status]:visible, #room [role=status]:visible").first).to_be_in_viewport()
