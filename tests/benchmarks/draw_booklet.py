"""How long paper takes: a plan, a card, and a booklet of 50 cards. Run it by hand; it prints one line for each.

The aims: a plan under 0.3 s, a card under 1 s, the booklet under 15 s on an ordinary computer.
"""

from __future__ import annotations

import sys
import time
from itertools import cycle, islice
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "draw"))

from drawn_games import NAMES, card_for, laid_out, library_game

from compose.draw.card.booklet import booklet_of
from compose.draw.card.pdf import pdf_of
from compose.draw.plan.plan import plan_of
from compose.draw.signs.to_svg import svg_of
from library.load import kit_catalogue

CARDS = 50


def main() -> None:
    """Time the three."""
    games = [library_game(name) for name in NAMES]
    slowest_plan = slowest_card = 0.0
    for game in games:
        begun = time.perf_counter()
        svg_of(plan_of(game, laid_out(game)))
        slowest_plan = max(slowest_plan, time.perf_counter() - begun)
        begun = time.perf_counter()
        pdf_of(card_for(game, catalogue=kit_catalogue()))
        slowest_card = max(slowest_card, time.perf_counter() - begun)
    begun, worked = time.perf_counter(), time.process_time()
    cards = [card_for(game, catalogue=kit_catalogue()) for game in islice(cycle(games), CARDS)]
    booklet = booklet_of(cards, "Fifty cards").value.pdf
    whole, busy = time.perf_counter() - begun, time.process_time() - worked
    print(f"slowest plan of the library  {slowest_plan:6.2f} s (aim 0.3)")
    print(f"slowest card of the library  {slowest_card:6.2f} s (aim 1)")
    size = len(booklet or b"") // 1024
    print(f"booklet of {CARDS} cards         {whole:6.2f} s (aim 15), {busy:.2f} s of them at work, {size} KiB")


if __name__ == "__main__":
    main()
