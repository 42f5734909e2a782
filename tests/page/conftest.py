"""The browser and the program that the tests share which need them."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, expect
from windows import Served, windows

expect.set_options(timeout=40_000)  # a machine may be busy with other work


@pytest.fixture(scope="session")
def window() -> Iterator[Browser]:
    with windows() as browser:
        yield browser


@pytest.fixture(scope="session")
def served(window: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    running = Served(tmp_path_factory.mktemp("page"))
    yield running
    running.stop()


@pytest.fixture
def tabs(window: Browser) -> Iterator[list[BrowserContext]]:
    held: list[BrowserContext] = []
    yield held
    for each in held:
        each.close()
