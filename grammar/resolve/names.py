"""Every name of every sentence: is it declared, and may it stand where it stands?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs

from grammar.finding import Finding, Severity
from grammar.meanings import (
    AREA_KINDS,
    AgentMeaning,
    CategoryMeaning,
    KitMeaning,
    MateMeaning,
    Meaning,
    PlaceMeaning,
    PlayerMeaning,
    SideMeaning,
    TeacherMeaning,
    side_named,
)
from grammar.sentences import (
    ball,
    base,
    blocking,
    finish,
    limits,
    lives,
    modifier,
    play,
    points,
    runs,
    sides,
    space,
    when,
)
from grammar.sentences.base import Name, Node, Np
from grammar.words import LIKE_ENOUGH, did_you_mean, likeness, listing, plural

_EXPECTED: Mapping[tuple[type[Node], str], tuple[str, ...]] = {
    (space.Area, "spot"): ("place",),
    (space.AtMostThere, "who"): ("player",),
    (sides.Placing, "what"): ("ball", "target", "ring", "body", "furniture", "player"),
    (sides.Placing, "where"): ("place", "target"),
    (sides.PlacingOnStep, "what"): ("target", "body"),
    (sides.PlacingOnStep, "track"): ("place",),
    (sides.Uses, "what"): ("ball",),
    (play.Stray, "what"): ("target",),
    (play.ComesBack, "where"): ("place",),
    (play.StandUp, "who"): ("teacher", "player"),
    (play.StandUp, "what"): ("target",),
    (play.GuardLimit, "who"): ("player",),
    (play.GuardLimit, "what"): ("target",),
    (limits.NobodyRuns, "ball"): ("ball",),
    (limits.StepLimit, "ball"): ("ball",),
    (blocking.Blocks, "who"): ("player",),
    (blocking.Blocks, "what"): ("target", "ring"),
    (blocking.Blocked, "what"): ("ball",),
    (play.RestOnStep, "where"): ("place",),
    (when.Arrives, "who"): ("player", "agent", "ball", "target"),
    (play.Stay, "who"): ("player",),
    (play.Stay, "where"): ("place",),
    (play.Attempt, "who"): ("player", "teacher"),
    (play.Attempt, "ball"): ("ball", "body", "target"),
    (play.AimAt, "what"): ("target", "player", "body", "ring"),
    (play.AimThrough, "what"): ("ring", "target", "place"),
    (play.AimPast, "what"): ("place", "player"),
    (play.AimTo, "what"): ("mate", "player", "place"),
    (play.AimTo, "where"): ("place",),
    (play.AimBetween, "start"): ("place",),
    (play.AimBetween, "goal"): ("place",),
    (play.Touch, "who"): ("player",),
    (play.Touch, "whom"): ("player",),
    (runs.InARow, "what"): ("ball",),
    (lives.HasLives, "who"): ("player",),
    (lives.LastLife, "who"): ("player",),
    (lives.LosesLife, "who"): ("player", "agent"),
    (lives.WinsLife, "who"): ("player", "agent"),
    (when.ComesIn, "name"): ("ball",),
    (when.TakenAway, "who"): ("ball",),
    (play.Touch, "load"): ("ball", "target"),
    (play.Rotate, "who"): ("player",),
    (play.Take, "who"): ("player",),
    (play.Take, "what"): ("ball", "target"),
    (play.Take, "start"): ("place",),
    (play.Take, "goal"): ("place",),
    (play.HoldLimit, "ball"): ("ball",),
    (play.Rest, "ball"): ("ball",),
    (play.RestThere, "where"): ("place",),
    (ball.RestTo, "where"): ("place", "side", "agent", "player"),
    (ball.HasBall, "side"): ("side", "agent"),
    (ball.HasBall, "ball"): ("ball",),
    (ball.CatcherHas, "ball"): ("ball",),
    (ball.FirstHas, "ball"): ("ball",),
    (ball.BeginsWith, "ball"): ("ball",),
    (ball.Intercepted, "what"): ("ball",),
    (play.Fetch, "who"): ("player", "teacher"),
    (play.Fetch, "what"): ("ball", "target"),
    (play.Fetch, "where"): ("place",),
    (play.NobodyFetches, "what"): ("ball", "target"),
    (play.NobodyFetches, "where"): ("place",),
    (play.Free, "who"): ("teacher", "player"),
    (play.Queued, "where"): ("place",),
    (play.AllQueued, "where"): ("place",),
    (when.Knocked, "what"): ("target", "body"),
    (when.Hit, "who"): ("player",),
    (when.Hit, "load"): ("ball", "target"),
    (when.Touched, "who"): ("player",),
    (when.Touched, "load"): ("ball", "target"),
    (when.Drops, "who"): ("player", "agent"),
    (when.Drops, "what"): ("ball", "target"),
    (when.GoesBack, "what"): ("ball", "target"),
    (when.Caught, "what"): ("ball",),
    (when.Caught, "where"): ("place",),
    (when.Missed, "what"): ("ball",),
    (when.GoesThrough, "what"): ("ball",),
    (when.GoesThrough, "through"): ("ring", "target", "place"),
    (when.Crosses, "what"): ("ball", "body", "target", "player"),
    (when.Crosses, "line"): ("place",),
    (when.Leaves, "what"): ("ball",),
    (when.Leaves, "where"): ("place",),
    (when.HeldLong, "what"): ("ball",),
    (when.Steps, "towards"): ("agent", "side", "place", "player"),
    (when.MovesTo, "who"): ("player", "agent", "ball", "target", "body"),
    (when.Scores, "side"): ("side", "agent"),
    (points.Worth, "what"): ("target", "body", "ring"),
    (points.SetPoints, "what"): ("target",),
    (when.Waits, "who"): ("player", "agent"),
    (when.Waits, "where"): ("place",),
    (when.Returns, "who"): ("player", "agent"),
    (when.Out, "who"): ("player", "agent"),
    (when.Joins, "who"): ("player", "agent"),
    (when.Joins, "what"): ("side", "place"),
    (when.TurnsInto, "who"): ("player", "agent"),
    (when.TurnsInto, "role"): ("player",),
    (when.ChangesPlaces, "who"): ("player", "agent"),
    (when.ChangesPlaces, "other"): ("player", "agent"),
    (base.SideNamed, "name"): ("side",),
    (finish.Counted, "what"): ("player", "target", "ball", "body", "ring"),
    (finish.Placed, "where"): ("place",),
    (modifier.MakeLike, "what"): ("target", "ball", "ring", "body"),
}
_SAID = {
    "ball": "a ball",
    "target": "a target",
    "ring": "a ring",
    "body": "a big body",
    "furniture": "furniture",
    "player": "players",
    "agent": "who took part (the thrower, the catcher)",
    "mate": "a team-mate",
    "teacher": "the teacher",
    "place": "a place",
    "side": "a side",
}
_FREE = (
    (sides.Kit, "like"),
    (sides.Kit, "singular"),
    (sides.Kit, "name"),
    (sides.Sides, "names"),
    (sides.Headcount, "of"),
    (sides.Role, "name"),
    (space.Area, "name"),
)


def sort_of(meaning: Meaning) -> str:
    """One word for what a name means: one of _SAID."""
    match meaning:
        case KitMeaning() | CategoryMeaning():
            return meaning.category
        case PlayerMeaning():
            return "player"
        case AgentMeaning():
            return "agent"
        case MateMeaning():
            return "mate"
        case TeacherMeaning():
            return "teacher"
        case PlaceMeaning():
            return "place"
        case SideMeaning():
            return "side"


def name_findings(sentence: Node, meanings: Mapping[str, Meaning]) -> Iterator[Finding]:
    """What is wrong with the names of one sentence."""
    for expected, name in names_of(sentence):
        meaning = meanings.get(name.text)
        if meaning is None:
            yield _unknown(name, expected, meanings)
        elif not _fits(meaning, expected):
            yield _misplaced(name, meaning, expected)


def names_of(node: Node) -> Iterator[tuple[tuple[str, ...], Name]]:
    """Every name of a sentence that must mean something, with the sorts of things it may mean."""
    for field in attrs.fields(type(node)):
        if field.name == "span" or (type(node), field.name) in _FREE:
            continue
        value = getattr(node, field.name)
        expected = _EXPECTED.get((type(node), field.name))
        for part in value if isinstance(value, tuple) else (value,):
            if isinstance(part, Np):
                if expected:
                    yield expected, part.name
                if isinstance(part.owner, base.OwnerName):
                    yield ("side", "player", "agent", "teacher"), part.owner.name
            elif isinstance(part, base.SideNamed) and expected:
                yield expected, part.name
            elif isinstance(part, Name) and expected:
                yield expected, part
            elif isinstance(part, Node):
                yield from names_of(part)


def _unknown(name: Name, expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> Finding:
    near = [word for word in fitting(expected, meanings) if likeness(name.text, word) >= LIKE_ENOUGH]
    hint = did_you_mean(name.text, near) or _declare_hint(name.text, expected, meanings)
    title = (
        f"Nothing here is called `{name.text}`; {listing([_SAID[sort] for sort in expected], 'or')} could stand here."
    )
    return Finding("G-unknown", Severity.ERROR, title, name.span, hint)


def fitting(expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> list[str]:
    """The names that may stand where these sorts of things are expected."""
    return [word for word, meaning in meanings.items() if _fits(meaning, expected)]


def _fits(meaning: Meaning, expected: tuple[str, ...]) -> bool:
    return sort_of(meaning) in expected or ("side" in expected and side_named(meaning) is not None)


def _declare_hint(text: str, expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> str:
    if "side" in expected:
        sides = [word for word, meaning in meanings.items() if side_named(meaning) == word]
        return f"The sides are {listing(sides)}." if sides else "Name the sides under `sides`."
    last = text.rsplit(maxsplit=1)[-1]
    if "place" in expected and last in AREA_KINDS:
        return f'Say in space where it is, such as "{text}: beside each half".'
    if "ball" in expected and last in ("ball", "balls"):
        return f'Add it to the kit, such as "{1 if last == "ball" else 4} {text}".'
    if "ball" in expected or "target" in expected:
        return f'Add it to the kit, such as "4 {text if text.endswith("s") else plural(text)}, like a cone".'
    if "place" in expected:
        return f'Say in space where it is, such as "{text} zone: 2 m deep, before each back line".'
    if "player" in expected:
        return "Players are called players, or by the name of their side or role."
    return "Use a name that the sheet declares."


def _misplaced(name: Name, meaning: Meaning, expected: tuple[str, ...]) -> Finding:
    verb = "means" if sort_of(meaning) == "player" else "is"
    title = (
        f"`{name.text}` {verb} {_SAID[sort_of(meaning)]}; "
        f"{listing([_SAID[sort] for sort in expected], 'or')} could stand here."
    )
    hint = "Name one of these, or change the verb."
    if {sort_of(meaning), *expected} >= {"player", "target"} and ("player" in expected) != ("target" in expected):
        hint = "A target is knocked; a player is hit."
    return Finding("G-sort", Severity.ERROR, title, name.span, hint)
