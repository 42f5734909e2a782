"""What a modifier in use is called in the language."""

from __future__ import annotations

from typing import TYPE_CHECKING

from compose.modifiers.remix import OWN_EDITS
from compose.telling.wording import Wording

if TYPE_CHECKING:
    from compose.modifiers.modifier import Use


def label_said(use: Use, wording: Wording) -> str:
    """A modifier by its name with the values that were given, in the language: "add balls (n 2)"."""
    if wording.english:
        return use.label
    given = wording.listed(
        f"{wording.author(name)} {value.words().replace('.', ',')}" for name, value in use.values.items()
    )
    name = wording.say(OWN_EDITS) if use.modifier.name == OWN_EDITS else wording.author(use.modifier.name)
    return f"{name} ({given})" if given else name
