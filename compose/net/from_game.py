"""Core → net: the door of this folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from attrs import evolve

from compose.net.lower.attempts import lower_attempts
from compose.net.lower.barren import barren_lines
from compose.net.lower.both_hold import both_hold
from compose.net.lower.builder import Builder
from compose.net.lower.doubts import doubts
from compose.net.lower.duties import duties_of
from compose.net.lower.ends import lower_bell, lower_end_points, lower_ends, points_counted_to
from compose.net.lower.fetched_anyway import fetched_anyway
from compose.net.lower.fixed import fixed_targets
from compose.net.lower.idle_roles import idle_roles
from compose.net.lower.meant_anew import meant_anew
from compose.net.lower.mirrored import same_tasks, unlike_sides
from compose.net.lower.one_side_alone import of_one_side_alone
from compose.net.lower.own_down import own_down
from compose.net.lower.room import too_many_at_the_start
from compose.net.lower.services import lower_services
from compose.net.lower.setup import place_tokens
from compose.net.lower.spontaneous import lower_spontaneous
from compose.net.lower.ticking import lower_ticks
from compose.net.lower.tokens import clock_place, in_play, player_place, points_place
from compose.net.lower.unaimed import unaimed
from compose.net.lower.unread import unread
from compose.net.lower.whereabouts import places_of_players, reached_in_play
from compose.net.lower.without_consequence import without_consequence
from compose.net.match import match_of
from compose.net.net import RESULT, Net, Place, Rule
from compose.net.schedule import Schedule
from compose.net.told import Effects
from compose.net.width import too_wide
from compose.staging.floor.nowhere import gone_to_though_shut, nowhere_to_act, shut_out
from compose.staging.floor.touching import nobody_in_reach
from compose.staging.laid_out import laid_out
from compose.staging.resolved import resolved
from compose.staging.teams import usual_players
from grammar.core import rules as core
from grammar.core.clock import TakeAway
from grammar.core.ends import left_win
from grammar.core.game import Core
from grammar.core.keeping import kept_by
from grammar.core.rules import Add, AllHold, Finish, Happening, Result, SendBalls, StartAgain
from grammar.core.values import At, Population, SideId, Spot
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.span import Span
from grammar.tree import GameSheet
from grammar.words import count


def net_of(
    game: Game,
    granted: GameSheet,
    players: Mapping[str, int] | None = None,
    ages_years: tuple[float, float] | None = None,
) -> Outcome[Net]:
    """The net of a game for that many players of each side, of other ages than those of its sheet if given.

    `granted` is the sheet of rules that hold where the game says nothing else.
    """
    numbers = dict(usual_players(game) if players is None else players)
    core = _aged(resolved(game, granted), ages_years)
    if findings := (*_too_few(game, numbers), *too_wide(core)):
        return Outcome(None, findings)
    builder = _builder(core, game, numbers)
    place_tokens(builder)
    builder.findings.extend((*too_many_at_the_start(builder), *_of_the_sheet(core)))
    schedule = _lower_moves(builder)
    ends, bell, at_the_end = lower_ends(builder), lower_bell(builder), lower_end_points(builder)
    net = Net(
        core.title,
        tuple(side.key for side in core.play.side_ids),
        tuple(builder.places),
        tuple(builder.transitions),
        tuple(builder.reactions),
        ends,
        bell,
        tuple(builder.rules[number] for number in sorted(builder.rules)),
        open_ended=core.play.open_end,
        mirrored=tuple(side.key for side in core.play.side_ids if side in core.play.mirrored),
        match=match_of(core),
        at_the_end=at_the_end,
        duties=tuple(duties_of(builder)),
        keeping=in_play(builder, *(who for who in core.play.populations() if kept_by(core.play, who))),
        schedule=schedule,
        plurals=core.plurals,
        solo={side.id.key: left_win(side.id, core.play.ends, core.play.bell) for side in core.play.sides if side.solo},
    )
    broken = any(finding.severity is Severity.ERROR for finding in builder.findings)
    return Outcome(None if broken else _with_lines(builder, net), tuple(builder.findings))


def _with_lines(builder: Builder, net: Net) -> Net:
    """The net with what it says of lines of the sheet besides what they do."""
    return evolve(
        net,
        spared=tuple(_spared(builder)),
        unfetched=tuple(_unfetched(builder)),
        unaimed=tuple(_unaimed(builder)),
        placed=tuple(_placed(builder)),
        reckoned=tuple(builder.rule((line,)) for line in sorted(fetched_anyway(builder.play))),
        following=tuple(_following(builder)),
        barren=tuple(barren_lines(builder)),
    )


def _builder(core: Core, game: Game, numbers: Mapping[str, int]) -> Builder:
    """The net before there is anything in it, with where players can come to be."""
    sides = {SideId(side): players for side, players in numbers.items()}
    waiting = places_of_players(core.play)
    return Builder(core, sides, laid_out(game, numbers), waiting, reached_in_play(core.play, waiting))


def _aged(core: Core, ages_years: tuple[float, float] | None) -> Core:
    """The same for pupils of these ages, where they are given."""
    if ages_years is None:
        return core
    low, high = (Fraction(age) for age in ages_years)
    return evolve(core, facts=evolve(core.facts, ages_years=(low, high)))


def _spared(builder: Builder) -> Iterator[tuple[int, Span]]:
    """The places of players of roles at whom nobody may aim."""
    for role in builder.play.roles:
        if not role.aimed_at:
            who = Population(role.side, role.id)
            yield from ((place, builder.core.lines[role.lines[0]].span) for place in in_play(builder, who))


def _unaimed(builder: Builder) -> Iterator[tuple[Rule, Result]]:
    """The lines of the sheet's own about what nobody tries to do to players."""
    untried = unaimed(builder.play)
    yield from ((rule, untried[line]) for line, rule in builder.rules.items() if line in untried)


