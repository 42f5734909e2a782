"""A lesson of several games as a timetable: warm-up, explain, rounds, change-over, cool-down within the minutes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from compose.net.match import match_of
from compose.staging.minutes import Lesson, Rounds, whole_rounds
from compose.staging.moving import COOLING_DOWN, LISTENING, SETTING_UP, WARMING_UP, active_share, played
from compose.staging.norms import Ability, Ages
from compose.staging.resolved import resolved
from compose.staging.staging import Staging
from grammar.frozen import evolve, field, frozen
from grammar.game import Game, GameKit
from grammar.words import plural
from library import Norms

if TYPE_CHECKING:
    from compose.forecast.answers import Answers

LEAST_ROUND_MIN = 2.0  # assumption: a round cut shorter than this is not worth laying out
NO_ROUNDS = Rounds(0, 0.0, 0.0)

ARRIVE, WARM_UP, SET_UP, EXPLAIN = "arrive", "warm-up", "set up", "explain"
PLAY, CHANGE_OVER, COOL_DOWN, CLEAR = "play", "change over", "cool down", "clear"

EFFORT = {  # rows of norms/effort.toml
    WARM_UP: WARMING_UP,
    SET_UP: SETTING_UP,
    EXPLAIN: LISTENING,
    CHANGE_OVER: SETTING_UP,
    COOL_DOWN: COOLING_DOWN,
    CLEAR: SETTING_UP,
}


@frozen
class Planned:
    """A game of the lesson under the title that is shown, staged for the class.

    The mean length of a round and the share of it in which a pupil is active are None where nobody knows them; so are
    the turns that a pupil gets in a minute and the share of a round that it spends not playing. `before` are texts of
    the game that it was made of, which may no longer hold.
    """

    game: Game
    staging: Staging
    round_min: float | None
    active: float | None = None
    numbers: Answers | None = None
    before: frozenset[str] = frozenset()


@frozen
class Slot:
    """A stretch of the lesson, in minutes. `game` counts from 0, None where it belongs to no game.

    `played` are the whole rounds of a stretch of play, none where one round is played and stopped at its end.
    """

    kind: str
    start: float
    minutes: float
    game: int | None = None
    played: Rounds = NO_ROUNDS

    @property
    def rounds(self) -> int:
        """How many whole rounds."""
        return self.played.number

    @property
    def end(self) -> float:
        return self.start + self.minutes


@frozen
class KitShared:
    """One kind of thing over the whole lesson: how many each game needs, and what it calls them (one, many).

    Both are in the order of the games; a game that needs none calls them nothing.
    """

    line: GameKit
    by_game: tuple[int, ...]
    names: tuple[tuple[str, str], ...]

    @property
    def name(self) -> tuple[str, str]:
        """What it is called in the lesson, one and many: by its one name, or by what all of them are like."""
        told = dict.fromkeys(name for name in self.names if name[0])
        return next(iter(told)) if len(told) == 1 else (self.line.like, plural(self.line.like))

    @property
    def most(self) -> int:
        """How many must be there: games come one after the other, so they share."""
        return max(self.by_game)

    @property
    def games(self) -> int:
        """How many games use it."""
        return sum(1 for number in self.by_game if number)


@frozen
class LessonTable:
    """The timetable. `short_min` is how many minutes are missing, 0 where everything fits. `active` is the share of
    class time in which a pupil is active, None where a game was not forecast."""

    games: tuple[Planned, ...]
    lesson: Lesson
    slots: tuple[Slot, ...]
    kit: tuple[KitShared, ...]
    short_min: float = field(default=0.0)
    active: float | None = None

    def rounds_of(self, number: int) -> int:
        """How many whole rounds of a game there are."""
        return sum(slot.rounds for slot in self.slots if slot.game == number)

    def rounds_lacking(self, number: int) -> tuple[int, int] | None:
        """Of a game that asks for more rounds than it gets: how many there are, and how many it asks for."""
        wanted, there = wanted_of(self.games[number]), self.rounds_of(number)
        return (there, wanted) if there < wanted > 1 else None

    @property
    def played_min(self) -> float:
        """The minutes of all play."""
        return sum(slot.minutes for slot in self.slots if slot.kind == PLAY)


def lesson_table(games: Sequence[Planned], norms: Norms) -> LessonTable:
    """Everything that is not play has the time of the class, or its usual one; what is left is shared evenly between
    the games.

    Where a game does not use up its share in whole rounds, the others get the rest, those first that lack rounds that
    they ask for; what is left at the end goes to the talk of the cool-down.
    """
    ages = games[0].staging.ages_years
    lesson = games[0].staging.lesson
    over = Ability(norms).read("lesson minutes", "changing over", ages).value
    fixed = (
        lesson.changing
        + lesson.warm_up
        + lesson.setting_up
        + len(games) * lesson.explaining
        + (len(games) - 1) * over
        + lesson.talk
        + lesson.clearing
    )
    left = lesson.minutes - fixed
    needed = len(games) * LEAST_ROUND_MIN
    if left < needed:
        return LessonTable(tuple(games), lesson, (), kit_over(games), needed - left)
    slots = tuple(_in_a_row(_stretches(games, lesson, over, left)))
    active = _active(games, slots, Ability(norms), ages)
    return LessonTable(tuple(games), lesson, slots, kit_over(games), active=active)


def _active(games: Sequence[Planned], slots: Sequence[Slot], ability: Ability, ages: Ages) -> float | None:
    """The share of class time, from the first minute after changing on, in which a pupil is active."""
    parts = list[tuple[float | str, float]]()
    for slot in slots:
        if slot.kind == PLAY:
            share = games[slot.game or 0].active
            if share is None:
                return None
            parts.extend(played(slot.played, slot.minutes, share))
        elif slot.kind in EFFORT:
            parts.append((EFFORT[slot.kind], slot.minutes))
    return active_share(ability, ages, parts)


def _stretches(games: Sequence[Planned], lesson: Lesson, over: float, left: float) -> Iterator[Slot]:
    yield Slot(ARRIVE, 0.0, lesson.changing)
    yield Slot(WARM_UP, 0.0, lesson.warm_up)
    yield Slot(SET_UP, 0.0, lesson.setting_up, 0)
    shares = shared(games, lesson.again, left)
    for number in range(len(games)):
        if number:
            yield Slot(CHANGE_OVER, 0.0, over, number)
        yield Slot(EXPLAIN, 0.0, lesson.explaining, number)
        rounds, minutes = shares[number]
        yield Slot(PLAY, 0.0, minutes, number, rounds)
    yield Slot(COOL_DOWN, 0.0, lesson.talk + left - sum(minutes for _, minutes in shares))
    yield Slot(CLEAR, 0.0, lesson.clearing)


def shared(games: Sequence[Planned], again: float, left: float) -> list[tuple[Rounds, float]]:
    """Rounds and minutes of play of each game: an even share, then rounds more of those that had fewest, as long as
    whole ones fit."""
    found = list[tuple[Rounds, float]]()
    for number, one in enumerate(games):
        found.append(fitted(left / (len(games) - number), one.round_min, again))
        left -= found[-1][1]
    while True:
        lasting = [number for number, (rounds, _) in enumerate(found) if rounds.number]
        fitting = [at for at in lasting if found[at][0].each + found[at][0].pause <= left + 1e-9]
        if not fitting:
            return found
        at = min(fitting, key=lambda each: (found[each][0].number >= wanted_of(games[each]), found[each][0].number))
        more = evolve(found[at][0], number=found[at][0].number + 1)
        left -= more.minutes - found[at][1]
        found[at] = more, more.minutes


def wanted_of(one: Planned) -> int:
    """How many rounds the game asks for: best of three may need three, three sides that all meet need three."""
    return match_of(resolved(one.game)).most_rounds


def fitted(share: float, round_min: float | None, again: float) -> tuple[Rounds, float]:
    """How many whole rounds fit into a share of time, and how long they take with setting up again between them.

    Where not even one fits, or nobody knows how long one is, the share itself is played: 0 rounds.
    """
    rounds = whole_rounds(round_min, again, share)
    return rounds, rounds.minutes if rounds.number else share


def _in_a_row(slots: Iterator[Slot]) -> Iterator[Slot]:
    at = 0.0
    for slot in slots:
        yield evolve(slot, start=at)
        at += slot.minutes


def kit_over(games: Sequence[Planned]) -> tuple[KitShared, ...]:
    """The kit of all games, each kind once: lanterns and stones that are both like a plastic pin are one kind.

    Where one game has two names for things of one kind, they stand apart, since it needs them at once. What stands in
    for all of a line is its kind: six cones are first lanterns, then kilns. Benches that a game needs and does not list
    are with them.
    """
    needed: dict[tuple[str, float, int], list[int]] = {}
    names: dict[tuple[str, float, int], list[tuple[str, str]]] = {}
    lines: dict[tuple[str, float, int], GameKit] = {}
    for number, one in enumerate(games):
        used: dict[tuple[str, float], int] = {}
        benches = (one.staging.benches,) if one.staging.benches is not None else ()
        for row in (*one.staging.kit, *benches):
            line = evolve(row.line, like=row.stand_ins[0].like, scale=1.0) if row.is_stood_in else row.line
            again = used.setdefault((line.like, line.scale), 0)
            used[line.like, line.scale] = again + 1
            key = (line.like, line.scale, again)
            lines.setdefault(key, line)
            needed.setdefault(key, [0] * len(games))[number] = row.needed
            names.setdefault(key, [("", "")] * len(games))[number] = (line.name, line.plural)
    return tuple(KitShared(lines[key], tuple(needed[key]), tuple(names[key])) for key in needed)
