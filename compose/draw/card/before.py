"""What an author wrote, told as words of before where a remix may no longer do so."""

from __future__ import annotations

from compose.telling.wording import Wording


def author_said(text: str, before: frozenset[str], wording: Wording) -> str:
    """What an author wrote, in the language where it is known there; of before where it may no longer hold."""
    words = wording.author(text)
    return wording.say("Before it was changed: {words}", words=words) if text in before else words
