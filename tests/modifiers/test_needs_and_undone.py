"""A need is met by one thing of that kind among others; a modifier undoes what another put there, never its own."""

from __future__ import annotations

import pytest
from mixtures import ROW, game_of, mixed, modifier_in, row

from compose.modifiers.clash import undone
from compose.modifiers.modifier import Use
from grammar.game import Game

SIDES, STRIP = "north and south, 6 to 14 players each, mirrored", "dim strip: 2 m deep, before each back line"
IN_HALVES, BALLOONS = "4 foam balls in each half", "4 foam balls in each half\n      balloons in the middle"
MET = {  # how the game comes to have what is needed beside other things that would not do
    "a ball fit for kick": (("8 foam balls", "2 balloons\n      8 foam balls"), (IN_HALVES, BALLOONS)),
    "a ball fit for overarm throw": (("8 foam balls", "8 foam balls\n      2 balloons"), (IN_HALVES, BALLOONS)),
    "a ball": (),
    "a target": (),
    "a queue": (),
    "a strip": (),
    "a rule for when a player is hit": (),
    "a rule for when a target is knocked": (),
    "overarm throw": (("play\n", "play\n      players roll a foam ball at the lanterns of the other side\n"),),
    "points": (("it stays down", "it stays down and the thrower's side scores 1 point"),),
    "two sides": (),
    "a team-mate": (
        ("north and south, 6 to 14 players each, mirrored", "north, 1 to 14 players\n      south, 6 players"),
    ),
}
UNMET = {  # how the game loses what is needed and keeps all else
    "a ball fit for kick": (("foam ball", "beanbag"),),
    "a ball fit for overarm throw": (("foam ball", "balloon"),),
    "a strip": (
        ("dim strip: 2 m deep, before each back line, nobody guards there", "far bench: behind each back line"),
    ),
    "a rule for when a player is hit": (("a player is hit: that player waits in the long queue", ""),),
    "overarm throw": (("overarm throw a", "roll a"),),
    "points": (),
    "a team-mate": (
        ("north and south, 6 to 14 players each, mirrored", "north, 1 player\n      south, 1 to 9 players"),
    ),
}


def changed(changes: tuple[tuple[str, str], ...]) -> Game:
    """Row with pieces of its text replaced; each must be there."""
    text = ROW
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return game_of(text)


def needing(need: str) -> Use:
    """A modifier that needs this and goes with everything else."""
    return modifier_in(f'needs {need}\nput in care\n  "Mind the wall."')


@pytest.mark.parametrize("need", MET)
def test_one_thing_that_will_do_is_enough(need: str) -> None:
    outcome = mixed(changed(MET[need]), needing(need))
    assert outcome.value is not None, outcome.findings


@pytest.mark.parametrize("need", UNMET)
def test_none_that_will_do_is_told(need: str) -> None:
    [finding] = mixed(changed(UNMET[need]), needing(need)).findings
    assert finding.code == "M-need"


def hold(*seconds: int) -> str:
    """Lines that put in a limit and replace it by the next, and that by the next."""
    blocks = [f"replace in play\n  a ball is held at most {each} s" for each in seconds]
    return "\n".join(blocks)


CHANGES = {
    "limits": (hold(9), hold(5)),
    "skills": ("change overarm throw to roll", "change roll to kick"),
    "kit": ("make every target like a cone", "make every target 150 % as big"),
}


@pytest.mark.parametrize("kind", CHANGES)
def test_only_what_another_modifier_put_there_is_undone(kind: str) -> None:
    """The same two changes are told where two modifiers make them, and not where one makes both."""
    first, second = CHANGES[kind]
    by_one = mixed(row(), modifier_in(f"{first}\n{second}")).value
    names = ("one", "other")
    by_two = mixed(row(), *(modifier_in(lines, name) for lines, name in zip((first, second), names, strict=True))).value
    assert by_one is not None and by_two is not None
    assert not list(undone(by_one))
    told = list(undone(by_two))
    assert told and all("`other` changes what `one` put there" in finding.title for finding in told)
