"""Finish sentences → ends, the clock, and how far points are counted."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.claims import counted_places, lower_condition, speaks_of_every_side
from compose.net.lower.moment import Moment, side_of
from compose.net.lower.tokens import POINTS_COUNTED_TO, does
from compose.net.net import All, Bell, Comparison, Condition, End, Rule
from grammar.game import Game
from grammar.sentences import finish, play, when
from grammar.sentences.base import SideNamed


def _wins(side: str) -> str:
    return does(side, "wins", "win")


def points_counted_to(game: Game) -> int:
    """How far points matter: as far as any sentence asks for them.

    Where points end no round, a fixed bound stands for "however many".
    """
    ending = [rule.points.whole for rule in game.all_of("finish", finish.FirstTo)]
    for rule in game.sentences("finish"):
        if isinstance(rule, finish.WinWhen | finish.LoseWhen | finish.EndsWhen):
            ending += _points_asked(claim for way in rule.condition.ways for claim in way.claims)
    asked = [] if ending else [POINTS_COUNTED_TO]
    for event in game.whens:
        said = [event.event.claim] if isinstance(event.event, when.Becomes) else []
        said += [claim for way in event.condition.ways for claim in way.claims] if event.condition else []
        asked += _points_asked(iter(said))
    for attempt in game.all_of("play", play.Attempt):
        only = attempt.told(play.OnlyWhen)
        if isinstance(only, play.OnlyWhen):
            asked += _points_asked(claim for way in only.condition.ways for claim in way.claims)
    return max((*ending, *asked))


def _points_asked(claims: Iterator[finish.Claim]) -> list[int]:
    return [
        claim.quantity.count.whole
        for claim in claims
        if isinstance(claim.counted, finish.CountedPoints)
        and isinstance(claim.quantity, finish.Exactly | finish.AtLeast | finish.AtMost)
    ]


def lower_ends(builder: Builder, counted_to: int, result_place: int | None) -> None:
    """All ends in the order of the sheet; a result that a rule gives at once comes first."""
    sentences = builder.game.sentences("finish")
    wins: list[End] = []
    for sentence in sentences:
        wins.extend(_ends(builder, sentence, counted_to))
    for sentence in sentences:
        if isinstance(sentence, finish.BothAtOnce):
            builder.ends.extend(_both_at_once(builder, sentence, wins))
    if result_place is not None:
        builder.ends.extend(_at_once(builder, result_place))
    builder.ends.extend(wins)


def _at_once(builder: Builder, result_place: int) -> Iterator[End]:
    for number, side in enumerate(builder.side_names, start=1):
        rule = next(
            builder.rule(each)
            for each in builder.game.whens
            if any(isinstance(said, finish.SideWins | when.SideLoses) for said in each.consequences)
        )
        guard = Comparison(((1, result_place),), "==", number)
        yield End(f"{_wins(side)} by a rule of the game", side, guard, rule, "a rule ends the round")


def _ends(builder: Builder, sentence: object, counted_to: int) -> Iterator[End]:
    match sentence:
        case finish.FirstTo():
            rule = builder.rule(sentence)
            for side in builder.side_names:
                enough = Comparison(((1, builder.index(("points", side))),), ">=", sentence.points.whole)
                yield End(f"{_wins(side)}: first to {sentence.points.words()} points", side, enough, rule, "points")
        case finish.WinWhen() | finish.LoseWhen():
            yield from _won_or_lost(builder, sentence, counted_to)
        case finish.EndsWhen():
            rule = builder.rule(sentence)
            for side in builder.side_names:
                guard = lower_condition(builder, sentence.condition, side, counted_to)
                results = (sentence.result,) if sentence.result else ()
                yield from _results(builder, results, guard, rule, f"{side}: {sentence.condition.words()}", side)


def _won_or_lost(builder: Builder, sentence: finish.WinWhen | finish.LoseWhen, counted_to: int) -> Iterator[End]:
    rule = builder.rule(sentence)
    sides = builder.side_names
    if not speaks_of_every_side(sentence.side) and isinstance(sentence.side, SideNamed):
        sides = (side_of(builder, sentence.side, Moment(sides[0], None, sides[-1], "none", "")),)
    for side in sides:
        guard = lower_condition(builder, sentence.condition, side, counted_to)
        words = sentence.condition.words()
        if isinstance(sentence, finish.WinWhen):
            yield End(f"{_wins(side)}: {words}", side, guard, rule, words)
        else:
            for other in builder.others(side):
                lost = f"{does(side, 'loses', 'lose')}: {words}"
                yield End(f"{_wins(other)}, for {lost}", other, guard, rule, _of_the_loser(words))


def _of_the_loser(condition: str) -> str:
    """The condition by which a side loses, told as a way in which another wins."""
    it, _, rest = condition.partition(" ")
    return f"the loser {rest}" if it == "it" else f"the loser: {condition}"


def _both_at_once(builder: Builder, sentence: finish.BothAtOnce, wins: list[End]) -> Iterator[End]:
    rule = builder.rule(sentence)
    for number, first in enumerate(wins):
        for second in wins[number + 1 :]:
            if first.winner and second.winner and first.winner != second.winner:
                both = All((first.guard, second.guard))
                yield from _results(builder, (sentence.result,), both, rule, "both at once")


def _results(
    builder: Builder,
    results: tuple[finish.Result, ...],
    held: Condition | None,
    rule: Rule,
    words: str,
    spoken_of: str | None = None,
) -> Iterator[End]:
    """The ends that results give where `held` holds of the side spoken of; the first that decides, decides."""
    one = spoken_of or builder.side_names[0]
    for result in results or (finish.Draw(),):
        match result:
            case finish.NobodyWins():
                yield End(f"nobody wins: {words}", None, held or All(), rule, "nobody wins")
            case finish.Draw():
                yield End(f"a draw: {words}", None, held or All(), rule, "a draw")
            case finish.SideWins():
                side = side_of(builder, result.side, Moment(one, None, (builder.others(one) or (one,))[0], "none", ""))
                yield End(f"{_wins(side)}: {words}", side, held or All(), rule, result.words())
            case finish.MoreWins():
                for side in builder.side_names:
                    more = _more(builder, result, side)
                    guard = All((held, more)) if held else more
                    yield End(f"{_wins(side)}: {words}, {result.words()}", side, guard, rule, result.words())
    if results and isinstance(results[-1], finish.MoreWins):
        yield End(f"a draw: {words}", None, held or All(), rule, "a draw")


def _more(builder: Builder, result: finish.MoreWins, side: str) -> Condition:
    sign = 1 if result.more == "more" else -1
    own = counted_places(builder, result.counted, side)
    parts = []
    for other in builder.others(side):
        against = counted_places(builder, result.counted, other)
        terms = tuple((sign, place) for place in own) + tuple((-sign, place) for place in against)
        parts.append(Comparison(terms, ">=", 1))
    return All(tuple(parts))


def lower_bell(builder: Builder) -> Bell | None:
    """The clock of the game, where it has one."""
    for sentence in builder.game.all_of("finish", finish.After):
        rule = builder.rule(sentence)
        results = tuple(_results(builder, sentence.results, None, rule, f"after {sentence.time.words()}"))
        return Bell(sentence.time.seconds, results, rule)
    return None
