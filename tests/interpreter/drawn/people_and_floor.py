"""Draws who plays, on which floor and with what; and the sentences of space, sides, kit and set-up that say so."""

from __future__ import annotations

from tests.interpreter.drawn.records import NOBODY, PLAIN, Crew, Draft, Things

PAIRS = (("north", "south"), ("herons", "pikes"), ("larks", "owls"), ("east", "west"))
THREES = (("alder", "birch", "cedar"), ("minnows", "otters", "herons"))
FOUR = ("alder", "birch", "cedar", "dogwood")
NEVER_FALLS = "small goal"
LIKES = ("cone", "plastic pin", "box", "club", NEVER_FALLS)


def draw_sides(draft: Draft) -> None:
    """Two sides mostly, but also three, four, or everyone for themselves."""
    roll = draft.dice.randrange(20)
    draft.sides = (
        ("settlers",) if roll == 0 else FOUR if roll == 1 else draft.dice.choice(THREES if roll < 5 else PAIRS)
    )
    draft.by_players = all(side.endswith("s") for side in draft.sides)
    draft.players = 3 if draft.solo else 1 + draft.dice.randrange(2) if len(draft.sides) > 2 else 2
    if len(draft.sides) == 2 and draft.in_one_of(8):
        draft.players = 3
    number = f"{draft.players} to 9 players"
    if draft.solo:
        draft.say("sides", f"settlers, {number}, each for themselves")
    elif len(draft.sides) == 2 and draft.in_one_of(4):
        for side in draft.sides:
            draft.say("sides", f"{side}, {number}")
    else:
        names = f"{', '.join(draft.sides[:-1])} and {draft.sides[-1]}"
        draft.say("sides", f"{names}, {number} each{draft.one_of('', ', mirrored')}")
    if not draft.solo and draft.players > 1 and draft.in_one_of(3):
        _draw_role(draft)


def _draw_role(draft: Draft) -> None:
    draft.role = "aide"
    draft.role_sides = draft.dice.choice((draft.sides, draft.sides[:1], draft.sides[-1:]))
    all_of_them = draft.one_of("each side", "every side")
    owner = all_of_them if draft.role_sides == draft.sides else draft.role_sides[0]
    draft.role_has_own_task = draft.in_one_of(2)
    draft.role_is_spared = draft.in_one_of(3)
    details = ", nobody aims at them" if draft.role_is_spared else draft.one_of("", ", aims from 5 m")
    draft.say("sides", f"role aide: 1 to 2 players of {owner}{details}")


def draw_floor(draft: Draft) -> None:
    """The court, and perhaps a queue, a bench, a strip, a zone that nobody enters."""
    many = len(draft.sides) > 2
    draft.cut = (
        draft.one_of("in equal parts", "in one piece") if many else draft.one_of("halved across", "in one piece")
    )
    if not many and draft.in_one_of(2):
        draft.cut = "halved across"
    if draft.solo:
        draft.cut = "in one piece"
    cut = draft.cut if draft.cut != "in one piece" or draft.in_one_of(2) else ""
    draft.say("space", f"court 18 m by 9 m{', ' if cut else ''}{cut}")
    if draft.in_one_of(2):
        draft.queue = draft.one_of("rest queue", "moss queue")
        draft.queue_is_shared = draft.solo or draft.in_one_of(6)
        each = "beside each half" if draft.halved else "beside each side line"
        room = draft.one_of("", "", "", ", at most 1 player there", ", at most 2 players there")
        draft.say("space", f"{draft.queue}: {'beside the court' if draft.queue_is_shared else each}{room}")
    if not draft.solo and draft.in_one_of(4):
        draft.bench = draft.one_of("cat bench", "far bench")
        draft.say(
            "space", f"{draft.bench}: {draft.one_of('behind each back line', 'behind the back line of each side')}"
        )
    if draft.halved and not many and draft.in_one_of(8):
        draft.shut = "sky zone"
        draft.say("space", "sky zone: 4 m deep, across the middle, nobody enters there")
    if draft.halved and draft.in_one_of(5):
        draft.strip = "ditch strip"
        rule = draft.one_of("", ", nobody guards there")
        draft.say(
            "space", f"ditch strip: 2 m deep, {draft.one_of('before each back line', 'before every back line')}{rule}"
        )


def draw_waiting(draft: Draft) -> None:
    """Some start in the queue or on the bench: of every side or of one."""
    area = draft.one_of(*[each for each in (draft.queue, draft.bench) if each] or [""])
    if draft.queue_is_shared and any("at most 1 player" in line for line in draft.lines["space"]):
        return  # not all of them would find room
    if not area or draft.players - bool(draft.role) < 2 or not draft.in_one_of(3):
        return
    sides = draft.dice.choice((draft.sides, draft.sides[:1], draft.sides[-1:]))
    who = draft.one_of("1 player of each side", "1 player of every side", "1 player")
    if len(sides) < len(draft.sides):
        who = f"1 player of {sides[0]}"
    if draft.solo:
        who = draft.one_of("all but 2 settlers", "1 settler")
    in_play = dict.fromkeys((Crew(side, PLAIN) for side in sides), 1)
    draft.waits |= in_play
    draft.waits_at = area
    draft.say("set-up", f"{who} {'on' if area == draft.bench else 'in'} the {area}")


