"""Write: a sheet in a plain text area, with its mistakes and their help, and what was understood beside it."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence

import library
from compose.page.answers.values import Looked
from compose.page.call import SOON, Call, Go, Reply, Shown
from compose.page.screens.remix import asked_of, no_such_game
from compose.page.shelved import keep_sheet
from compose.telling.wording import Wording
from grammar.mistakes.examples import examples

SECTIONS = ("space", "sides", "kit", "set-up", "play", "when", "finish", "care")
LEAST_ROWS, ROOM = 26, 6  # our choice: lines that the text area has, and those below the text for what is added
MEND = re.compile(r"mend-(\d{1,3})")


def show(call: Call) -> Reply:
    """The own sheets, and what to begin from."""
    sheets = sorted(call.desk.sheets().values(), key=lambda each: each.title)
    return Shown("write.html", {"sheets": sheets, "kinds": _kinds(call.wording)})


def begin(call: Call) -> Reply:
    """A new sheet, of a kind of play."""
    kinds = _kinds(call.wording)
    like = call.one("like") or next(iter(kinds))
    known = {path.stem: path for path in library.beginning_paths() if path.stem in kinds}
    if like not in known:
        return Shown("trouble.html", {"why": call.wording.say("There is no such page.")}, 404)
    text = known[like].read_text(encoding="utf-8")
    return _edited(call, text if call.wording.english else _begun(text, kinds[like], call.wording), "")


def _begun(text: str, kind: str, wording: Wording) -> str:
    """A beginning whose name and first note are in the language; its rules stay in those of the sheets."""
    note = f"note: {kind}. {wording.say('Change names, numbers and skills to your own.')}"
    text = re.sub(r"\Anote: .*", lambda found: note, text, count=1)
    return re.sub(r"(?m)^game .*$", lambda found: f"game {wording.say('My Game')}", text, count=1)


def _kinds(wording: Wording) -> dict[str, str]:
    """The kinds of play that one can begin with, by the names of their sheets in the library."""
    return {
        "knock-down": wording.say("Two sides clear each other’s row of targets"),
        "race-to-points": wording.say("A race to so many points"),
        "hit-and-wait": wording.say("Whoever is hit waits until a catch"),
        "crossing": wording.say("Pass to a team-mate on the far side, and cross"),
    }


def open_sheet(call: Call) -> Reply:
    """A sheet of the shelf as it is; one of the library, or a remix, under a name of its own."""
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    sheet = call.desk.sheets()[call.parts["slug"]]
    if sheet.own and not asked.uses and len(sheet.texts) == 1:
        return _edited(call, sheet.texts[0], sheet.slug)
    text: str | None = call.ask("writing:begun", asked)
    if text is None:
        return no_such_game(call)
    mine = call.wording.say("My {game}", game="\\1")
    return _edited(call, text if asked.uses else re.sub(r"(?m)^game (.+)$", f"game {mine}", text, count=1), "")


def work(call: Call) -> Reply:
    """Look at a text, write a line of it as it should be, tidy it, or keep it."""
    text, do = call.one("text").replace("\r\n", "\n"), call.one("do")
    looked = _looked(call, text)
    wanted = MEND.fullmatch(do)
    if wanted and int(wanted.group(1)) < len(looked.slips):
        mended = looked.slips[int(wanted.group(1))].mended
        return _edited(call, mended or text, call.one("name"))
    if do == "tidy" and looked.tidy:
        return _edited(call, looked.tidy, call.one("name"))
    if do == "keep" and not looked.slips:
        kept = keep_sheet(call.desk.shelf, text, call.one("name"), call.wording)
        if not kept.wrong:
            return Go(f"/remix/{kept.slug}")
        return _edited(call, text, call.one("name"), looked, kept.wrong)
    return _edited(call, text, call.one("name"), looked)


def look(call: Call) -> Reply:
    """What is to be said of a text, alone."""
    text = call.one("text").replace("\r\n", "\n")
    return Shown("write-told.html", {"looked": _looked(call, text), "wrong": ""})


def _looked(call: Call, text: str) -> Looked:
    found: Looked = call.ask("writing:look", call.language, text, rank=SOON, turn=str(hash(text)))
    return found


def _edited(call: Call, text: str, name: str, looked: Looked | None = None, wrong: str = "") -> Reply:
    looked = looked or _looked(call, text)
    values = {
        "text": text,
        "rows": max(LEAST_ROWS, text.count("\n") + ROOM),
        "name": name,
        "looked": looked,
        "wrong": wrong,
        "sections": [(section, examples().get(section, ())) for section in SECTIONS],
        "known": json.dumps(_known(looked.names), ensure_ascii=False),
    }
    return Shown("write-edit.html", values, 422 if wrong else 200)


def _known(names: Sequence[str]) -> dict[str, object]:
    """What the script colours and completes with."""
    lines = {section: [each.example for each in examples().get(section, ())] for section in SECTIONS}
    return {"lines": lines, "names": list(names)}
