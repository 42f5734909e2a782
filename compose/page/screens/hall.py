"""In the hall: the clock and the counts of one game or of the whole lesson, and the rounds that were played."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any

from attrs import evolve

from compose.page.answers.hall_values import HallGame
from compose.page.answers.said import in_words
from compose.page.answers.values import Asked
from compose.page.call import Call, Data, Go, Reply, Shown
from compose.page.hall_document import look_and_script, policy, values_of
from compose.page.lending import Loan
from compose.page.look import html_of
from compose.page.planned import planned
from compose.page.rounds import RoundSent, keep_round
from compose.page.screens.remix import asked_of, no_such_game, trail_of

HTML = "text/html; charset=utf-8"
MOST_IN_A_FILE = 200


def show(call: Call) -> Reply:
    """One game; the rest of the lesson after it, where it was opened from there."""
    found = games_of(call)
    if found is None:
        return no_such_game(call)
    games, first = found
    values = values_of(games, first, call.wording, "/hall/rounds", call.desk.token)
    lesson = call.one("in").isdecimal()
    back = "/lesson" if lesson else trail_of(call).address()
    text = html_of(call, Shown("hall.html", {**values, "back": back, "carry": f"{_carry(call)}"}))
    return Data(text.encode(), HTML, headers={"content-security-policy": policy()})


def _carry(call: Call) -> str:
    path, _, query = call.address.partition("?")
    return f"{path}/carry.html" + (f"?{query}" if query else "")


def carry(call: Call) -> Reply:
    """The same as a file: its rounds stay in it until they are saved or it is opened from here again."""
    found = games_of(call)
    if found is None:
        return no_such_game(call)
    games, first = found
    text = html_of(call, Shown("hall.html", {**values_of(games, first, call.wording), "back": "", "carry": ""}))
    return Data(text.encode(), HTML, f"{call.parts['slug']}-hall.html")


def games_of(call: Call) -> tuple[tuple[HallGame, ...], int] | None:
    """The games of the document, and which of them comes first."""
    asked, place = asked_of(call), call.one("in")
    if asked is None:
        return None
    listed = [(call.parts["slug"], asked)]
    if place.isdecimal():
        sheets = call.desk.sheets()
        listed = [
            (each.slug, Asked(sheets[each.slug].texts, each.uses, asked.group, asked.language))
            for each in planned(call.desk.shelf, sheets)
        ] or listed
    games = [call.ask("hall:hall", slug, each) for slug, each in listed]
    if any(each is None for each in games):
        return None
    first = int(place) if place.isdecimal() and len(place) < 3 and int(place) < len(games) else 0
    return tuple(games), first


def keep(call: Call) -> Reply:
    """Keep a round that the hall screen sends."""
    fields = {name: call.one(name) for name in ("slug", "day", "pupils", "length_s", "winner", "waited")}
    wrong = kept(call, {**fields, "uses": list(call.form.get("with", ()))})
    return Data(wrong.encode(), "text/plain", status=422) if wrong else Data(b"", "text/plain", status=204)


def kept(call: Call, told: Mapping[str, Any]) -> str:
    """Keep a round; why not, where it cannot be."""
    sheet = call.desk.sheets().get(str(told.get("slug", "")))
    sent = RoundSent.of(told)
    if sheet is None or sent is None:
        return call.wording.say("This is no round of a game that is here.")
    asked = Asked(sheet.texts, sent.uses, call.desk.group, call.language)
    game: HallGame | None = call.ask("hall:hall", sheet.slug, asked)
    if game is None:
        return call.wording.say("This is no round of a game that is here.")
    wrong = keep_round(call.desk.shelf, sheet.title, sent.round(game.content), [side for side, _ in game.sides])
    return in_words(wrong[0], call.wording) if wrong else ""


def lend(call: Call) -> Reply:
    """Lend the hall screen of the lesson to the devices in the room."""
    found = games_of(evolve(call, parts=_first_of_lesson(call), form={"in": ["0"]}))
    if found is None:
        return Go("/lesson")
    games, first = found

    def document(code: str) -> str:
        values = values_of(games, first, call.wording, "/rounds", "", code)
        return html_of(call, Shown("hall.html", {**values, "back": "", "carry": ""}))

    def door(wrong: bool) -> str:
        return html_of(call, Shown("lend-door.html", {"look": look_and_script()[0], "wrong": wrong}))

    try:
        call.desk.lender.start(Loan(door, document, policy("'self'"), partial(kept, evolve(call, tab=""))))
    except OSError:
        why = call.wording.say("This machine is in no network, so no other device can reach it.")
        return Shown("trouble.html", {"why": why}, 503)
    return Go("/lesson")


def _first_of_lesson(call: Call) -> Mapping[str, str]:
    games = planned(call.desk.shelf, call.desk.sheets())
    return {"slug": games[0].slug} if games else {"slug": ""}


def end_lending(call: Call) -> Reply:
    """Take it back."""
    call.desk.lender.stop()
    return Go("/lesson")


def take_in(call: Call) -> Reply:
    """Keep the rounds of a file that a hall screen saved."""
    upload = call.files.get("file")
    rounds = _listed(upload.data if upload else b"")
    wrong = [why for each in rounds if (why := kept(call, each))]
    if wrong or not rounds:
        why = wrong[0] if wrong else call.wording.say("There are no rounds in this file.")
        return Shown("trouble.html", {"why": why}, 422)
    return Go(f"/lesson?kept={len(rounds)}")


def _listed(data: bytes) -> Sequence[Mapping[str, Any]]:
    try:
        listed = json.loads(data)["rounds"]
    except (ValueError, TypeError, KeyError, RecursionError):
        return ()
    known = [each for each in listed if isinstance(each, dict)] if isinstance(listed, list) else []
    return known[:MOST_IN_A_FILE]
