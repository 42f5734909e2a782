"""How far the forecast is to be trusted: what pupils of little and much ability make of the game, and what matters."""

from __future__ import annotations

from collections.abc import Iterator

from compose.answer.answer import Answer
from compose.draw.card.proof import forecast_lines
from compose.forecast.forecast import Forecast
from compose.forecast.sensitivity import Swing
from compose.page.answers.at_hand import remixed
from compose.page.answers.known import forecast_of
from compose.page.answers.values import Asked, Band
from compose.page.wording import page_wording
from compose.telling.amounts import share_said, time_said
from compose.telling.wording import Wording

SHOWN = 2  # our choice: what the forecast hangs on most
NORM = "norm"  # the context of the catalogue that says what a table of the norms holds


def band(asked: Asked) -> Band:
    """The forecast with everybody's ability at either end, and the norms that move it most."""
    wording, made = page_wording(asked.language), remixed(asked.texts, asked.uses).value
    answer = forecast_of(asked, compare=True) if made is not None else ()
    if not isinstance(answer, Answer) or answer.forecast is None:
        return Band((), ())
    return Band(tuple(_ends(answer.forecast, answer, wording)), tuple(_hangs_on(answer.forecast, wording)))


def _ends(told: Forecast, answer: Answer, wording: Wording) -> Iterator[tuple[str, tuple[str, ...]]]:
    labels = wording.say("Pupils who throw and catch little yet"), wording.say("Pupils who throw and catch well")
    for label, end in zip(labels, (told.band.low, told.band.high), strict=True):
        if end is not None:
            yield label, forecast_lines(end, answer.match, wording, answer.staged.net.solo)


def _hangs_on(told: Forecast, wording: Wording) -> Iterator[str]:
    for swing in [each for each in told.swings if each.by > 0 and each.beyond_chance][:SHOWN]:
        low, high = (_said(swing, end, wording) for end in (0, 1))
        about = wording.known(NORM, swing.about) or swing.about
        what = _what(swing, wording)
        yield wording.say("{about}: {what} from {low} to {high}.", about=about, what=what, low=low, high=high)


def _what(swing: Swing, wording: Wording) -> str:
    side = swing.most.removeprefix("win odds of ")
    if side != swing.most:
        return wording.say("the chance that {side} wins", side=wording.named(side))
    names = {
        "mean length": wording.say("the length of a round"),
        "turns a minute": wording.say("turns a minute"),
        "rounds that the clock stops": wording.say("the rounds that the clock stops"),
        "time not playing": wording.say("the time not playing"),
    }
    return names[swing.most]


def _said(swing: Swing, end: int, wording: Wording) -> str:
    figure, is_share = (swing.low, swing.high)[end].named()[swing.most]
    if is_share:
        return share_said(figure.value, wording)
    return time_said(figure.value, wording) if swing.most == "mean length" else wording.figure(figure.value, 1)
