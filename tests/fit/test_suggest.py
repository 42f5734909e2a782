"""Suggestions: a mend for every game made wrong on purpose, wishes met on games of the library, and proof of none."""

from __future__ import annotations

from pathlib import Path

import pytest
from playing_games import every_modifier, game_in, granted_rules, library_games, looker, modifier_named

from compose.fit.suggest.amounts import at_the_ends
from compose.fit.suggest.played_wishes import Mended, NothingNew, RoundLasts, TurnsAtLeast, WaitsAtMost, mends, no_worse
from compose.fit.suggest.score import Scorer
from compose.fit.suggest.search import MOST_THAT_ADD_UP, Found, search
from compose.fit.suggest.sheet_wishes import ForAges, ForPupils, KitAtMost, NobodyOut, OnCourt, Practises
from compose.fit.suggest.suggestion import suggestions, unmet
from compose.fit.suggest.wish import CHECK, Wish
from compose.forecast.chances.chances import chances
from compose.forecast.rounds.simulate import Play, simulate
from compose.forecast.standings import idle_places
from compose.modifiers.clash import clash
from compose.modifiers.modifier import Use
from compose.net.from_game import net_of
from compose.staging.teams import Teams, usual_players
from grammar.core.declared import Odd
from grammar.game import Game
from grammar.parse import parse_bytes
from grammar.resolve import resolve
from library import kit_categories, kit_names, norms

ONLY_TO_KNOW = ("keeps-the-ball.wrong",)  # what is found of it asks nobody to mend it
WRONG = [
    path
    for path in sorted((Path(__file__).parents[1] / "wrong_games" / "games").glob("*.wrong.rules"))
    if path.stem not in ONLY_TO_KNOW
]


def three(game: Game) -> Teams:
    """Three players a side, or as many as it must be."""
    return Teams(({side.name: max(3, side.least) for side in game.sides},), 0, Odd.UNSAID)


def game_at(path: Path) -> Game:
    rules = parse_bytes(path.read_bytes(), path.name).value
    assert rules is not None
    game = resolve(rules.games[0], kit_categories()).value
    assert game is not None
    return game


# Nothing in the library lets players aim at something else as well, takes a deciding point away or lets a keeper guard
# what nobody shoots at, lays things where they count, or writes half a line anew; the search then ends with its tries,
# not whole.
MENDED_BY_NO_MODIFIER = (
    "idle-nobody-aims.wrong", "dead-end-at-a-level-score.wrong", "keeper-not-there.wrong",
    "counts-where-nothing-lies.wrong", "idle-part.wrong", "row-never-full.wrong",
)  # fmt: skip


@pytest.mark.sample(1)
@pytest.mark.whole(*MENDED_BY_NO_MODIFIER)
@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_wrong_game_is_mended(path: Path) -> None:
    game, eyes = game_at(path), looker(three)
    wishes = mends(game, eyes)
    assert any(isinstance(wish, Mended) for wish in wishes), "nothing is wrong with it"
    scorer = Scorer(game, wishes, eyes)
    found = search(scorer, at_the_ends(every_modifier()), wanted=1)
    assert found.solutions or found.whole or path.stem in MENDED_BY_NO_MODIFIER
    for each in suggestions(found, scorer):
        made = scorer.made(each.uses)
        assert made is not None and not eyes.findings(made[0]).to_mend
        assert len(each.bought) <= MOST_THAT_ADD_UP
        assert all(bought.wishes or bought.needed_by for bought in each.bought)


WISHES: tuple[tuple[str, tuple[Wish, ...]], ...] = (
    ("lantern-row", (Practises(("kick",)), KitAtMost(4, "balls"), RoundLasts(5, 9))),
    ("heron-and-pike", (NobodyOut(), ForPupils(24), RoundLasts(3, 6))),
    ("quarry-row", (ForAges(6, 8), KitAtMost(6, "balls"), Practises(("roll",)))),
    ("millrace-roll", (ForPupils(40), OnCourt(14, 6), TurnsAtLeast(0.5))),
    ("ferry-bench", (OnCourt(14, 8), ForPupils(26), TurnsAtLeast(1.0))),
)


@pytest.mark.sample(1)
@pytest.mark.parametrize(("stem", "wanted"), WISHES, ids=[stem for stem, _ in WISHES])
def test_three_wishes_are_answered(stem: str, wanted: tuple[Wish, ...]) -> None:
    game, eyes = library_games()[stem], looker()
    scorer = Scorer(game, (*wanted, *no_worse(game, eyes)), eyes)
    found = search(scorer, at_the_ends(every_modifier()), wanted=1)
    ranked = suggestions(found, scorer)
    assert ranked, unmet(found.nearest, scorer.wishes)
    scored = scorer(ranked[0].uses)
    assert scored is not None and scored.met


def found_for(game: Game, wishes: tuple[Wish, ...], *uses: Use, wanted: int = 9) -> Found:
    return search(Scorer(game, wishes, looker(three)), uses, wanted=wanted)


def test_game_without_a_fault_needs_nothing() -> None:
    game = library_games()["lantern-row"]
    found = found_for(game, mends(game, looker(three)), Use(modifier_named("add balls")))
    assert found.base.met and [each.uses for each in found.solutions] == [()]


def test_proof_that_no_set_does_it() -> None:
    """With these modifiers nobody can ever kick: all sets of them are tried, and the answer says so."""
    game = library_games()["lantern-row"]
    uses = [Use(modifier_named(name)) for name in ("add balls", "hold limit", "roll instead", "shorter court")]
    found = found_for(game, (Practises(("kick",)),), *uses)
    assert not found.solutions and found.whole
    assert found.tried == 4 + 6 + 4  # sets of one, two and three of four


