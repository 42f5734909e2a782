"""Why a remix does not work: the play that leads to a finding."""

from __future__ import annotations

from compose.answer.answer import Answer
from compose.draw.card.of_remix import titled
from compose.draw.signs.to_svg import svg_of
from compose.draw.strip.line_of_play import every_moment
from compose.draw.strip.strip import strip_of
from compose.modifiers.remix import Remix
from compose.modifiers.remix_sheet import remix_title
from compose.page.answers.at_hand import remixed
from compose.page.answers.for_class import fit_by_forecast
from compose.page.answers.known import fit_of_asked, forecast_of, proved_of
from compose.page.answers.said import in_order, lines_of, said
from compose.page.answers.values import Asked, Picture, Why
from compose.page.wording import page_wording
from compose.staging.laid_out import laid_out
from compose.telling.wording import Wording
from grammar.finding import Finding

MOST_MOVES = 60  # our choice: nobody steps through more


def why(asked: Asked, place: str) -> Why | None:
    """The finding at a place ("r0": the first of the rules, "c1": the second of the class, "t0": that of time)."""
    wording, made = page_wording(asked.language), remixed(asked.texts, asked.uses).value
    finding = finding_at(asked, place)
    if made is None or finding is None:
        return None
    answer = proved_of(asked)
    steps = finding.witness or finding.loop
    pictures = _pictures(made, answer, finding, wording) if steps and isinstance(answer, Answer) else ()
    told = said(finding, wording, lines_of(made.game))
    return Why(remix_title(made), told, pictures[: MOST_MOVES + 1], bool(finding.loop))


def finding_at(asked: Asked, place: str) -> Finding | None:
    """The finding at a place of the list; None where there is none."""
    made, number = remixed(asked.texts, asked.uses).value, int(place[1:])
    if made is None:
        return None
    listed = _listed(asked, place[0])
    return listed[number] if number < len(listed) else None


def _listed(asked: Asked, part: str) -> tuple[Finding, ...]:
    """The findings of a part of the screen in the order of its places."""
    if part == "c":
        return in_order(fit_of_asked(asked).staging.findings)
    answer = forecast_of(asked) if part == "t" else proved_of(asked)
    if not isinstance(answer, Answer):
        return in_order(answer) if part == "r" else ()
    if part == "t":
        return fit_by_forecast(fit_of_asked(asked), answer.round_minutes).of_time
    return in_order(answer.proved)


def _pictures(made: Remix, answer: Answer, finding: Finding, wording: Wording) -> tuple[Picture, ...]:
    net, game = answer.staged.net, titled(made)
    moments = every_moment(made.game, net, finding, wording)[: MOST_MOVES + 1]
    strip = strip_of(game, laid_out(made.game, answer.staged.players), net, moments, "", "", wording)
    return tuple(
        Picture(svg_of(frame, key="moment-"), moment.sentence, moment.counts)
        for frame, moment in zip(strip.frames, moments, strict=True)
    )
