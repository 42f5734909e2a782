"""Changes to what players try: by which skill, from how far, in which order; and what hangs on a switch."""

from __future__ import annotations

from collections.abc import Callable

import attrs

from compose.modifiers.changes.agents import with_agents
from compose.modifiers.changes.sheets import Draft, Problem
from grammar.game import Game, GameKit
from grammar.said import Named, quoting
from grammar.sentences import modifier as said
from grammar.sentences.attempting import AimAt, AimThrough, Attempt, FromWhere
from grammar.sentences.base import Node
from grammar.sentences.head import Practice, Skills, Switch, Switched


def change_skill(draft: Draft, game: Game, sentence: said.ChangeSkill) -> Problem | None:
    """One skill for others, everywhere: in what players try, in what the game practises, in who acts."""

    def attempt(node: Attempt) -> Attempt:
        swapped = (sentence.to if skill in sentence.skills else skill for skill in node.skills)
        return attrs.evolve(node, skills=tuple(dict.fromkeys(swapped)))

    def practised(node: Node) -> Node:
        if not isinstance(node, Skills):
            return node
        words = [sentence.to if each.text in sentence.skills else each.text for each in node.practised]
        return attrs.evolve(node, practised=tuple(Practice(word) for word in dict.fromkeys(words)))

    if draft.change("play", _in_attempts(attempt), sentence.span):
        draft.change("head", practised, sentence.span)
        draft.change("when", lambda node: with_agents(node, sentence.skills, sentence.to), sentence.span)
    return None


def _in_attempts(change: Callable[[Attempt], Attempt]) -> Callable[[Node], Node]:
    """The change of an attempt as one of any sentence of the play, switched ones included."""

    def changed(node: Node) -> Node:
        if isinstance(node, Switched):
            return attrs.evolve(node, sentence=changed(node.sentence))
        return change(node) if isinstance(node, Attempt) else node

    return changed


def aim_from(draft: Draft, game: Game, sentence: said.AimFrom) -> Problem | None:
    """Attempts at a thing are made from a distance that is told, whatever the floor plan says."""
    lines = game.kit_meant(sentence.what.name)
    if not lines:
        return quoting("there is no {thing} to aim at", thing=Named(sentence.what.name.text))
    away = FromWhere(sentence.distance)

    def attempt(node: Attempt) -> Attempt:
        if not any(_aims_at(game, aim, lines) for aim in node.aims):
            return node
        kept = tuple(detail for detail in node.details if not isinstance(detail, FromWhere))
        return attrs.evolve(node, details=(*kept, away))

    if not draft.change("play", _in_attempts(attempt), sentence.span) and not _aimed_at(game, lines):
        return quoting("nobody aims at a {thing}", thing=Named(sentence.what.name.text))
    return None


def aim_in_order(draft: Draft, game: Game, sentence: said.AimInOrder) -> Problem | None:
    """Things are to be hit in the order in which they stand."""
    lines = game.kit_meant(sentence.what.name)

    def attempt(node: Attempt) -> Attempt:
        aims = tuple(
            attrs.evolve(aim, standing_or_not=sentence.order)
            if isinstance(aim, AimAt) and _aims_at(game, aim, lines)
            else aim
            for aim in node.aims
        )
        return attrs.evolve(node, aims=aims)

    if not draft.change("play", _in_attempts(attempt), sentence.span) and not _aimed_at(game, lines):
        return quoting("nobody aims at a {thing}", thing=Named(sentence.what.name.text))
    return None


def _aimed_at(game: Game, lines: tuple[GameKit, ...]) -> bool:
    return any(_aims_at(game, aim, lines) for attempt in game.all_of("play", Attempt) for aim in attempt.aims)


def _aims_at(game: Game, aim: Node, lines: tuple[GameKit, ...]) -> bool:
    """Whether an aim means any of the things, by their name or by their category."""
    if not isinstance(aim, AimAt | AimThrough):
        return False
    return any(line in lines for line in game.kit_meant(aim.what.name))


def turn_switch(draft: Draft, game: Game, sentence: said.TurnSwitch) -> Problem | None:
    """A switch of the game turned on or off."""
    name = sentence.switch.lower()
    if name not in game.switches:
        return quoting("there is no switch called {name}", name=name)

    def switch(node: Node) -> Node:
        if isinstance(node, Switch) and node.name.text == name:
            return attrs.evolve(node, usually=f"usually {sentence.turn.removeprefix('turn ')}")
        return node

    draft.change("head", switch, sentence.span)
    return None
