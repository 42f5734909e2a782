"""What check and forecast know of a game of a lesson, in one line of its sheet."""

from __future__ import annotations

from compose.answer.answer import Answer, more_to_know, to_mend
from compose.draw.card.proof import check_lines
from compose.telling.wording import Wording


def known_line(title: str, answer: Answer, wording: Wording) -> str:
    """The game, how it was looked at, and what is to mend: how many things, and the gravest of them by name; then how
    much more there is to know."""
    colon = wording.say(":")
    how, *which = check_lines(answer, wording)
    sentences = [how, *which] if to_mend(answer.findings) else [how]
    if more := more_to_know(answer.findings, wording):
        sentences.append(more)
    return f"{title}{colon} {' '.join(each.rstrip('.') + '.' for each in sentences)}"
