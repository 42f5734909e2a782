"""Small invented games and modifiers to share in tests, and the items and packs made of them."""

from __future__ import annotations

from compose.share.pack.item import Item, item_of
from compose.share.pack.pack import make_pack
from grammar.parse import parse
from grammar.tree import GameSheet, ModifierSheet, RemixSheet

FELL_GATE = """\
note: An invented game of an invented valley of schools.
game Fell Gate
  ages 7 to 11
  skills roll, stop
  about "Roll the ball through the gate of the other side."
  credit "Tarn Valley schools (invented)"
  licence CC-BY-4.0

space
  court 14 m by 7 m, halved across

sides
  ewes and rams, 4 to 10 players each, mirrored

kit
  2 foam balls
  3 cones for each side

set-up
  cones on the back line of their side, evenly spaced
  1 foam ball in each half

play
  players stay in their half
  players roll a foam ball at the cones of the other side

when
  a cone is knocked: it stays down

finish
  a side wins when the other side has no cones standing
  after 5 min: more cones standing wins, else a draw

care
  "Stop the ball before you run."
"""
TOLL_BRIDGE = """\
game Toll Bridge
  ages 9 to 13
  skills overarm throw, catch
  about "Pay the toll: three cones down and the bridge is yours."
  credit "Fellgate school (invented)"
  licence CC-BY-SA-4.0

space
  court 18 m by 9 m, halved across

sides
  tollers and carters, 6 to 12 players each, mirrored

kit
  4 soft volleyballs
  3 cones for each side

set-up
  cones on the back line of their side, evenly spaced
  2 soft volleyballs in each half

play
  players stay in their half
  players overarm throw a soft volleyball at the cones of the other side

when
  a cone is knocked: it stays down

finish
  a side wins when the other side has no cones standing
"""
KICK_ON = """\
modifier kick on
  heading task
  about "Players kick where they rolled."
  credit "Tarn Valley schools (invented)"
  licence CC-BY-4.0
  needs a ball fit for kick
  change overarm throw, underarm throw, roll, strike to kick
  caution "Soft balls only."
"""
MORE_CONES = """\
modifier more cones
  heading equipment
  about "More cones for each side."
  credit "Tarn Valley schools (invented)"
  licence CC-BY-4.0
  takes n: 1 to 6, usually 1
  needs a target
  add n cones for each side
  replace in finish
    after 4 min: more cones standing wins, else a draw
"""


KICKED_GATE = """\
remix Fell Gate Kicked
  based on "Fell Gate", whose content is "CONTENT"
  with "kick on"
  with "more cones", n 2
  about "Fell Gate with the feet."
  credit "Fellgate school (invented)"
  licence CC-BY-4.0
"""


def game_sheet(text: str = FELL_GATE) -> GameSheet:
    """The sheet of a text that holds one game."""
    rules = parse(text).value
    assert rules is not None
    return rules.games[0]


def modifier_sheet(text: str = KICK_ON) -> ModifierSheet:
    """The sheet of a text that holds one modifier."""
    rules = parse(text).value
    assert rules is not None
    return rules.modifiers[0]


def game_item(text: str = FELL_GATE, history: tuple[str, ...] = ()) -> Item:
    """The item of a text that holds one game."""
    return item_of(game_sheet(text), history)


def modifier_item(text: str = KICK_ON) -> Item:
    """The item of a text that holds one modifier."""
    return item_of(modifier_sheet(text))


def remix_sheet(text: str = KICKED_GATE) -> RemixSheet:
    """The sheet of a text that holds one remix."""
    rules = parse(text.replace("CONTENT", game_item().content)).value
    assert rules is not None
    return rules.remixes[0]


def kicked_gate(text: str = KICKED_GATE) -> Item:
    """A remix of Fell Gate with kick on and two more cones."""
    return item_of(remix_sheet(text))


def everything() -> tuple[Item, ...]:
    """Two games, a remix, and two modifiers."""
    return (
        game_item(),
        game_item(TOLL_BRIDGE),
        kicked_gate(),
        modifier_item(),
        modifier_item(MORE_CONES),
    )


def pack_of(*items: Item, title: str = "Tarn Valley games", origin: str = "Tarn Head school (invented)") -> bytes:
    """The bytes of a pack of items."""
    made = make_pack(items, title, origin)
    assert made.value is not None, made.findings
    return made.value
