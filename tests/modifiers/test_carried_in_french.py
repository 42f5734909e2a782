"""What a carried remix lost is told in French to the end."""

from __future__ import annotations

import re

from mixtures import ROW
from test_remix_files import REMIX, carried

from compose.telling.findings import finding_said, known
from compose.telling.wording import with_sheets, wording_of


def test_every_conflict_is_told_in_french_to_the_end() -> None:
    """What stood before, who changed it and what it is now: the sheet's own lines stand as they are."""
    rule = "a lantern is knocked: it stays down"
    changed = [
        carried(ROW.replace(rule, more))
        for more in (
            "a lantern is knocked: the thrower's side scores 1 point",
            "a lantern is knocked: it stands up again",
            "a ball leaves the court: the thrower's side scores 1 point",
        )
    ]
    gone = ROW.replace("      dim strip: 2 m deep, before each back line, nobody guards there\n", "")
    changed.append(carried(gone, text=REMIX.replace("add balls", "deeper strips").replace(", n 3", "")))
    told = [each for result in changed for each in result.conflicts if each.code in ("M-both-changed", "M-left-out")]
    assert len({each.said[0].pattern for each in told if each.said}) == 4
    for each in told:
        french = finding_said(each, wording_of("fr"))
        assert each.said is not None and all(known(part, with_sheets(wording_of("fr"))) for part in each.said)
        words = f"{french.title} {french.hint}"
        assert not re.search(r"\b(?:now|no longer|left out|made|says|Before|leaves|makes)\b", words)
