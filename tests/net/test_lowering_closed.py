"""How many balls stop where nobody enters: as much as the area covers of the half they were sent to."""

from __future__ import annotations

from collections import defaultdict

import pytest
from sheet_pieces import KIT, SET_UP, SPACE, doubts_of, net, refusals

import library
from compose.net.net import Move, Net
from compose.net.told import Fetched, Strayed
from compose.staging.laid_out import laid_out
from grammar.core.values import TEACHER
from tests.interpreter.sheets import game_in

ROLL = "players roll a soft ball at the cones of the other side"
COURT = "court 18 m by 9 m, halved across"
STRIP = "reed strip: 2 m deep, before each back line, nobody enters there"
ZONE = "sky zone: 6 m deep, across the middle, nobody enters there"


def missed(of: Net) -> dict[str, float]:
    """Where the balls that north misses with come to rest, and in which share of the misses."""
    shares: dict[str, float] = defaultdict(float)
    for each in of.transitions:
        if each.outcome == "missed" and each.side == "north" and each.attempt.aim == "target":
            [move] = [effect for effect in each.effects if isinstance(effect, Move)]
            shares[of.places[move.target].name.removeprefix("ball/soft ball/")] += each.part
    return shares


@pytest.mark.parametrize(
    ("areas", "shares"),
    [
        ((), {"half/south": 1}),
        ((STRIP,), {"half/south": 7 / 9, "reed strip/south": 2 / 9}),
        ((ZONE,), {"half/south": 2 / 3, "sky zone/-": 1 / 3}),
        ((STRIP, ZONE), {"half/south": 4 / 9, "reed strip/south": 2 / 9, "sky zone/-": 1 / 3}),
        ((STRIP.replace("enters", "guards"),), {"half/south": 1}),
        ((STRIP.replace("before", "behind"),), {"half/south": 1}),
    ],
)
def test_shares_are_those_of_the_floor(areas: tuple[str, ...], shares: dict[str, float]) -> None:
    assert missed(net(play=ROLL, space="\n  ".join((COURT, *areas)))) == pytest.approx(shares)


@pytest.mark.parametrize(
    ("place", "shares"),
    [
        ("behind the back line", {"half/south": 1 / 2, "behind back line/south": 1 / 2}),
        ("the reed strip", {"half/south": 7 / 9, "reed strip/south": 2 / 9}),
        ("the middle", {"half/south": 1}),
    ],
)
def test_balls_stop_where_nobody_fetches_them(place: str, shares: dict[str, float]) -> None:
    space = f"{COURT}\n  {STRIP.replace('enters', 'guards')}"
    assert missed(net(play=f"{ROLL}\n  nobody fetches balls from {place}", space=space)) == pytest.approx(shares)


@pytest.mark.parametrize("place", ["behind the back line", "the reed strip"])
@pytest.mark.parametrize("other", ["amber", "violet"])
def test_other_balls_may_be_fetched(other: str, place: str) -> None:
    """What is said of amber balls does not hold for the others, whichever comes first by its name."""
    kit = f"2 soft balls, like a foam ball\n  1 {other} ball, like a foam ball\n  2 cones for each side"
    play = f"{ROLL}\n  nobody fetches {other} balls from {place}"
    space = f"{COURT}\n  {STRIP.replace('enters', 'guards')}"
    set_up = f"{SET_UP}\n  1 {other} ball in the middle"
    assert missed(net(play=play, space=space, kit=kit, set_up=set_up)) == pytest.approx({"half/south": 1})


@pytest.mark.parametrize(
    ("place", "stops"),
    [
        ("rests behind the back line of the other side", {"behind back line/south"}),
        ("goes to the other side", {"half/south"}),
        ("goes to the half it was sent to", {"half/south", "reed strip/south"}),
    ],
)
def test_balls_that_a_line_puts_elsewhere_stop_there(place: str, stops: set[str]) -> None:
    assert missed(net(play=f"{ROLL}\n  a missed ball {place}", space=f"{COURT}\n  {STRIP}")).keys() == stops


def test_the_outcomes_of_a_stray_still_sum_to_one() -> None:
    """Part of the misses hit something else; wherever their balls stop, all shares together are all misses."""
    of = net(play=f"{ROLL}, 1 in 4 of the misses hit the cones", space=f"{COURT}\n  {STRIP}")
    parts: dict[str, float] = defaultdict(float)
    for each in of.transitions:
        if each.side == "north" and each.outcome == "missed":
            parts["hits" if isinstance(each.told, Strayed) else "plain"] += each.part
    # Those that would hit something count as plain misses while nothing stands that they could hit.
    assert parts["hits"] == pytest.approx(0.25)
    assert parts["plain"] == pytest.approx(0.75 + 0.25)


