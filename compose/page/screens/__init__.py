"""The screens, one a file: what was asked for, the questions to the workers, and the values of the template."""

from __future__ import annotations

import sys
from collections.abc import Callable

from compose.page.call import Call, Reply
from compose.page.loading import load

Screen = Callable[[Call], Reply]
# Where each screen is: a file of this folder and a function in it, loaded when somebody first looks at it.
SCREENS: tuple[tuple[str, str, str], ...] = (
    ("/", "GET", "my_class:home"),
    ("/class", "GET", "my_class:show"),
    ("/class", "POST", "my_class:save"),
    ("/class/choose", "POST", "my_class:choose"),
    ("/language", "POST", "my_class:choose_language"),
    ("/games", "GET", "find:show"),
    ("/games/rows", "GET", "find:show_rows"),
    ("/remix/{slug}", "GET", "remix:show"),
    ("/remix/{slug}/proof", "GET", "remix:show_proof"),
    ("/remix/{slug}/odds", "GET", "remix:show_odds"),
    ("/remix/{slug}/band", "GET", "remix:show_band"),
    ("/remix/{slug}/choices", "GET", "remix:show_choices"),
    ("/why/{slug}", "GET", "why:show"),
    ("/why/{slug}/mends", "GET", "why:show_mends"),
    ("/why/{slug}/more-mends", "GET", "why:show_more_mends"),
    ("/paper/{slug}", "GET", "paper:show"),
    ("/paper/{slug}/card.pdf", "GET", "paper:card"),
    ("/paper/{slug}/large.pdf", "GET", "paper:large_card"),
    ("/paper/{slug}/plan.pdf", "GET", "paper:plan_page"),
    ("/paper/{slug}/plan.svg", "GET", "paper:plan"),
    ("/lesson", "GET", "lesson:show"),
    ("/lesson/minutes", "GET", "lesson:show_minutes"),
    ("/lesson/add", "POST", "lesson:add"),
    ("/lesson/change", "POST", "lesson:change"),
    ("/lesson/lesson.pdf", "GET", "lesson:sheet"),
    ("/lesson/cards.pdf", "GET", "lesson:booklet"),
    ("/hall/rounds", "POST", "hall:keep"),
    ("/hall/file", "POST", "hall:take_in"),
    ("/hall/lend", "POST", "hall:lend"),
    ("/hall/take-back", "POST", "hall:end_lending"),
    ("/hall/{slug}", "GET", "hall:show"),
    ("/hall/{slug}/carry.html", "GET", "hall:carry"),
    ("/write", "GET", "write:show"),
    ("/write/new", "GET", "write:begin"),
    ("/write/sheet/{slug}", "GET", "write:open_sheet"),
    ("/write/work", "POST", "write:work"),
    ("/write/look", "POST", "write:look"),
    ("/share", "GET", "share:show"),
    ("/share/pack", "GET", "share:look_again"),
    ("/share/look", "POST", "share:look"),
    ("/share/take", "POST", "share:take"),
    ("/share/give", "POST", "share:give"),
    ("/share/undo", "POST", "share:undo"),
    ("/share/merge", "GET", "merge:show"),
    ("/share/merge", "POST", "merge:settle"),
)


ALSO = ("compose.page.answers.group", "compose.page.sheets", "compose.page.shelved")  # loaded where they are needed


def screen_of(named: str) -> Screen:
    """The function of "file:function"."""
    file, name = named.split(":")
    module = f"{__name__}.{file}"
    load(module)
    found: Screen = getattr(sys.modules[module], name)
    return found


def load_all() -> None:
    """Load all that screens need, so that nobody waits for it later."""
    load(*ALSO, *(f"{__name__}.{named.split(':')[0]}" for _, _, named in SCREENS))
