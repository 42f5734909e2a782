"""Game → net: the door of this folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.net.lower.attempts import Table, lower_attempts
from compose.net.lower.becoming import lower_becomes
from compose.net.lower.builder import Builder
from compose.net.lower.clockwork import (
    lower_everyone_holds,
    lower_fetches,
    lower_frees,
    lower_held_too_long,
    lower_stand_ups,
)
from compose.net.lower.coming_back import lower_coming_back
from compose.net.lower.finish import lower_bell, lower_ends, points_counted_to
from compose.net.lower.reach import doubts
from compose.net.lower.room import too_many_at_the_start
from compose.net.lower.setup import place_tokens
from compose.net.lower.tokens import in_play, points_place
from compose.net.match import match_of
from compose.net.net import Net, Place
from compose.net.width import too_wide
from compose.staging.floor.nowhere import nowhere_to_act
from compose.staging.laid_out import laid_out
from compose.staging.resolved import resolved
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.sentences import finish, play, when
from grammar.span import Span
from grammar.tree import GameSheet
from grammar.words import count


def usual_players(game: Game) -> dict[str, int]:
    """Players of each side when nobody says how many: the middle of what the sheet allows, rounded up."""
    return {side.name: (side.least + side.most + 1) // 2 for side in game.sides}


def net_of(game: Game, granted: GameSheet, players: Mapping[str, int] | None = None) -> Outcome[Net]:
    """The net of a game for that many players of each side.

    `granted` is the sheet of rules that hold where the game says nothing else.
    """
    numbers = dict(usual_players(game) if players is None else players)
    findings = (*_too_few(game, numbers), *too_wide(game))
    if findings:
        return Outcome(None, findings)
    builder = Builder(game, numbers, granted.span.file, laid_out(game, numbers))
    place_tokens(builder)
    too_many_at_the_start(builder)
    builder.findings.extend((*nowhere_to_act(resolved(game, granted)), *doubts(game)))
    counted_to = points_counted_to(game)
    table = _table(builder, granted, counted_to)
    if any(isinstance(each, when.Scores) for rule in game.whens for each in rule.consequences):
        for side in builder.side_names:
            points_place(builder, side, counted_to)
    lower_moves(builder, table, granted)
    if any(isinstance(each, when.StartsAgain) for rule in game.whens for each in rule.consequences):
        # To start again is to set every place; only now are all of them known.
        builder.transitions.clear()
        builder.reactions.clear()
        lower_moves(builder, table, granted)
    lower_ends(builder, counted_to, table.result_place)
    bell = lower_bell(builder)
    _register(builder)
    net = Net(
        game.title,
        builder.side_names,
        tuple(builder.places.values()),
        tuple(builder.transitions),
        tuple(builder.reactions),
        tuple(builder.ends),
        bell,
        tuple(builder.rules.values()),
        open_ended=any(game.all_of("finish", finish.OpenEnded)),
        mirrored=tuple(side.name for side in game.sides if side.mirrored),
        match=match_of(game),
        spared=tuple(_spared(builder)),
    )
    broken = any(finding.severity is Severity.ERROR for finding in builder.findings)
    return Outcome(None if broken else net, tuple(builder.findings))


def _spared(builder: Builder) -> Iterator[tuple[int, Span]]:
    """The places of players of roles at whom nobody may aim."""
    for role in builder.game.roles:
        if not role.aimed_at:
            for side in builder.side_names:
                yield from ((place, role.span) for place in in_play(builder, side, role.name))


def _register(builder: Builder) -> None:
    """Every sentence that ought to matter is a rule of the net, so that an idle one is seen."""
    for sentence in builder.game.sentences("when"):
        builder.rule(sentence)
    for kind in (play.Attempt, play.Rest, play.Fetch, play.Free, play.StandUp, play.ComesBack):
        for each in builder.game.all_of("play", kind):
            builder.rule(each)


def lower_moves(builder: Builder, table: Table, granted: GameSheet) -> None:
    """All that can happen, and what follows at once."""
    game = builder.game
    lower_attempts(builder, table)
    lower_held_too_long(builder, table)
    lower_fetches(builder, _fetches(game, granted))
    lower_frees(builder, tuple(game.all_of("play", play.Free)))
    lower_coming_back(builder)
    lower_stand_ups(builder)
    lower_everyone_holds(builder, table)
    lower_becomes(builder, table)


def _fetches(game: Game, granted: GameSheet) -> tuple[play.Fetch, ...]:
    """The game's own lines, and those taken for granted about places of which it says nothing."""
    own = tuple(game.all_of("play", play.Fetch))
    spoken_of = {each.where.name.text for each in own}
    spoken_of |= {each.where.name.text for each in game.all_of("play", play.NobodyFetches)}
    return (*own, *(each for each in granted.all_of("play", play.Fetch) if each.where.name.text not in spoken_of))


def _table(builder: Builder, granted: GameSheet, counted_to: int) -> Table:
    game = builder.game
    ends_at_once = any(
        isinstance(each, finish.SideWins | when.SideLoses) for rule in game.whens for each in rule.consequences
    )
    result_place = None
    if ends_at_once:
        place = Place("result", "result", len(builder.side_names), 0, "result", "results")
        result_place = builder.add_place(("result",), place)
    return Table(
        (*game.whens, *granted.all_of("when", when.When)),
        (*game.all_of("play", play.Rest), *granted.all_of("play", play.Rest)),
        tuple(game.all_of("play", play.HoldLimit)),
        result_place,
        counted_to,
    )


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
