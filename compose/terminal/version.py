"""Which version this is."""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version


def own_version() -> str:
    """The version that is installed."""
    try:
        return version("ruleweave")
    except PackageNotFoundError:
        return "of a folder that is not installed"