def draw_kit(draft: Draft) -> None:
    """One or two kinds of balls, one or two kinds of targets, perhaps a ring or things on a track."""
    _draw_balls(draft)
    for kind, kinds in (("cone", "cones"), ("post", "posts"))[: 1 + draft.in_one_of(3)]:
        _draw_targets(draft, kind, kinds)
    if not draft.solo and draft.in_one_of(5):
        draft.ring = Things("gate", "gates", draft.sides, 1)
        draft.say("kit", f"1 gate for {draft.one_of('each side', 'every side')}, like a hoop")
        draft.say("set-up", "gates behind the back line of their side")
    if len(draft.sides) == 2 and draft.in_one_of(8):
        draft.track = "cloud"
        draft.say(
            "space", f"drift track: {draft.one_of('2', '3', '4')} steps, from {draft.sides[0]} to {draft.sides[1]}"
        )
        draft.say("kit", f"{draft.one_of('1 cloud', '2 clouds')}, like a giant ball")
        draft.say("set-up", "clouds on step 1 of the drift track")


def _draw_balls(draft: Draft) -> None:
    for kind in ("foam ball", "yarn ball")[: 1 + draft.in_one_of(4)]:
        draft.balls[kind] = _deal(draft, kind)
    if draft.role and len(draft.balls) == 2 and draft.in_one_of(2):
        draft.role_ball = "yarn ball"
        line = draft.lines["sides"].pop()
        draft.say("sides", f"{line}, uses {draft.one_of('a yarn ball', 'the yarn ball', 'yarn balls')}")


def _deal(draft: Draft, kind: str) -> int:
    """Where the balls of a kind lie at the start, and how many there are."""
    if not draft.halved:
        number = draft.dice.randint(1, 2)
        draft.say("kit", f"{number} {kind}{'s' if number > 1 else ''}")
        draft.say(
            "set-up", draft.one_of(f"{kind}s on the court", f"{number} {kind}{'s' if number > 1 else ''} on the court")
        )
        draft.lies.add("court")
        draft.begin.add((kind, "court"))
        return number
    way = draft.dice.randrange(5)
    draft.lies |= {f"half of {side}" for side in draft.sides}
    if way == 0:
        draft.say("kit", f"1 {kind}")
        draft.say("set-up", f"1 {kind} in the middle")
        draft.lies.add("middle")
        draft.begin.add((kind, "middle"))
        return 1
    if way == 1:
        side = draft.dice.choice(draft.sides)
        draft.say("kit", f"1 {kind}")
        half = f"the half of {side}" if side.endswith("s") else draft.one_of(f"the half of {side}", f"{side}'s half")
        draft.say("set-up", f"1 {kind} in {half}")
        draft.begin.add((kind, f"half of {side}"))
        return 1
    draft.begin |= {(kind, f"half of {side}") for side in draft.sides}
    if way == 2:
        draft.say("kit", f"1 {kind} for {draft.one_of('each side', 'every side')}")
        draft.say("set-up", f"{kind}s in {draft.one_of('each half', 'every half', 'the half of their side')}")
        return len(draft.sides)
    number = len(draft.sides)
    draft.say("kit", f"{number} {kind}s")
    draft.say("set-up", draft.one_of(f"1 {kind} in each half", f"1 {kind} in every half", f"{kind}s in each half"))
    return number


def _draw_targets(draft: Draft, kind: str, kinds: str) -> None:
    number = 1 + (len(draft.sides) < 3 and draft.in_one_of(3))
    like = draft.dice.choice(LIKES)
    draft.fixed |= {kind} if like == NEVER_FALLS else set()
    said = f"{number} {kind if number == 1 else kinds}"
    shared = draft.solo or (len(draft.sides) == 2 and draft.in_one_of(6))
    if shared:
        draft.targets.append(Things(kind, kinds, (NOBODY,), number))
        draft.say("kit", f"{said}, like a {like}")
        draft.say("set-up", f"{kinds} {draft.one_of('in the middle', 'on the court')}")
        return
    if draft.in_one_of(6):
        owners: tuple[str, ...] = (draft.dice.choice(draft.sides),)
        draft.say("kit", f"{said} for {owners[0]}, like a {like}")
    elif draft.in_one_of(8) and len(draft.sides) == 2:
        draft.targets.append(Things(kind, kinds, draft.sides[:1], 1))
        draft.targets.append(Things(kind, kinds, draft.sides[1:], 2))
        draft.say("kit", f"1 {kind} for {draft.sides[0]}, like a {like}")
        draft.say("kit", f"2 {kinds} for {draft.sides[1]}, like a {like}")
        draft.say("set-up", f"{kinds} on the back line of their side")
        return
    else:
        owners = draft.sides
        draft.say("kit", f"{said} for {draft.one_of('each side', 'every side')}, like a {like}")
    draft.targets.append(Things(kind, kinds, owners, number))
    where = draft.one_of(
        "on the back line of their side", "before the back line of their side", "beside the side line of their side"
    )
    draft.say("set-up", f"{kinds} {where}{draft.one_of('', ', evenly spaced', ', staggered')}")
