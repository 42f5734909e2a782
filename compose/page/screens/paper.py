"""Onto paper: card, large card and plan of a remix, ready to print."""

from __future__ import annotations

from compose.page.answers.values import Asked
from compose.page.call import PATIENT, Call, Data, Reply, Shown
from compose.page.screens.remix import asked_of, no_such_game, trail_of

PDF, SVG = "application/pdf", "image/svg+xml"


def show(call: Call) -> Reply:
    """What there is to print."""
    if asked_of(call) is None:
        return no_such_game(call)
    return Shown("paper.html", {"trail": trail_of(call)})


def file_of(call: Call, made: bytes | str, kind: str, name: str) -> Reply:
    """A file, or why there is none."""
    if isinstance(made, str):
        return Shown("trouble.html", {"why": made}, 422)
    return Data(made, kind, name)


def card(call: Call) -> Reply:
    """The card as PDF."""
    return _card(call, False)


def large_card(call: Call) -> Reply:
    """The card in large print as PDF."""
    return _card(call, True)


def _card(call: Call, large: bool) -> Reply:
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    made = call.ask("paper:card", asked, large, rank=PATIENT)
    return file_of(call, made, PDF, f"{call.parts['slug']}{'-large' if large else ''}.pdf")


def plan_page(call: Call) -> Reply:
    """The plan on a page of its own as PDF."""
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    return file_of(call, call.ask("paper:plan_page", asked, rank=PATIENT), PDF, f"{call.parts['slug']}-plan.pdf")


def plan(call: Call) -> Reply:
    """The plan as a drawing."""
    asked: Asked | None = asked_of(call)
    if asked is None:
        return no_such_game(call)
    return file_of(call, call.ask("paper:plan", asked), SVG, f"{call.parts['slug']}-plan.svg")
