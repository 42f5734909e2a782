"""What is told of the lines of a remix whose base has changed, or has not."""

from __future__ import annotations

from mixtures import ROW, game_of, rules_in
from test_remix_files import REMIX, carried

from compose.modifiers.content_hash import content_hash
from compose.modifiers.lineage import lineage


def test_line_that_a_modifier_only_adds_stood_in_no_base() -> None:
    """Where that modifier no longer fits, nothing is said to be gone."""
    text = REMIX.replace('with "add balls", n 3', 'with "guards"')
    for base in (ROW, ROW.replace(", mirrored", "\n      role guard: 2 players of each side")):
        assert not any("no longer says: ." in each.title for each in carried(base, text=text).conflicts)


def test_it_is_told_whether_the_remix_still_changes_the_line() -> None:
    knocked = "a lantern is knocked: it stays down"
    scored = ROW.replace(knocked, "a lantern is knocked: the thrower's side scores 1 point")
    scored = scored.replace("more lanterns standing wins", "more points wins")
    waits = ROW.replace(knocked, f"{knocked} and the thrower waits in the long queue")
    hints = [next(each.hint for each in carried(base).conflicts if "lantern is knocked" in each.title)
             for base in (scored, waits)]  # fmt: skip
    assert hints[0].startswith("The remix leaves it as the base has it now"), "nobody would score else"
    assert hints[1] == "The remix now makes of it: a lantern is knocked: it stands up again"


def test_a_remix_of_the_base_as_it_is_is_not_stale() -> None:
    base = game_of(ROW)
    fresh = rules_in(REMIX.replace('"Row"', f'"Row", whose content is "{content_hash(base.sheet)}"')).remixes[0]
    assert not lineage([base.sheet], [fresh]).edges["Row", "Rolling Row"]["stale"]
