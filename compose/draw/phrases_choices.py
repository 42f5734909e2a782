"""What the switches of a game change, in another language than English."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.phrases import Phrases
from compose.draw.phrases_finish import finish_said
from compose.draw.phrases_play import play_said
from compose.draw.phrases_when import when_said
from grammar.sentences import finish, when
from grammar.sentences.base import Node
from grammar.sentences.head import Switch

ON_OFF = {True: "usually on", False: "usually off"}


def choices_in(phrases: Phrases) -> Iterator[str]:
    """What each switch changes, and how it is usually set."""
    game = phrases.game
    for switch in game.all_of("head", Switch):
        parts = " ".join(phrases.sentence(_any(phrases, line)) for line in game.hanging_on(switch))
        name = phrases.wording.author(switch.name.text)
        lead = phrases.sentence(f"{name} ({phrases.say(ON_OFF[switch.on])})")[:-1]
        yield f"{lead}\u00a0: {parts}"


def _any(phrases: Phrases, line: Node) -> str:
    if isinstance(line, when.When):
        return when_said(phrases, line)
    return finish_said(phrases, line) if type(line).__module__ == finish.__name__ else play_said(phrases, line)
