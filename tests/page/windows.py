"""A real browser and a real page for the tests that need them: the program as a teacher starts it.

They are skipped where no browser is, unless the environment says that they must run.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.request import urlopen

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

LONGEST_MS = 120_000  # our choice: a machine may be busy with other work, and what is there is not waited for
expect.set_options(timeout=LONGEST_MS)
MUST = "RULEWEAVE_BROWSER_TESTS"
NAMED = "RULEWEAVE_BROWSER"
NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome", "msedge")
# No sandbox, for tests may run as root; and nothing that calls out.
ALONE = (
    *("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"),
    *("--disable-component-update", "--disable-sync"),
)
PHONE, TABLET, LAPTOP = {"width": 390, "height": 844}, {"width": 820, "height": 1180}, {"width": 1440, "height": 900}
ROOT = Path(__file__).parents[2]
START = "from compose.terminal.main import main\nif __name__ == '__main__':\n    main()\n"


def executable() -> str:
    """A browser of this machine; the test is skipped without one, or fails where it must run."""
    named = os.environ.get(NAMED) or next((path for name in NAMES if (path := shutil.which(name))), None)
    if named is None:
        if os.environ.get(MUST) == "must":
            pytest.fail("no browser is installed, and these tests must run")
        pytest.skip(f"no browser is installed; {MUST}=must demands one")
    return named


@contextmanager
def windows() -> Iterator[Browser]:
    """The browser, open."""
    path = executable()
    with sync_playwright() as player:
        opened = player.chromium.launch(executable_path=path, args=list(ALONE))
        yield opened
        opened.close()


class Served:
    """The program in a process of its own; it can be killed and started again at the same port."""

    def __init__(self, folder: Path) -> None:
        self.shelf = folder / "shelf"
        self._script = folder / "start.py"
        self._script.write_text(START, encoding="utf-8")
        self.port = _free_port()
        self.home = f"http://127.0.0.1:{self.port}"
        self.start()

    def start(self) -> None:
        """Start it and wait until it answers."""
        environment = {**os.environ, "PYTHONPATH": str(ROOT)}
        words = [sys.executable, str(self._script), "page", "--no-open", "--port", str(self.port)]
        self.process = subprocess.Popen(
            [*words, "--shelf", str(self.shelf)], env=environment, stdout=subprocess.DEVNULL
        )
        until = time.monotonic() + LONGEST_MS / 1000
        while time.monotonic() < until:
            try:
                urlopen(f"{self.home}/static/page.css", timeout=5).close()
                return
            except OSError:
                time.sleep(0.05)
        pytest.fail("the page did not start")

    def kill(self) -> None:
        """End it at once, as a power cut would."""
        self.process.kill()
        self.process.wait()

    def stop(self) -> None:
        """End it as Ctrl-C does."""
        self.process.terminate()
        self.process.wait(LONGEST_MS / 1000)


def _free_port() -> int:
    import socket

    with socket.socket() as door:
        door.bind(("127.0.0.1", 0))
        return int(door.getsockname()[1])


def at(
    tabs: list[BrowserContext], window: Browser, size: dict[str, int], language: str = "en-GB", **more: object
) -> BrowserContext:
    """A browser of its own of this size; it is closed with the others of the test."""
    context = window.new_context(viewport=size, locale=language, accept_downloads=True, **more)
    context.set_default_timeout(LONGEST_MS)
    tabs.append(context)
    return context


def opened(context: BrowserContext, served: Served, path: str) -> Page:
    """A tab at a screen, with everything there that comes later."""
    page = context.new_page()
    page.set_default_timeout(LONGEST_MS)
    page.goto(served.home + path)
    settled(page)
    return page


def settled(page: Page) -> None:
    """Wait until nothing is asked for any more."""
    page.wait_for_load_state()
    page.wait_for_selector("#room[aria-busy]", state="detached")
    page.wait_for_selector("[data-later]:not(details:not([open]) *)", state="detached")