def _unfetched(builder: Builder) -> Iterator[tuple[int, Rule]]:
    """The places of balls from which the sheet says that nobody fetches them."""
    said = {(each.ball.key, each.spot): builder.core.lines[each.lines[0]] for each in builder.play.unfetched}
    for number, place in enumerate(builder.places):
        if place.token == "ball" and isinstance(place.standing, At):
            line = said.get((place.kind or "", place.standing.spot))
            if line is not None:
                yield number, Rule(line.words, line.span)


def _placed(builder: Builder) -> Iterator[tuple[int, Rule]]:
    """The places outside of play in which players are at the set-up, with the line that puts them there."""
    for start in builder.play.starts:
        if isinstance(start.what, Population) and isinstance(start.at, Spot):
            line = builder.core.lines[start.lines[0]]
            yield player_place(builder, start.what, At(start.at)), Rule(line.words, line.span)


def _following(builder: Builder) -> Iterator[tuple[Rule, Effects]]:
    """What the lines of the sheet say of what follows from an attempt."""
    rules = (each for each in builder.play.rules if isinstance(each.trigger, Happening) and not each.granted)
    yield from ((builder.rule(each.lines), each.effects) for each in rules)


def _of_the_sheet(core: Core) -> Iterator[Finding]:
    """What the sheet alone shows, whoever plays."""
    yield from (*nowhere_to_act(core), *shut_out(core), *gone_to_though_shut(core), *nobody_in_reach(core))
    yield from (*doubts(core), *own_down(core), *fixed_targets(core), *unlike_sides(core), *same_tasks(core))
    yield from (*idle_roles(core), *both_hold(core), *meant_anew(core), *of_one_side_alone(core), *unread(core))
    yield from without_consequence(core)


def _counters(builder: Builder) -> None:
    """Moments of the clock, points, and who has won by a rule."""
    if builder.times_s:
        clock_place(builder)
    effects = [effect for rule in builder.play.rules for effect in rule.effects]
    if any(isinstance(effect, Finish) for effect in effects):
        place = Place(RESULT, RESULT, len(builder.play.sides), 0)
        builder.result_place = builder.add_place((RESULT,), place)
    if any(isinstance(effect, Add) for effect in effects):
        counted_to = points_counted_to(builder.play)
        for side in builder.play.side_ids:
            points_place(builder, side, counted_to)


def _lower_moves(builder: Builder) -> Schedule | None:
    """All that can happen, what follows at once, and what the clock does; when, if it does anything."""
    _counters(builder)
    if any(_speaks_of_all_places(rule) for rule in builder.play.rules):
        _lowered(builder)  # only after a first time are all of them known
        builder.transitions.clear()
        builder.reactions.clear()
    _register(builder)
    return _lowered(builder)


def _speaks_of_all_places(rule: core.Rule) -> bool:
    """Whether a rule asks or changes what lies anywhere: whether balls are enough, where all of them go."""
    moved = (isinstance(each, TakeAway) or (isinstance(each, SendBalls) and each.of is None) for each in rule.effects)
    return isinstance(rule.trigger, AllHold) or StartAgain.EVERYTHING in rule.effects or any(moved)


def _lowered(builder: Builder) -> Schedule | None:
    lower_attempts(builder)
    lower_spontaneous(builder)
    lower_services(builder)
    return lower_ticks(builder)


def _register(builder: Builder) -> None:
    """Every line that ought to matter is a rule of the net, so that an idle one is seen."""
    play = builder.play
    for value in (*play.rules, *play.offers, *play.rests, *play.services, *play.counting, *play.end_points):
        for line in value.lines:
            builder.rule((line,))


def _too_few(game: Game, players: Mapping[str, int]) -> list[Finding]:
    return [
        Finding(
            "N-players",
            Severity.ERROR,
            f"The side {side.name} has {count(players.get(side.name, 0), 'player')}.",
            side.span,
            f"This game is for {side.least} to {side.most} players a side.",
        )
        for side in game.sides
        if players.get(side.name, 0) < 1
    ]
