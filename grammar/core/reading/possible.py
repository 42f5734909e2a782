"""What a whole core shows that no single line does: lines that clash, and points that nobody gives."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from grammar.core.ends import Best, Most, Seats, Verdict
from grammar.core.game import Core, Play
from grammar.core.guards import Clock, Count, Guard, Points, counts_in
from grammar.core.limits import DIRECT, CountsOnly, Valid, counts_by_bounce
from grammar.core.play import Fetch
from grammar.core.precedence import Slot, Written, clashing, clashing_rests, goes_before, written
from grammar.core.reading.finish.meetings import meeting_of_whom
from grammar.core.reading.finish.places import worth_of_places
from grammar.core.reading.finish.who_is_there import counted_where_nobody_is_sent
from grammar.core.reading.play.fetching import fetched_by_nobody
from grammar.core.reading.set_up.begin_points import points_at_first
from grammar.core.reading.set_up.placed import places_of_things
from grammar.core.rotation import Occasion, Tries
from grammar.core.rules import Add, Becomes, Becoming, Go, Happening, Person, Rule
from grammar.core.values import Population, SideId
from grammar.finding import Finding, mistake
from grammar.said import Value, quoting, write
from grammar.span import Span

_SLOTS_SAID: Mapping[object, str] = {
    Written.RESULT: "who wins",
    Written.EVERYTHING: "that all begins again",
    SideId: "who scores how many points",
    "more points": "who has how many points more",
    Written.BALL: "where the ball goes",
    "balls": "where balls come and go",
    Written.THING: "what becomes of the thing that is knocked",
    "down": "which things stand up again",
    "lives": "who loses or wins a life",
    Person: "where a player goes",
    "playing": "where all players go",
    "waiting": "where those go who wait",
    "load": "where what is carried goes",
    "line": "which line holds from then on",
}


def impossible(core: Core) -> Iterator[Finding]:
    """All such mistakes, each with its line."""
    yield from _clashes(core)
    yield from _fetched_and_not(core)
    yield from _points_of_nobody(core)
    yield from _worth_twice(core)
    yield from points_at_first(core)
    yield from meeting_of_whom(core)
    yield from worth_of_places(core)
    yield from _innings_of_each(core)
    yield from _moved_on_twice(core)
    yield from places_of_things(core)
    yield from _bounces_of_no_account(core)
    yield from counted_where_nobody_is_sent(core)


def _bounces_of_no_account(core: Core) -> Iterator[Finding]:
    """How many bounce is said where a bounce makes no difference."""
    play = core.play
    hanging = (each for choice in play.choices for each in choice.hanging)
    values = (*play.rules, *play.valid, *hanging)
    asked = (isinstance(each, Rule) and isinstance(each.trigger, Happening) and each.trigger.bounced for each in values)
    if any(asked) or any(isinstance(each, CountsOnly) and each.valid in DIRECT for each in values):
        return
    only = any(isinstance(each, CountsOnly) and each.valid is Valid.AFTER_BOUNCE for each in values)
    for offer in play.offers:
        counts = only and any(counts_by_bounce(each.skill, each.aim) for each in offer.attempts)
        if offer.figures.bounced is not None and not (counts and offer.figures.chance is None):
            title = "Nothing depends on a bounce here: how many bounce first decides nothing."
            hint = "Leave that out, or say what happens after a bounce, such as: a hit after a bounce does not count"
            yield mistake("G-sense", title, core.lines[offer.lines[0]].span, hint)
            return


def _innings_of_each(core: Core) -> Iterator[Finding]:
    """Each side has each task as often as the other."""
    match = core.play.match
    if match.of_rounds:
        yield from _rounds_of_all(core)
    elif match.halves and len(core.play.sides) > 2 and match.change is Seats.TASKS:
        title = quoting("With {number} sides it is not clear who has whose task next.", number=len(core.play.sides))
        hint = quoting(
            "Take the line out, so that one turn is checked; how the sides take turns can stand in quotes under "
            '`play`, for people, such as: "Each side has each task once; the points of all turns count together."'
        )
        yield mistake("G-sense", title, core.lines[match.lines[0]].span, hint)
    elif match.halves and (match.parts < 2 or match.parts % 2):
        title = quoting("With {parts} innings one side has a task once more than the other.", parts=match.parts)
        place = core.lines[match.lines[0]].span
        yield mistake("G-sense", title, place, "Write an even number, such as: 4 innings")


def _rounds_of_all(core: Core) -> Iterator[Finding]:
    """Rounds that are all played: of two sides, at least two of them, and counted by what there is to count."""
    match, points = core.play.match, core.play.gives_points
    hint: Value
    if len(match.lines) > 1:
        title, hint = "Another line says how many rounds are played.", "Keep one of the two."
    elif len(core.play.sides) < 2:
        title = "Over several rounds the points of sides are added, not those of each player."
        hint = quoting(
            "Take the line out, so that one round is checked; how many are played can stand in quotes under `play`, "
            'for people, such as: "{parts} rounds are played; the points of all of them count together."',
            parts=match.parts,
        )
    elif match.parts < 2:
        title, hint = "One round is what is played anyway.", "Write 2 or more."
    elif match.by_points and not points and not match.places:
        title, hint = "Nobody scores points here.", write(f"{match.parts} rounds are played, more rounds wins")
    elif points and not match.by_points:
        title = "Where points are scored, those of all rounds count together."
        hint = write(f"{match.parts} rounds are played, more points over all wins", f"best of {match.parts} rounds")
    else:
        return
    yield mistake("G-sense", title, core.lines[match.lines[0]].span, hint)


def _moved_on_twice(core: Core) -> Iterator[Finding]:
    """Who has a task next is said once, and how many have one does not change otherwise."""
    said: dict[Population, int] = {}
    goes = [(go, rule.lines[0]) for rule in core.play.rules for go in rule.effects if isinstance(go, Go)]
    turned = [line for go, line in goes if go.becomes != Becoming()]
    for rotation in core.play.rotations:
        line, places = said.setdefault(rotation.who, rotation.lines[0]), tuple[Span, ...]()
        if line != rotation.lines[0]:
            title, places = "Two lines say who has this task next.", (core.lines[line].span,)
        elif isinstance(rotation.every, Tries) and rotation.who not in {offer.by for offer in core.play.offers}:
            title = "They try nothing, so that no attempts of theirs can be counted."
        elif rotation.onward is not None and turned:
            title = "Another line changes who has which task, so that it is not known how many move on."
            places = (core.lines[min(turned)].span,)
        else:
            continue
        place = core.lines[rotation.lines[0]].span
        hint = "Take one of the two lines out." if places else "Say after what time they change, such as: every 60 s"
        yield mistake("G-contradiction" if places else "G-sense", title, place, hint, *places)
        return


def _clashes(core: Core) -> Iterator[Finding]:
    """Two lines that say two things of the same, where nothing says which of them goes before."""
    alike = ((one, other) for one, other in clashing(core.play.rules) if goes_before(one, other) is None)
    rules = ((one, other) for one, other in alike if _at_the_same_times(one, other) and not one.granted)
    pairs = [(one.lines[0], other.lines[0], _said_of(written(one) & written(other))) for one, other in rules]
    rests = clashing_rests(core.play.rests)
    pairs += [(one.lines[0], other.lines[0], "where the ball comes to lie") for one, other in rests]
    for (first, second), what in {(first, second): what for first, second, what in reversed(pairs)}.items():
        if first != second:
            title = quoting("Two lines both say {what}, and neither goes before the other.", what=quoting(what))
            hint = "Join them into one line, take one out, or say with `while` when each holds."
            places = core.lines[second].span, core.lines[first].span
            yield mistake("G-contradiction", title, places[0], hint, *places[1:])


def _at_the_same_times(one: Rule, other: Rule) -> bool:
    """Whether nothing but the clock says when each holds, and for both the same."""
    return one.guard == other.guard and all(isinstance(count, Clock) for count in counts_in(one.guard))


def _said_of(both: frozenset[Slot]) -> str:
    """What two lines both write, in words: the first of what is most plainly said twice."""
    kinds = {slot if isinstance(slot, Written) else slot[0] if isinstance(slot, tuple) else type(slot) for slot in both}
    return next(said for kind, said in _SLOTS_SAID.items() if kind in kinds)


def _fetched_and_not(core: Core) -> Iterator[Finding]:
    """One line says that somebody fetches from there, another that nobody does, and neither is the narrower."""
    fetches = tuple(each for each in core.play.services if isinstance(each, Fetch) and not each.granted)
    for somebody, nobody in dict.fromkeys(fetched_by_nobody(fetches, core.play.unfetched)):
        title = "Two lines say who fetches from there: somebody and nobody."
        places = core.lines[somebody].span, (core.lines[nobody].span,)
        yield mistake("G-contradiction", title, places[0], "Take one out.", *places[1])


def _points_of_nobody(core: Core) -> Iterator[Finding]:
    """Points are asked for, and no rule gives any, or they are counted at the end, and nothing asks for them."""
    play = core.play
    if play.end_points:
        yield from _never_added_up(core)
    if any(isinstance(effect, Add) for rule in play.rules for effect in rule.effects):
        return
    for line in dict.fromkeys((*_asking(play), *(() if play.end_points else _compared(play)))):
        title = "No rule of this game gives a point."
        hint = 'Add to when, such as "a ball crosses the back line: the thrower\'s side scores 1 point".'
        yield mistake("G-no-points", title, core.lines[line].span, hint)


def _asking(play: Play) -> Iterator[int]:
    """The lines that ask for points."""
    guarded: list[tuple[Guard, tuple[int, ...]]] = [(end.guard, end.lines) for end in play.ends]
    guarded += [(offer.only, offer.lines) for offer in play.offers]
    guarded += [(rule.guard, rule.lines) for rule in play.rules]
    guarded += [(rule.trigger.guard, rule.lines) for rule in play.rules if isinstance(rule.trigger, Becomes)]
    yield from (lines[0] for guard, lines in guarded if _of_points(guard))
    of_points = (Occasion.POINT, Occasion.AGAINST)
    yield from (rotation.lines[0] for rotation in play.rotations if rotation.every in of_points)


def _never_added_up(core: Core) -> Iterator[Finding]:
    """What counts at the end, where nothing is won by who has more points then, or where it would never be settled."""
    play = core.play
    place = core.lines[play.end_points[0].lines[0]].span
    if not play.match.halves and not any(_compared(play)):
        title = "Points are counted at the end, and nothing asks who has more of them."
        hint = "Add to finish, such as: after 6 min: more points wins"
        yield mistake("G-no-points", title, place, hint)
    if play.bell is not None and play.bell.goes_on:
        title = "What lies somewhere at the end is counted once: no next point comes after it."
        hint = "Write: else a draw, or give the points when something arrives."
        yield mistake("G-contradiction", title, place, hint, core.lines[play.bell.lines[0]].span)


def _worth_twice(core: Core) -> Iterator[Finding]:
    """Two lines say what the same thing at the same place is worth at the end."""
    found = core.play.end_points
    pairs = ((one, two) for number, one in enumerate(found) for two in found[number + 1 :])
    twice = {
        (one.lines[0], two.lines[0])
        for one, two in pairs
        if one.side == two.side and type(one.count) is type(two.count) and _overlap(one.count, two.count)
    }
    for first, second in sorted(twice):
        title = "Another line says what this is worth at the end."
        places = core.lines[second].span, (core.lines[first].span,)
        yield mistake("G-contradiction", title, places[0], "Keep one of the two.", *places[1])


def _overlap(one: Count, two: Count) -> bool:
    return all(getattr(one, name, frozenset()) & getattr(two, name, frozenset()) for name in ("of", "at"))


def _compared(play: Play) -> Iterator[int]:
    """The lines by which whoever has more points wins."""
    decided = [(end.verdicts, end.lines) for end in (*play.ends, *((play.bell,) if play.bell else ()))]
    decided += [((play.tie.verdict,), play.tie.lines)] if play.tie else []
    yield from (lines[0] for verdicts, lines in decided if any(_counts_points(verdict) for verdict in verdicts))


def _of_points(guard: Guard) -> bool:
    return any(isinstance(count, Points) for count in counts_in(guard))


def _counts_points(verdict: Verdict) -> bool:
    counts = verdict.counts if isinstance(verdict, Most) else ()
    return isinstance(verdict, Best) or any(isinstance(count, Points) for _, count in counts)
