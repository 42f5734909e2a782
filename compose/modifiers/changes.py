"""Each kind of change that a modifier can make to a sheet: one function for each sentence."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import attrs

from compose.modifiers.agents import with_agents
from compose.modifiers.sheets import Draft
from grammar.game import Game, GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, Meaning
from grammar.sentences import modifier as said
from grammar.sentences.base import Name, Node, Np, Quantity
from grammar.sentences.head import Practice, Skills, Switch, Switched
from grammar.sentences.play import Attempt
from grammar.sentences.sides import Kit, Placing
from grammar.sentences.space import Court
from grammar.sentences.when import When
from grammar.topics import topic
from grammar.tree import Line

Problem = str


def change_skill(draft: Draft, game: Game, sentence: said.ChangeSkill) -> Problem | None:
    """One skill for others, everywhere: in what players try, in what the game practises, in who acts."""

    def attempt(node: Node) -> Node:
        if isinstance(node, Switched):
            return attrs.evolve(node, sentence=attempt(node.sentence))
        if not isinstance(node, Attempt):
            return node
        swapped = (sentence.to if skill in sentence.skills else skill for skill in node.skills)
        return attrs.evolve(node, skills=tuple(dict.fromkeys(swapped)))

    def practised(node: Node) -> Node:
        if not isinstance(node, Skills):
            return node
        words = [sentence.to if each.text in sentence.skills else each.text for each in node.practised]
        return attrs.evolve(node, practised=tuple(Practice(word) for word in dict.fromkeys(words)))

    if draft.change("play", attempt, sentence.span):
        draft.change("head", practised, sentence.span)
        draft.change("when", lambda node: with_agents(node, sentence.skills, sentence.to), sentence.span)
    return None


def add_kit(draft: Draft, game: Game, sentence: said.AddKit) -> Problem | None:
    """More of a thing; what was placed by number is placed by number still where that can be."""
    line = kit_meant(game, sentence.what)
    if line is None:
        return f"there is no {sentence.what.text} to add to"
    return _more(draft, line, sentence.count.whole, sentence)


def take_kit(draft: Draft, game: Game, sentence: said.TakeKit) -> Problem | None:
    """Fewer of a thing; at least one stays."""
    line = kit_meant(game, sentence.what)
    if line is None:
        return f"there is no {sentence.what.text} to take away"
    if line.count - sentence.count.whole < 1:
        return f"nothing would be left of the {line.plural}"
    return _more(draft, line, -sentence.count.whole, sentence)


def _more(draft: Draft, line: GameKit, number: int, sentence: said.AddKit | said.TakeKit) -> Problem | None:
    def kit(node: Node) -> Node:
        if not (isinstance(node, Kit) and node.name.text in (line.name, line.plural)):
            return node
        count = attrs.evolve(node.count, value=node.count.value + number)
        name = Name(line.name if count.value == 1 else line.plural)
        singular = node.singular or (Name(line.name) if _irregular(line) and count.value > 1 else None)
        return attrs.evolve(node, count=count, name=name, singular=singular)

    def placing(node: Node) -> Node:
        if not (isinstance(node, Placing) and node.count is not None and _is(node.what.name, line)):
            return node
        name = attrs.evolve(node.what, name=Name(line.plural))
        if node.where.determiner in ("each", "every", "their"):
            return attrs.evolve(node, count=None, what=name)
        return attrs.evolve(node, count=attrs.evolve(node.count, value=node.count.value + number), what=name)

    draft.change("kit", kit, sentence.span)
    draft.change("set-up", placing, sentence.span)
    return None


def _irregular(line: GameKit) -> bool:
    return line.plural not in (line.name + "s", line.name + "es")


def _is(name: Name, line: GameKit) -> bool:
    return name.text in (line.name, line.plural)


def kit_meant(game: Game, name: Name) -> GameKit | None:
    """The kit line that a modifier's word means: by name, or the most numerous of its category."""
    meaning = game.vocabulary.get(name.text)
    if isinstance(meaning, KitMeaning):
        return game.kit_named(meaning.key)
    if isinstance(meaning, CategoryMeaning):
        lines = [line for line in game.kit if line.category == meaning.category]
        return max(lines, key=lambda line: line.count) if lines else None
    return None


def make_like(draft: Draft, game: Game, sentence: said.MakeLike) -> Problem | None:
    """All things of a kind are like another thing of the library's kit."""
    lines = _all_meant(game, sentence.what.name)
    if not lines:
        return f"there is no {sentence.what.name.text}"

    def kit(node: Node) -> Node:
        if isinstance(node, Kit) and any(_is(node.name, line) for line in lines):
            return attrs.evolve(node, determiner="a", like=Name(sentence.like.name.text))
        return node

    draft.change("kit", kit, sentence.span)
    return None


