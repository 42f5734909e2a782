"""What one run of the page has at hand."""

from __future__ import annotations

import secrets
from pathlib import Path
from typing import TYPE_CHECKING

from compose.page.arrived import Arrived
from compose.page.kept import group_text
from compose.page.lending import Lender
from compose.page.loading import load
from compose.page.work.pool import Pool
from grammar.frozen import field, frozen

if TYPE_CHECKING:
    from compose.page.sheets import Sheet


@frozen(eq=False)
class Desk:
    """`token` is made anew for each run: a change without it was not asked for on a page of this run."""

    pool: Pool
    shelf: Path
    port: int
    arrived: Arrived = field(factory=Arrived)
    lender: Lender = field(factory=Lender)
    token: str = field(factory=lambda: secrets.token_urlsafe(24), repr=False)

    def sheets(self) -> dict[str, Sheet]:
        """The games that can be chosen, by their names in addresses."""
        load("compose.page.sheets")
        from compose.page.sheets import sheets  # the first page does without it

        return sheets(self.shelf)

    @property
    def group(self) -> str:
        """The sheet of the class that is kept, or of the usual one."""
        return group_text(self.shelf)

    def close(self) -> None:
        """Take back what is lent, and end the workers."""
        self.lender.stop()
        self.pool.close()
