"""How teachers say a relay: there and back, one after the other, until everybody has run so often."""

from __future__ import annotations

from grammar.heard.saying import Saying, saying

_ONE = r"(?:one|1)(?: (?:player|runner|of each side|of a side))?"
_IN_TURN = rf"(?:only )?(?:{_ONE} (?:at a time|after (?:the other|another))|in turn|by turns)"
_EACH = (
    r"(?:all (?:of )?(?:its|their) players|(?:its|their) players|everybody|everyone|every player|each player|"
    r"(?:all (?:the )?)?players|each of its players|all runners|every runner)(?: (?:of|in) it)?"
)
_OFTEN = r"(?P<often>once|twice|\d+ times)"


def _times(often: str) -> str:
    return "2 times" if often == "twice" else often


RELAYS: tuple[Saying, ...] = (
    saying(rf"^(?P<what>.*\bruns? (?=.*\bfrom\b).*?),? {_IN_TURN}$", r"\g<what>, only 1 player at a time", "play"),
    saying(r"\b(run .*\bfrom .+? to .+?) and (?:return|come back|back again)\b", r"\1 and back", "play"),
    saying(rf"\b{_EACH} (?:has|have) (?:all |each )?run (?:through )?{_OFTEN}(?: each)?$",
           lambda m: f"it has run {_times(m['often'])} with each player", "finish"),
    saying(rf"^(?:the )?first side (?:with|whose|in which) {_EACH} (?:has|have) (?:all |each )?run {_OFTEN},? wins$",
           lambda m: f"a side wins when it has run {_times(m['often'])} with each player", "finish"),
    saying(r"\brun 1 time\b(?! a)", "run once", "finish"),
    saying(r"\b(has|have) run twice\b", r"\1 run 2 times", "finish", "when", "play"),
    saying(r"^(?:the )?first side to (?:run )?(\d+) (?:runs|times) wins$", r"a side wins when it has run \1 times",
           "finish"),
)  # fmt: skip
