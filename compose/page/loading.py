"""Modules that are loaded when they are first needed, so that the first page comes quickly."""

from __future__ import annotations

import importlib
import threading

_loading = threading.Lock()


def load(*modules: str) -> None:
    """Load modules, one thread at a time: two that load the same ones could get in each other's way."""
    for module in modules:
        with _loading:
            importlib.import_module(module)
