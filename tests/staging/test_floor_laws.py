"""Laws of the floor: names never matter, mirrored games lie mirrored, and every word that says where changes it."""

from __future__ import annotations

from itertools import combinations

import pytest
from floor_games import floor_in, game_of
from hypothesis import assume, given
from hypothesis import strategies as st

from compose.staging.floor.throws import throws
from compose.staging.floor.values import Floor
from compose.staging.resolved import resolved
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories

SHEET = """
game Two Halves
space
  court 18 m by 9 m, halved across
{space}
sides
  east and west, 2 to 12 players each, mirrored
kit
  4 foam balls
  4 cones for each side
  2 goals for each side, like a small goal
set-up
  2 foam balls in each half
  goals on the back line of their side
{set_up}
play
{play}
  players overarm throw a foam ball at the cones or the players of the other side
when
  a cone is knocked: it stays down
finish
  a side wins when the other side has no cones standing
"""
CONES, STAY = "cones in their half, evenly spaced", "players stay in their half"
LANDMARKS = ("half", "back line", "side line", "wall", "corner")
SHARED = ("middle line", "middle", "court")
OF_OTHERS = " of the other side"
PREPOSITIONS = ("on", "before", "behind", "beside", "along", "across")
RULES = ("", ", nobody enters there", ", nobody acts there", ", nobody guards there")
# What means the same floor: a wall is taken to stand at the back line, what lies along a line or before it lies on
# the same strip, and a half ends at its back line and at the middle line.
ALIKE = (
    {"on back line", "on wall"},
    {"beside back line", "beside wall"},
    {"before back line", "before wall", "along back line", "along wall"},
    {"behind back line", "behind wall", "behind half"},
    {"before side line", "along side line"},
    {"behind side line", "beside side line"},
    {"before half", "before middle line", "before middle", "behind middle line", "behind middle"},
    {"on middle line", "on middle", "along middle line", "across middle line", "across middle", "across court"},
    {"on middle", "on court", "before court"},
    {"on middle line", "on middle", "on court"},
    {"beside middle line", "beside middle", "beside court"},
)


def sheet(space: str = "", set_up: str = CONES, play: str = STAY) -> str:
    lines = {"space": space, "set_up": set_up, "play": play}
    return SHEET.format(**{name: "\n".join(f"  {line}" for line in text.splitlines()) for name, text in lines.items()})


def game_or_none(text: str) -> Game | None:
    """The game of a text, or None where it means nothing."""
    read = parse(text, "test.rules")
    return resolve(read.value.games[0], kit_categories()).value if read.value else None


def looks(floor: Floor, game: Game) -> tuple[object, ...]:
    """All that can be measured on a floor."""
    areas = tuple((area.kind, area.owner, area.rectangle, area.shut) for area in floor.areas)
    things = tuple((item.category, item.side, round(item.x, 6), round(item.y, 6)) for item in floor.items)
    lengths = tuple((throw.side, throw.reach.metres) for throw in throws(resolved(game), floor))
    return areas, things, lengths


def seen(text: str) -> tuple[object, ...] | None:
    game = game_or_none(text)
    return looks(floor_in(game, {"east": 5, "west": 5}), game) if game else None


# A bench along a line stands off the court, as one behind it does: nobody runs into it.
OF_BENCHES = ({"along side line", "behind side line", "beside side line"},
              {"along back line", "behind back line", "behind half", "behind wall", "along wall"})  # fmt: skip


def alike(one: str, other: str, more: tuple[set[str], ...] = ()) -> bool:
    """Whether two wordings of one owner lay out the same floor by what is taken for granted."""
    both = {one, other}
    if len({said.endswith(OF_OTHERS) for said in both}) > 1:
        return False
    words = (said.removesuffix(OF_OTHERS).split() for said in both)
    bare = {" ".join(word for word in said if word not in ("their", "each", "the")) for said in words}
    return any(bare <= same for same in (*ALIKE, *more))


def all_different(wordings: dict[str, str], more: tuple[set[str], ...] = ()) -> None:
    """No two of these sheets that mean anything lie alike, unless by what is taken for granted."""
    floors = {said: found for said, text in wordings.items() if (found := seen(text)) is not None}
    assert len(floors) > len(wordings) / 4
    same = [(one, other) for one, other in combinations(floors, 2) if floors[one] == floors[other]]
    assert not [pair for pair in same if not alike(*pair, more)]


def places(*owners: str) -> list[str]:
    """Every preposition with every place of the court: one's own, each, or those of the other side."""
    own = [
        f"{part} the {place}{OF_OTHERS}" if owner == "other" else f"{part} {owner} {place}"
        for part in PREPOSITIONS
        for place in LANDMARKS
        for owner in owners
    ]
    return own + [f"{part} the {place}" for part in PREPOSITIONS for place in SHARED]


