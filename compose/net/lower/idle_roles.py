"""Roles that change nothing: whoever has one plays just as all others of the side do."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.declared import Role
from grammar.core.game import Core
from grammar.core.rotation import Rotation, circle_of
from grammar.core.tasks_alike import plays_like_all
from grammar.finding import IDLE, Basis, Finding, Severity, spoken
from grammar.said import Named, said


def idle_roles(core: Core) -> Iterator[Finding]:
    """One finding for each line that gives such roles alone; a note where a line in quotes says what they do, or where
    they are those who have just now no other task of a circle."""
    for lines in dict.fromkeys(role.lines for role in core.play.roles):
        roles = [role for role in core.play.roles if role.lines == lines]
        if not all(plays_like_all(core.play, role) for role in roles):
            continue
        role = roles[0]
        title = said(
            "The role {role} changes nothing: its players do what all others of their side do.",
            role=Named(role.id.key),
        )
        severity = Severity.WARNING
        hint = said("Say what they do that others do not, or what they leave, or leave the role out.")
        if role.id in core.told.spoken_of:
            severity, hint = Severity.NOTE, said("What a line in quotes says of them is for people.")
        own = [each for each in core.play.rotations if each.who.role == role.id]
        if any(not plays_like_all(core.play, other) for each in own for other in _met_on(core, each)):
            severity, hint = Severity.NOTE, said("Its name serves the line by which they move on.")
        passing = dict.fromkeys(each.lines[0] for each in own)
        others = tuple(core.lines[number].span for number in passing)
        yield spoken(IDLE, severity, title, core.lines[lines[0]].span, hint, others=others, basis=Basis.PROVED)


def _met_on(core: Core, rotation: Rotation) -> Iterator[Role]:
    """The roles of the circle in which a task moves on."""
    there = {who.role for who in circle_of(rotation, core.play.rotations)} if rotation.onward is not None else set()
    yield from (role for role in core.play.roles if role.id in there)
