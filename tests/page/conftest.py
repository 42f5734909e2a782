"""One browser and one running program for all tests of the page: each start of it reads the whole library twice."""

from __future__ import annotations

import shutil
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext
from windows import Served, windows


@pytest.fixture(scope="session")
def window() -> Iterator[Browser]:
    """The browser; a test that needs one is skipped where none is installed."""
    with windows() as browser:
        yield browser


@pytest.fixture(scope="session")
def program(window: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The program, started as a teacher does."""
    running = Served(tmp_path_factory.mktemp("page"))
    yield running
    running.stop()


@pytest.fixture(scope="module")
def served(program: Served) -> Served:
    """The same with an empty shelf for each file of tests."""
    shutil.rmtree(program.shelf, ignore_errors=True)
    return program


@pytest.fixture
def tabs(window: Browser) -> Iterator[list[BrowserContext]]:
    """What a test opens; it is closed after it."""
    held: list[BrowserContext] = []
    yield held
    for each in held:
        each.close()
