"""A game whose names are known → its core. What means nothing where it stands is a mistake with its place."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from fractions import Fraction
from functools import partial

from grammar.core.begin_points import BeginPoints
from grammar.core.declared import Cut
from grammar.core.ends import Bell, End, EndPoints, Tie
from grammar.core.factor import Factor
from grammar.core.game import Choice, Core, Facts, Play
from grammar.core.limits import CountsOnly, LowDown, Steps
from grammar.core.nothing_else import with_nothing_else
from grammar.core.play import ComeBack, Fetch, Free, Guarding, Hold, Offer, PointsCount, StandUp, Unfetched
from grammar.core.precedence import asked_first
from grammar.core.reading.doings import DOINGS
from grammar.core.reading.events.crossing import sent_over
from grammar.core.reading.finish.finish_lines import read_match
from grammar.core.reading.finish.parts import length_of_parts_s
from grammar.core.reading.play.blocking import blocked_things
from grammar.core.reading.play.fetching import fetched
from grammar.core.reading.play.lives import read_lives
from grammar.core.reading.play.offers import Trying, pairs_of, read_attempt, with_own_task
from grammar.core.reading.play.possession import gives_the_ball, read_begins_with
from grammar.core.reading.play.takes import carrying, read_take, taken_kinds
from grammar.core.reading.play.touches import read_touch
from grammar.core.reading.play.what_is_tried import (
    aimed_and_run,
    brought_kinds,
    carried_kinds,
    chased_for,
    only_entered,
    passed_to,
    senders,
)
from grammar.core.reading.possible import impossible
from grammar.core.reading.set_up.areas import read_area
from grammar.core.reading.set_up.homes import homes_of
from grammar.core.reading.set_up.kit_and_start import read_kind, read_on_step, read_placing, read_supplies
from grammar.core.reading.set_up.space_and_sides import (
    read_court,
    read_organisation,
    read_role,
    read_sides,
    read_track,
    refused_sides,
)
from grammar.core.reading.sheet.articles import nodes
from grammar.core.reading.sheet.once import keep, reread
from grammar.core.reading.sheet.reader import Reader, seconds
from grammar.core.reading.sheet.sheet_pass import Reading, numbered
from grammar.core.reading.sheet.told import called, plurals, told_of
from grammar.core.rotation import Rotation
from grammar.core.rules import Rest, Rule
from grammar.core.stopping import Blocking
from grammar.core.values import KindId, SideId, Sort, SwitchId
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.sentences import attempting, ball, finish, head, lives, play, sides, space, then, when
from grammar.sentences.base import Node, Np
from grammar.sentences.blocking import Blocks
from grammar.sentences.points import AtTheEnd
from grammar.tree import GameSheet


def core_of(game: Game, granted: GameSheet | None = None, fixed: Container[str] = ()) -> Outcome[Core]:
    """The core of a game; `granted` is the sheet of what holds where the game says nothing else, `fixed` the names of
    what the kit has that never falls."""
    reading = reread(game) or declared(game)
    own = [(sentence, line) for sentence, line in reading.sentences if reading.holds(line)]
    if granted is not None:
        reading.number_granted(granted, fixed)
        _doings(reading)
    said = _play(reading, own), _facts(reading, own), tuple(reading.lines), told_of(game, own)
    core = Core(game.title, *said, plurals(game), called(game))
    findings = (*reading.findings, *_not_of_a_mistake(reading, impossible(core)))
    if granted is None:
        keep(game, reading)
    return Outcome(None if any(each.severity is Severity.ERROR for each in findings) else core, findings)


def _not_of_a_mistake(reading: Reading, found: Iterable[Finding]) -> Iterator[Finding]:
    """Without that no line gives points, where one that would is wrong by itself."""
    wrong = {each.place.line for each in reading.findings}
    giving = (each for each, line in reading.sentences if reading.lines[line].span.line in wrong)
    given = any(isinstance(node, AtTheEnd | then.Scores) for each in giving for node in nodes(each))
    yield from (each for each in found if not given or each.code != "G-no-points")


def declared(game: Game) -> Reading:
    """The sheet's own lines, read: who and what there is, and all that is said of them."""
    reading = numbered(game)
    _declare(reading)
    _doings(reading)
    return reading


