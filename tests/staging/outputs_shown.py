"""Every output of a game for a class, made as the commands make it, with the numbers that are read out of it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import redirect_stdout

import library
from compose.answer.answer import Answer
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import Staged, staged
from compose.check import Budget
from compose.draw.card.of_remix import card_of_remix
from compose.draw.card.proof import answer_lines
from compose.draw.card.text import text_of
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, lesson_table
from compose.draw.plan.of_class import class_plan
from compose.fit.fit import fit_of
from compose.forecast.rounds.simulate import Play
from compose.modifiers.remix import Remix
from compose.page.answers.for_class import for_class
from compose.staging.staging import Staging
from compose.telling.wording import ENGLISH
from compose.terminal.answering import answer_json
from compose.terminal.fitting import fit_lines
from compose.terminal.forecasting import say_all_pupils, say_first
from compose.terminal.stages import Ready
from tests.staging.outputs_read import in_json, in_plan, in_strip, in_text
from tests.staging.ten_cases import Case, Numbers, expected, staging_of

LOOK = Budget(states=4_000)
PLAY = Play(rounds=60, events=200_000)


def shown(case: Case, staging: Staging) -> Iterator[tuple[str, Numbers, Numbers]]:
    """Every output by its name, with what it says and what the value says."""
    made = case.made
    ready = staged(staging, library.granted_sheet()).value
    assert ready is not None, case
    answer = foreseen(proved(ready, LOOK), library.norms(), library.kit_names(), play=PLAY, budget=LOOK)
    round_min = answer.round_minutes
    found = fit_of(staging, library.norms(), round_min)
    card = text_of(card_of_remix(made, staging, known=answer_lines(answer, ENGLISH)))
    bound = text_of(card_of_remix(made, staging))
    planned = Planned(staging.game, staging, round_min, answer.active_in_round, answer.numbers)
    lesson = lesson_card(lesson_table([planned], library.norms()), "Lesson")
    for name, said in (
        ("card", in_text(card, staging)),
        ("booklet", in_text(bound, staging)),
        ("fit", in_text("\n".join(fit_lines(found)), staging)),
        ("page", in_text("\n".join(for_class(found, ENGLISH, "plan-").lines), staging)),
        ("forecast", in_text(forecast_text(made, ready, answer), staging)),
        ("lesson", in_text(text_of(lesson), staging)),
        ("JSON", in_json(answer_json(answer), staging)),
        ("plan", in_plan(class_plan(staging.game, staging), staging)),
        ("strip", in_strip(ready, staging)),
    ):
        yield name, said, expected(staging, answer)


def forecast_text(made: Remix, ready: Staged, answer: Answer) -> str:
    """What the forecast prints first."""
    printed = io.StringIO()
    if answer.forecast is None:
        return ""
    with redirect_stdout(printed):
        say_first(Ready(made, ready), answer.forecast)
        say_all_pupils(answer)
    return printed.getvalue()


def differing(case: Case) -> list[str]:
    """What outputs say otherwise than the value; nothing where all agree, or where the class is refused."""
    staging = staging_of(case)
    if staging.refused:
        return []
    wrong = []
    for output, said, wanted in shown(case, staging):
        for key, value in said.items():
            if value != wanted.get(key):
                wrong.append(f"{output}: {key} {value!r}, not {wanted.get(key)!r}")
    return wrong
