"""A round in pictures → one page of HTML: a player that can be paused and stepped, and every picture below it.

It needs no network. It never starts by itself; where the reader asks for less motion, pictures change at once.
Without scripts, and on paper, the pictures stand one after the other.
"""

from __future__ import annotations

import json
from html import escape
from pathlib import Path

from attrs import evolve

from compose.draw.page_html import page
from compose.draw.signs.palette import ACCENT, MIDDLE, PALE, WHITE
from compose.draw.signs.shapes import Drawing
from compose.draw.signs.to_svg import PER_METRE, marks_of, svg_of
from compose.draw.strip.picture import court_shapes, layered, token_shapes
from compose.draw.strip.strip import Strip
from compose.draw.strip.whereabouts import Token
from compose.staging.floor.values import Rectangle
from compose.telling.wording import ENGLISH, Wording

SCRIPT = Path(__file__).with_name("strip.js")
LOOK = f"""
#player {{ padding: 1rem 1.6rem; border-bottom: 1px solid {PALE} }}
#player figure {{ padding: 0 }}
.token {{ transition: transform 1.2s ease-in-out }}
@media (prefers-reduced-motion: reduce) {{ .token {{ transition: none }} }}
.controls {{ display: flex; flex-wrap: wrap; gap: .6rem; align-items: center; margin-top: .8rem }}
button {{ font: inherit; min-height: 2.75rem; min-width: 2.75rem; padding: .3rem 1.1rem; color: {ACCENT};
  background: {WHITE}; border: 2px solid {ACCENT}; border-radius: .4rem; cursor: pointer }}
button:hover:enabled, #play {{ background: {ACCENT}; color: {WHITE} }}
button:disabled {{ color: {MIDDLE}; border-color: {PALE}; cursor: default }}
#told {{ margin: .9rem 0 0; font-size: 1.15rem; min-height: 3.4rem }}
#counts, .counts {{ color: {MIDDLE}; margin: .2rem 0 0 }}
#counts {{ min-height: 3.2rem }}
.keys {{ color: {MIDDLE}; font-size: .9rem }}
ol {{ list-style: none; margin: 0; padding: 1rem 1.6rem 0; display: grid; gap: 1.4rem;
  grid-template-columns: repeat(auto-fit, minmax(min(24rem, 100%), 1fr)) }}
ol figure {{ padding: 0 }}
ol p {{ margin: .4rem 0 0 }}
ol b {{ display: inline-block; min-width: 1.7rem; margin-right: .4rem; text-align: center; color: {WHITE};
  background: {ACCENT}; border-radius: 1rem }}
@media print {{ #player {{ display: none }} ol {{ grid-template-columns: 1fr 1fr; padding: .5rem 0 }}
  ol b {{ color: {ACCENT}; background: none; border: 1px solid {ACCENT} }} }}
"""


def strip_html_of(strip: Strip, wording: Wording = ENGLISH) -> str:
    """The page as text."""
    say = wording.say
    buttons = (("first", "To the start"), ("back", "Step back"), ("play", "Play"), ("forward", "Step on"))
    controls = "".join(f'<button type="button" id="{key}">{escape(say(words))}</button>' for key, words in buttons)
    keys = escape(say("Keys: space plays and pauses, the arrows step, Home goes to the start."))
    box = strip.frames[0].box
    shapes = court_shapes(strip.game, strip.floor, box, wording)
    court = Drawing(strip.title, say("The round, picture by picture."), box, shapes)
    stage = svg_of(court, key="play-", more=('<g id="tokens"></g>',)).strip()
    body = (
        f"<main>\n<header><h1>{escape(strip.title)}</h1><p>{escape(strip.about)}</p></header>\n"
        f'<div id="player" hidden>\n<figure>{stage}</figure>\n'
        f'<p id="told" aria-live="polite"></p>\n<p id="counts"></p>\n'
        f'<div class="controls">{controls}<span id="place"></span></div>\n<p class="keys">{keys}</p>\n</div>\n'
        f"{_courts(strip)}<ol>\n{''.join(_picture(strip, order) for order in range(len(strip.frames)))}</ol>\n</main>\n"
        f'<script type="application/json" id="round">{_data(strip, wording)}</script>'
    )
    return page(strip.title, wording.language, body, LOOK, SCRIPT.read_text(encoding="utf-8"))


def _courts(strip: Strip) -> str:
    """All courts at the set-up, where there are several."""
    return f"<figure>{svg_of(strip.courts, key='courts-').strip()}</figure>\n" if strip.courts is not None else ""


def _picture(strip: Strip, order: int) -> str:
    moment = strip.moments[order]
    svg = svg_of(strip.frames[order], key=f"picture-{order + 1}-").strip()
    stamp = f"{escape(moment.stamp)} " if moment.stamp else ""
    return (
        f"<li><figure>{svg}</figure><p><b>{order + 1}</b>{stamp}{escape(moment.sentence)}</p>"
        f'<p class="counts">{escape(moment.counts)}</p></li>\n'
    )


def _data(strip: Strip, wording: Wording) -> str:
    """The scenes for the script: of each token where it is, in units of the SVG, and the number of its look.

    A ball that comes in later, or was taken away, waits unseen where it is seen first.
    """
    box = strip.frames[0].box
    looks: dict[str, int] = {}
    seen_first = {token.key: token for scene in reversed(strip.scenes) for token in scene}
    every = layered(seen_first.values())
    scenes = []
    for scene in strip.scenes:
        by_key = {token.key: token for token in scene}
        scenes.append([_shown(strip, by_key.get(token.key, token), box, looks, token.key in by_key) for token in every])
    told = [[f"{moment.stamp}  {moment.sentence}".strip(), moment.counts] for moment in strip.moments]
    words = {"play": wording.say("Play"), "pause": wording.say("Pause")}
    data = {"scenes": scenes, "looks": list(looks), "told": told, "words": words}
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")


def _shown(strip: Strip, token: Token, box: Rectangle, looks: dict[str, int], there: bool) -> tuple[float, float, int]:
    """A look is drawn around the upper left corner of the picture, so that it only has to be moved."""
    corner = evolve(token, item=evolve(token.item, x=box.left, y=box.top))
    look = "".join(marks_of(token_shapes(strip.game, strip.floor, corner), box)) if there else ""
    x, y = (token.item.x - box.left) * PER_METRE, (box.top - token.item.y) * PER_METRE
    return round(x, 1), round(y, 1), looks.setdefault(look, len(looks))
