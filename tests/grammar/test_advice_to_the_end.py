"""Two messages that follow each other lead to a sheet that is read: neither asks for what the other refuses."""

from __future__ import annotations

import re

from proofreading import judge_of

from tests.grammar.corpus import FOLDER


def test_a_ball_that_whoever_is_touched_has_to_drop() -> None:
    judge = judge_of("sedge-run.rules")
    text = (FOLDER / "when-nobody-chased-for-the-ball.rules").read_text()
    (first,) = judge(text)
    chase = re.search(r"in play, too: ([^.]+)\.", first.hint)
    assert chase
    text = text.replace("play\n", f"play\n  {chase.group(1)}\n", 1)
    (second,) = judge(text)
    goes = second.hint.removeprefix("Write instead: ")
    assert first.hint.endswith(goes)
    assert not judge(text.replace("that player drops the foam ball", goes))
