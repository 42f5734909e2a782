"""What all tests share: how many examples Hypothesis tries, and how pinned outputs are written anew."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, settings

USUAL_EXAMPLES = 25

settings.register_profile(
    "ruleweave",
    max_examples=int(os.environ.get("RULEWEAVE_EXAMPLES", USUAL_EXAMPLES)),
    deadline=None,
    phases=[phase for phase in Phase if phase is not Phase.explain],
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
)
settings.load_profile("ruleweave")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--reset", action="store_true", help="Write the pinned outputs anew; read the difference.")


@pytest.fixture
def pinned(request: pytest.FixtureRequest) -> Pinned:
    """Compares an output with the file that pins it, or writes that file with --reset."""
    return Pinned(bool(request.config.getoption("--reset")))


class Pinned:
    """Calling it asserts that a text is what its file says."""

    def __init__(self, reset: bool) -> None:
        self._reset = reset

    def __call__(self, text: str, path: Path) -> None:
        if self._reset:
            path.write_text(text, encoding="utf-8")
        assert path.exists(), f"{path.name} is missing; write it with --reset"
        assert text == path.read_text(encoding="utf-8")
