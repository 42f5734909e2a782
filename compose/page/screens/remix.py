"""Remix: modifiers on and off, their amounts and their order; every state is an address, so nothing is ever lost.

An address holds the modifiers in use, and those of before (`was`) and of after (`next`) an undo: each as one text
with the modifiers between semicolons.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.page.answers.values import Asked, Band, Heading, Odds, Proof, Quick, Used
from compose.page.call import PATIENT, SOON, Call, Reply, Shown, address
from grammar.frozen import frozen

MOST_KEPT = 20
MOST_USED = 12


@frozen
class Trail:
    """The modifiers in use, and those of before and after."""

    slug: str
    uses: tuple[str, ...]
    was: tuple[str, ...]
    next: tuple[str, ...]

    def address(self, part: str = "") -> str:
        """Where this state is shown, or a part of it."""
        return address(f"/remix/{self.slug}{part}", **{"with": self.uses, "was": self.was, "next": self.next})

    def why(self, place: str) -> str:
        """Where a finding is shown with its line of play and what mends it, by its place in the list."""
        return address(f"/why/{self.slug}", **{"with": self.uses, "finding": place})

    def mends(self, place: str) -> str:
        """Where what mends a finding is tried, for this screen."""
        return address(f"/why/{self.slug}/mends", **{"with": self.uses, "finding": place, "beside": "yes"})

    def paper(self, file: str = "") -> str:
        """Where its paper is, or a file of it."""
        return address(f"/paper/{self.slug}{'/' if file else ''}{file}", **{"with": self.uses})

    @property
    def hall(self) -> str:
        """Where it is played in the hall."""
        return address(f"/hall/{self.slug}", **{"with": self.uses})

    @property
    def sheet(self) -> str:
        """Where it is written as a sheet of its own."""
        return address(f"/write/sheet/{self.slug}", **{"with": self.uses})

    def to(self, uses: Sequence[str]) -> str:
        """Where other modifiers are shown, from where one can come back."""
        was = (*self.was, _joined(self.uses))[-MOST_KEPT:]
        return Trail(self.slug, tuple(uses), was, ()).address()

    @property
    def undo(self) -> str:
        """Where one was before; "" at the beginning."""
        if not self.was:
            return ""
        return Trail(self.slug, _split(self.was[-1]), self.was[:-1], (_joined(self.uses), *self.next)).address()

    @property
    def redo(self) -> str:
        """Where one was before the undo; "" where there was none."""
        if not self.next:
            return ""
        return Trail(self.slug, _split(self.next[0]), (*self.was, _joined(self.uses)), self.next[1:]).address()


NONE = "-"


def _joined(uses: Sequence[str]) -> str:
    return ";".join(uses) or NONE


def _split(text: str) -> tuple[str, ...]:
    return () if text == NONE else tuple(text.split(";"))[:MOST_USED]


def trail_of(call: Call) -> Trail:
    """The state that an address says."""
    return Trail(call.parts["slug"], call.every("with")[:MOST_USED], call.every("was"), call.every("next"))


def asked_of(call: Call) -> Asked | None:
    """What a worker is asked about this state; None where there is no such game."""
    sheet = call.desk.sheets().get(call.parts["slug"])
    return Asked(sheet.texts, call.every("with")[:MOST_USED], call.desk.group, call.language) if sheet else None


def no_such_game(call: Call) -> Reply:
    """What is answered where a name leads to no game."""
    return Shown("trouble.html", {"why": call.wording.say("There is no such game.")}, 404)


def show(call: Call) -> Reply:
    """The quick answer; the rest at once where everything is asked for, else later."""
    asked, trail = asked_of(call), trail_of(call)
    if asked is None:
        return no_such_game(call)
    quick: Quick = call.ask("remixing:quick", asked, turn=turn_of(call))
    values = {
        "quick": quick,
        "trail": trail,
        "used": [_moves(trail, number, each) for number, each in enumerate(quick.used)],
        "proof": _proof(call, asked) if call.whole and quick.played else quick.proof,
        "odds": _odds(call, asked) if call.whole and quick.played else None,
        "band": _band(call, asked) if call.whole and quick.played else None,
        "headings": _headings(call, asked) if call.whole else _names(call, asked),
    }
    return Shown("remix.html", {**values, "pending": not call.whole, **_links(trail)})


def _moves(trail: Trail, number: int, used: Used) -> dict[str, object]:
    """A modifier in use with where it leads to take it away, to set it and to move it."""
    uses = list(trail.uses)

    def instead(*others: str) -> str:
        return trail.to([*uses[:number], *others, *uses[number + 1 :]])

    def moved(to: int) -> str:
        order = [*uses[:number], *uses[number + 1 :]]
        return trail.to([*order[:to], uses[number], *order[to:]])

    places = {to: moved(to) for to in range(len(uses)) if to != number}
    return {
        "label": used.label,
        "off": instead(),
        "amounts": [
            (each, each.less and instead(each.less), each.more and instead(each.more)) for each in used.amounts
        ],
        "places": places,
        "earlier": places.get(number - 1, ""),
        "later": places.get(number + 1, ""),
    }


def show_proof(call: Call) -> Reply:
    """What a longer look proves, alone."""
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    return Shown("remix-proof.html", {"proof": _proof(call, asked), **_links(trail_of(call))})


def show_odds(call: Call) -> Reply:
    """The forecast alone."""
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    return Shown("remix-odds.html", {"odds": _odds(call, asked), "band": None, **_links(trail_of(call))})


def show_band(call: Call) -> Reply:
    """What the forecast hangs on, alone."""
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    return Shown("remix-band.html", {"band": _band(call, asked)})


def show_choices(call: Call) -> Reply:
    """The modifiers alone."""
    asked = asked_of(call)
    if asked is None:
        return no_such_game(call)
    return Shown("remix-choices.html", {"headings": _headings(call, asked), "pending": False, **_links(trail_of(call))})


def _proof(call: Call, asked: Asked) -> Proof | None:
    found: Proof | None = call.ask("remixing:proof", asked, rank=PATIENT, turn=turn_of(call))
    return found


def _band(call: Call, asked: Asked) -> Band:
    found: Band = call.ask("band:band", asked, rank=PATIENT, turn=turn_of(call))
    return found


def _odds(call: Call, asked: Asked) -> Odds:
    found: Odds = call.ask("remixing:odds", asked, rank=SOON, turn=turn_of(call))
    return found


def _headings(call: Call, asked: Asked) -> tuple[Heading, ...]:
    given = (asked.texts, asked.uses, asked.language)
    found: tuple[Heading, ...] = call.ask("choices:choices", *given, rank=SOON, turn=turn_of(call))
    return found


def _names(call: Call, asked: Asked) -> tuple[Heading, ...]:
    """All modifiers, before anybody tried which of them fit."""
    found: tuple[Heading, ...] = call.ask("choices:names", asked.uses, asked.language, turn=turn_of(call))
    return found


def turn_of(call: Call) -> str:
    """What the tab looks at: the parts of one state do not put each other off."""
    return f"{call.parts['slug']} {_joined(call.every('with'))}"


def _links(trail: Trail) -> dict[str, object]:
    def toggled(name: str) -> str:
        kept = [each for each in trail.uses if each.split(",")[0].lower() != name]
        return trail.to(kept if len(kept) < len(trail.uses) else [*trail.uses, name])

    return {"trail": trail, "toggled": toggled}
