"""The line of play behind a finding in another language than English: who did what, and the counts after it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.check.walk import walk
from compose.net.net import Net
from compose.telling.counts import counts_told
from compose.telling.moves import Happenings
from compose.telling.voice import Voice
from grammar.finding import Finding, Step
from grammar.frozen import evolve


def witness_said(finding: Finding, net: Net, voice: Voice) -> Finding:
    """The finding with its steps in the language of the voice; each is a move of this net."""
    if voice.wording.english or not finding.witness:
        return finding
    steps = tuple(_told((*finding.witness, *finding.loop), net, voice))
    parted = len(finding.witness)
    return evolve(finding, witness=steps[:parted], loop=steps[parted:])


def _told(steps: Sequence[Step], net: Net, voice: Voice) -> Iterator[Step]:
    happenings = Happenings(voice, net)
    before = net.start()
    markings = iter(walk(net, [step.transition for step in steps if step.transition >= 0])[1:])
    for step in steps:
        if step.transition < 0:
            yield Step(voice.say("the round starts"), counts_told(voice, net, before), step.transition)
            continue
        after = next(markings)
        words = happenings.told(net.transitions[step.transition], before, after)
        yield Step(words, counts_told(voice, net, after), step.transition)
        before = after
