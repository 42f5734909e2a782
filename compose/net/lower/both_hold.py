"""A life and where somebody goes are two things: of the same player a narrow line about the one and a wide one about
the other both hold. Who wrote the narrow one may have meant it instead, so that it is told once."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core
from grammar.core.persons import PlayOn
from grammar.core.precedence import narrower, overlap, written
from grammar.core.rules import LifeOf, Rule
from grammar.finding import Basis, Finding, Severity, spoken
from grammar.said import Written, said


def both_hold(core: Core) -> Iterator[Finding]:
    """One note for each line about a life beside which a wider line says where the same player goes."""
    told: set[int] = set()
    own = [rule for rule in core.play.rules if not rule.granted]
    for rule in own:
        wider = next((each for each in own if _sends(each, rule)), None)
        if wider is None or rule.lines[0] in told:
            continue
        told.add(rule.lines[0])
        line, other = (core.lines[each.lines[0]] for each in (rule, wider))
        title = said("Besides this line another one holds of the same players: {line}", line=Written(other.words))
        hint = said("If they play on where they are, end this line so: {words}", words=Written("and play goes on"))
        yield spoken("N-both", Severity.NOTE, title, line.span, hint, others=(other.span,), basis=Basis.PROVED)


def _sends(wider: Rule, rule: Rule) -> bool:
    """Whether a wider rule says where somebody goes who loses or gets a life by a rule that says nothing of that."""
    lives = {effect.who for effect in rule.effects if isinstance(effect, LifeOf)}
    moved = (lives - written(rule)) & written(wider)
    stays = all(isinstance(effect, PlayOn) for effect in wider.effects)
    return bool(moved) and not stays and overlap(rule.trigger, wider.trigger) and narrower(rule.trigger, wider.trigger)
