"""What every page of the site has around it: the head, a policy that lets nothing from outside in, the look."""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from html import escape
from pathlib import Path

HERE = Path(__file__).parent


@cache
def look() -> str:
    """The style sheet."""
    return (HERE / "site.css").read_text(encoding="utf-8")


@cache
def search_script() -> str:
    """The script of the list."""
    return (HERE / "search.js").read_text(encoding="utf-8")


def framed_page(title: str, body: str, script: str = "") -> bytes:
    """A whole page. Only its own style and script run in it, and it can ask nothing of any network."""
    policy = f"default-src 'none'; img-src data:; style-src {_allowed(look())}; base-uri 'none'; form-action 'none'" + (
        f"; script-src {_allowed(script)}" if script else ""
    )
    lines = [
        "<!DOCTYPE html>",
        '<html lang="en-GB">',
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{escape(policy)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="referrer" content="no-referrer">',
        f"<title>{escape(title)}</title>",
        f"<style>{look()}</style>",
        "</head>",
        "<body>",
        body,
        *([f"<script>{script}</script>"] if script else []),
        "</body>",
        "</html>",
    ]
    return ("\n".join(lines) + "\n").encode()


def _allowed(text: str) -> str:
    digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
    return f"'sha256-{digest}'"
