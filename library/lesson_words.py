"""What a lesson says of the skills that its games practise: a door to `lessons/`, read once and kept."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from math import ceil

from grammar.frozen import frozen
from library.load import folder
from library.reading import Entry
from library.records import BALL_SKILLS

IN_GROUPS = 4  # the most that share a ball in groups of three or four


@frozen
class WarmUp:
    """A way to warm up. `share` pupils have a ball together, fit for the skill `ball_for` (any where that is ""); 0
    where none is needed. `pairs`: two do it together."""

    text: str
    share: int
    ball_for: str = ""
    pairs: bool = False

    def balls(self, pupils: int) -> int:
        """How many balls so many pupils need; of pairs the last one may be three."""
        if not self.share:
            return 0
        return max(1, pupils // 2) if self.pairs else ceil(pupils / self.share)


@frozen
class SkillWords:
    """How to warm up for a skill, the best way first and the last one without a ball; and what to ask about it in the
    talk."""

    skill: str
    ways: tuple[WarmUp, ...]
    ask: str

    @property
    def warm_up(self) -> str:
        """The best way, in words."""
        return self.ways[0].text


@cache
def skill_words() -> Mapping[str, SkillWords]:
    """The words of each skill by its name; raises DataError on a malformed file."""
    return folder("lessons", _from)


def _from(skill: str, entry: Entry) -> SkillWords:
    entry.only("warm_up", "ask", "share_a_ball", "ball_for", "few_balls", "no_ball", "pairs")
    share = int(entry.number("share_a_ball", 0))
    ball_for = entry.text("ball_for", skill if skill in BALL_SKILLS else "")
    ways = [WarmUp(entry.text("warm_up"), share, ball_for if share else "", share == 2 or entry.flag("pairs"))]
    if "few_balls" in entry.values:
        ways.append(WarmUp(entry.text("few_balls"), IN_GROUPS, ball_for))
    if "no_ball" in entry.values:
        ways.append(WarmUp(entry.text("no_ball"), 0))
    if all(each.share for each in ways):
        raise entry.wrong("no_ball", "a class that has no balls must be able to warm up, too")
    return SkillWords(skill, tuple(ways), entry.text("ask"))
