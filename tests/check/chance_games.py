"""Games whose chances are known in closed form, as nets with their constants per minute."""

from __future__ import annotations

from attrs import frozen

from compose.check import StateSpace, explore
from compose.forecast.chain.chain import Chain, chain
from compose.net.net import Bell, Net, Ratio
from tests.check.build import ALWAYS, Builder


@frozen
class Game:
    """A net and the events per minute of each of its transitions at factor 1."""

    net: Net
    constants: tuple[float, ...]

    def space(self) -> StateSpace:
        space = explore(self.net)
        assert isinstance(space, StateSpace) and space.complete
        return space

    def chain(self) -> Chain:
        return chain(self.space(), self.constants)


def walk(start: int, top: int, right: float, left: float) -> Game:
    """A walk on 0..top that ends at either edge."""
    play = Builder("north", "south")
    play.place("at", start, top)
    told = play.rule("one step right or left")
    play.may("right", play.shift("at", 1, told))
    play.may("left", play.shift("at", -1, told))
    play.end("top", "north", play.at_least("at", top), told)
    play.end("bottom", "south", play.at_most("at", 0), told)
    return Game(play.net(), (right, left))


def race(to: int, north: float, south: float, scored: tuple[int, int] = (0, 0)) -> Game:
    """First to so many points; each side scores at its own rate, from the points it has already."""
    play = Builder("north", "south")
    told = play.rule("first to so many")
    for side, points in zip(("north", "south"), scored, strict=True):
        play.place(side, points, to, side=side)
        play.may(f"{side} scores", play.shift(side, 1, told), side=side)
        play.end(f"{side} wins", side, play.at_least(side, to), told)
    return Game(play.net(), (north, south))


def targets(count: int, hit: float, chosen_at_random: bool) -> Game:
    """Targets felled one by one: all at once each at its own rate, or one throw at a random one, down or not."""
    play = Builder()
    play.place("standing", count, count, "target")
    play.place("down", 0, count, "target", final=True)
    told = play.rule("it stays down")
    fall = play.move("standing", "down", told)
    ratio = [Ratio((0,), count)] if chosen_at_random else []
    play.may("a standing one", fall, rate=play.rate(*[] if ratio else ["standing"], ratios=ratio))
    constants: tuple[float, ...] = (hit,)
    if chosen_at_random:
        play.may("one that is down", rate=play.rate(ratios=[Ratio((1,), count)]))
        constants = (hit, hit)
    play.end("all down", None, play.at_most("standing", 0), told)
    return Game(play.net(), constants)


def duel(north: int, south: int, north_rate: float = 1.0, south_rate: float = 1.0) -> Game:
    """Everybody in throws at the same rate, whoever is hit is out for the round."""
    play = Builder("north", "south")
    told = play.rule("whoever is hit is out")
    for side, players in (("north", north), ("south", south)):
        play.place(f"{side} in", players, players, "player", side)
        play.place(f"{side} out", 0, players, "player", side, final=True)
    for side, other in (("north", "south"), ("south", "north")):
        out = play.move(f"{other} in", f"{other} out", told)
        play.may(f"{side} hits", out, side=side, rate=play.rate(f"{side} in"))
        play.end(f"{side} wins", side, play.at_most(f"{other} in", 0), told)
    return Game(play.net(), (north_rate, south_rate))


def out_and_back(players: int, out: float, back: float) -> Game:
    """Each player goes out at a rate and comes back at a rate, until all are out."""
    play = Builder()
    play.place("in", players, players, "player")
    play.place("waiting", 0, players, "player")
    told = play.rule("out and back")
    play.may("out", play.move("in", "waiting", told), rate=play.rate("in"))
    play.may("back", play.move("waiting", "in", told), rate=play.rate("waiting"))
    play.end("all out", None, play.at_most("in", 0), told)
    return Game(play.net(), (out, back))


def most_points(north: float, south: float, most: int, minutes: float) -> Game:
    """Points at two rates until the bell; the most points win."""
    play = Builder("north", "south")
    told = play.rule("most points at the bell")
    for side in ("north", "south"):
        play.place(side, 0, most)
        play.may(f"{side} scores", play.shift(side, 1, told))
    results = (
        play.result("north wins", "north", play.more("north", "south"), told),
        play.result("south wins", "south", play.more("south", "north"), told),
        play.result("draw", None, ALWAYS, told),
    )
    return Game(play.net(Bell(minutes * 60, results, told), open_ended=True), (north, south))


def three_towers(heights: tuple[int, int, int]) -> Game:
    """A ball goes from one of three piles to another, each way as likely, until a pile is empty."""
    play = Builder()
    told = play.rule("one ball to another pile")
    names = ("left", "middle", "right")
    for name, height in zip(names, heights, strict=True):
        play.place(name, height, sum(heights), "ball")
    for source in names:
        for target in names:
            if source != target:
                play.may(f"{source} to {target}", play.move(source, target, told))
        play.end(f"{source} empty", None, play.at_most(source, 0), told)
    return Game(play.net(), (1.0,) * 6)
