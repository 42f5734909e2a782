"""Many cards in one PDF, with a contents page and a progress bar."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

import library
from compose.answer.answer import to_mend
from compose.check import Budget
from compose.draw.card.booklet import booklet_of
from compose.draw.card.card import Card
from compose.draw.card.of_remix import Look, card_of_remix
from compose.terminal.answer import exit_code, finding_json, say, say_findings, say_json, stop
from compose.terminal.patience import INTERRUPTED, Patience
from compose.terminal.stages import remixed, staging_for
from compose.terminal.typed.appearance import units_named, wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.writing import ends_with, write
from grammar.finding import Finding
from grammar.frozen import frozen

USUAL_TITLE = "Hall games"
BAR_FROM = 8  # our choice: fewer cards are done before a bar is seen


@frozen
class Binding:
    """How a booklet is made up, and how far each of its games is looked at (None: not checked)."""

    title: str
    paper: str
    budget: Budget | None
    look: Look
    who: Who


def make_booklet(
    names: Sequence[str],
    modifiers: Sequence[str],
    who: Who,
    out: Path,
    title: str,
    paper: str,
    units: str,
    language: str,
    large: bool,
    budget: Budget | None,
    force: bool,
    as_json: bool,
) -> int:
    """Write the booklet; the exit code. Without names it holds every game and remix of the library."""
    from compose.terminal.carding import paper_named

    ends_with(out, (".pdf",), as_json)
    look = Look(units_named(units, as_json), wording_named(language, as_json), large)
    shown = look.wording.say(title) if title == USUAL_TITLE else title
    binding = Binding(shown, paper_named(paper, as_json), budget, look, who)
    wanted = tuple(names) or tuple(path.stem for path in (*library.game_paths(), *library.remix_paths()))
    with Patience() as patience:
        cards, findings = _cards(wanted, modifiers, binding, patience, as_json)
        outcome = booklet_of(cards, binding.title, binding.paper, patience.keep_going, look.wording, large)
    if patience.stopped:
        return INTERRUPTED
    findings += outcome.findings
    if outcome.value is None:
        stop(findings, as_json)
    write(out, outcome.value.pdf, force, as_json)
    titles = outcome.value.titles
    if as_json:
        found = [finding_json(finding) for finding in findings]
        say_json({"title": binding.title, "cards": list(titles), "written": str(out), "findings": found})
    else:
        bound = look.wording.counted(len(titles), "printed card", "printed cards")
        say(look.wording.say("The booklet with {cards} is in {file}.", cards=bound, file=out))
        say_findings(to_mend(findings), wording=look.wording)
    return exit_code(findings)


def _cards(
    wanted: Sequence[str], modifiers: Sequence[str], binding: Binding, patience: Patience, as_json: bool
) -> tuple[list[Card], list[Finding]]:
    """The cards in order, as far as nobody stops the work."""
    cards, findings = list[Card](), list[Finding]()
    with _bar(len(wanted)) as one_done:
        for name in wanted:
            if patience.stopped:
                break
            card, said = _card(name, modifiers, binding, as_json)
            cards.append(card)
            findings += said
            one_done()
    return cards, findings


def _card(name: str, modifiers: Sequence[str], binding: Binding, as_json: bool) -> tuple[Card, tuple[Finding, ...]]:
    if binding.budget is not None:
        from compose.terminal.carding import card_for
        from compose.terminal.stages import answered, ready

        prepared = ready(name, modifiers, binding.who, as_json)
        answer = answered(prepared, binding.budget)
        return card_for(prepared, answer, binding.look), answer.findings
    made, said = remixed(name, modifiers, as_json)
    staging = staging_for(made, binding.who, as_json)
    return card_of_remix(made, staging, binding.look), (*said, *staging.findings)


@contextmanager
def _bar(total: int) -> Iterator[Callable[[], None]]:
    """A bar on the error stream, where that is a terminal and there are enough cards to wait for; to be called
    after each card."""
    if not sys.stderr.isatty() or total < BAR_FROM:
        yield lambda: None
        return
    from rich.console import Console
    from rich.progress import Progress

    with Progress(console=Console(stderr=True), transient=True) as progress:
        task = progress.add_task("Cards", total=total)
        yield lambda: progress.advance(task)