@pytest.mark.parametrize("kind", ["strip", "zone", "bench", "base"])
def test_every_word_of_an_area_moves_it(kind):
    more = OF_BENCHES if kind == "bench" else ()
    all_different({where: sheet(f"dim {kind}: 1 m deep, {where}") for where in places("each")}, more)


@pytest.mark.parametrize("where", ["before the {} of {}", "behind the {} of {}"])
def test_the_owner_of_an_area_moves_it(where):
    for place in ("back line", "half"):
        said = [where.format(place, side) for side in ("east", "west")] + [where.format(place, "each side")]
        all_different({each: sheet(f"dim strip: {each}") for each in said})


def test_how_deep_an_area_is_and_what_nobody_does_there_are_seen():
    said = [f"dim strip: {deep} m deep, before each back line{rule}" for deep in (1, 2, 3) for rule in RULES]
    all_different({each: sheet(each) for each in said})


def test_every_word_of_the_set_up_moves_the_things():
    said = places("their", "other")
    all_different({where: sheet(set_up=f"cones {where}, evenly spaced") for where in said})
    ways = ("evenly spaced", "in a ring", "staggered", "in a triangle", "close together")
    all_different({how: sheet(set_up=f"cones in their half, {how}") for how in ways})
    split = {many: f"{many} cones in their half\n{4 - many} cones before their back line" for many in (1, 2, 3)}
    all_different({str(many): sheet(set_up=lines) for many, lines in split.items()})


def test_every_word_of_where_players_stay_moves_them():
    said = [place for place in places("their", "other") if " court" not in place]
    all_different({where: sheet(play=f"players stay {where}") for where in said})


@given(
    st.sampled_from(["strip", "zone", "bench", "queue", "base", "circle", "mark"]),
    st.sampled_from(places("each")),
    st.sampled_from(places("their")),
    st.sampled_from(places("their")),
    st.integers(2, 9),
)
def test_mirrored_games_have_mirrored_floors(kind, lies, stands, stays, players):
    game = game_or_none(sheet(f"dim {kind}: {lies}", f"cones {stands}", f"players stay {stays}"))
    assume(game is not None)
    floor = floor_in(game, {"east": players, "west": players})

    def half(side, turned):
        place = (lambda x: round(18 - x, 5)) if turned else (lambda x: round(x, 5))
        things = {(item.name, place(item.x), round(item.y, 5)) for item in floor.items if item.side == side}
        boxes = [area.rectangle for area in floor.areas if area.owner == side]
        return things, {(*sorted((place(box.left), place(box.right))), box.bottom, box.top) for box in boxes}

    if " the " not in f"{stands} {stays}":  # what is shared cannot hold two at one spot
        assert half("east", False) == half("west", True)
        found = throws(resolved(game), floor)
        east, west = (sorted(t.reach.metres for t in found if t.side.key == side) for side in ("east", "west"))
        assert east == pytest.approx(west)


@given(
    st.sampled_from(["strip", "zone", "bench", "queue", "base", "circle", "mark"]),
    st.sampled_from(places("each")),
    st.sampled_from(["far", "near", "high", "behind-hand", "other", "back"]),
)
def test_the_name_of_an_area_never_moves_anything(kind, lies, name):
    own, other = (seen(sheet(f"{word} {kind}: {lies}", f"cones in each {word} {kind}")) for word in ("dim", name))
    assume(own is not None and other is not None)
    assert own == other


def test_a_sheet_without_a_word_of_homes_is_as_one_that_says_what_is_taken_for_granted():
    unsaid, said = seen(sheet(play="")), seen(sheet(play=STAY))
    assert unsaid == said is not None


KEEPING = ("keepers block shots at the cones of their side", "at most 1 keeper may guard each cone")


@pytest.mark.parametrize("keeping", KEEPING)
@pytest.mark.parametrize("keepers", [1, 2, 4])
def test_whoever_keeps_a_thing_starts_before_it(keeping: str, keepers: int) -> None:
    """No farther from the back line than any other, next to a cone, and as far apart as the cones let them be."""
    text = sheet(set_up="cones on the back line of their side", play=f"{STAY}\n  {keeping}")
    text = text.replace("kit\n", f"  role keeper: {keepers} players of each side\nkit\n", 1)
    game = game_of(text.replace("2 to 12", "8 to 12"))
    floor = floor_in(game, {"east": 8, "west": 8})
    for side in ("east", "west"):
        own, cones = floor.players_of(side), floor.items_of("cone", side)
        before = [item for item in own if item.role == "keeper"]
        assert len(before) == keepers
        kept = [min(cones, key=lambda cone: abs(cone.y - each.y)) for each in before]
        assert len({cone.y for cone in kept}) == min(keepers, len(cones))
        for each, cone in zip(before, kept, strict=True):
            assert 0 < abs(each.x - cone.x) < 2.0 and abs(each.y - cone.y) < 1.0
            assert all(abs(each.x - cone.x) <= abs(other.x - cone.x) for other in own)
