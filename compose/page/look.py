"""From a reply to HTML: the templates, with everything escaped that is not a drawing of ours."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

from compose.page.call import Call, Shown, address
from compose.page.guard import MOST_SENT
from compose.page.wording import NAMES

SCREENS = ("class", "games", "lesson", "write", "share")  # what the head of each page leads to
TEMPLATES = Path(__file__).parent / "templates"
WORDS = re.compile(r"`([^`]*)`")
APART = re.compile(r"(?<=\d) (?=(?:%|min|s|m|cm|kg)(?!\w))")


@cache
def _templates() -> Environment:
    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.filters["drawing"] = Markup  # only for what compose/draw made, which escapes what authors wrote
    made.filters["prose"] = prose
    made.globals["address"] = address
    made.globals["most_mb"] = MOST_SENT >> 20
    return made


def prose(text: str) -> Markup:
    """The text with each number and its unit on one line, and as code what a sheet would say in its own words."""
    return Markup(WORDS.sub(r"<code>\1</code>", str(escape(APART.sub("\u00a0", text)))))


def html_of(call: Call, reply: Shown) -> str:
    """The page in the language of the call."""
    values: dict[str, Any] = {
        "say": call.wording.say,
        "wording": call.wording,
        "language": call.language,
        "languages": NAMES,
        "here": call.address,
        "token": call.desk.token,
        "whole": call.whole,
        "screens": SCREENS,
        "uses_said": lambda uses: [call.wording.author(use.split(",")[0]) for use in uses],
        "place": call.address.partition("?")[0].split("/")[1],
    }
    return _templates().get_template(reply.template).render({**values, **reply.values})
