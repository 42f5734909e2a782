"""What a change brings: all that the screen of the changed game would tell to mend, and that of the game did not."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache

from attrs import evolve

from compose.answer.answer import Answer, to_mend
from compose.page.answers.at_hand import remixed
from compose.page.answers.for_class import fit_by_forecast
from compose.page.answers.known import fit_of_asked, forecast_of
from compose.page.answers.said import said
from compose.page.answers.values import Asked
from compose.page.wording import page_wording
from grammar.finding import Finding


def brought(asked: Asked, uses: tuple[str, ...]) -> tuple[str, ...]:
    """What these modifiers in place of its own bring to mend, for the class that is asked for.

    A finding is one of before where its code is, for its numbers may be others; of a code that is there once more,
    those in other words are new.
    """
    wording, before = page_wording(asked.language), _all_to_mend(asked)
    titles, codes = {each.title for each in before}, Counter(each.code for each in before)
    after = _all_to_mend(evolve(asked, uses=uses))
    more = Counter(each.code for each in after) - codes
    new = [each for each in after if more[each.code] and each.title not in titles]
    return tuple(dict.fromkeys(said(each, wording).title for each in new))


@lru_cache(maxsize=2)
def _all_to_mend(asked: Asked) -> tuple[Finding, ...]:
    """Of the rules, of the class with its lesson, and of the forecast."""
    made, answer = remixed(asked.texts, asked.uses), forecast_of(asked)
    if made.value is None or not isinstance(answer, Answer):
        return to_mend((*made.findings, *(answer if isinstance(answer, tuple) else ())))
    of_class = fit_by_forecast(fit_of_asked(asked), answer.round_minutes).findings
    return to_mend((*answer.proved, *of_class, *(answer.added or ())))