def _declare(reading: Reading) -> None:
    """Court, sides, kit, roles, areas, tracks and the set-up, each read once what it speaks of is known."""
    reader = reading.reader
    for court, line in reading.all_of(space.Court)[:1]:
        reader.court = read_court(court, line)
    for team, line in reading.all_of(sides.Sides):
        reader.sides.extend(reading.add(team, line, read_sides))
    reader.sides.extend(refused_sides(reader))
    reader.taken = taken_kinds(reader, [said for said, _ in reading.all_of(play.Take)])
    _kit(reading)
    whole = reader.court.cut is Cut.WHOLE and len(reader.sides) > 1
    reader.held = whole and any(gives_the_ball(reader.game, sentence) for sentence, _ in reading.sentences)
    bells = (seconds(after.time) for after, line in reading.all_of(finish.After) if reading.holds(line))
    reader.bell_s = next(bells, length_of_parts_s(reader.game))
    for role, line in reading.all_of(sides.Role):
        reader.roles.extend(reading.add(role, line, read_role))
    for with_lives, line in reading.all_of(lives.HasLives):
        reader.lives.extend(reading.add(with_lives, line, read_lives))
    for area, line in reading.all_of(space.Area):
        reader.areas.extend(reading.add(area, line, read_area))
    for track, line in reading.all_of(space.Track):
        reader.tracks.extend(reading.add(track, line, read_track))
    busy = with_own_task(reader, _tries(reading))
    for take, line in reading.all_of(play.Take):
        reader.laden.extend(reading.add(take, line, partial(carrying, busy)))
    effects = [effect for rule, _ in reading.all_of(when.When) for effect in rule.consequences]
    reader.changing_owners = frozenset(_changing_owners(reader, [rule for rule, _ in reading.all_of(when.When)]))
    reader.sent_over = sent_over(reader, effects)
    for placing, line in reading.all_of(sides.Placing):
        reader.starts.extend(reading.add(placing, line, read_placing))
    for begins, line in reading.all_of(ball.BeginsWith):
        reader.starts.extend(reading.add(begins, line, read_begins_with))
    for on_step, line in reading.all_of(sides.PlacingOnStep):
        reader.starts.extend(reading.add(on_step, line, read_on_step))


def _changing_owners(reader: Reader, rules: Iterable[when.When]) -> Iterator[KindId]:
    """The kinds of targets that some line lets join a side."""
    for rule in rules:
        if any(isinstance(effect, then.TakenOver) for effect in rule.consequences):
            named = (node for node in nodes(rule.event) if isinstance(node, Np))
            yield from (kind for phrase in named for kind in reader.kinds_meant(phrase, Sort.TARGET))


def _kit(reading: Reading) -> None:
    reader = reading.reader
    by_place = {kit.span: kit for kit in reader.game.kit}
    for sentence, line in reading.all_of(sides.Kit):
        if (kit := by_place.get(sentence.span)) is None:
            continue
        kind = read_kind(kit, line, reader.taken)
        reader.kinds.extend([] if kind in reader.kinds else [kind])
        reader.supplies.extend(reading.add(sentence, line, partial(read_supplies, kit)))


