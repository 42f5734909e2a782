"""A page of HTML that stands by itself: no network, our own look, for the screen and for paper."""

from __future__ import annotations

from html import escape

from compose.draw.signs.palette import ACCENT, DARK, FAINT, PALE, WARNING, WHITE

LOOK = f"""
:root {{ color-scheme: light }}
* {{ box-sizing: border-box }}
body {{ margin: 0; background: {FAINT}; color: {DARK}; line-height: 1.5;
  font: 1.05rem/1.5 "Bitstream Vera Sans", "DejaVu Sans", Verdana, Arial, sans-serif }}
main {{ max-width: 62rem; margin: 1.5rem auto; padding: 0 0 1.5rem; background: {WHITE};
  border: 1px solid {PALE}; border-radius: .6rem; overflow: hidden }}
header {{ background: {ACCENT}; color: {WHITE}; padding: 1.2rem 1.6rem 1.3rem }}
h1 {{ margin: 0; font-size: 2.1rem; line-height: 1.2; overflow-wrap: anywhere }}
header p {{ margin: .35rem 0 0; font-style: italic }}
h2 {{ margin: 1.1rem 0 .3rem; font-size: 1.12rem; color: {ACCENT} }}
ul {{ margin: 0; padding-left: 1.25rem }}
li {{ margin: .2rem 0; overflow-wrap: anywhere }}
li::marker {{ color: {ACCENT} }}
figure {{ margin: 0; padding: 1.1rem 1.6rem .2rem }}
svg {{ display: block; width: 100%; height: auto; max-height: 34rem }}
:focus-visible {{ outline: 3px solid {WARNING}; outline-offset: 2px }}
@page {{ margin: 12mm }}
@media print {{
  body {{ background: {WHITE}; font-size: 9.5pt }}
  main {{ max-width: none; margin: 0; border: 0; border-radius: 0 }}
  header {{ background: {WHITE}; color: {ACCENT}; padding: 0 0 .5rem; border-bottom: 2px solid {ACCENT} }}
  section, figure, li {{ break-inside: avoid }}
  .controls {{ display: none }}
}}
"""


def page(title: str, language: str, body: str, more_look: str = "", script: str = "") -> str:
    """A whole document. `body` is HTML already; the title is plain."""
    code = f"<script>\n{script}\n</script>\n" if script else ""
    return (
        f'<!doctype html>\n<html lang="{escape(language)}">\n<head>\n<meta charset="utf-8">\n'
        f'<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>{LOOK}{more_look}</style>\n</head>\n"
        f"<body>\n{body}\n{code}</body>\n</html>\n"
    )
