"""Which sentences say what goes on and how it ends, each with what reads it; attempts are read before them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from grammar.core.reading.consequences.freeing import read_comes_back, read_free, read_frozen_back
from grammar.core.reading.consequences.target_points import read_set_points, read_target_points
from grammar.core.reading.consequences.when_lines import read_when
from grammar.core.reading.finish.end_points import read_end_points
from grammar.core.reading.finish.finish_lines import read_bell, read_end, read_tie
from grammar.core.reading.finish.parts import read_parts
from grammar.core.reading.phrases.clock import read_points_count
from grammar.core.reading.play.blocking import read_blocks, read_guarding
from grammar.core.reading.play.circles import read_all_move_on, read_move_on
from grammar.core.reading.play.limits import (
    read_after_bounce,
    read_hit_not_bounced,
    read_low_down,
    read_not_above,
    read_not_bounced,
    read_steps,
)
from grammar.core.reading.play.possession import read_catcher_has, read_first_has
from grammar.core.reading.play.rotations import read_idle, read_rotation
from grammar.core.reading.play.services import (
    read_factor,
    read_fetch,
    read_hold,
    read_nobody_fetches,
    read_rest,
    read_stand_up,
    read_stay,
)
from grammar.core.reading.set_up.begin_points import read_begin_points
from grammar.core.reading.sheet.reader import Reader
from grammar.sentences import ball, blocking, finish, freezing, limits, play, points, queues, resting, when
from grammar.sentences.base import Node
from grammar.sentences.points import BeginsPoints

Readers = Mapping[type[Node], Callable[[Reader, Any, int], Iterable[object]]]
DOINGS: Readers = {
    BeginsPoints: read_begin_points,
    play.Stay: read_stay,
    resting.Rest: read_rest,
    ball.CatcherHas: read_catcher_has,
    ball.FirstHas: read_first_has,
    resting.Fetch: read_fetch,
    resting.NobodyFetches: read_nobody_fetches,
    queues.Free: read_free,
    play.ComesBack: read_comes_back,
    freezing.FrozenBack: read_frozen_back,
    play.StandUp: read_stand_up,
    play.HoldLimit: read_hold,
    play.GuardLimit: read_guarding,
    blocking.Blocks: read_blocks,
    play.Rotate: read_rotation,
    play.MoveOn: read_move_on,
    play.AllMoveOn: read_all_move_on,
    play.Idle: read_idle,
    limits.CountsAfterBounce: read_after_bounce,
    limits.NotAbove: read_not_above,
    limits.NotBounced: read_not_bounced,
    limits.HitNotBounced: read_hit_not_bounced,
    limits.NobodyRuns: read_steps,
    limits.StepLimit: read_steps,
    limits.LowDown: read_low_down,
    play.SucceedAsOften: read_factor,
    play.TakeAsLong: read_factor,
    play.PointsCount: read_points_count,
    when.When: read_when,
    points.TargetPoints: read_target_points,
    points.SetPoints: read_set_points,
    points.AtTheEnd: read_end_points,
    finish.After: read_bell,
    finish.Halves: read_parts,
    finish.Innings: read_parts,
    finish.BothAtOnce: read_tie,
    finish.FirstTo: read_end,
    finish.WinWhen: read_end,
    finish.LoseWhen: read_end,
    finish.EndsWhen: read_end,
}
