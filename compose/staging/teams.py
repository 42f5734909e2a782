"""Pupils → games side by side, and sides: as even as can be, and what becomes of the odd pupil."""

from __future__ import annotations

from collections.abc import Mapping

from compose.staging.resolved import resolved
from grammar.core.declared import Odd
from grammar.frozen import frozen
from grammar.game import Game
from grammar.words import count, listing, players_said


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
            said = listing(players_said(side, number) for side, number in sides.items())
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
    match, leasts = resolved(game).play.match, [side.least for side in game.sides]
    return match.groups * max(leasts) if match.meeting is not None else sum(leasts)


def most_pupils(game: Game) -> int:
    """The most who can play in all the games that the sheet lets be played side by side, those who rest included."""
    play, mosts = resolved(game).play, [side.most for side in game.sides]
    once = play.match.groups * min(mosts) if play.match.meeting is not None else sum(mosts)
    return play.organisation.courts_most * once


def usual_teams(game: Game) -> Teams:
    """One game with the usual players, or one on each court that its groups play on."""
    players, play = usual_players(game), resolved(game).play
    resting = play.match.resting * min(players.values(), default=0)
    return Teams((players,) * play.match.courts, 0, play.organisation.odd, resting)


def most_games(game: Game) -> int:
    """How many games the sheet lets be played side by side."""
    play = resolved(game).play
    return play.organisation.courts_most * play.match.courts


def teams_of(game: Game, pupils: int, room_for: int | None = None) -> Teams:
    """The fewest games, no more than the sheet allows and the hall has room for, in which most pupils play."""
    play = resolved(game).play
    allowed = max(1, min(most_games(game), room_for if room_for is not None else pupils) // play.match.courts)
    odd = play.organisation.odd
    tried = (_in_games(game, pupils, games, odd) for games in range(1, allowed + 1))
    return min(tried, key=lambda teams: (teams.over, len(teams.games)))


def _in_games(game: Game, pupils: int, games: int, odd: Odd) -> Teams:
    """So many games, each on as many courts as its groups play on at a time."""
    match = resolved(game).play.match
    even = odd not in (Odd.UNSAID, Odd.JOINS_FIRST)
    least, most = max(each.least for each in game.sides), min(each.most for each in game.sides)
    shares = _shared(pupils, games)
    rests = [match.resting * min(share // match.groups, most) for share in shares]
    sides = [
        tuple(_sides(game, each, even) for each in _shared(share - out, match.courts))
        if out >= match.resting * least
        else ()
        for share, out in zip(shares, rests, strict=True)
    ]
    played = [each for each in sides if each and all(each)]
    resting = sum(out for out, each in zip(rests, sides, strict=True) if each and all(each))
    courts = tuple(court for each in played for court in each)
    return Teams(courts, pupils - resting - sum(sum(each.values()) for each in courts), odd, resting)


def _shared(pupils: int, parts: int) -> list[int]:
    """Pupils in so many parts, as even as can be."""
    return [pupils // parts + (number < pupils % parts) for number in range(parts)]


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
