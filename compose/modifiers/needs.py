"""What a modifier needs of a game, and whether the game has it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.modifiers.changes.events import has_rule_for
from compose.modifiers.modifier import Modifier, does_not_fit
from compose.staging.resolved import resolved
from grammar.core.area_kind import AreaKind
from grammar.core.declared import Area, Cut, Kind, Role, Side, Track
from grammar.core.game import Core
from grammar.core.rules import Add
from grammar.core.values import Landmark, Skill, Sort
from grammar.finding import Finding, Severity, spoken
from grammar.game import Game
from grammar.meanings import AREA_KINDS, CATEGORY_WORDS, TEAM_MATES
from grammar.said import Listed, Named, Value, Written, said
from grammar.sentences import needs
from grammar.sentences.base import Name
from library import KitItem


def unmet_needs(modifier: Modifier, game: Game, kit: Mapping[str, KitItem]) -> Iterator[Finding]:
    """One finding for each need that the game does not meet."""
    core = resolved(game)
    play = core.play
    for need in modifier.needs:
        wrong: Value = ""
        match need:
            case needs.NeedsEvent():
                own = frozenset(rule.trigger for rule in play.rules if not rule.granted)
                if not has_rule_for(game, need.event, own):
                    wrong = said("has no rule for when {event}", event=Written(need.event.words()))
            case needs.NeedsBall():
                wrong = _ball(core, need.skill, kit)
            case needs.NeedsThing():
                if not _has(core, need.thing.name):
                    wrong = said("has no {thing}", thing=Named(need.thing.name.text))
            case needs.NeedsSkill():
                tried = {each.skill for each in play.attempts}
                wrong = "" if Skill(need.skill) in tried else said("has nobody {skill}", skill=Named(need.skill))
            case needs.NeedsPoints():
                scored = any(isinstance(effect, Add) for rule in play.rules for effect in rule.effects)
                wrong = "" if scored else "has no points"
            case needs.NeedsTwoSides():
                wrong = "" if len(play.sides) > 1 else "has only one side"
            case needs.NeedsClock():
                wrong = "" if play.bell is not None else "has no clock that ends it"
        if wrong:
            title = does_not_fit(modifier, said("{game} {wrong}.", game=Written(game.title), wrong=wrong))
            yield spoken("M-need", Severity.ERROR, title, need.span, "Leave it out, or choose another game.")


def _ball(core: Core, skill: str, kit: Mapping[str, KitItem]) -> Value:
    balls = [kind for kind in core.play.kinds if kind.sort is Sort.BALL]
    if not balls:
        return "has no ball"
    if any(ball.like.key in kit and skill in kit[ball.like.key].may for ball in balls):
        return ""
    plurals = dict(core.plurals)
    return said(
        "has no ball fit for {skill}, only {balls}",
        skill=Named(skill),
        balls=Listed(tuple(Named(plurals[ball.id]) for ball in balls)),
    )


def _has(core: Core, name: Name) -> bool:
    play, word = core.play, name.text
    if word in TEAM_MATES:
        return any(side.least > 1 for side in play.sides)
    if word in CATEGORY_WORDS:
        return bool(play.of_sort(Sort(CATEGORY_WORDS[word])))
    if word in AREA_KINDS:
        return any(area.kind is AreaKind(word) for area in play.areas)
    if word == Landmark.HALF.value:
        return play.court.cut is Cut.PARTS
    groups: tuple[tuple[Kind | Area | Role | Side | Track, ...], ...]
    groups = play.kinds, play.areas, play.roles, play.sides, play.tracks
    return word in {*(each.id.key for group in groups for each in group), *(many for _, many in core.plurals)}