def scale_kit(draft: Draft, game: Game, sentence: said.ScaleKit) -> Problem | None:
    """All things of a kind are larger or smaller."""
    lines = _all_meant(game, sentence.what.name)
    if not lines:
        return f"there is no {sentence.what.name.text}"

    def kit(node: Node) -> Node:
        if isinstance(node, Kit) and any(_is(node.name, line) for line in lines):
            before = node.percent.value if node.percent else 100.0
            return attrs.evolve(node, percent=Quantity(before * sentence.percent.value / 100, "%"))
        return node

    draft.change("kit", kit, sentence.span)
    return None


def _all_meant(game: Game, name: Name) -> list[GameKit]:
    meaning = game.vocabulary.get(name.text)
    if isinstance(meaning, KitMeaning):
        return [game.kit_named(meaning.key)]
    if isinstance(meaning, CategoryMeaning):
        return [line for line in game.kit if line.category == meaning.category]
    return []


def make_court(draft: Draft, game: Game, sentence: said.MakeCourt) -> Problem | None:
    """Another court of the same cut."""

    def court(node: Node) -> Node:
        if isinstance(node, Court):
            return attrs.evolve(node, length=sentence.length, width=sentence.width)
        return node

    draft.change("space", court, sentence.span)
    return None


def scale_court(draft: Draft, game: Game, sentence: said.ScaleCourt) -> Problem | None:
    """A longer, shorter, wider or narrower court."""

    def court(node: Node) -> Node:
        if not isinstance(node, Court):
            return node
        part = "length" if sentence.dimension == "as long" else "width"
        before: Quantity = getattr(node, part)
        value = round(before.value * sentence.percent.value / 100, 2)
        after = attrs.evolve(before, value=value)
        return attrs.evolve(node, length=after) if part == "length" else attrs.evolve(node, width=after)

    draft.change("space", court, sentence.span)
    return None


def turn_switch(draft: Draft, game: Game, sentence: said.TurnSwitch) -> Problem | None:
    """A switch of the game turned on or off."""
    name = sentence.switch.lower()
    if name not in game.switches:
        return f"there is no switch called {name}"

    def switch(node: Node) -> Node:
        if isinstance(node, Switch) and node.name.text == name:
            return attrs.evolve(node, usually=f"usually {sentence.turn.removeprefix('turn ')}")
        return node

    draft.change("head", switch, sentence.span)
    return None


def block(draft: Draft, game: Game, line: Line) -> Problem | None:
    """Lines put in, put in the place of others about the same thing, or taken out."""
    sentence = line.sentence
    assert isinstance(sentence, said.Block)
    for inner in line.block:
        new = inner.sentence

        def same(old: Node, new: Node = new) -> bool:
            return topic(old) == topic(new) or _covers(game, new, old)

        if sentence.verb == "put in":
            draft.put(sentence.section, inner, sentence.span)
        elif sentence.verb == "replace in":
            draft.replace(sentence.section, same, inner, sentence.span)
        else:
            draft.take(sentence.section, same, sentence.span)
    return None


def _covers(game: Game, general: Node, particular: Node) -> bool:
    """Whether a rule for "a target" speaks of the same event as the game's rule for "a lantern"."""
    if not (isinstance(general, When) and isinstance(particular, When)):
        return False
    if type(general.event) is not type(particular.event) or general.condition != particular.condition:
        return False
    wide, narrow = (_speaks_of(game, rule) for rule in (general, particular))
    return isinstance(wide, CategoryMeaning) and isinstance(narrow, KitMeaning) and wide.category == narrow.category


def _speaks_of(game: Game, rule: When) -> Meaning | None:
    phrase = getattr(rule.event, "what", None) or getattr(rule.event, "who", None)
    return game.vocabulary.get(phrase.name.text) if isinstance(phrase, Np) else None


CHANGES: Mapping[type[Node], Callable[[Draft, Game, Line], Problem | None]] = {
    said.ChangeSkill: lambda draft, game, line: change_skill(draft, game, line.sentence),  # type: ignore[arg-type]
    said.AddKit: lambda draft, game, line: add_kit(draft, game, line.sentence),  # type: ignore[arg-type]
    said.TakeKit: lambda draft, game, line: take_kit(draft, game, line.sentence),  # type: ignore[arg-type]
    said.MakeLike: lambda draft, game, line: make_like(draft, game, line.sentence),  # type: ignore[arg-type]
    said.ScaleKit: lambda draft, game, line: scale_kit(draft, game, line.sentence),  # type: ignore[arg-type]
    said.MakeCourt: lambda draft, game, line: make_court(draft, game, line.sentence),  # type: ignore[arg-type]
    said.ScaleCourt: lambda draft, game, line: scale_court(draft, game, line.sentence),  # type: ignore[arg-type]
    said.TurnSwitch: lambda draft, game, line: turn_switch(draft, game, line.sentence),  # type: ignore[arg-type]
    said.Block: block,
}
