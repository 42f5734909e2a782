"""Mistakes of meaning that need no play to be seen: impossible counts, contradictions, missing pieces.

One function for each; all are in CHECKS. Each takes a game whose names are all known.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator

from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning, SideMeaning
from grammar.sentences.base import Node, Quantity
from grammar.sentences.finish import After, Claim, FirstTo, OpenEnded
from grammar.sentences.head import Ages
from grammar.sentences.play import Attempt, CaughtChance, HoldLimit, PartOf, SucceedChance
from grammar.sentences.sides import Placing
from grammar.sentences.space import Court
from grammar.sentences.when import When
from grammar.span import Span
from grammar.words import count


def _error(code: str, title: str, place: Span, hint: str, *others: Span) -> Finding:
    return Finding(code, Severity.ERROR, title, place, hint, others)


def one_of_each(game: Game) -> Iterator[Finding]:
    """A sheet has one court, one line of ages, one clock."""
    once: dict[type[Node], str] = {Court: "court", Ages: "line of ages", After: "clock", OpenEnded: "open end"}
    for section in ("head", "space", "finish"):
        first: dict[type[Node], Node] = {}
        for sentence in game.sentences(section):
            kind = type(sentence)
            if kind in once and kind in first:
                yield _error(
                    "G-twice",
                    f"This game has a second {once[kind]}.",
                    sentence.span,
                    "Keep one of the two lines.",
                    first[kind].span,
                )
            first.setdefault(kind, sentence)
    if not any(game.all_of("space", Court)):
        yield _error(
            "G-missing",
            "The space says nothing of the court.",
            game.sheet.span,
            'Add a line such as "court 18 m by 9 m, halved across".',
        )


def ranges(game: Game) -> Iterator[Finding]:
    """Ages run upwards and are those of pupils; the court is of a size that a hall can have."""
    for ages in game.all_of("head", Ages):
        if ages.least.value > ages.most.value:
            yield _error(
                "G-range",
                f"Ages {ages.least.words()} to {ages.most.words()} run backwards.",
                ages.span,
                f"Write: ages {ages.most.words()} to {ages.least.words()}",
            )
        elif not 3 <= ages.least.value <= ages.most.value <= 20:
            yield _error("G-range", "These are not the ages of pupils.", ages.span, "Write ages from 3 to 20.")
    for court in game.all_of("space", Court):
        if not all(2 <= side.metres <= 60 for side in (court.length, court.width)):
            yield _error(
                "G-range",
                f"A hall has no court of {court.length.words()} by {court.width.words()}.",
                court.span,
                "Write lengths from 2 m to 60 m.",
            )
    for area in game.areas:
        if area.depth_m is not None and game.halved and not 0 < area.depth_m <= game.court_m[0] / 2:
            yield _error(
                "G-range",
                f"The {area.name} is deeper than a half of the court.",
                area.span,
                f"A half is {game.court_m[0] / 2:g} m deep.",
            )


def chances(game: Game) -> Iterator[Finding]:
    """ "3 in 5" is a chance; "6 in 5" is none."""
    for attempt in game.all_of("play", Attempt):
        for part in attempt.details:
            if (
                isinstance(part, SucceedChance | CaughtChance | PartOf)
                and not 0 <= part.times.value <= part.of.value > 0
            ):
                yield _error(
                    "G-chance",
                    f"`{part.words()}` is not possible.",
                    part.span,
                    "The first number is at most the second.",
                )


def whole_numbers(game: Game) -> Iterator[Finding]:
    """Players, kit and points are counted in whole numbers."""
    for rule in game.all_of("finish", FirstTo):
        yield from _whole(rule.points, 1, "points")
    for placing in game.placings:
        if placing.count is not None:
            yield from _whole(placing.count, 1, placing.what.name.text)


def _whole(number: Quantity, least: int, what: str) -> Iterator[Finding]:
    if number.value != int(number.value) or not least <= number.value <= 1000:
        yield _error(
            "G-count",
            f"`{number.words()} {what}` cannot be counted.",
            number.span,
            f"Write a whole number from {least} to 1000.",
        )


def halves(game: Game) -> Iterator[Finding]:
    """Only a halved court has halves."""
    if game.halved:
        return
    for section in ("set-up", "play"):
        for sentence in game.sentences(section):
            if " half" in sentence.words() or "halves" in sentence.words():
                yield _error(
                    "G-half",
                    "This court has no halves.",
                    sentence.span,
                    'Write "court ... , halved across", or name a zone.',
                )


def placed_kit(game: Game) -> Iterator[Finding]:
    """No more is placed than the kit has, and every ball and target has a place."""
    placed: Counter[str] = Counter()
    rest: set[str] = set()
    where: dict[str, Placing] = {}
    for placing in game.placings:
        meaning = game.meaning(placing.what.name)
        keys = (
            [meaning.key]
            if isinstance(meaning, KitMeaning)
            else [
                line.name
                for line in game.kit
                if isinstance(meaning, CategoryMeaning) and line.category == meaning.category
            ]
        )
        for key in keys:
            where.setdefault(key, placing)
            if placing.count is None:
                rest.add(key)
            else:
                placed[key] += placing.count.whole * _repeats(game, placing, key)
    for line in game.kit:
        total = line.count * (len(game.sides) if line.owner == "each" else 1)
        if placed[line.name] > total:
            yield _error(
                "G-too-many",
                f"The set-up places {count(placed[line.name], line.name, line.plural)}; the kit has {total}.",
                where[line.name].span,
                "Place fewer, or add to the kit.",
                line.span,
            )
        elif line.category in ("target", "body") and line.name not in where:
            yield _error(
                "G-no-place",
                f"The set-up does not say where the {line.plural} stand.",
                line.span,
                f'Add to set-up, such as "{line.plural} on the back line of their side, evenly spaced".',
            )
        elif line.category == "ball" and line.name not in rest and line.name in where and placed[line.name] < total:
            title = f"The set-up places {placed[line.name]} of {count(total, line.name, line.plural)}."
            yield _error(
                "G-no-place", title, line.span, "Say where the others lie at the start.", where[line.name].span
            )
        elif line.category == "ball" and line.name not in where:
            yield _error(
                "G-no-place",
                f"The set-up does not say where the {line.plural} lie.",
                line.span,
                f'Add to set-up, such as "{line.plural} in the middle".',
            )


def _repeats(game: Game, placing: Placing, key: str) -> int:
    """In how many places the phrase puts its count: "in each half" is two."""
    each = placing.where.determiner in ("each", "every", "their") or placing.what.owner is not None
    return len(game.sides) if each and game.kit_named(key).owner in (None, "each") else 1


def contradictions(game: Game) -> Iterator[Finding]:
    """Two rules for one event, or two limits for one ball, cannot both hold."""
    seen: dict[tuple[str, str], Node] = {}
    for section in ("play", "when"):
        for sentence in game.sentences(section):
            key = ""
            if isinstance(sentence, When) and sentence.condition is None:
                key = sentence.event.words()
            elif isinstance(sentence, HoldLimit):
                key = sentence.ball.words()
            if not key:
                continue
            if (section, key) in seen:
                yield _error(
                    "G-contradiction",
                    f"Two lines say what follows when {key}."
                    if section == "when"
                    else f"Two lines say how long {key} is held.",
                    sentence.span,
                    "Join them into one line, or take one out.",
                    seen[section, key].span,
                )
            seen.setdefault((section, key), sentence)


def catcher_needs_catch(game: Game) -> Iterator[Finding]:
    """Only a caught ball has a catcher; only a hit player is `that player`."""
    for rule in game.whens:
        event = rule.event.words()
        said = " and ".join(consequence.words() for consequence in rule.consequences)
        if "catcher" in said and "caught" not in event:
            yield _error("G-nobody", f"Nobody catches when {event}.", rule.span, "Name the thrower, or that player.")
        if "that player" in said and not ("is hit" in event or "is caught" in event):
            yield _error(
                "G-nobody",
                f"No player is spoken of when {event}.",
                rule.span,
                "Name the thrower instead of that player.",
            )


def points_claimed(game: Game) -> Iterator[Finding]:
    """A finish that counts points needs a rule that gives points."""
    scored = any(" scores " in f" {rule.words()} " or " loses " in rule.words() for rule in game.whens)
    for rule in game.sentences("finish"):
        if "points" in rule.words() and not scored:
            yield _error(
                "G-no-points",
                "No rule of this game gives a point.",
                rule.span,
                'Add to when, such as "a ball crosses the back line: the thrower\'s side scores 1 point".',
            )


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
    if isinstance(meaning, KitMeaning):
        return game.kit_named(meaning.key).count
    if isinstance(meaning, PlayerMeaning) and game.sides:
        return max(side.most for side in game.sides)
    return None


def named_sides(game: Game) -> Iterator[Finding]:
    """Kit belongs to a side that there is."""
    for line in game.kit:
        if line.owner not in (None, "each") and not isinstance(
            game.vocabulary.get(line.owner or ""), SideMeaning | PlayerMeaning | PlaceMeaning
        ):
            yield _error(
                "G-unknown",
                f"There is no side called `{line.owner}`.",
                line.span,
                f"The sides are {', '.join(side.name for side in game.sides)}.",
            )


CHECKS: tuple[Callable[[Game], Iterator[Finding]], ...] = (
    one_of_each,
    ranges,
    chances,
    whole_numbers,
    halves,
    placed_kit,
    contradictions,
    catcher_needs_catch,
    points_claimed,
    claims,
    named_sides,
)


def possible_findings(game: Game) -> Iterator[Finding]:
    """All mistakes of meaning of a game."""
    for check in CHECKS:
        yield from check(game)
