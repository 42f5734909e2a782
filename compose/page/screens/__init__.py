"""The screens, one a file: what was asked for, the questions to the workers, and the values of the template."""

from __future__ import annotations

from collections.abc import Callable

from compose.page.call import Call, Reply
from compose.page.screens import find, hall, lesson, my_class, paper, remix, why, write

SCREENS: tuple[tuple[str, str, Callable[[Call], Reply]], ...] = (
    *my_class.ROUTES,
    *find.ROUTES,
    *remix.ROUTES,
    *why.ROUTES,
    *paper.ROUTES,
    *lesson.ROUTES,
    *hall.ROUTES,
    *write.ROUTES,
)
