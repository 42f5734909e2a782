"""The page in a real browser: the search works from a file, and nothing in a game's text ever runs."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest
from shared_games import everything
from shelves import given
from site_shelf import keep, wicked

from compose.share.site.build import build_site

BROWSER = next(
    (found for name in ("chromium", "chromium-browser", "google-chrome") if (found := shutil.which(name))), ""
)
pytestmark = pytest.mark.skipif(not BROWSER, reason="there is no Chromium on this machine")


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("browser")
    keep(folder / "common", *everything(), wicked())
    given(build_site(folder / "common", folder / "site", "Tarn Valley common shelf"))
    return folder / "site"


def shown(site: Path, address: str) -> str:
    """The page as the browser has it after its scripts ran."""
    order = [BROWSER, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={site.parent}/profile"]
    order += ["--disable-dev-shm-usage", "--virtual-time-budget=2000", "--dump-dom", f"file://{site}/{address}"]
    done = subprocess.run(order, capture_output=True, text=True, timeout=60, check=True)
    return done.stdout


def names(dom: str) -> list[str]:
    rows = re.findall(r"<li(?: hidden=\"\")?><h2>.*?</li>", dom, re.DOTALL)
    return [found.group(1) for row in rows if "hidden" not in row[:12] and (found := re.search(r">([^<]+)</a>", row))]


def test_words_and_wishes_from_the_address_narrow_the_list(site: Path) -> None:
    dom = shown(site, "index.html#words=bridge")
    assert names(dom) == ["Toll Bridge"] and "1 of 6 things fit." in dom
    dom = shown(site, "index.html#age=8&kind=game")
    assert names(dom) == ["Fell Gate", "Wicked Gate"] and "2 of 6 things fit." in dom


def test_where_nothing_fits_the_nearest_say_what_they_lack(site: Path) -> None:
    dom = shown(site, "index.html#players=26&kind=game")
    assert "Nothing fits. The nearest of 6 things:" in dom
    assert "Not quite: is for 12 to 24 players." in dom
    assert "Not quite: is for 8 to 20 players." in dom


def test_nothing_in_a_text_runs(site: Path) -> None:
    for address in ("index.html", "games/wicked-gate.html"):
        dom = shown(site, address)
        title = re.search(r"<title>(.*?)</title>", dom)
        assert title is not None and "taken" not in title.group(1)
        assert address != "index.html" or len(names(dom)) == 6
