"""What mends a finding: a modifier less, or the smallest sets of more that the search for suggestions finds."""

from __future__ import annotations

from collections.abc import Iterator

import library
from compose.fit.suggest.amounts import at_the_ends
from compose.fit.suggest.class_wishes import Part, fits
from compose.fit.suggest.look import Looker
from compose.fit.suggest.played_wishes import Mended, no_worse
from compose.fit.suggest.score import Scorer
from compose.fit.suggest.search import search
from compose.fit.suggest.suggestion import Suggestion, suggestions
from compose.fit.suggest.trying import Reach
from compose.fit.suggest.wish import Wish
from compose.modifiers.clash import clash
from compose.modifiers.remix import Remix
from compose.page.answers.at_hand import modifiers, remixed
from compose.page.answers.brought import brought
from compose.page.answers.known import group_in
from compose.page.answers.remixing import written
from compose.page.answers.values import Asked, Mend
from compose.page.answers.why import finding_at
from compose.page.wording import page_wording
from compose.page.work.worker import keep_going, raise_if_withdrawn
from compose.telling.uses import label_said
from compose.telling.wording import Wording
from grammar.finding import Finding
from grammar.game import Game

OF_MIXING = "M-"  # what begins so is said of modifiers, and no modifier more mends it
REACH = Reach(tries=300, situations=150_000, keep_going=keep_going)  # our choice: some seconds


def less(asked: Asked, place: str) -> tuple[Mend, ...]:
    """What mends it by taking away. Each was tried on the rules and for the class, and says what it brings."""
    return tuple(mend for tried in _tried(asked, place) for mend in _less(asked, *tried))


def more(asked: Asked, place: str, wanted: int) -> tuple[Mend, ...]:
    """So many that mend it by adding, those that bring nothing to mend before the others; the search takes seconds."""
    found = [
        mend
        for finding, remix, scorer in _tried(asked, place)
        if not finding.code.startswith(OF_MIXING)
        for mend in _more(asked, remix, scorer, wanted)
    ]
    return tuple(sorted(found, key=lambda mend: len(mend.brings)))


def _tried(asked: Asked, place: str) -> Iterator[tuple[Finding, Remix, Scorer]]:
    """The finding, the remix and what is wished of it; nothing where there is no such finding."""
    finding, remix = finding_at(asked, place), remixed(asked.texts, asked.uses).value
    if finding is not None and remix is not None:
        looker = Looker(library.granted_sheet(), library.kit_names(), library.norms(), group=group_in(asked))
        yield finding, remix, Scorer(remix.game, tuple(_wishes(finding, place, remix.game, looker)), looker)


def _wishes(finding: Finding, place: str, game: Game, looker: Looker) -> Iterator[Wish]:
    """The finding is gone, what the class has no trouble with stays so, and nothing new is to mend."""
    assert looker.group is not None
    title = finding.title.rstrip(".")
    dear = place[0] != "t" and looker.fitted(game, looker.group).lesson.round_min is None  # each game to be forecast
    for wish in [each for each in fits(looker.group, game) if not (dear and each.part is Part.TIME)]:
        miss = wish.miss(game, looker)
        asked = (place[0] == "c" and title in miss.words) or (place[0] == "t" and wish.part is Part.TIME)
        if miss.met or asked:
            yield wish
    if place[0] == "r":
        yield Mended(finding.code, finding.title)
    yield from no_worse(game, looker)


def _less(asked: Asked, finding: Finding, remix: Remix, scorer: Scorer) -> Iterator[Mend]:
    """What a teacher has just put on is taken off first. What mixing found no look at the game can see."""
    wording, told = page_wording(asked.language), (finding.code, finding.title)
    for number, use in reversed(list(enumerate(remix.uses))):
        raise_if_withdrawn()
        left = (*asked.uses[:number], *asked.uses[number + 1 :])
        outcome = remixed(asked.texts, left)
        if outcome.value is None or any((each.code, each.title) == told for each in outcome.findings):
            continue
        if all(wish.miss(outcome.value.game, scorer.looker).met for wish in scorer.wishes):
            name = _quoted(wording.author(use.modifier.name), wording)
            yield Mend(wording.say("Take {name} off", name=name), "", left, brought(asked, left))


def _quoted(name: str, wording: Wording) -> str:
    """A name that is a sentence of its own ("nobody is out"), apart from the sentence that it stands in."""
    return wording.say("“{name}”", name=name)


def _more(asked: Asked, remix: Remix, scorer: Scorer, wanted: int) -> Iterator[Mend]:
    there = {use.modifier.name for use in remix.uses}
    others = [each for each in modifiers().values() if each.name not in there]
    starts = [use for use in at_the_ends(others) if not any(clash(use, each) for each in remix.uses)]
    found = search(scorer, starts, REACH, wanted)
    for each in suggestions(found, scorer, wanted):
        if each.bought:
            yield _added(asked, each, page_wording(asked.language))


def _added(asked: Asked, suggestion: Suggestion, wording: Wording) -> Mend:
    names = wording.listed(_quoted(label_said(use, wording), wording) for use in suggestion.uses)
    about = " ".join(wording.author(use.modifier.about) for use in suggestion.uses)
    values = (({name: each.value for name, each in use.values.items()}, use) for use in suggestion.uses)
    uses = (*asked.uses, *(written(use.modifier.name, given) for given, use in values))
    return Mend(wording.say("Add {name}", name=names), about, uses, brought(asked, uses))
