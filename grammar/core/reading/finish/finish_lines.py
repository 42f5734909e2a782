"""The lines of the finish → ends, the clock, the tie rule and the match."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.ends import (
    Bell,
    Best,
    Deciding,
    End,
    Left,
    Lost,
    Match,
    Meeting,
    Most,
    NextKnocked,
    NoWinner,
    Seats,
    Tie,
    Verdict,
    Won,
)
from grammar.core.guards import Compare, Points, Relation
from grammar.core.play import PointsCount
from grammar.core.reading.finish.next_knocked import decided, decided_by
from grammar.core.reading.phrases.claims import read_condition, read_count
from grammar.core.reading.sheet.reader import Reader, seconds
from grammar.core.reading.sheet.whose import Claimed, Senseless, Spoken, Whose, the_one, whose_side
from grammar.core.rules import Rule
from grammar.core.values import SideId
from grammar.said import quoting, write
from grammar.sentences import claims, finish
from grammar.sentences.base import AnySide, Node, SideRef


def read_end(reader: Reader, sentence: Node, line: int) -> Iterator[End]:
    """The ends of a line: one for each side of which it speaks."""
    match sentence:
        case finish.FirstTo():
            for side in reader.side_ids:
                enough = Compare(Points(side), Relation.AT_LEAST, sentence.points.whole)
                yield End(enough, (Won(side),), (line,))
        case finish.WinWhen():
            for side, spoken, each in _in_turn(reader, sentence.side, sentence.condition):
                winner = _winner(reader, sentence.side, side)
                yield End(read_condition(reader, sentence.condition, spoken, each), (Won(winner),), (line,))
        case finish.LoseWhen():
            for side, spoken, each in _in_turn(reader, sentence.side, sentence.condition):
                winner = _only_other(reader, sentence.side, _winner(reader, sentence.side, side))
                yield End(read_condition(reader, sentence.condition, spoken, each), (Won(winner),), (line,))
        case finish.EndsWhen():
            yield from _ends_when(reader, sentence, line)


def _in_turn(reader: Reader, subject: AnySide, condition: claims.Condition) -> Iterator[tuple[SideId, Spoken, bool]]:
    """The sides that a sentence speaks of in turn; whether "a side" in its condition is that side."""
    said = whose_side(reader.game, subject)
    if said.whose is Whose.NAMED:
        assert said.side is not None
        yield said.side, reader.of_one(said.side), False
        return
    if said.whose not in (Whose.ANY, Whose.ONE_EACH, Whose.OTHER, Whose.THAT):
        raise Senseless(
            subject, "Nobody has acted when `{subject}` is said here.", write("a side"), subject=subject.words()
        )
    forms = _forms(reader, condition)
    for form in forms:
        if isinstance(form.node, SideRef) and form.node.determiner == "any" and not form.node.other:
            raise Senseless(form.node, "`any side`: it, or the other one?", write("it", "the other side"))
    if said.whose in (Whose.OTHER, Whose.THAT) and Whose.ANY not in {form.whose for form in forms}:
        raise Senseless(subject, "`{said}`: of no side has been spoken.", write("a side wins when …"))
    for side in reader.side_ids:
        yield side, reader.of_one(side), True


def _forms(reader: Reader, condition: claims.Condition) -> list[Claimed]:
    return [whose_side(reader.game, claim.side) for way in condition.ways for claim in way.claims]


def _winner(reader: Reader, subject: AnySide, side: SideId) -> SideId:
    """The side itself, unless the sentence says that the other side wins."""
    if whose_side(reader.game, subject).whose is Whose.OTHER:
        return _only_other(reader, subject, side)
    return side


def _only_other(reader: Reader, node: Node, side: SideId) -> SideId:
    others = reader.others(side)
    if len(others) != 1:
        raise Senseless(
            node,
            "{number} other sides are left, of which none has won.",
            "Say which side wins, and when.",
            number=len(others),
        )
    return next(iter(others))


def _ends_when(reader: Reader, sentence: finish.EndsWhen, line: int) -> Iterator[End]:
    forms = {form.whose for form in _forms(reader, sentence.condition)}
    named = {form.side for form in _forms(reader, sentence.condition) if form.side is not None}
    results = (sentence.result,) if sentence.result else (finish.Draw(),)
    if forms & {Whose.ANY, Whose.THAT}:
        spoken = [(reader.of_one(side), True) for side in reader.side_ids]
    elif len(named) == 1:
        spoken = [(reader.of_one(next(iter(named))), False)]
    else:
        spoken = [(Spoken(reader.side_ids), False)]
    for of, each in spoken:
        guard = read_condition(reader, sentence.condition, of, each)
        yield End(guard, read_verdicts(reader, results, of), (line,))


def read_verdicts(reader: Reader, results: tuple[finish.Result, ...], spoken: Spoken) -> tuple[Verdict, ...]:
    """What decides, in order; where nothing does it is a draw."""
    found: list[Verdict] = []
    for result in results:
        if isinstance(result, finish.NextPointWins | finish.NextKnockedWins) and not found:
            raise Senseless(result, "Only the clock leaves a level score.", "Say who wins, or write: a draw")
        if found and not isinstance(found[-1], Most):
            raise Senseless(result, "What stands before it decides already.", "Leave it out.")
        found.append(_verdict(reader, result, spoken))
    return (*found, NoWinner.DRAW) if isinstance(found[-1], Most) else tuple(found)


def _verdict(reader: Reader, result: finish.Result, spoken: Spoken) -> Verdict:
    match result:
        case finish.Draw():
            return NoWinner.DRAW
        case finish.NextPointWins():
            return Deciding.NEXT_POINT
        case finish.NextKnockedWins():
            return NextKnocked(frozenset(decided_by(reader, result)))
        case finish.NobodyWins():
            return NoWinner.NOBODY
        case finish.SideWins():
            said = whose_side(reader.game, result.side)
            if said.whose is Whose.ANY:
                raise Senseless(
                    result.side, "`{said}` could be any side.", "Name it, or say who has more of something."
                )
            return Won(the_one(said, spoken.meant(said, frozenset())))
        case finish.SideLoses():
            return _loses(reader, result, spoken)
        case finish.BestWins():
            if not reader.solo:
                title = "Points are counted for each side, not for each player."
                raise Senseless(result, title, write("more points wins"))
            return Best(reader.side_ids[0])
        case finish.LeftWin():
            if not reader.solo:
                title = "Where sides play a side wins, not those of it who are left."
                raise Senseless(result, title, write("more players in wins"))
            return Left(reader.side_ids[0])
        case finish.MoreWins():
            if len(reader.sides) < 2:
                best = isinstance(result.counted, claims.CountedPoints) and reader.solo
                hint = "the player with the most points wins" if best else "nobody wins"
                raise Senseless(result, "There is only one side, so that none has more.", write(hint))
            counts = frozenset(
                (side, read_count(reader, result.counted, side, evolve(reader.of_one(side), that=None)))
                for side in reader.side_ids
            )
            return Most(counts, result.more == "more")


def _loses(reader: Reader, result: finish.SideLoses, spoken: Spoken) -> Verdict:
    """The other side has won; where there is none, nobody has, and this side has lost."""
    said = whose_side(reader.game, result.side)
    if said.whose is Whose.ANY:
        raise Senseless(result.side, "`{said}` could be any side.", "Name it, or say who has more of something.")
    side = the_one(said, spoken.meant(said, frozenset()))
    return Won(_only_other(reader, result, side)) if reader.others(side) else Lost(side)


def read_bell(reader: Reader, sentence: finish.After, line: int) -> Iterator[Bell | Rule | PointsCount]:
    """The clock."""
    *others, last = sentence.results
    if isinstance(last, finish.NextPointWins | finish.NextKnockedWins):
        of_points = [
            each
            for each in others
            if isinstance(each, finish.MoreWins) and (each.more, type(each.counted)) == ("more", claims.CountedPoints)
        ]
        if len(others) != 1 or not of_points:
            level = f"more points wins, else {last.words()}"
            offered = "the player with the most points wins" if len(reader.sides) == 1 else level
            hint = write(f"after {sentence.time.words()}: {offered}")
            raise Senseless(last, "`{said}` decides only where points were level.", hint)
    for parts in reader.game.sentences("finish"):
        length = parts.length if isinstance(parts, finish.Halves | finish.Innings) else None
        if length is not None and seconds(length) != seconds(sentence.time):
            title = quoting("`{said}`: the clock that ends each of them says otherwise.", said=parts.words())
            results = sentence.words().partition(": ")[2]
            raise Senseless(sentence.time, title, write(f"after {length.words()}: {results}"))
    yield Bell(seconds(sentence.time), read_verdicts(reader, sentence.results, Spoken(reader.side_ids)), (line,))
    if isinstance(last, finish.NextKnockedWins):
        yield from decided(reader, last, seconds(sentence.time), line)


def read_tie(reader: Reader, sentence: finish.BothAtOnce, line: int) -> Iterator[Tie]:
    """Two winners with one move."""
    yield Tie(read_verdicts(reader, (sentence.result,), Spoken(reader.side_ids))[0], (line,))


_CHANGED = {None: Seats.NOTHING, "the sides change tasks": Seats.TASKS, "the sides change ends": Seats.ENDS}


_GROUPS = {"one side rests": (3, 1), "two sides rest": (4, 1), "four sides on two courts": (4, 2)}


def read_match(sentences: list[tuple[Node, int]]) -> Match:
    """Rounds, halves, and what is exchanged between them."""
    match = Match()
    for sentence, line in sentences:
        lines = (*match.lines, line)
        match sentence:
            case finish.BestOf():
                match = evolve(match, rounds=sentence.rounds.whole, lines=lines)
            case finish.Halves():
                match = evolve(match, halves=True, change=_CHANGED[sentence.change], lines=lines)
            case finish.Innings():
                parts = sentence.number.whole
                match = evolve(match, halves=True, parts=parts, of_innings=True, change=Seats.TASKS, lines=lines)
            case finish.RoundsPlayed():
                parts, points = sentence.number.whole, sentence.wins != "more rounds wins"
                match = evolve(match, halves=True, parts=parts, of_rounds=True, by_points=points, lines=lines)
            case finish.Places():
                match = evolve(match, places=tuple(each.whole for each in sentence.points), places_lines=(line,))
            case finish.Rests():
                groups, courts = _GROUPS[sentence.who]
                match = evolve(match, groups=groups, courts=courts, meeting=Meeting(sentence.how), lines=lines)
                once = match.till_all_met if match.meeting is Meeting.ALL_MEET_ALL else 0
                match = evolve(match, rounds=sentence.rounds.whole if sentence.rounds is not None else once)
            case finish.ChangeEnds():
                half_time = sentence.when == "at half-time"
                match = evolve(
                    match,
                    ends_at_half_time=match.ends_at_half_time or half_time,
                    ends_after_each_round=match.ends_after_each_round or not half_time,
                    ends_lines=(*match.ends_lines, line),
                )
    return match
