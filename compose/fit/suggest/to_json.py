"""What a search found, as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from compose.fit.suggest.score import Scored
from compose.fit.suggest.search import Found, in_the_way
from compose.fit.suggest.suggestion import Suggestion, unmet
from compose.fit.suggest.wish import Wish


def to_json(title: str, wishes: Sequence[Wish], found: Found, ranked: Sequence[Suggestion]) -> dict[str, Any]:
    """The wishes, the sets with what each modifier bought, and where nothing was found what stands in the way."""
    return {
        "game": title,
        "wishes": [wish.words() for wish in wishes],
        "missed": list(unmet(found.base, wishes)),
        "suggestions": [_suggestion(each) for each in ranked],
        "nearest": _near(found.nearest, wishes),
        "in_the_way": [
            {"wish": wishes[number].words()} | _near(found.closest[number], wishes)
            for number in (in_the_way(found) if not ranked else ())
        ],
        "tried": found.tried,
        "all_tried": found.whole,
        "situations": found.situations,
        "moves_played": found.moves,
        "untried": found.untried,
    }


def _suggestion(each: Suggestion) -> dict[str, Any]:
    modifiers = [
        {
            "name": bought.use.modifier.name,
            "values": {name: value.words() for name, value in bought.use.values.items()},
            "bought": list(bought.wishes),
            "needed_by": [each.in_full for each in bought.needed_by],
        }
        for bought in each.bought
    ]
    return {"modifiers": modifiers, "lines_changed": each.edits, "afterwards": list(each.afterwards)}


def _near(scored: Scored, wishes: Sequence[Wish]) -> dict[str, Any]:
    return {"modifiers": [use.label for use in scored.uses], "missed": list(unmet(scored, wishes))}
