"""A game as a model in the PRISM language, on the terminal or in a file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import library
from compose.answer.answer import to_mend
from compose.check.to_prism import Comments, to_prism
from compose.forecast.chances.chances import chances, said_too_much
from compose.modifiers.remix_sheet import remix_title
from compose.net.net import Net
from compose.telling.english.ends import end_words
from compose.telling.english.moves import move_words
from compose.telling.english.nouns import many
from compose.terminal.answer import exit_code, finding_json, say, say_findings, say_json, stop
from compose.terminal.stages import ready
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import kit
from compose.terminal.writing import write


def show_export(name: str, modifiers: Sequence[str], who: Who, out: Path | None, force: bool, as_json: bool) -> int:
    """Print or write the model; the exit code."""
    prepared = ready(name, modifiers, who, as_json)
    wrong = said_too_much(prepared.net)
    if wrong:
        stop((*prepared.findings, *wrong), as_json)
    constants = chances(prepared.net, library.norms(), kit()).tolist()
    outcome = to_prism(prepared.net, constants, _comments(prepared.net))
    if outcome.value is None:
        stop((*prepared.findings, *outcome.findings), as_json)
    text = outcome.value
    if out is not None:
        write(out, text.encode(), force, as_json)
    of_class = prepared.staging.findings
    if as_json:
        written = {"written_to": str(out)} if out is not None else {"text": text}
        findings = {"findings": [finding_json(each) for each in of_class]}
        say_json({"game": remix_title(prepared.remix), "players": dict(prepared.players), **written, **findings})
    else:
        say(f"Written to {out}." if out is not None else text.rstrip())
        say_findings(to_mend(of_class), to_error=out is None)  # a model that is printed is read by a program
    return exit_code(of_class)


def _comments(net: Net) -> Comments:
    return Comments(
        tuple(many(net, place) for place in net.places),
        tuple(move_words(net, move) for move in net.transitions),
        tuple(end_words(net, end) for end in net.ends),
    )
