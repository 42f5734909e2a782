"""The list of everything on the shelf, with the search; without a script it is a plain list."""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from html import escape
from typing import Any
from urllib.parse import quote

from compose.share.site.outline import framed_page, search_script
from compose.share.site.thing_page import Thing
from compose.staging.resolved import resolved

_MOST_WORDS = 400


def row_of(thing: Thing, page: str) -> dict[str, Any]:
    """What the list says of a thing and what the search knows of it, as JSON."""
    game, item = thing.game, thing.item
    skills = [skill.casefold() for skill in resolved(game).facts.skills] if game else []
    players = [sum(getattr(side, end) for side in game.sides) for end in ("least", "most")] if game else None
    return {
        "name": item.name,
        "kind": item.kind,
        "about": item.about,
        "page": page,
        "facts": "; ".join(f"{name} {value}" for name, value in thing.card.facts) if thing.card else "",
        "ages": list(game.ages_years) if game else None,
        "players": players,
        "skills": skills,
        "words": _words(" ".join((item.name, item.about, *item.credit, item.text))),
    }


def _words(text: str) -> list[str]:
    plain = unicodedata.normalize("NFKD", text)
    folded = "".join(letter for letter in plain if not unicodedata.combining(letter)).lower()
    return sorted(set(re.findall(r"[^\W_]+", folded)))[:_MOST_WORDS]


def list_page(title: str, rows: Sequence[dict[str, Any]], downloads: Sequence[tuple[str, str]]) -> bytes:
    """The page of the list."""
    known = [{key: row[key] for key in ("kind", "ages", "players", "skills", "words")} for row in rows]
    # Within a script element only "<" could end it or begin another.
    data = json.dumps(known, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    parts = [
        '<a class="skip" href="#things">To the list</a>',
        f"<header><h1>{escape(title)}</h1></header>",
        "<main>",
        *_form(rows),
        '<p class="count" role="status"></p>',
        '<ul class="things" id="things">',
        *(_row(row) for row in rows),
        "</ul>",
        *(f'<p><a href="{escape(quote(where))}" download>{escape(words)}</a></p>' for words, where in downloads),
        "</main>",
        f'<script type="application/json" id="data">{data}</script>',
    ]
    return framed_page(title, "\n".join(parts), search_script())


def _form(rows: Iterable[dict[str, Any]]) -> Iterator[str]:
    skills = sorted({skill for row in rows for skill in row["skills"]})
    yield '<form class="search" role="search" hidden>'
    yield '<div><label for="words">Words</label><input id="words" name="words" type="search"></div>'
    yield from _choice("kind", "Kind", ("game", "remix", "modifier"))
    yield from _choice("skill", "Skill", skills)
    for name, label, most in (("age", "Age", 20), ("players", "Players", 400)):
        field = f'<input id="{name}" name="{name}" type="number" min="1" max="{most}">'
        yield f'<div><label for="{name}">{label}</label>{field}</div>'
    yield '<button type="reset">Show all</button></form>'


def _choice(name: str, label: str, values: Iterable[str]) -> Iterator[str]:
    yield f'<div><label for="{name}">{label}</label><select id="{name}" name="{name}"><option value="">any</option>'
    for value in values:
        yield f'<option value="{escape(value)}">{escape(value)}</option>'
    yield "</select></div>"


def _row(row: dict[str, Any]) -> str:
    kind = "" if row["kind"] == "game" else f" ({row['kind']})"
    return (
        f'<li><h2><a href="{escape(quote(row["page"]))}">{escape(row["name"])}</a>{kind}</h2>'
        f'<p>{escape(row["about"])}</p><p class="facts">{escape(row["facts"])}</p><p class="lacks"></p></li>'
    )
