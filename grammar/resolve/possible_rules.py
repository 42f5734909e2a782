"""Rules that contradict each other, or speak of what is not there: seen without playing."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.meanings import AgentMeaning, KitMeaning, PlayerMeaning, side_named
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
from grammar.span import Span
from grammar.words import did_you_mean, plural

_CATCHER = re.compile(r"\bcatcher\b")  # one: "catchers" are those who are called so


def _error(code: str, title: str, place: Span, hint: str, *others: Span) -> Finding:
    return Finding(code, Severity.ERROR, title, place, hint, others)


def contradictions(game: Game) -> Iterator[Finding]:
    """Two limits for one ball, or two lines that hold once for one event, cannot both hold."""
    seen: dict[str, Node] = {}
    for sentence in (*game.sentences("play"), *game.sentences("when")):
        if isinstance(sentence, HoldLimit):
            key, title = sentence.ball.words(), f"Two lines say how long {sentence.ball.words()} is held."
        elif isinstance(sentence, When) and isinstance(sentence.span_of_time, TheFirstTime):
            key = sentence.words().partition(":")[0]
            title = f"Two lines say what follows when {key.partition(', ')[2]} for the first time."
        else:
            continue
        if key in seen:
            hint = "Join them into one line, or take one out."
            yield _error("G-contradiction", title, sentence.span, hint, seen[key].span)
        seen.setdefault(key, sentence)


def catcher_needs_catch(game: Game) -> Iterator[Finding]:
    """Only a caught ball has a catcher; only a hit player is `that player`."""
    by_word = isinstance(game.vocabulary.get("catcher"), AgentMeaning)  # else a side or a role is called so
    for rule in game.whens:
        event = rule.event.words()
        said = " and ".join(consequence.words() for consequence in rule.consequences)
        if by_word and "catcher" in said and not any(each in event for each in ("caught", "intercepted")):
            yield _error("G-nobody", f"Nobody catches when {event}.", rule.span, "Name the thrower, or that player.")
        if not by_word and _CATCHER.search(said) and _caught_by_anybody(rule):
            title = "The catcher is whoever caught it, and others are called so on this sheet."
            hint = f"Give those another name, such as ring catcher, or say who catches: {event} by a catcher."
            yield _error("G-nobody", title, rule.span, hint)
        spoken_of = ("is hit", "is touched", "is caught", "last life", "has lost", "fouls")
        if isinstance(rule.event, Crosses) and isinstance(game.meaning(rule.event.what.name), PlayerMeaning):
            hint = f"Who steps over a line fouls. Write: a player fouls: {said}"
            yield _error("G-nobody", "A ball crosses, not a player.", rule.span, hint)
        elif "that player" in said and not any(each in event for each in spoken_of):
            yield _error("G-nobody", f"No player is spoken of when {event}.", rule.span, _whom_it_happens_to(rule))


def _whom_it_happens_to(rule: When) -> str:
    """Who may be meant by that player where nobody is hit or touched."""
    if isinstance(rule.event, Arrives):
        return f"Who arrives is called so: write the {rule.event.who.name.text} instead of that player."
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
                yield _error(
                    "G-too-many",
                    f"A side can have at most {most} of these; this line asks for {quantity.words()}.",
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
            yield _error(
                "G-unknown",
                f"There is no side called `{line.owner}`.",
                line.span,
                f"The sides are {', '.join(side.name for side in game.sides)}.",
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
                hint = did_you_mean(sentence.name.text, game.switches)
                hint = hint or f'Add to the head: "switch {sentence.name.text}, usually off".'
                yield _error(
                    "G-unknown", f"There is no switch called `{sentence.name.text}`.", sentence.name.span, hint
                )
    for switch in game.sheet.all_of("head", Switch):
        if switch.name.text not in used:
            title = f"The switch `{switch.name.text}` turns nothing."
            hint = f'Begin a rule with "with {switch.name.text}, ...", or leave the switch out.'
            yield _error("G-switch", title, switch.span, hint)


def tracks(game: Game) -> Iterator[Finding]:
    """Things stand on a step that their track has."""
    for placing in game.all_of("set-up", PlacingOnStep):
        track = game.track_named(placing.track.name.text)
        if track is None:
            yield _error(
                "G-sort",
                f"`{placing.track.name.text}` is not a track.",
                placing.track.span,
                'Say in space, such as "drift track: 8 steps, from north to south".',
            )
        elif not 0 < placing.step.value < track.steps:
            yield _error(
                "G-range",
                f"The {track.name} has steps 1 to {track.steps - 1} between its homes.",
                placing.step.span,
                "Write one of these.",
                track.span,
            )


def odd_names(game: Game) -> Iterator[Finding]:
    """A role needs no more players than its side has."""
    for role in game.roles:
        small = [side for side in game.sides if role.side in (None, side.name) and role.least > side.least]
        for side in small[:1]:
            title = f"The {side.name} may have only {side.least} players; {role.least} would be {plural(role.name)}."
            yield _error("G-too-many", title, role.span, "Ask for fewer.", side.span)
