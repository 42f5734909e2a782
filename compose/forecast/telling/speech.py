"""A forecast's numbers, sides and places in the words of a language."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from compose.forecast.telling.wording import for_what, parts
from compose.net.match import Match
from compose.net.told import Cause, TimeUp
from compose.telling.amounts import share_said, time_said
from compose.telling.conditions import condition
from compose.telling.counts import standing
from compose.telling.endings import matches_told, more_told, verdicts_told
from compose.telling.english.ends import way_words
from compose.telling.english.matches import match_words, part_words
from compose.telling.french import joined, side_name
from compose.telling.side_voice import Subject
from compose.telling.sides import subject, wins
from compose.telling.voice import Voice
from compose.telling.wording import ENGLISH, Wording
from grammar.core.ends import Best, Lost, Most, NoWinner
from grammar.core.values import At, Presence, RoleId, SideId
from grammar.frozen import frozen

if TYPE_CHECKING:
    from compose.forecast.course import Figure
    from compose.net.net import End, Net, Place


CAUSES = {
    Cause.RULE: "a rule ends the round",
    Cause.BOTH_AT_ONCE: "both at once",
    Cause.OVER_OR_NEXT: "when the time is over, or next",
}


@frozen
class Speech:
    """The words of one language; English needs no `voice`, since it is made of the net alone."""

    voice: Voice | None = None

    @property
    def wording(self) -> Wording:
        """The language."""
        return self.voice.wording if self.voice is not None else ENGLISH

    def say(self, pattern: str, **fields: Any) -> str:
        """A pattern in this language, its words contracted where they stand beside each other."""
        said = self.wording.say(pattern, **fields)
        return said if self.voice is None else joined(said)

    def minutes(self, value: float) -> str:
        """Such as "4.5 min"."""
        return time_said(value, self.wording)

    def percent(self, share: float) -> str:
        """Such as "45 %"."""
        return share_said(share, self.wording)

    def figure(self, value: float, decimals: int = 1) -> str:
        """Such as "1.1"."""
        return self.wording.figure(value, decimals)

    def parts(self, shares: Sequence[float], whole: int = 100) -> tuple[str, ...]:
        """The shares of a whole in percent that add up to it."""
        return parts(shares, whole, self.percent)

    def share_with_margin(self, figure: Figure, said: str = "") -> str:
        """Such as "45 %", "45 % ± 2"; `said` is the share as one of several that add up."""
        share = said or self.percent(figure.value)
        return share + (f" ± {self._margin(max(0.1, 100 * figure.margin))}" if figure.margin else "")

    def _margin(self, points: float) -> str:
        return self.wording.figure(float(f"{points:.2g}"))

    def minutes_with_margin(self, figure: Figure) -> str:
        """Such as "4.5 min", "4.5 min ± 6 s"."""
        margin = f" ± {self.minutes(figure.margin)}" if figure.margin > 0.5 / 60 else ""
        return self.minutes(figure.value) + margin

    def wins(self, side: str, solo: Mapping[str, bool]) -> str:
        """Such as "north wins"."""
        if self.voice is None:
            return wins(side, solo)
        if SideId(side) in self.voice.play.side_ids:
            return joined(self.voice.wins(SideId(side)))
        return self.say("{side} wins", side=self.side(side))  # a group that is now one side, now another

    def side(self, side: str) -> str:
        """A side in a sentence: "north", "the herons"."""
        return subject(side) if self.voice is None else side_name(self.wording, side)

    def role(self, task: str) -> str:
        """A task by its name."""
        return task if self.voice is None else self.voice.nouns.role(RoleId(task)).one

    def skill(self, skill: str) -> str:
        """What players try."""
        return self.wording.known("skill", skill) or self.say(skill)

    def norm(self, written: str) -> str:
        """What a norm is about, its row or its unit; what is no word of norms alone is a skill."""
        return self.wording.known("norm", written) or self.wording.known("skill", written) or written

    def for_what(self, place: Place) -> str:
        """Where somebody waits, or for what."""
        if self.voice is None:
            return for_what(place)
        if isinstance(place.standing, At) and place.standing.spot.is_frozen:
            return self.say("of frozen players")
        if place.standing is Presence.PLAYING:
            return self.say("for a turn")
        return joined(standing(self.voice.about(SideId(str(place.side)), Subject.PLAYERS), place))

    def way(self, net: Net, end: End) -> str:
        """What makes somebody win."""
        if self.voice is None:
            return way_words(net, end)
        return joined(_way(self.voice, end))

    def match(self, match: Match) -> str:
        """The lines of the sheet that say how many rounds there are."""
        if self.voice is None:
            return match_words(match)
        return joined("; ".join(matches_told(self.voice, [self.voice.play.match])))

    def part(self, match: Match) -> str:
        """What is won where it is not all: "a round"."""
        return self.say(part_words(match))


ENGLISH_SPEECH = Speech()


def _way(voice: Voice, end: End) -> str:
    """The way of winning that an end is, in a language with a voice."""
    told = end.told
    if isinstance(told.verdict, Most):
        return more_told(voice, told.verdict)
    if isinstance(told.verdict, NoWinner | Lost | Best):
        return verdicts_told(voice, (told.verdict,))
    match told.because:
        case Cause():
            return voice.say(CAUSES[told.because])
        case TimeUp(after_s):
            return voice.say("after {time} of play", time=voice.time(after_s))
    speaking = voice.about(told.winner, Subject.SIDE) if told.winner is not None else voice
    return condition(speaking, told.because)