def test_modifiers_that_clash_are_never_put_together() -> None:
    game = library_games()["lantern-row"]
    uses = [Use(modifier_named(name)) for name in ("kick instead", "roll instead", "strike instead")]
    found = found_for(game, (Practises(("pass",)),), *uses)
    assert found.whole and found.tried == 3
    assert all(clash(one, other) for one in uses for other in uses if one is not other)


def test_modifiers_that_change_only_numbers_are_ruled_out_for_findings() -> None:
    game = game_at(next(path for path in WRONG if path.stem.startswith("stall")))
    eyes = looker(three)
    uses = [Use(modifier_named(name)) for name in ("shorter court", "bigger targets", "walking play", "weaker hand")]
    found = search(Scorer(game, tuple(each for each in mends(game, eyes) if each.cost == CHECK), eyes), uses)
    assert found.whole and found.tried == 0 and eyes.checked == 1


def test_least_change_comes_first_and_each_modifier_says_what_it_bought() -> None:
    game, eyes = library_games()["lantern-row"], looker(three)
    wishes: tuple[Wish, ...] = (Practises(("kick",)), KitAtMost(4, "balls"))
    uses = at_the_ends([modifier_named(name) for name in ("kick instead", "fewer balls", "roll instead")])
    scorer = Scorer(game, wishes, eyes)
    ranked = suggestions(search(scorer, uses), scorer)
    assert [each.use.label for each in ranked[0].bought] in (
        ["kick instead", "fewer balls (n 4)"],
        ["fewer balls (n 4)", "kick instead"],
    )
    told = {each.use.modifier.name: each.wishes for each in ranked[0].bought}
    # By how much a wish is missed is said of the game as it is, and not again.
    assert told == {"kick instead": ("players kick",), "fewer balls": ("at most 4 balls",)}
    assert [each.edits for each in ranked] == sorted(each.edits for each in ranked)


def test_modifier_that_is_not_needed_is_left_out() -> None:
    game, eyes = library_games()["lantern-row"], looker(three)
    wishes: tuple[Wish, ...] = (Practises(("kick",)),)
    uses = [Use(modifier_named("hold limit")), Use(modifier_named("kick instead"))]
    scorer = Scorer(game, wishes, eyes)
    ranked = suggestions(search(scorer, uses), scorer)
    assert [[each.use.label for each in one.bought] for one in ranked] == [["kick instead"]]


def test_modifier_needed_by_another_is_told_so() -> None:
    """The rolling balls are not fit for a kick; foam balls are."""
    game, eyes = library_games()["millrace-roll"], looker(three)
    wishes: tuple[Wish, ...] = (Practises(("kick",)),)
    uses = [Use(modifier_named("kick instead")), Use(modifier_named("softer balls"))]
    scorer = Scorer(game, wishes, eyes)
    (only,) = suggestions(search(scorer, uses), scorer)
    assert [(each.use.label, tuple(use.label for use in each.needed_by)) for each in only.bought] == [
        ("softer balls", ("kick instead",)),
        ("kick instead", ()),
    ]


@pytest.mark.parametrize(
    ("stem", "wish", "met"),
    [
        ("lantern-row", Practises(("overarm throw",)), True),
        ("lantern-row", ForAges(9, 11), True),
        ("lantern-row", ForAges(6, 9), False),
        ("lantern-row", ForPupils(28), True),
        ("lantern-row", ForPupils(29), False),
        ("lantern-row", OnCourt(18, 9), True),
        ("lantern-row", OnCourt(17, 9), False),
        ("lantern-row", KitAtMost(8, "balls"), True),
        ("lantern-row", KitAtMost(9, "lanterns"), False),
        ("lantern-row", NobodyOut(), True),
        ("heron-and-pike", NobodyOut(), False),
        ("lantern-row", WaitsAtMost(0.1), True),
        ("heron-and-pike", WaitsAtMost(0.001), False),
        ("lantern-row", RoundLasts(1, 6), True),
        ("lantern-row", RoundLasts(30, 60), False),
        ("lantern-row", TurnsAtLeast(0.1), True),
        ("lantern-row", TurnsAtLeast(100), False),
        ("lantern-row", NothingNew(()), True),
    ],
)
def test_wishes_know_when_they_are_met(stem: str, wish: Wish, met: bool) -> None:
    miss = wish.miss(library_games()[stem], looker())
    assert miss.met is met and miss.gap >= 0 and bool(miss.words) is not met and wish.words()


GATE = """
    game Gate
    space
      court 6 m by 4 m, halved across
      gate queue: beside each half
    sides
      west and east, 2 players each, mirrored
    kit
      2 foam balls
    set-up
      1 foam ball in each half
    play
      players underarm throw a foam ball at the players of the other side, 1 in 2 succeed, 6 times a minute
      the teacher frees the first in each queue, 4 times a minute
    when
      a player is hit: that player waits in the gate queue
    finish
      after 60 min: nobody wins
    """


def test_mean_wait_is_that_of_rounds_played() -> None:
    """Little's law on the exact course against the waits of rounds played at random, which are kept one by one."""
    game, eyes = game_in(GATE), looker()
    told = eyes.numbers(game)
    net = net_of(game, granted_rules(), usual_players(game)).value
    assert told is not None and net is not None
    constants = chances(net, norms(), kit_names())
    played = simulate(net, constants, 30.0, Play(rounds=200, batch=200), idle_places(net))
    assert played is not None and len(played.waits) == 2
    for wait in played.waits:
        assert told.wait == pytest.approx(wait.mean.value, abs=2 * wait.mean.margin + 0.01)
    assert told.wait > 0.25  # one alone waits a quarter of a minute, the second longer
