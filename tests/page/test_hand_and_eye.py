"""What a finger can hit and an eye can read, on every screen and at every size, in a real browser."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from desks import BEGIN, desk_in
from desks import browser as client_of
from playwright.sync_api import Browser, BrowserContext
from test_in_browser import SCREENS
from test_share_screen import given_by
from windows import LAPTOP, PHONE, TABLET, Served, at, opened, settled

SMALL_LAPTOP, SMALL_PHONE = {"width": 1366, "height": 768}, {"width": 320, "height": 640}
# What a finger does not hit that comes down 21 px from the middle of a control (44 px: WCAG 2.2, 2.5.5; less the edges
# of pixels), or whose words are cut off. Rows that are tapped through their labels count with them.
MISSED = """() => {
  const controls = [...document.querySelectorAll("a[href], button:enabled, input:not([type=hidden]), select, summary")];
  const missed = [];
  for (const each of controls) {
    if (!each.checkVisibility() || each.closest(".skip")) continue;
    each.scrollIntoView({ block: "center" });
    const box = each.getBoundingClientRect(), [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
    const hits = (x, y) => {
      const found = document.elementFromPoint(x, y);
      return found && (each.contains(found) || found.closest("label")?.control === each || found === each.parentNode);
    };
    const far = [[-21, 0], [21, 0], [0, -21], [0, 21]].filter(([right, down]) => !hits(x + right, y + down));
    if (each.matches("input, button, select") && Math.min(box.width, box.height) < 43.5) far.push("its own box");
    if (far.length) missed.push(`${each.outerHTML.slice(0, 120)} ${box.width} x ${box.height} at ${far}`);
  }
  for (const each of document.querySelectorAll("h1, a, button, summary, .counter, .counter *"))
    if (each.checkVisibility() && each.clientWidth && each.scrollWidth > each.clientWidth + 1)
      missed.push(`cut: ${each.innerText}`);
  return missed;
}"""


@pytest.mark.sample(1)
@pytest.mark.parametrize("language", ["en-GB", "fr-FR"])
@pytest.mark.parametrize("size", [SMALL_PHONE, PHONE, TABLET, LAPTOP], ids=["narrow", "phone", "tablet", "laptop"])
def test_a_finger_hits_what_it_means(
    served: Served, window: Browser, tabs: list[BrowserContext], size: dict[str, int], language: str, tmp_path: Path
) -> None:
    page = opened(at(tabs, window, size, language), served, "/remix/toll-stone")
    page.locator("#put").click()
    page.wait_for_url("**/lesson")
    sheet = served.shelf / "games" / "my-game.rules"
    sheet.parent.mkdir(exist_ok=True)
    sheet.write_text(BEGIN.replace("after 6 min", "after 4 min"), encoding="utf-8")
    for path in (*SCREENS, "/hall/four-becks"):
        page = opened(tabs[-1], served, path)
        assert page.evaluate(MISSED) == [], path
        page.close()
    page = opened(tabs[-1], served, "/share")
    pack = given_by(tmp_path, BEGIN.replace("after 6 min", "after 9 min"))
    page.locator("#pack").set_input_files({"name": "theirs.zip", "mimeType": "application/zip", "buffer": pack})
    for pressed, shown in (("/share/look", ".thing"), ("/share/take", "legend")):
        page.locator(f"form[action='{pressed}'] button.main").click()
        page.locator(shown).first.wait_for()
        settled(page)
        assert page.evaluate(MISSED) == [], page.url


@pytest.mark.parametrize("game", ["lantern-row", "four-becks"])
@pytest.mark.parametrize("size", [PHONE, TABLET, SMALL_LAPTOP], ids=["phone", "tablet", "laptop"])
def test_the_bell_moves_nothing_and_the_counts_are_in_sight(
    served: Served, window: Browser, tabs: list[BrowserContext], size: dict[str, int], game: str
) -> None:
    context = at(tabs, window, size, "fr-FR")
    page = context.new_page()
    page.clock.install()
    page.goto(f"{served.home}/hall/{game}")
    page.locator("#start").click()
    places = "[...document.querySelectorAll('button')].map(each => Math.round(each.getBoundingClientRect().top))"
    before = page.evaluate(places)
    page.clock.fast_forward("06:01")
    page.wait_for_function("document.getElementById('bell').textContent")
    assert page.evaluate(places) == before
    lowest = page.locator("#counters").bounding_box()
    assert lowest
    assert lowest["y"] + lowest["height"] <= size["height"]


def test_no_line_ends_between_a_number_and_its_unit(tmp_path: Path) -> None:
    client = client_of(desk_in(tmp_path / "shelf"))
    for path in ("/remix/lantern-row?with=kick+instead&whole=yes", "/remix/heron-and-pike/odds", "/remix/toll-stone"):
        shown = re.sub(r"<svg.*?</svg>|<small>.*?</small>", "", client.get(path).text, flags=re.S)
        assert re.search(r"\d\u00a0(min|m|%)", shown)
        assert re.findall(r".{30}\d (?:min|m|s|%)(?!\w)", shown) == [], path


def test_what_a_sheet_would_say_is_code_and_no_backquotes_are_shown(tmp_path: Path) -> None:
    """The notes of the findings set in backquotes what belongs into a sheet; a reader of the page sees it set apart."""
    desk = desk_in(tmp_path / "shelf")
    client = client_of(desk)
    unlike = BEGIN.replace("6 to 14 players each, mirrored", "north: 4 players, south: 9 players, mirrored")
    kept = desk.shelf / "games"
    kept.mkdir(parents=True)
    (kept / "my-broken.rules").write_text(BEGIN.replace("underarm throw a", "underarm `thro` a"), encoding="utf-8")
    asked = [{"text": each, "token": desk.token} for each in (unlike, BEGIN.replace("halved", "halvd"), "game")]
    pages = [client.post("/write/look", data=each).text for each in asked]
    paths = [
        "/games?whole=yes",
        "/remix/my-broken",
        "/remix/lantern-row?with=no+such",
        "/remix/lantern-row?with=add+balls,+n+x",
    ]
    pages += [client.get(path).text for path in paths]
    pages += [
        client.get(f"/remix/{slug}?with=a+time+limit&with=first+to&whole=yes").text
        for slug in ("lantern-row", "heron-and-pike")
    ]
    assert any("<code>" in page for page in pages)
    for page in pages:
        shown = re.sub(r"<textarea.*?</textarea>|<svg.*?</svg>|<[^>]*>", "", page, flags=re.S)
        assert re.findall(r".{0,40}`.{0,40}", shown) == []
