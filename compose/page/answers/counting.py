"""What a hall screen counts: of each side what decides, with how many it begins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.net.net import Net, Place
from compose.page.answers.hall_values import Counter
from compose.telling.conditions import counted
from compose.telling.counts import standing
from compose.telling.french import joined
from compose.telling.owners import owner_of
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.game import Play
from grammar.core.guards import Count, PlayersAt, Points, ThingsAt, TimesRun, counts_in
from grammar.core.rules import Add
from grammar.core.schedule import compared
from grammar.core.values import KindId, OnStep, Posture, SideId
from grammar.game import Game

DECIDES = (TimesRun, ThingsAt, PlayersAt)  # where both do, things: players come and go too often to be counted


def counters(net: Net, game: Game, players: Mapping[str, int], voice: Voice) -> Iterator[Counter]:
    """For each side its points where there are any, else what an end or the bell counts of it, such as runs, else what
    it has to lose."""
    for side, count in counted_of(voice):
        if isinstance(count, Points):
            yield Counter(side.key, voice.wording.say("points"), 0)
        elif isinstance(count, TimesRun):
            yield Counter(side.key, voice.wording.say("runs"), 0)
        elif isinstance(count, PlayersAt):
            yield from _of_players(net, voice.about(side, Subject.SIDE), side, count)
        else:
            yield from _of_things(game, players, voice, side, count)


def counted_of(voice: Voice) -> Iterator[tuple[SideId, Points | TimesRun | ThingsAt | PlayersAt | None]]:
    """What is counted of each side; None where no end and no bell counts anything of it."""
    rules, at_the_end = voice.play.rules, bool(voice.play.end_points)
    scored = at_the_end or any(isinstance(effect, Add) for rule in rules for effect in rule.effects)
    deciding = tuple(dict.fromkeys(_deciding(voice.play)))
    for side in voice.play.side_ids:
        own = [each for each in deciding if owner_of(voice, each) == side]
        found = next((each for sort in DECIDES for each in own if isinstance(each, sort)), None)
        yield side, Points(side) if scored else found


def _deciding(play: Play) -> Iterator[Count]:
    for end in play.ends:
        yield from counts_in(end.guard)
    yield from (count for count, _ in compared(play))


def _of_things(
    game: Game, players: Mapping[str, int], voice: Voice, side: SideId, count: ThingsAt | None
) -> Iterator[Counter]:
    """The things that are meant; any target that a side has, where none is. None has fallen or come home yet."""
    later = count is not None and all(each is Posture.DOWN or isinstance(each, OnStep) for each in count.at)
    for line in game.kit:
        meant = line.category == "target" if count is None else KindId(line.name) in {each.kind for each in count.of}
        total = line.total(players, side.key)
        if meant and total:
            state = f" {counted(voice, count)[1]}" if count is not None and later else ""
            yield Counter(side.key, f"{voice.wording.named(line.plural)}{state}", 0 if later else total)
            return


def _of_players(net: Net, voice: Voice, side: SideId, count: PlayersAt) -> Iterator[Counter]:
    """The players of a side who are so; none where none of it can ever be."""

    def meant(place: Place) -> bool:
        return place.token == "player" and place.side == side.key and place.standing in count.at

    here = [place for place in net.places if meant(place)]
    if here:
        words = f"{counted(voice, count)[0].many} {standing(voice, here[0])}"
        start = sum(each.start for each in here)
        yield Counter(side.key, words if voice.wording.english else joined(words), start)
