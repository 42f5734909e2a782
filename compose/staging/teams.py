"""Pupils → games side by side, and sides: as even as can be, and what becomes of the odd pupil."""

from __future__ import annotations

from collections.abc import Mapping

from compose.staging.resolved import resolved
from grammar.core.declared import Odd
from grammar.frozen import frozen
from grammar.game import Game
from grammar.words import count, listing

_AT_A_TIME = 2  # sides that play while others rest


@frozen
class Teams:
    """Players of each side in each game. `over` pupils play in none of them, and do what the game says; as many as are
    `resting` come on in later rounds."""

    games: tuple[Mapping[str, int], ...]
    over: int
    odd_pupil: Odd
    resting: int = 0

    @property
    def odd(self) -> str:
        """What the odd pupil does, in words; "" where the game does not say."""
        return "" if self.odd_pupil is Odd.UNSAID else self.odd_pupil.value

    @property
    def playing(self) -> int:
        """How many pupils play."""
        return sum(sum(sides.values()) for sides in self.games)

    def words(self) -> str:
        """Such as "14 north and 13 south", "13 games of 1 west and 1 east"."""
        kinds: dict[str, int] = {}
        for sides in self.games:
            said = listing(f"{number} {side}" for side, number in sides.items())
            kinds[said] = kinds.get(said, 0) + 1
        rest = f"; {self.resting} rest" if self.resting else ""
        if len(self.games) == 1:
            return next(iter(kinds)) + rest
        return listing(f"{count(number, 'game')} of {said}" for said, number in kinds.items()) + rest


def usual_players(game: Game) -> dict[str, int]:
    """Players of each side when nobody says how many: the middle of what the sheet allows, rounded up."""
    return {side.name: (side.least + side.most + 1) // 2 for side in game.sides}


def least_pupils(game: Game) -> int:
    """The fewest with whom it can be played, those who rest included."""
    resting, leasts = resolved(game).play.match.resting, [side.least for side in game.sides]
    return (_AT_A_TIME + resting) * max(leasts) if resting else sum(leasts)


def most_pupils(game: Game) -> int:
    """The most who can play in all the games that the sheet lets be played side by side, those who rest included."""
    resting, mosts = resolved(game).play.match.resting, [side.most for side in game.sides]
    return most_games(game) * ((_AT_A_TIME + resting) * min(mosts) if resting else sum(mosts))


def usual_teams(game: Game) -> Teams:
    """One game with the usual players."""
    players, play = usual_players(game), resolved(game).play
    return Teams((players,), 0, play.organisation.odd, play.match.resting * min(players.values(), default=0))


def most_games(game: Game) -> int:
    """How many games the sheet lets be played side by side."""
    return resolved(game).play.organisation.courts_most


def teams_of(game: Game, pupils: int, room_for: int | None = None) -> Teams:
    """The fewest games, no more than the sheet allows and the hall has room for, in which most pupils play."""
    allowed = max(1, min(most_games(game), room_for if room_for is not None else pupils))
    odd = resolved(game).play.organisation.odd
    tried = (_in_games(game, pupils, games, odd) for games in range(1, allowed + 1))
    return min(tried, key=lambda teams: (teams.over, len(teams.games)))


def _in_games(game: Game, pupils: int, games: int, odd: Odd) -> Teams:
    shares = [pupils // games + (number < pupils % games) for number in range(games)]
    rest = resolved(game).play.match.resting
    even = odd not in (Odd.UNSAID, Odd.JOINS_FIRST)
    least, most = max(each.least for each in game.sides), min(each.most for each in game.sides)
    rests = [rest * min(share // (_AT_A_TIME + rest), most) for share in shares]
    sides = [
        _sides(game, share - out, even) if out >= rest * least else {} for share, out in zip(shares, rests, strict=True)
    ]
    played = tuple(each for each in sides if each)
    resting = sum(out for out, each in zip(rests, sides, strict=True) if each)
    return Teams(played, pupils - resting - sum(sum(each.values()) for each in played), odd, resting)


def _sides(game: Game, pupils: int, even: bool) -> dict[str, int]:
    """The sides of one game, as even as their ranges let them be; none where there are too few pupils.

    `even` leaves the odd pupil out of mirrored sides.
    """
    sides = game.sides
    if pupils < sum(side.least for side in sides):
        return {}
    left = min(pupils, sum(side.most for side in sides))
    numbers = {side.name: side.least for side in sides}
    left -= sum(numbers.values())
    mirrored = all(side.mirrored for side in sides) and len(sides) > 1
    while left > 0:
        open_sides = [side for side in sides if numbers[side.name] < side.most]
        if even and mirrored and left < len(sides) and len(set(numbers.values())) == 1:
            break
        smallest = min(open_sides, key=lambda side: numbers[side.name])
        numbers[smallest.name] += 1
        left -= 1
    return numbers
