"""What happens between two moments of a round, in another language than English: who did what, and what changed.

Told from the values of the move and from the counts before and after it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.net.net import End, Net, Place, Transition
from compose.net.outcome import Moment
from compose.net.told import (
    AllHeld,
    CameBack,
    Doer,
    Fetched,
    FouledSo,
    Freed,
    Happened,
    Held,
    StoodUp,
    Strayed,
    Ticked,
    TimeOver,
    Tried,
)
from compose.telling.counts import kind_of
from compose.telling.french import joined
from compose.telling.nouns import PLAYER, TEACHER, Noun
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.ends import Lost
from grammar.core.rules import Result
from grammar.core.skills import WITH_A_BALL
from grammar.core.values import (
    PLAIN,
    At,
    KindId,
    OnStep,
    Population,
    Posture,
    Presence,
    RoleId,
    SideId,
    Skill,
    Teacher,
    without_load,
)
from grammar.frozen import frozen

MOST_TOLD = 4  # our choice: more changes at once than this are a new beginning
THROWN = {skill: f"{{who}} {skill.value} {{ball}}" for skill in WITH_A_BALL}
OUTCOMES = {
    Result.MISSED: "{move} and misses",
    Result.CAUGHT: "{move} and it is caught",
    Result.BLOCKED: "{move} and it is blocked",
    Result.HIGH: "{move} and hits somebody above the shoulder",
    Result.LEFT: "{move} and it leaves the court",
}
Changed = tuple[Place, Place, int]


@frozen
class Happenings:
    """The moves of one game in one language."""

    voice: Voice
    net: Net

    def told(self, move: Transition, before: Sequence[int], after: Sequence[int]) -> str:
        """A move as a sentence without its full stop."""
        lead, changes = self._lead(move.told), list(self._changes(before, after))
        if len(changes) > MOST_TOLD:
            changes = [self.voice.say("everything starts again")]
        what = self.voice.wording.listed(changes)
        if lead and what:
            return joined(self.voice.say("{name}: {rule}", name=lead, rule=what))
        return joined(lead or what or self.voice.say("play goes on"))

    def ended(self, end: End | None, unfinished: bool) -> str:
        """How the round ended."""
        if end is None:
            return self.voice.say("the round is broken off here" if unfinished else "the round is over")
        if isinstance(end.told.verdict, Lost):
            return joined(self.voice.does({end.told.verdict.side}, "{side} loses", "{side} lose"))
        if end.winner is None:
            return self.voice.say("nobody wins" if end.nobody else "it is a draw")
        return joined(self.voice.wins(SideId(end.winner)))

    def _lead(self, told: Happened) -> str:
        """Who tries what, and how it comes out where the counts do not say so."""
        say, time = self.voice.say, self.voice.time
        match told:
            case Tried(moment):
                return self._tried(moment)
            case Strayed(missed):
                return self._tried(missed.moment)
            case Fetched(who, ball):
                return say("{who} fetches {ball}", who=self._doer(who), ball=self._a(ball)[0])
            case Freed(who) | StoodUp(who):
                return self._doer(who)
            case Held(who, ball):
                return say("{who} holds {ball} too long", who=self._doer(who), ball=self._a(ball)[0])
            case FouledSo(who):
                return say("{who} fouls", who=self._doer(who))
            case AllHeld(time_s):
                return say("everyone has held a ball for {time}", time=time(time_s))
            case Ticked(at_s, again):
                return say("every {time}" if again else "after {time} of play", time=time(at_s))
            case TimeOver():
                return say("the time is over")
            case CameBack():
                return ""

    def _tried(self, moment: Moment) -> str:
        say, someone, skill = self.voice.say, self._doer(moment.by), moment.skill
        if skill in THROWN:
            ball, female = self._a(moment.ball)
            said, outcome = say(THROWN[skill], who=someone, ball=ball), moment.result
            done = say(OUTCOMES[outcome], female, move=said) if outcome in OUTCOMES else said
            return say("{event} after a bounce", event=done) if moment.bounced else done
        if skill is Skill.TOUCH:
            touched = moment.result is not Result.MISSED
            return say("{who} touches somebody" if touched else "{who} touches nobody", who=someone)
        if skill is Skill.TAKE and moment.result is Result.TAKEN:
            return say("{who} takes {what}", who=someone, what=self._a(moment.ball)[0])
        return say("{who} arrives", who=someone) if moment.result is Result.ARRIVED else someone

    def _doer(self, who: Doer) -> str:
        """Whoever does it: the teacher, a player of a role, any player of a side."""
        if isinstance(who, Teacher):
            return self.voice.nouns.with_article("the", self.voice.nouns.noun(TEACHER), False)
        task = without_load(who.role)
        if task is PLAIN:
            return self._who(who.side.key, 1)
        return self.voice.players([Population(who.side, task)], "a", False)

    def _who(self, side: str, number: int) -> str:
        """ "un héron", "3 joueurs du Nord"."""
        everybody = self.voice.play.populations(SideId(side))
        if number == 1:
            return self.voice.players(everybody, "a", False)
        return f"{number} {self.voice.players(everybody, None, True)}"

    def _a(self, kind: KindId | None) -> tuple[str, bool]:
        """One of a kind by the game's own name, with its article, and whether it is feminine."""
        nouns = self.voice.nouns
        noun = nouns.noun("ball") if kind is None else nouns.kind(kind)
        return nouns.with_article("a", noun, False), noun.feminine

    def _changes(self, before: Sequence[int], after: Sequence[int]) -> Iterator[str]:
        places = self.net.places
        for token in ("target", "body", "player"):
            less = {place: before[at] - after[at] for at, place in enumerate(places) if place.token == token}
            more = [(place, after[at] - before[at]) for at, place in enumerate(places) if place.token == token]
            for goal, number in more:
                yield from (self._change(*each) for each in _from(less, goal, number) if not _same_but_for_hands(*each))
        for at, place in enumerate(places):
            if place.token == "points" and after[at] != before[at]:
                yield self._points(place, after[at] - before[at])

    def _change(self, start: Place, goal: Place, number: int) -> str:
        if goal.token == "player":
            return self._player(start, goal, number)
        voice, several, noun = self.voice, number >= 2, kind_of(self.voice, goal)
        owner = [SideId(goal.side)] if goal.side else []
        things = voice.of(_counted(noun, number), several, owner, None if several else "a")
        if isinstance(goal.standing, OnStep):
            pattern = "{things} go to step {step}" if several else "{things} goes to step {step}"
            return voice.say(pattern, things=things, step=str(goal.standing.step))
        if start.side != goal.side and goal.side:
            pattern = "{things} join {side}" if several else "{things} joins {side}"
            bare = voice.of(_counted(noun, number), several, (), None if several else "a")
            return voice.say(pattern, things=bare, side=voice.name(SideId(goal.side)))
        if goal.standing is Posture.DOWN:
            return voice.say("{things} fall" if several else "{things} falls", things=things)
        return voice.say("{things} are put up" if several else "{things} is put up", noun.feminine, things=things)

    def _player(self, start: Place, goal: Place, number: int) -> str:
        voice, several = self.voice, number >= 2
        side = SideId(str(goal.side))
        players = self._who(str(start.side), number)
        if start.side != goal.side:
            pattern = "{who} join {what}" if several else "{who} joins {what}"
            return voice.say(pattern, who=players, what=voice.name(side))
        if goal.standing is Presence.OUT:
            pattern = "{who} are out for the rest of the round" if several else "{who} is out for the rest of the round"
            noun = voice.nouns.player_of(side) or voice.nouns.noun(PLAYER)
            return voice.say(pattern, noun.feminine, who=players)
        if isinstance(goal.standing, At) and goal.standing.spot.is_frozen:
            return voice.say("{who} freeze" if several else "{who} freezes", who=players)
        if isinstance(goal.standing, At):
            near = voice.about(side, Subject.PLAYERS if several else Subject.PLAYER)
            pattern = "{who} go {where}" if several else "{who} goes {where}"
            return voice.say(pattern, who=players, where=near.place([goal.standing.spot]))
        if isinstance(start.standing, At) or start.standing is Presence.OUT:
            return voice.say("{who} return to play" if several else "{who} returns to play", who=players)
        role = voice.nouns.role(RoleId(goal.kind)) if goal.kind else voice.nouns.noun(PLAYER)
        return voice.say("{who} become {role}" if several else "{who} becomes {role}", who=players, role=role.one)

    def _points(self, place: Place, by: int) -> str:
        points = self.voice.wording.counted(abs(by), "point", "points")
        patterns = ("{side} scores {points}", "{side} score {points}")
        if by < 0:
            patterns = ("{side} loses {points}", "{side} lose {points}")
        return self.voice.does([SideId(str(place.side))], *patterns, points=points)


def _same_but_for_hands(start: Place, goal: Place, number: int) -> bool:
    """Whether somebody only took something up, or has it no longer; the move itself says so."""
    return start.token == "player" and (start.side, start.kind, start.standing) == (goal.side, goal.kind, goal.standing)


def _counted(noun: Noun, number: int) -> Noun:
    return noun if number == 1 else Noun(noun.one, f"{number} {noun.many}", noun.feminine)


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
