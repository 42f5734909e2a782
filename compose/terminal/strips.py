"""A round in pictures: one played at random from a seed, or the line of play behind a finding of the check."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import library
from compose.answer.answer import to_mend
from compose.check import Budget
from compose.draw.card.of_remix import titled
from compose.draw.plan.of_class import class_plan
from compose.draw.signs.to_svg import svg_of
from compose.draw.strip.line_of_play import counts_in, steps_behind, told_moves
from compose.draw.strip.moments import Moment, moments_of, stamp
from compose.draw.strip.strip import Strip, drawing_of, strip_of
from compose.forecast.chances.chances import chances, said_too_much
from compose.forecast.rounds.sample import Sample, sample_round
from compose.staging.resolved import resolved
from compose.telling.english.ends import end_words
from compose.telling.findings import finding_said
from compose.telling.moves import Happenings
from compose.telling.sentences import sentence
from compose.telling.voice import Voice
from compose.telling.wording import Wording
from compose.terminal.answer import WIDTH, exit_code, finding_json, say, say_findings, say_json, stop
from compose.terminal.checking import with_line_of_play
from compose.terminal.stages import Ready, ready
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import kit
from compose.terminal.writing import ends_with, write

ENDINGS = (".svg", ".html")


def make_strip(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    out: Path | None,
    finding: str | None,
    budget: Budget,
    seed: int,
    pictures: int,
    language: str,
    force: bool,
    as_json: bool,
) -> int:
    """Write the strip as SVG or as a page that plays it, or tell its sentences; the exit code."""
    ends_with(out, ENDINGS, as_json)
    wording = wording_named(language, as_json)
    prepared = ready(name, modifiers, who, as_json)
    if finding:
        made = _of_finding(prepared, finding, budget, pictures, wording, as_json)
    else:
        made = _at_random(prepared, seed, pictures, wording, as_json)
    of_class = prepared.staging.findings
    if out is not None and out.suffix.lower() == ".svg":
        write(out, svg_of(drawing_of(made), 1400).encode(), force, as_json)
    elif out is not None:
        from compose.draw.strip.html import strip_html_of

        write(out, strip_html_of(made, wording).encode(), force, as_json)
    if as_json:
        pictures_told = [
            {"at": moment.stamp, "sentence": moment.sentence, "counts": moment.counts} for moment in made.moments
        ]
        written = str(out) if out else None
        found = {"staging": staging_json(prepared.staging), "findings": [finding_json(each) for each in of_class]}
        say_json({"title": made.title, "about": made.about, "pictures": pictures_told, "written": written} | found)
    else:
        _say(made, out)
        say_findings(to_mend(of_class), wording=wording)
    return exit_code(of_class)


def _at_random(prepared: Ready, seed: int, pictures: int, wording: Wording, as_json: bool) -> Strip:
    net = prepared.net
    wrong = said_too_much(net)
    if wrong:
        stop((*prepared.findings, *wrong), as_json)
    sample = sample_round(net, chances(net, library.norms(), kit()), seed)
    steps = [(event.transition, event.marking, event.minutes) for event in sample.events]
    moves = told_moves(prepared.game, net, steps, wording)
    moments = moments_of(
        net, moves, _ending(prepared, sample, wording), pictures, wording, counts_in(prepared.game, wording)
    )
    about = wording.say(
        "A round played at random (seed {seed}): {time} long, {moves}.",
        seed=seed,
        time=stamp(sample.minutes),
        moves=wording.counted(len(moves), "move", "moves"),
    )
    return _strip(prepared, moments, wording.say("A sample round"), about, wording)


def _ending(prepared: Ready, sample: Sample, wording: Wording) -> str:
    if not wording.english:
        said = Happenings(Voice(resolved(prepared.game), wording), prepared.net).ended(sample.end, sample.unfinished)
    elif sample.end is None:
        return "the round is broken off here" if sample.unfinished else "the round is over"
    else:
        said = end_words(prepared.net, sample.end)
    return wording.say("the bell rings: {end}", end=said) if sample.rang and sample.end else said


def _of_finding(prepared: Ready, code: str, budget: Budget, pictures: int, wording: Wording, as_json: bool) -> Strip:
    chosen = with_line_of_play(prepared, code, budget, None, as_json)
    moves = told_moves(prepared.game, prepared.net, steps_behind(prepared.net, chosen), wording)
    moments = moments_of(prepared.net, moves, "", pictures, wording, counts_in(prepared.game, wording))
    title = sentence(finding_said(chosen, wording).title)
    return _strip(prepared, moments, chosen.code, title, wording)


def _strip(prepared: Ready, moments: Sequence[Moment], what: str, about: str, wording: Wording) -> Strip:
    game = titled(prepared.remix)
    floor = prepared.staging.court.floor
    title, courts = f"{game.title}{wording.say(':')} {what}", len(prepared.staging.courts)
    if courts > 1:
        about += " " + wording.say("It is court 1 of {courts}; on the others play goes its own way.", courts=courts)
    every = class_plan(game, prepared.staging, wording=wording) if courts > 1 else None
    return strip_of(game, floor, prepared.net, moments, title, about, wording, every)


def _say(made: Strip, out: Path | None) -> None:
    wording = made.wording
    if out is not None:
        pictures = wording.counted(len(made.moments), "picture", "pictures")
        say(wording.say("The round in {pictures} is in {file}.", pictures=pictures, file=out))
        return
    from textwrap import wrap

    for line in (made.title, *wrap(made.about, WIDTH), ""):
        say(line)
    for order, moment in enumerate(made.moments, start=1):
        lead = f"{order}. {moment.stamp}".rstrip()
        for line in wrap(f"{lead} {moment.sentence}", WIDTH, subsequent_indent="   "):
            say(line)
        for line in wrap(moment.counts, WIDTH, initial_indent="   = ", subsequent_indent="     "):
            say(line)
