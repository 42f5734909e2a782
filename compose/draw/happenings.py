"""What happens between two moments of a round, in another language than English: who did what, and what changed.

The net tells its moves in English sentences. Here they are told anew, from the attempt and from the counts
before and after it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from attrs import frozen

from compose.draw.counts_in import is_feminine, one_or_more, spot, thing, who
from compose.net.net import End, Net, Place, Transition
from compose.net.side_words import is_plural
from compose.telling.french import article, joined, noun, side_name
from compose.telling.wording import Wording
from grammar.game import Game

MOST_TOLD = 4  # our choice: more changes at once than this are a new beginning
THROWN = ("overarm throw", "underarm throw", "roll", "kick", "strike", "pass")
OUTCOMES = {
    "missed": "{move} and misses",
    "caught": "{move} and it is caught",
    "left": "{move} and it leaves the court",
}
Changed = tuple[Place, Place, int]


@frozen
class Happenings:
    """The moves of one game in one language."""

    game: Game
    net: Net
    wording: Wording

    def told(self, move: Transition, before: Sequence[int], after: Sequence[int]) -> str:
        """A move as a sentence without its full stop."""
        lead, changes = self._lead(move), list(self._changes(before, after))
        if len(changes) > MOST_TOLD:
            changes = [self.wording.say("everything starts again")]
        what = self.wording.listed(changes)
        if lead and what:
            return joined(self.wording.say("{name}: {rule}", name=lead, rule=what))
        return joined(lead or what or self.wording.say("play goes on"))

    def ended(self, end: End | None, unfinished: bool) -> str:
        """How the round ended."""
        if end is None:
            return self.wording.say("the round is broken off here" if unfinished else "the round is over")
        if end.winner is None:
            return self.wording.say("it is a draw" if end.words.startswith("a draw") else "nobody wins")
        pattern = "{side} win" if is_plural(end.winner) else "{side} wins"
        return joined(self.wording.say(pattern, side=side_name(self.wording, end.winner)))

    def _lead(self, move: Transition) -> str:
        """Who tries what, and how it comes out where the counts do not say so."""
        attempt = move.attempt
        if move.side is None:
            return ""
        someone = who(move.side, 1, self.wording)
        if attempt.skill in THROWN:
            ball, female = self._ball(attempt.ball)
            said = self.wording.say(f"{{who}} {attempt.skill} {{ball}}", who=someone, ball=ball)
            return self.wording.say(OUTCOMES[move.outcome], female, move=said) if move.outcome in OUTCOMES else said
        if attempt.skill == "fetch":
            return self.wording.say("{who} fetches {ball}", who=someone, ball=self._ball(attempt.ball)[0])
        return self.wording.say("{who} arrives", who=someone) if attempt.skill == "tow" else someone

    def _ball(self, like: str | None) -> tuple[str, bool]:
        """The game's own name for a ball, with its article, and whether it is feminine."""
        known = (line.name for line in self.game.kit if line.category == "ball" and line.like == like)
        one = next(known, like or "ball")
        text, female = noun(self.wording, one, False, one)
        return f"{article('a', female, False)} {text}", female

    def _changes(self, before: Sequence[int], after: Sequence[int]) -> Iterator[str]:
        places = self.net.places
        for token in ("target", "body", "player"):
            less = {place: before[at] - after[at] for at, place in enumerate(places) if place.token == token}
            more = [(place, after[at] - before[at]) for at, place in enumerate(places) if place.token == token]
            for goal, number in more:
                yield from (self._change(*each) for each in _from(less, goal, number))
        for at, place in enumerate(places):
            if place.token == "points" and after[at] != before[at]:
                yield self._points(place, after[at] - before[at])

    def _change(self, start: Place, goal: Place, number: int) -> str:
        if goal.token == "player":
            return self._player(start, goal, number)
        wording, several = self.wording, number >= 2
        text, female = thing(goal, several, wording)
        things = one_or_more(text, female, number, wording)
        if goal.token == "body":
            pattern = "{things} go to step {step}" if several else "{things} goes to step {step}"
            return wording.say(pattern, things=things, step=goal.name.rsplit("/", 1)[1])
        if start.side != goal.side and goal.side:
            pattern = "{things} join {side}" if several else "{things} joins {side}"
            return wording.say(pattern, things=things, side=side_name(wording, goal.side))
        own = (
            wording.say("{things} of {side}", things=things, side=side_name(wording, goal.side))
            if goal.side
            else things
        )
        if goal.name.endswith("/down"):
            return wording.say("{things} fall" if several else "{things} falls", things=own)
        return wording.say("{things} are put up" if several else "{things} is put up", female, things=own)

    def _player(self, start: Place, goal: Place, number: int) -> str:
        wording, several = self.wording, number >= 2
        old, new = start.name.split("/"), goal.name.split("/")
        players = who(str(start.side), number, wording)
        if start.side != goal.side:
            pattern = "{who} join {what}" if several else "{who} joins {what}"
            return wording.say(pattern, who=players, what=side_name(wording, str(goal.side)))
        if new[3] == "out":
            pattern = "{who} are out for the rest of the round" if several else "{who} is out for the rest of the round"
            return wording.say(pattern, is_feminine(str(goal.side), wording), who=players)
        if new[3] != "in":
            where = spot(new[3], wording)
            return wording.say("{who} go {where}" if several else "{who} goes {where}", who=players, where=where)
        if old[3] != "in":
            return wording.say("{who} return to play" if several else "{who} returns to play", who=players)
        role = wording.named("player" if new[2] == "-" else new[2])
        return wording.say("{who} become {role}" if several else "{who} becomes {role}", who=players, role=role)

    def _points(self, place: Place, by: int) -> str:
        many, points = is_plural(str(place.side)), self.wording.counted(abs(by), "point", "points")
        if by > 0:
            pattern = "{side} score {points}" if many else "{side} scores {points}"
        else:
            pattern = "{side} lose {points}" if many else "{side} loses {points}"
        return self.wording.say(pattern, side=side_name(self.wording, str(place.side)), points=points)


def _from(less: dict[Place, int], goal: Place, number: int) -> Iterator[Changed]:
    """Where so many came from that are more now: of the same kind and side first, then of another side.

    What is found is taken off `less`.
    """
    for same in (True, False):
        for place, left in less.items():
            taken = min(left, number)
            if taken > 0 and place.kind == goal.kind and (place.side == goal.side) == same:
                less[place] -= taken
                number -= taken
                yield place, goal, taken
