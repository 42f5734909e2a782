"""Commands that an answer offers: each says again what the asker said, so that it answers the same question."""

from __future__ import annotations

import shlex
from collections.abc import Mapping, Sequence

from compose.terminal.typed.classes import Who


def offered(
    command: str,
    name: str,
    modifiers: Sequence[str] = (),
    who: Who | None = None,
    language: str = "en",
    more: Mapping[str, object] | None = None,
) -> tuple[str, ...]:
    """The parts of a command line, the options one by one; what is None or not said is left out."""
    said = {"class": who.class_name, "pupils": who.pupils, "hall": who.hall} if who is not None else {}
    options: list[tuple[str, object]] = [("with", each) for each in modifiers]
    options += [(key, value) for key, value in {**said, **(more or {})}.items() if value is not None]
    options += [("language", language)] if not language.startswith("en") else []
    parts = (f"--{key} {shlex.quote(str(value))}" for key, value in options)
    return f"ruleweave {command} {shlex.quote(name)}", *parts