def _doings(reading: Reading) -> None:
    """Attempts first, since what follows speaks of whom they concern; nobody does anything where no side is read."""
    reader = reading.reader
    if not reader.sides:
        return
    busy = with_own_task(reader, _tries(reading))
    offers: list[Offer] = []
    for attempt, line in reading.all_of(attempting.Attempt):
        offers.extend(reading.add(attempt, line, partial(read_attempt, busy)))
    touches = reading.all_of(play.Touch)
    touching = [offer for touch, line in touches for offer in reading.add(touch, line, partial(read_touch, busy))]
    offers.extend(touching)
    for take, line in reading.all_of(play.Take):
        offers.extend(reading.add(take, line, partial(read_take, busy)))
    if not reader.granted:
        every = [*offers, *(each for found in reading.hanging.values() for each in found if isinstance(each, Offer))]
        reader.touching, reader.chased_for = frozenset(offer.by for offer in touching), chased_for(touching)
        reader.carried, reader.pairs = carried_kinds(offers), pairs_of(every)
        reader.brought = brought_kinds(every)
        reader.sent_at, reader.run_with = aimed_and_run(every)
        reader.only_entered = only_entered(every)
        reader.blocked = frozenset(blocked_things(reader, reading.all_of(Blocks)))
        reader.senders, reader.passed_to = senders(every), passed_to(every)
        reader.tried = frozenset(each.skill for offer in every for each in offer.attempts)
    for sentence, line in reading.sentences:
        if type(sentence) in DOINGS:
            reading.add(sentence, line, DOINGS[type(sentence)])


def _tries(reading: Reading) -> list[Trying | play.Idle]:
    """All that players try, or are said to leave, as the sheet says it."""
    kinds: tuple[type[Trying | play.Idle], ...] = (attempting.Attempt, play.Touch, play.Take, play.Idle)
    return [said for kind in kinds for said, _ in reading.all_of(kind)]


def _play(reading: Reading, own: list[tuple[Node, int]]) -> Play:
    reader, game = reading.reader, reading.reader.game
    rules, unfetched = with_nothing_else(reading.of(Rule)), reading.of(Unfetched)
    fetches = fetched(reading.of(Fetch), unfetched, reading.of(Offer), reader.taken)
    open_lines = tuple(line for sentence, line in own if isinstance(sentence, finish.OpenEnded))
    return Play(
        court=reader.court,
        sides=tuple(reader.sides),
        organisation=read_organisation(own),
        factors=reading.of(Factor),
        ends=reading.of(End),
        bell=next(iter(reading.of(Bell)), None),
        tie=next(iter(reading.of(Tie)), None),
        open_end=bool(open_lines),
        open_lines=open_lines,
        match=read_match(own),
        mirrored=frozenset(SideId(side.name) for side in game.sides if side.mirrored),
        before=frozenset(asked_first(rules)),
        choices=tuple(_choices(reading)),
        areas=tuple(reader.areas),
        tracks=tuple(reader.tracks),
        roles=tuple(reader.roles),
        lives=tuple(reader.lives),
        begin_points=reading.of(BeginPoints),
        kinds=tuple(reader.kinds),
        supplies=tuple(reader.supplies),
        starts=tuple(reader.starts),
        homes=homes_of(reading),
        offers=reading.of(Offer),
        services=(*fetches, *reading.of(Free), *reading.of(ComeBack), *reading.of(StandUp)),
        unfetched=unfetched,
        holds=reading.of(Hold),
        guarding=reading.of(Guarding),
        blocking=reading.of(Blocking),
        valid=reading.of(CountsOnly),
        steps=reading.of(Steps),
        counting=reading.of(PointsCount),
        end_points=reading.of(EndPoints),
        rests=reading.of(Rest),
        rules=rules,
        held=reader.held,
        laden=tuple(reader.laden),
        rotations=reading.of(Rotation),
        low=reading.of(LowDown),
    )


def _choices(reading: Reading) -> Iterator[Choice]:
    game = reading.reader.game
    for switch in game.sheet.all_of("head", head.Switch):
        name = SwitchId(switch.name.text)
        with_it, without = (tuple(reading.hanging.get((name, on), ())) for on in (True, False))
        yield Choice(name, switch.on, game.switches[name.key], with_it, without)


def _facts(reading: Reading, own: list[tuple[Node, int]]) -> Facts:
    least, most = map(Fraction, reading.reader.game.ages_years)
    said = [(sentence, line) for sentence, line in own if isinstance(sentence, head.Skills)]
    skills = tuple(each.text for sentence, _ in said for each in sentence.practised)
    return Facts((least, most), skills, tuple(line for _, line in said), tuple(reading.reader.posts))