def test_the_teacher_brings_a_shared_ball_to_one_side_or_the_other() -> None:
    of = net(space=f"{SPACE}\n  {ZONE}", play=f"{ROLL}\n  the teacher fetches soft balls from the sky zone")
    fetches = [each for each in of.transitions if isinstance(each.told, Fetched) and each.told.who is TEACHER]
    assert [each.part for each in fetches] == [0.5, 0.5]


@pytest.mark.parametrize(("verb", "told"), [("acts", "nobody acts in"), ("enters", "nobody enters")])
def test_an_attempt_needs_a_floor(verb: str, told: str) -> None:
    """A strip as deep as the half leaves nowhere to roll from; one that is less deep does."""
    deep = STRIP.replace("2 m", "9 m").replace("enters", verb)
    space = f"{COURT}\n  {deep}"
    [finding] = refusals("a cone is knocked: it stays down", space=space, set_up=SET_UP)
    assert finding.code == "N-nowhere" and f"{told} the reed strip" in finding.title
    assert net(play=ROLL, space=f"{COURT}\n  {deep.replace('9 m', '8 m')}").transitions


@pytest.mark.parametrize("admitted", ["only keepers there", "no runners there", "at most 2 players there"])
@pytest.mark.parametrize("who", ["keepers", "runners", "players"])
@pytest.mark.parametrize(
    "what", ["fetch soft balls from the reed strip", "take a log from the reed strip to their half"]
)
def test_whoever_may_not_go_there_has_nothing_from_there(admitted: str, who: str, what: str) -> None:
    """Of those whom a line names the others do it; where none of them may it is refused."""
    space = f"{COURT}\n  {STRIP.replace('nobody enters there', admitted)}"
    roles = "role keeper: 1 player of each side\n  role runner: 1 player of each side"
    sides = f"north and south, 3 to 9 players each\n  {roles}"
    kit, set_up = f"{KIT}\n  4 logs, like a box", f"{SET_UP}\n  logs in the reed strip"
    idle = [role for role in ("keepers", "runners") if role != who or what.startswith("fetch")]
    play = "\n  ".join((ROLL, *(f"{role} do not act" for role in idle), f"{who} {what}"))
    shut = (admitted.split()[0], who) in {("only", "runners"), ("no", "runners")}
    if shut or (admitted.startswith("only") and what.startswith("take") and who == "players"):
        found = refusals(
            "a cone is knocked: it stays down", space=space, sides=sides, kit=kit, set_up=set_up, play=play
        )
        assert [each.code for each in found] == ["N-nowhere"]
    else:
        of = net(play=play, space=space, sides=sides, kit=kit, set_up=set_up, players={"north": 4, "south": 4})
        assert of.transitions


@pytest.mark.parametrize("verb", ["acts", "enters"])
def test_nobody_starts_where_nobody_acts_or_enters(verb: str) -> None:
    text = next(path for path in library.game_paths() if path.stem == "cloud-drift").read_text(encoding="utf-8")
    assert "nobody acts there" in text
    floor = laid_out(game_in(text.replace("nobody acts there", f"nobody {verb} there")), {"fells": 15, "dales": 15})
    [zone] = floor.areas_of("sky zone")
    started = [item for item in floor.items if item.category in ("player", "ball")]
    assert len(started) == 15 + 15 + 16
    assert not [item for item in started if zone.rectangle.holds(item.x, item.y)]


@pytest.mark.parametrize(("admitted", "told"), [("nobody enters there", True), ("nobody guards there", False)])
def test_what_lies_where_nobody_enters_is_not_taken_without_a_word(admitted: str, told: bool) -> None:
    """To fetch a ball that stops there is another matter: no line says that somebody plays there."""
    line = "players take a log from the reed strip of the other side to their half"
    for play, said in ((line, told), ("players fetch soft balls from their reed strip", False)):
        of = doubts_of(
            play=f"{ROLL}\n  {play}",
            space=f"{COURT}\n  {STRIP.replace('nobody enters there', admitted)}",
            kit=f"{KIT}\n  4 logs for each side, like a box",
            set_up=f"{SET_UP}\n  logs in the reed strip of their side",
        )
        assert any("by this line they go there" in each.title for each in of) is said
