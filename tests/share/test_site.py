"""The page of a common shelf: whole, closed against everything foreign, and only made anew where something changed."""

from __future__ import annotations

import errno
import json
import re
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote

import pytest
from shared_games import FELL_GATE, TOLL_BRIDGE, everything, game_item, kicked_gate
from shelves import given, refusal
from site_shelf import ESCAPES, keep, many, wicked

from compose.share.pack.pack import read_pack
from compose.share.site.build import MEMORY, VERSION, Built, build_site, signed
from compose.share.site.outline import look
from compose.share.whole_files import write_whole

TITLE = "Tarn Valley common shelf"


def built(folder: Path, out: Path) -> Built:
    return given(build_site(folder, out, TITLE))


class Page(HTMLParser):
    """A page taken apart: its tags with their attributes, and its text outside of style and script."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""
        self.open: list[str] = []
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in ("meta", "img", "input"):
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag, tag

    def handle_data(self, data: str) -> None:
        if not {"style", "script"} & set(self.open):
            self.text += data

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.tags if name == tag]


def pages(out: Path) -> list[Path]:
    return sorted(out.rglob("*.html"))


def test_every_thing_has_a_page_and_its_downloads(tmp_path: Path) -> None:
    keep(tmp_path / "common", *everything())
    assert built(tmp_path / "common", tmp_path / "site") == Built(5, 0, 0, ())
    site = tmp_path / "site"
    assert len(pages(site)) == 6
    for path in pages(site):
        for link in Page(path).all("a"):
            address = (link["href"] or "").split("#")[0]
            assert not address or (path.parent / address).resolve().is_file(), (path, address)
    assert (site / "sheets/games/fell-gate.rules").read_text() == FELL_GATE
    assert (site / "plans/games/fell-gate.svg").read_text().startswith("<svg ")
    assert "FELL GATE" in (site / "cards/games/fell-gate.txt").read_text()
    packed = given(read_pack((site / "packs/remixes/fell-gate-kicked.zip").read_bytes(), "x"))
    assert [item.name for item in packed.items] == ["Fell Gate", "Fell Gate Kicked", "kick on", "more cones"]


def test_no_page_asks_anything_of_a_network(tmp_path: Path) -> None:
    keep(tmp_path / "common", *everything(), wicked())
    built(tmp_path / "common", tmp_path / "site")
    for path in pages(tmp_path / "site"):
        page = Page(path)
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"(?:src|href|url)\s*[=(]\s*[\"']?(?:https?:)?//", text)
        policy = next(each["content"] for each in page.all("meta") if each.get("http-equiv"))
        assert policy and policy.startswith("default-src 'none'; img-src data:; style-src 'sha256-")
        assert "unsafe" not in policy
        assert not [name for _, each in page.tags for name in each if name.startswith("on") or name == "style"]
        assert page.all("link") + page.all("iframe") + page.all("object") == []


def test_texts_that_look_like_html_stay_text(tmp_path: Path) -> None:
    keep(tmp_path / "common", wicked(), game_item())
    built(tmp_path / "common", tmp_path / "site")
    page = Page(tmp_path / "site/games/wicked-gate.html")
    for escape in ESCAPES:
        assert escape in page.text
    assert [each["src"] and each["src"][:5] for each in page.all("img")] == ["data:"]
    assert page.all("script") == []
    listed = Page(tmp_path / "site/index.html")
    assert ESCAPES[0] in listed.text and len(listed.all("script")) == 2


def test_the_list_can_be_used_with_keys_and_readers(tmp_path: Path) -> None:
    keep(tmp_path / "common", *everything())
    built(tmp_path / "common", tmp_path / "site")
    page = Page(tmp_path / "site/index.html")
    assert page.all("html")[0]["lang"] == "en-GB"
    fields = {each["id"] for tag in ("input", "select") for each in page.all(tag)}
    assert fields == {each["for"] for each in page.all("label")} == {"words", "kind", "skill", "age", "players"}
    assert [each["role"] for each in page.all("form") + page.all("p") if each.get("role")] == ["search", "status"]
    assert page.all("a")[0] == {"class": "skip", "href": "#things"}
    ids = [each["id"] for _, each in page.tags if each.get("id")]
    assert len(ids) == len(set(ids))
    for path in pages(tmp_path / "site"):
        one = Page(path)
        assert len(one.all("h1")) == 1 and len(one.all("main")) == 1
        assert all((each["alt"] or "") > "" for each in one.all("img"))
        assert one.open == []


def _luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour (WCAG 2.2, W3C 2023, definition of relative luminance)."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def test_colours_can_be_told_apart_by_day_and_by_night() -> None:
    """Contrast of at least 7 to 1 for text (WCAG 2.2, criterion 1.4.6), 3 to 1 for borders (1.4.11)."""
    themes = re.findall(r":root \{(.*?)\}", look(), re.DOTALL)
    assert len(themes) == 2
    for theme in themes:
        colour = dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6})", theme))
        pairs = [(ink, "paper", 7.0) for ink in ("ink", "quiet", "mark")]
        pairs += [("ink", "field", 7.0), ("ink", "care", 7.0), ("quiet", "field", 3.0)]
        for one, other, least in pairs:
            low, high = sorted((_luminance(colour[one]), _luminance(colour[other])))
            assert (high + 0.05) / (low + 0.05) >= least, (one, other)


def test_only_what_changed_is_made_anew(tmp_path: Path) -> None:
    common, site = tmp_path / "common", tmp_path / "site"
    keep(common, *everything())
    built(common, site)
    before = {path: path.stat().st_mtime_ns for path in site.rglob("*") if path.is_file()}
    assert built(common, site) == Built(0, 5, 0, ())
    assert {path: path.stat().st_mtime_ns for path in site.rglob("*") if path.is_file()} == before
    keep(common, game_item(TOLL_BRIDGE.replace("18 m", "19 m")))
    assert built(common, site) == Built(2, 3, 0, ())  # the game, and the remix that might hang on it
    assert "19 m by 9 m" in (site / "games/toll-bridge.html").read_text()
    assert "19 m by 9 m" in (site / "index.html").read_text()


def test_what_went_from_the_shelf_goes_from_the_page(tmp_path: Path) -> None:
    common, site = tmp_path / "common", tmp_path / "site"
    keep(common, *everything())
    built(common, site)
    (common / "games/toll-bridge.rules").unlink()
    assert built(common, site).gone == 1
    assert not [path for path in site.rglob("*") if "toll-bridge" in path.name]
    assert "Toll Bridge" not in (site / "index.html").read_text()


def test_what_cannot_be_read_is_left_out_with_the_reason(tmp_path: Path) -> None:
    keep(tmp_path / "common", *everything())
    (tmp_path / "common/games/broken.rules").write_text("game Broken\nplay\n  players juggle\n")
    made = built(tmp_path / "common", tmp_path / "site")
    assert made.made == 5 and [path for path, _ in made.refused] == ["games/broken.rules"]
    assert "line 3" in made.refused[0][1]


def test_a_remix_without_its_base_has_a_page_without_a_card(tmp_path: Path) -> None:
    keep(tmp_path / "common", kicked_gate())
    assert built(tmp_path / "common", tmp_path / "site").made == 1
    page = Page(tmp_path / "site/remixes/fell-gate-kicked.html")
    assert page.all("img") == [] and "Fell Gate with the feet." in page.text


def test_a_folder_with_other_things_is_left_alone(tmp_path: Path) -> None:
    keep(tmp_path / "common", game_item())
    (tmp_path / "site").mkdir()
    (tmp_path / "site/letter.txt").write_text("mine")
    assert refusal(build_site(tmp_path / "common", tmp_path / "site", TITLE))[0] == "W-folder"
    assert [path.name for path in (tmp_path / "site").iterdir()] == ["letter.txt"]


def test_a_memory_that_was_tampered_with_deletes_nothing_outside(tmp_path: Path) -> None:
    keep(tmp_path / "common", game_item())
    built(tmp_path / "common", tmp_path / "site")
    (tmp_path / "precious.txt").write_text("mine")
    memory = json.loads((tmp_path / "site" / MEMORY).read_text())
    outside = ["../precious.txt", str(tmp_path / "precious.txt")]
    memory["things"]["games/gone.rules"] = {"print": "x", "files": outside, "row": {}}
    for said in (memory, signed(memory["things"])):
        (tmp_path / "site" / MEMORY).write_text(json.dumps(said))
        built(tmp_path / "common", tmp_path / "site")
        assert (tmp_path / "precious.txt").read_text() == "mine"
    for broken in ("broken", "[" * 100_000, f'{{"version": {VERSION}, "things": {{"games/x.rules": 3}}}}', "{}"):
        (tmp_path / "site" / MEMORY).write_text(broken)
        assert built(tmp_path / "common", tmp_path / "site").made == 1


def test_a_full_disk_leaves_whole_files_and_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    keep(tmp_path / "common", game_item())
    written: list[Path] = []

    def full(path: Path, data: bytes, lasting: bool = True) -> None:
        if len(written) == 3:
            raise OSError(errno.ENOSPC, "No space left on device")
        written.append(path)
        write_whole(path, data, lasting)

    monkeypatch.setattr("compose.share.site.build.write_whole", full)
    outcome = build_site(tmp_path / "common", tmp_path / "site", "Common")
    assert refusal(outcome)[0] == "S-full" and "not finished" in outcome.findings[0].title
    assert all(path.stat().st_size for path in (tmp_path / "site").rglob("*") if path.is_file())


def test_links_lead_to_files_of_any_name(tmp_path: Path) -> None:
    keep(tmp_path / "common", game_item())
    [path] = (tmp_path / "common" / "games").glob("*.rules")
    path.rename(path.with_name("odd # 100 %?.rules"))
    built(tmp_path / "common", tmp_path / "site")
    page = (tmp_path / "site" / "index.html").read_text()
    [link] = re.findall(r'href="(games/[^"]*)"', page)
    assert (tmp_path / "site" / unquote(link)).is_file() and not set(" #?") & set(link)


def test_many_are_made_on_all_cores_the_same_as_few(tmp_path: Path) -> None:
    told: list[tuple[int, int]] = []
    keep(tmp_path / "common", *many(26))
    made = build_site(tmp_path / "common", tmp_path / "site", TITLE, progress=lambda done, of: told.append((done, of)))
    assert given(made).made == 31 and told[0] == (0, 31) and told[-1] == (31, 31)
    keep(tmp_path / "few", *many(26)[:3], *everything())
    built(tmp_path / "few", tmp_path / "small")
    for path in ("games/gate-1.html", "packs/games/gate-2.zip"):
        assert (tmp_path / "site" / path).read_bytes() == (tmp_path / "small" / path).read_bytes()
