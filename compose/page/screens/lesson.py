"""The lesson: games in order by drag or keys, with a bar of its minutes."""

from __future__ import annotations

from compose.page.answers.values import Asked, LessonShown
from compose.page.call import PATIENT, SOON, Call, Go, Reply, Shown
from compose.page.planned import MOST_GAMES, Item, keep, moved, planned, without
from compose.page.screens.paper import PDF, file_of
from compose.page.screens.remix import MOST_USED


def show(call: Call) -> Reply:
    """The games with the minutes by their clocks; by the forecast at once or later."""
    games = _games(call)
    asked, notice = _asked(call, games), _notice(call)
    if not asked:
        return Shown("lesson.html", {"games": (), "lesson": None, "lent": None, "notice": notice})
    lesson: LessonShown = call.ask("lesson:lesson", asked, call.whole, rank=PATIENT if call.whole else SOON)
    sheets = call.desk.sheets()
    titled = [(each, sheets[each.slug].title) for each in games]
    values = {"games": titled, "lesson": lesson, "later": "/lesson/minutes"}
    values |= {"lent": call.desk.lender.lent, "notice": notice}
    return Shown("lesson.html", values)


def _notice(call: Call) -> str:
    """What has just happened, where it cannot be seen otherwise."""
    if call.one("full"):
        return call.wording.say("A lesson holds {number} games at most: take one out first.", number=MOST_GAMES)
    kept = call.one("kept")
    if kept.isdecimal() and len(kept) < 4:
        rounds = call.wording.counted(int(kept), "round", "rounds")
        return call.wording.say("On the shelf from this file: {rounds}.", rounds=rounds)
    return call.wording.say("The lesson was changed elsewhere: this is how it is now.") if call.one("anew") else ""


def _games(call: Call) -> tuple[Item, ...]:
    return planned(call.desk.shelf, call.desk.sheets())


def show_minutes(call: Call) -> Reply:
    """The minutes by the forecast alone."""
    asked = _asked(call, _games(call))
    lesson = call.ask("lesson:lesson", asked, True, rank=PATIENT, turn="/lesson") if asked else None
    return Shown("lesson-minutes.html", {"lesson": lesson})


def _asked(call: Call, games: tuple[Item, ...]) -> tuple[Asked, ...]:
    sheets, group = call.desk.sheets(), call.desk.group
    return tuple(Asked(sheets[each.slug].texts, each.uses, group, call.language) for each in games)


def add(call: Call) -> Reply:
    """Put a remix at the end of the lesson."""
    slug = call.one("game")
    games = _games(call)
    if len(games) >= MOST_GAMES:
        return Go("/lesson?full=yes")
    if slug in call.desk.sheets():
        uses = tuple(call.form.get("with", ()))[:MOST_USED]
        keep(call.desk.shelf, (*games, Item(slug, uses)))
    return Go("/lesson")


def change(call: Call) -> Reply:
    """Move a game, or take it out; not another one that stands there now, because another tab has moved them."""
    games, one, to = _games(call), _number(call, "one"), _number(call, "to")
    if not (0 <= one < len(games)) or games[one].slug != call.one("game"):
        return Go("/lesson?anew=yes")
    keep(call.desk.shelf, without(games, one) if call.one("do") == "out" else moved(games, one, to))
    return Go("/lesson")


def _number(call: Call, name: str) -> int:
    typed = call.one(name)
    return int(typed) if typed.isdecimal() and len(typed) < 3 else -1


def sheet(call: Call) -> Reply:
    """The sheet of the lesson as PDF."""
    asked = _asked(call, _games(call))
    return file_of(call, call.ask("lesson:sheet", asked, rank=PATIENT), PDF, "lesson.pdf") if asked else Go("/lesson")


def booklet(call: Call) -> Reply:
    """The cards of its games in one PDF."""
    asked, title = _asked(call, _games(call)), call.wording.say("A lesson of games")
    made = call.ask("paper:booklet", asked, title, rank=PATIENT) if asked else None
    return file_of(call, made, PDF, "cards.pdf") if made is not None else Go("/lesson")
