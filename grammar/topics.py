"""What a sentence is about: two sentences of one topic cannot both stand in a game."""

from __future__ import annotations

from grammar.meanings import CATEGORY_WORDS, SHOT_WORDS
from grammar.sentences import (
    attempting,
    events,
    finish,
    head,
    limits,
    play,
    points,
    queues,
    resting,
    sides,
    space,
    when,
)
from grammar.sentences.base import Node, Np
from grammar.words import plural

Topic = tuple[str, ...]
_SAME = {
    form: category
    for word, category in (CATEGORY_WORDS | dict.fromkeys(SHOT_WORDS, "ball")).items()
    for form in (word, plural(word))
}


def topic(sentence: Node) -> Topic:
    """The topic of a sentence; sentences that may stand beside each other have different topics."""
    match sentence:
        case head.Switched():
            return (type(sentence).__name__, sentence.name.text, *topic(sentence.sentence))
        case head.Switch():
            return ("switch", sentence.name.text)
        case when.When():
            said = (sentence.span_of_time, sentence.condition, sentence.doer, sentence.whence)
            how = (*(part.words() if part else "" for part in said), sentence.bounced or "")
            return ("when", event_topic(sentence.event), *how)
        case play.PointsCount():
            return ("points count", sentence.span_of_time.words() if sentence.span_of_time else "")
        case points.TargetPoints() | points.SetPoints() | points.AtTheEnd():
            return (type(sentence).__name__, sentence.words())
        case play.HoldLimit():
            return ("hold", _thing(sentence.ball))
        case resting.Rest():
            return ("rest", sentence.state or "", _SAME.get(sentence.ball.text, sentence.ball.text))
        case attempting.Attempt():
            return _of_attempt(sentence)
        case play.Touch():
            return ("touch", _thing(sentence.who), sentence.whom.words())
        case play.Stay() | play.Idle() | play.Rotate() | play.MoveOn() | limits.LowDown():
            return (type(sentence).__name__, _thing(sentence.who))
        case play.Take():
            return ("take", _thing(sentence.who), *map(_thing, sentence.phrases), sentence.start.words())
        case sides.Kit():
            return ("kit", sentence.name.text)
        case sides.Placing():
            return ("placing", _thing(sentence.what), sentence.preposition, sentence.where.words())
        case sides.Role():
            return ("role", sentence.name.text)
        case space.Area():
            return ("area", sentence.name.text)
        case finish.BestOf() | finish.Rests():
            return ("rounds",)  # what they are for is said once
        case head.Told():
            return ("told", sentence.words()) if sentence.topic in ("cue", "caution") else ("told", sentence.topic)
        case (
            finish.WinWhen() | finish.LoseWhen() | finish.EndsWhen() | head.Caution() | resting.Fetch() | queues.Free()
        ):
            return (type(sentence).__name__, sentence.words())
        case _:
            return (type(sentence).__name__,)


def _of_attempt(sentence: attempting.Attempt) -> Topic:
    aims = " or ".join(aim.words() for aim in sentence.aims)
    who = (_thing(sentence.who), sentence.where.words() if sentence.where else "")
    return ("attempt", *who, "/".join(sentence.skills), _thing(sentence.ball), aims)


def event_topic(event: events.Event) -> str:
    """The event in words, with all words for a thrown ball taken as one."""
    words = event.words().split()
    return " ".join(_SAME.get(word, word) for word in words if word not in ("a", "an", "the", "any", "each", "every"))


def _thing(phrase: Np | None) -> str:
    return phrase.name.text if phrase else ""
