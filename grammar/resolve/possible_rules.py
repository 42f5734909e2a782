"""Rules that contradict each other, or speak of what is not there: seen without playing."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.finding import Finding, mistake
from grammar.game import Game
from grammar.meanings import AgentMeaning, CategoryMeaning, KitMeaning, LoadMeaning, PlayerMeaning, side_named
from grammar.said import Value, listed, perhaps_meant, quoting
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import Node, Np
from grammar.sentences.claims import Claim
from grammar.sentences.events import Arrives, Caught, Crosses, Knocked
from grammar.sentences.head import Switch, Switched
from grammar.sentences.play import HoldLimit, Take
from grammar.sentences.sides import PlacingOnStep
from grammar.sentences.then import Joins, TakenOver
from grammar.sentences.time import TheFirstTime
from grammar.sentences.when import When
from grammar.words import plural

_CATCHER = re.compile(r"\bcatcher\b")  # one: "catchers" are those who are called so


def contradictions(game: Game) -> Iterator[Finding]:
    """Two limits for one ball, or two lines that hold once for one event, cannot both hold."""
    seen: dict[str, Node] = {}
    for sentence in (*game.sentences("play"), *game.sentences("when")):
        if isinstance(sentence, HoldLimit):
            key = sentence.ball.words()
            title = quoting("Two lines say how long {ball} is held.", ball=key)
        elif isinstance(sentence, When) and isinstance(sentence.span_of_time, TheFirstTime):
            key = sentence.words().partition(":")[0]
            title = quoting("Two lines say what follows when {event} for the first time.", event=key.partition(", ")[2])
        else:
            continue
        if key in seen:
            hint = "Join them into one line, or take one out."
            yield mistake("G-contradiction", title, sentence.span, hint, seen[key].span)
        seen.setdefault(key, sentence)


def catcher_needs_catch(game: Game) -> Iterator[Finding]:
    """Only a caught ball has a catcher; only a hit player is `that player`."""
    by_word = isinstance(game.vocabulary.get("catcher"), AgentMeaning)  # else a side or a role is called so
    for rule in game.whens:
        event = rule.event.words()
        said = " and ".join(consequence.words() for consequence in rule.consequences)
        if by_word and "catcher" in said and not any(each in event for each in ("caught", "intercepted")):
            yield mistake(
                "G-nobody",
                quoting("Nobody catches when {event}.", event=event),
                rule.span,
                "Name the thrower, or that player.",
            )
        if not by_word and _CATCHER.search(said) and _caught_by_anybody(rule):
            title = "The catcher is whoever caught it, and others are called so on this sheet."
            hint = quoting(
                "Give those another name, such as ring catcher, or say who catches: {event} by a catcher.", event=event
            )
            yield mistake("G-nobody", title, rule.span, hint)
        spoken_of = ("is hit", "is touched", "is caught", "last life", "has lost", "fouls")
        if isinstance(rule.event, Crosses) and isinstance(game.meaning(rule.event.what.name), PlayerMeaning):
            who = rule.event.what.words()
            hint = quoting("Who steps over a line fouls. Write: {who} fouls: {said}", who=who, said=said)
            yield mistake("G-nobody", "A ball crosses, not a player.", rule.span, hint)
        elif "that player" in said and not any(each in event for each in spoken_of):
            yield mistake(
                "G-nobody",
                quoting("No player is spoken of when {event}.", event=event),
                rule.span,
                _whom_it_happens_to(game, rule),
            )


def _whom_it_happens_to(game: Game, rule: When) -> Value:
    """Who may be meant by that player where nobody is hit or touched."""
    if isinstance(rule.event, Arrives):
        name = rule.event.who.name.text
        if isinstance(game.meaning(rule.event.who.name), KitMeaning | CategoryMeaning | LoadMeaning):
            return "Whoever brings it is the carrier: write the carrier instead of that player."
        return quoting("Who arrives is called so: write the {name} instead of that player.", name=name)
    if isinstance(rule.event, Knocked):
        return "Who has done it is the thrower, whose it is its keeper, their side its side: name one of these."
    return "Name the thrower, if that is who is meant."


def _caught_by_anybody(rule: When) -> bool:
    """Whether a line is of what anybody catches: not by those who are called catchers, nor where they wait for it."""
    by_them = rule.doer is not None and _CATCHER.search(rule.doer.words())
    return not by_them and (isinstance(rule.event, Intercepted)
                            or (isinstance(rule.event, Caught) and rule.event.where is None))  # fmt: skip


def claims(game: Game) -> Iterator[Finding]:
    """A claim about more than there is can never hold."""
    for rule in game.sentences("finish"):
        for claim in _claims(rule):
            quantity = getattr(claim.quantity, "count", None)
            most = _most_of(game, claim)
            if quantity is not None and most is not None and quantity.value > most:
                yield mistake(
                    "G-too-many",
                    quoting(
                        "A side can have at most {most} of these; this line asks for {quantity}.",
                        most=most,
                        quantity=quantity.words(),
                    ),
                    claim.span,
                    "Ask for fewer, or add to the kit or the side.",
                )


def _claims(rule: Node) -> Iterator[Claim]:
    condition = getattr(rule, "condition", None)
    for way in condition.ways if condition else ():
        yield from way.claims


def _most_of(game: Game, claim: Claim) -> int | None:
    what = getattr(claim.counted, "what", None)
    meaning = game.meaning(what) if what is not None else None
    most = {side.name: side.most for side in game.sides}
    if isinstance(meaning, KitMeaning):
        line = game.kit_named(meaning.key)
        of_one = max((line.total(most, side) for side in most), default=line.count)
        taken = any(line in game.kit_meant(each.name) for said in game.all_of("play", Take) for each in said.phrases)
        return line.total(most) if taken or _change_sides(game, TakenOver) else of_one
    if isinstance(meaning, PlayerMeaning) and game.sides:
        return sum(most.values()) if _change_sides(game, Joins) else max(most.values())
    return None


def _change_sides(game: Game, how: type[Joins | TakenOver]) -> bool:
    """Whether any rule lets things, or players, join another side."""
    said = (each for rule in game.whens for each in rule.consequences if isinstance(each, how))
    return any(isinstance(each, TakenOver) or not isinstance(each.what, Np) for each in said)


def named_sides(game: Game) -> Iterator[Finding]:
    """Kit belongs to a side that there is."""
    for line in game.kit:
        if line.owner not in (None, "each") and side_named(game.vocabulary.get(line.owner or "")) is None:
            yield mistake(
                "G-unknown",
                quoting("There is no side called `{owner}`.", owner=line.owner),
                line.span,
                quoting("The sides are {sides}.", sides=listed(side.name for side in game.sides)),
            )


def switches(game: Game) -> Iterator[Finding]:
    """A sentence hangs only on a switch that the head names; a switch turns something."""
    used: set[str] = set()
    for section in ("play", "when", "finish"):
        for line in game.sheet.lines(section):
            sentence = line.sentence
            if not isinstance(sentence, Switched):
                continue
            used.add(sentence.name.text)
            if sentence.name.text not in game.switches:
                hint = perhaps_meant(sentence.name.text, game.switches) or quoting(
                    'Add to the head: "switch {name}, usually off".', name=sentence.name.text
                )
                yield mistake(
                    "G-unknown",
                    quoting("There is no switch called `{name}`.", name=sentence.name.text),
                    sentence.name.span,
                    hint,
                )
    for switch in game.sheet.all_of("head", Switch):
        if switch.name.text not in used:
            title = quoting("The switch `{name}` turns nothing.", name=switch.name.text)
            more = quoting('Begin a rule with "with {name}, ...", or leave the switch out.', name=switch.name.text)
            yield mistake("G-switch", title, switch.span, more)


def tracks(game: Game) -> Iterator[Finding]:
    """Things stand on a step that their track has."""
    for placing in game.all_of("set-up", PlacingOnStep):
        track = game.track_named(placing.track.name.text)
        if track is None:
            yield mistake(
                "G-sort",
                quoting("`{name}` is not a track.", name=placing.track.name.text),
                placing.track.span,
                'Say in space, such as "drift track: 8 steps, from north to south".',
            )
        elif not 0 < placing.step.value < track.steps:
            yield mistake(
                "G-range",
                quoting(
                    "The {name} has steps 1 to {number} between its homes.", name=track.name, number=track.steps - 1
                ),
                placing.step.span,
                "Write one of these.",
                track.span,
            )


def odd_names(game: Game) -> Iterator[Finding]:
    """A role needs no more players than its side has."""
    for role in game.roles:
        small = [side for side in game.sides if role.side in (None, side.name) and role.least > side.least]
        for side in small[:1]:
            title = quoting(
                "The {name} may have only {least} players; {least_2} would be {plural}.",
                name=side.name,
                least=side.least,
                least_2=role.least,
                plural=plural(role.name),
            )
            yield mistake("G-too-many", title, role.span, "Ask for fewer.", side.span)
