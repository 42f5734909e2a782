"""A finding of the check in another language than English, with its line of play: who did what, the counts after."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.check.walk import walk
from compose.net.net import Net
from compose.telling.counts import counts_told
from compose.telling.moves import Happenings
from compose.telling.of_net import OfNet
from compose.telling.voice import Voice
from grammar.finding import Finding, Step
from grammar.frozen import evolve


def said_of_net(finding: Finding, net: Net, voice: Voice) -> Finding:
    """A finding of this net with its steps, and what it says of the net, in the language of the voice."""
    if voice.wording.english:
        return finding
    if finding.said is not None:
        title, hint = (OfNet(voice, net).told(each) for each in finding.said)
        finding = evolve(finding, said=(title, hint))
    if not finding.witness:
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
