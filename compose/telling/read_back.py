"""A core → what was understood of its sheet: sentences in the order of the sheet, by topic and by line.

What a line says of every side alike is said once ("each side ... the other side"), all else side by side, so that
a side of which nothing is said is seen.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any

from compose.telling import attempts, beforehand, blocking, endings, follows, kit, limits, of_time, rotations, services
from compose.telling.areas import areas_told
from compose.telling.begin_points import begin_points_told
from compose.telling.gaps import gaps, who_tries_nothing
from compose.telling.granted import can_happen, fetch_holds, rests_left, rule_left, with_what_goes_back
from compose.telling.homes import homes_told
from compose.telling.orbit import alike_for_each
from compose.telling.sentences import told_sentence
from compose.telling.side_voice import UsualDistance
from compose.telling.topics import Topic
from compose.telling.unfetched import unfetched_told
from compose.telling.unread import in_quotes
from compose.telling.voice import Voice
from compose.telling.whose_view import View, view
from compose.telling.wording import Wording
from grammar.core.begin_points import BeginPoints
from grammar.core.declared import Area, Court, Organisation, Role, Side, Start, Supply, Track
from grammar.core.ends import Bell, End, EndPoints, Match, Tie
from grammar.core.factor import Factor
from grammar.core.game import Choice, Core, Line
from grammar.core.limits import CountsOnly, LowDown, Steps
from grammar.core.lives import Lives
from grammar.core.play import ComeBack, Fetch, Free, Guarding, Hold, Home, Offer, PointsCount, StandUp, Unfetched
from grammar.core.rotation import Rotation
from grammar.core.rules import Rest, Rule
from grammar.core.stopping import Blocking
from grammar.frozen import evolve, field, frozen

Teller = Callable[[Voice, Any], Iterable[str]]

TELLERS: dict[type, tuple[Topic, Teller]] = {
    Court: (Topic.BEFORE, beforehand.courts_told),
    Area: (Topic.BEFORE, areas_told),
    Track: (Topic.BEFORE, beforehand.tracks_told),
    Side: (Topic.BEFORE, beforehand.sides_told),
    Lives: (Topic.BEFORE, beforehand.lives_told),
    BeginPoints: (Topic.BEFORE, begin_points_told),
    Role: (Topic.BEFORE, beforehand.roles_told),
    Organisation: (Topic.BEFORE, beforehand.organisations_told),
    Supply: (Topic.BEFORE, kit.supplies_told),
    Start: (Topic.BEFORE, beforehand.starts_told),
    Home: (Topic.DOES, homes_told),
    Offer: (Topic.DOES, attempts.offers_told),
    Guarding: (Topic.DOES, services.guardings_told),
    Blocking: (Topic.DOES, blocking.blockings_told),
    CountsOnly: (Topic.DOES, limits.counts_told),
    Steps: (Topic.BALLS, limits.steps_told),
    LowDown: (Topic.DOES, limits.low_told),
    Factor: (Topic.DOES, services.factors_told),
    Rotation: (Topic.DOES, rotations.rotations_told),
    Hold: (Topic.BALLS, services.holds_told),
    Rest: (Topic.BALLS, services.rests_told),
    Fetch: (Topic.BALLS, services.fetches_told),
    Unfetched: (Topic.BALLS, unfetched_told),
    Rule: (Topic.FOLLOWS, follows.rules_told),
    StandUp: (Topic.FOLLOWS, services.stand_ups_told),
    Free: (Topic.WAITS, services.frees_told),
    ComeBack: (Topic.WAITS, services.come_backs_told),
    End: (Topic.ENDS, endings.ends_told),
    EndPoints: (Topic.ENDS, endings.end_points_told),
    Bell: (Topic.ENDS, endings.bells_told),
    PointsCount: (Topic.FOLLOWS, of_time.points_count_told),
    Tie: (Topic.ENDS, endings.ties_told),
    Match: (Topic.ENDS, endings.matches_told),
}


@frozen
class Said:
    """A sentence, and the lines of the sheet that it comes from; none where it tells what the sheet does not say."""

    text: str
    lines: tuple[int, ...] = ()
    granted: bool = False


@frozen
class Section:
    """The sentences of a topic."""

    topic: Topic
    heading: str
    said: tuple[Said, ...]


@frozen
class ReadBack:
    """What was understood of a sheet."""

    title: str
    sections: tuple[Section, ...]
    lines: tuple[Line, ...] = field(repr=False)

    def of_line(self, number: int) -> tuple[str, ...]:
        """All that was understood of a line."""
        return tuple(said.text for part in self.sections for said in part.said if number in said.lines)


def read_back(core: Core, wording: Wording, usual_m: UsualDistance | None = None) -> ReadBack:
    """All that was understood, topic by topic; topics of which there is nothing to say are left out.

    `usual_m` gives the usual distance of who aims at what, for a floor that is laid out.
    """
    told = list(all_told(core, wording, usual_m))
    voice = Voice(core, wording)
    idle = tuple(who_tries_nothing(voice))
    unsaid = tuple(_without_a_value(core, told))
    told += [(topic, Said(told_sentence(wording, text), unsaid if text in idle else ())) for topic, text in gaps(voice)]
    told += [(topic, Said(_quoted(wording, text), (line,))) for topic, line, text in in_quotes(core)]
    found = []
    for topic in Topic:
        said = _each_once(each for about, each in told if about is topic)
        if said:
            found.append(Section(topic, wording.say(_heading(topic, core)), said))
    return ReadBack(core.title, tuple(found), core.lines)


def _each_once(told: Iterable[Said]) -> tuple[Said, ...]:
    """Sentences without those that say the same again; what several lines say is of all of them."""
    found: dict[tuple[str, bool], Said] = {}
    for each in told:
        before = found.get((each.text, each.granted), each)
        lines = tuple(dict.fromkeys((*before.lines, *each.lines)))
        found[each.text, each.granted] = evolve(before, lines=lines)
    return tuple(found.values())


def _heading(topic: Topic, core: Core) -> str:
    """What stands over the sentences of a topic; nobody is promised who fetches where nobody does."""
    nobody_fetches = not any(isinstance(each, Fetch) for each in core.play.services)
    return "Where balls come to lie" if topic is Topic.BALLS and nobody_fetches else topic.value


def _without_a_value(core: Core, told: Iterable[tuple[Topic, Said]]) -> Iterator[int]:
    """Lines of play that leave no value behind: that somebody does not act."""
    spoken = {number for _, said in told for number in said.lines} | {number for number, _ in core.told.quotes}
    for line in core.lines:
        if line.section == "play" and not line.granted and line.number not in spoken:
            yield line.number


def _quoted(wording: Wording, text: str) -> str:
    return f'"{text}"' if wording.english else f"« {wording.author(text)} »"


def all_told(core: Core, wording: Wording, usual_m: UsualDistance | None = None) -> Iterator[tuple[Topic, Said]]:
    """Every sentence that lines of the sheet say, by topic."""
    yield from values_told(core, wording, _values(core), usual_m)
    if core.play.open_end:
        pattern = "play goes on until the clock stops"
        yield Topic.ENDS, Said(told_sentence(wording, wording.say(pattern)), core.play.open_lines)
    for choice in core.play.choices:
        told = " ".join(said.text for _, said in values_told(core, wording, choice.hanging))
        if rest := " ".join(said.text for _, said in values_told(core, wording, choice.without)):
            told = f"{told} {told_sentence(wording, wording.say('without it: {rule}', rule=rest))}".strip()
        lead = choice_name(wording, choice)
        lines = tuple(line.number for line in core.lines if line.switch == choice.id)
        yield Topic.CHOICES, Said(told_sentence(wording, wording.say("{name}: {rule}", name=lead, rule=told)), lines)


def choice_name(wording: Wording, choice: Choice) -> str:
    """A choice of the class with how it usually stands: "hits count (usually off)"."""
    usual = wording.say("usually on" if choice.usual else "usually off")
    return wording.say("{name} ({usual})", name=wording.author(choice.id.key), usual=usual)


def _values(core: Core) -> list[Any]:
    """Everything that is told, but for what is taken for granted and has no say in this game."""
    play = core.play
    rules = [with_what_goes_back(left) for rule in play.rules if (left := rule_left(play, rule)) is not None]
    coming = {rule.lines for rule in rules if can_happen(play, rule)}
    rules = [rule for rule in rules if can_happen(play, rule) or rule.lines not in coming]
    fetches = [each for each in play.services if not isinstance(each, Fetch) or fetch_holds(play, each)]
    lines = (*play.match.lines, *play.match.places_lines)
    match = evolve(play.match, ends_after_each_round=False, ends_at_half_time=False, lines=lines)
    ends = Match(
        ends_after_each_round=play.match.ends_after_each_round,
        ends_at_half_time=play.match.ends_at_half_time,
        lines=play.match.ends_lines,
    )
    ending = [each for each in (play.bell, play.tie, match, ends) if each is not None]
    return [
        *(play.court, *play.areas, *play.tracks, *play.sides, *play.roles, *play.lives, play.organisation),
        *(*play.supplies, *play.starts, *core.facts.posts, *play.homes, *play.offers, *play.guarding, *play.blocking),
        *(*play.begin_points, *play.rotations, *play.valid, *play.low, *play.factors),
        *(*play.holds, *play.steps, *rests_left(play), *fetches, *play.unfetched),
        *(*rules, *play.counting, *play.ends, *play.end_points, *ending),
    ]


def values_told(
    core: Core, wording: Wording, values: Sequence[Any], usual_m: UsualDistance | None = None
) -> Iterator[tuple[Topic, Said]]:
    """The sentences of these values, those of a kind by their lines."""
    voice = Voice(core, wording, usual_m=usual_m)
    for kind, (topic, tell) in TELLERS.items():
        by_line: dict[tuple[int, ...], list[Any]] = {}
        for value in values:
            if type(value) is kind:
                by_line.setdefault(_own_lines(core, value), []).append(value)
        for lines, group in sorted(by_line.items(), key=lambda each: each[0]):
            granted = all(core.lines[line].granted for line in lines) and bool(lines)
            for text in _told(voice, group, tell):
                yield of_time.topic_of(group, topic), Said(told_sentence(wording, text), lines, granted)


def _own_lines(core: Core, value: Any) -> tuple[int, ...]:
    """The lines of the sheet that say it; one taken for granted counts only where no other does."""
    own = tuple(line for line in value.lines if not core.lines[line].granted)
    return own or tuple(value.lines)


def _told(voice: Voice, values: list[Any], tell: Teller) -> Iterator[str]:
    """Once where it holds for each side alike, else for one side after the other."""
    play = voice.play
    seen = [(view(voice, value), value) for value in values]
    if alike_for_each(values, play):
        first, second = play.side_ids[:2]
        one = [value for at, value in seen if _is_seen(at, first, second)]
        yield from tell(evolve(voice, me=first, other=second), one)
        return
    for side in (*play.side_ids, None):
        if own := [value for at, value in seen if at.me == side]:
            yield from tell(voice, own)


def _is_seen(at: View, first: object, second: object) -> bool:
    return at.me in (None, first) and at.other in (None, second)
