"""Games of other kinds than the row: one side, three and four sides, a track, a bench, things that are carried."""

from __future__ import annotations

FOUR = """
game Four Rows
space
  court 20 m by 14 m, in equal parts
sides
  ash, elm, oak and yew, 3 to 8 players each, mirrored
kit
  8 foam balls
  2 pails for each side, like a bucket
set-up
  pails on the side line of their side, evenly spaced
  2 foam balls in each half
play
  players stay in their half
  players underarm throw a foam ball at the pails of the other side, from 6 m away
when
  a pail is knocked: it stays down
finish
  a side wins when the other side has no pails standing
"""
ALONE = """
game Last Fox
space
  court 12 m by 8 m, in one piece
sides
  badgers, 3 to 12 players, each for themselves
kit
  3 foam balls
set-up
  foam balls on the court
play
  badgers underarm throw a foam ball at the other badgers
when
  a badger is hit: that player is out
finish
  the round ends when badgers have no players in, nobody wins
"""
TRACK = """
game Whale Drive
space
  court 18 m by 9 m, halved across
  whale track: 7 steps, from north to south
sides
  north and south, 6 to 14 players each, mirrored
kit
  12 foam balls
  3 whales, like a gym ball
set-up
  whales on step 4 of the whale track
  6 foam balls in each half
play
  players stay in their half
  players overarm throw a foam ball at the whales
when
  a whale is knocked: it moves 1 step away from the thrower
  a side has a whale at home: the other side scores 1 point and the whale goes to step 4 of the whale track
finish
  a side wins when it has 2 points
"""
COINS = """
game Coin Carriers
space
  court 18 m by 9 m, halved across
sides
  north and south, 4 players each, mirrored
kit
  4 coins, like a beanbag
set-up
  4 coins in the middle
play
  players carry a coin from the middle to their back line
when
  a player arrives: the carrier's side scores 1 point
finish
  after 3 min: more points wins, else a draw
"""
PASSES = """
game Bench Pass
space
  court 18 m by 9 m, halved across
  ferry bench: behind each back line
sides
  otters and herons, 6 to 12 players each, mirrored
kit
  4 soft balls, like a foam ball
set-up
  1 player of each side on the ferry bench of the other side
  2 soft balls in each half
play
  players stay in their half
  players pass a soft ball to a team-mate on the ferry bench of the other side
when
  a pass is caught on the ferry bench: the passer joins their ferry bench
  a ball is missed: the last on the passer's ferry bench returns
finish
  a side wins when it has 5 players on the ferry bench
"""
SLEDGES = """
game Sledge Pull
space
  court 18 m by 9 m, in one piece
sides
  carriers, 6 to 14 players
  throwers, 6 to 14 players
  role guard: 0 to 14 players of carriers
kit
  10 foam balls
  1 sledge for each carrier, like a cone
set-up
  foam balls on the court
  sledges on the wall of carriers, evenly spaced
play
  carriers tow a sledge from wall to wall
  throwers overarm throw a foam ball at the sledges
when
  a carrier arrives: the carrier's side scores 1 point
  a sledge is knocked: it stays down and its carrier becomes a guard
finish
  after 4 min: more points wins, else a draw
  two halves, the sides change tasks
"""
GREEN = """
game Three Colours
space
  court 18 m by 9 m, in equal parts
  waiting queue: beside each half
sides
  red, blue and green, 4 players each, mirrored
kit
  3 soft balls, like a foam ball
set-up
  3 soft balls in the middle
  2 players of green in the waiting queue
play
  players overarm throw a soft ball at the players of the other side
when
  a player is hit: that player waits in the queue
  a ball is caught: the first in the catcher's queue returns
finish
  a side wins when the other side has no players in
"""

POSSESSION = """
game Heron Four
space
  court 18 m by 10 m, in one piece
sides
  herons and rails, 5 to 8 players each, mirrored
kit
  1 foam ball
set-up
  herons begins with the ball
play
  players stay on the court
  players pass a foam ball to a team-mate, 1 in 8 are caught
when
  4 passes in a row: the passer's side scores 1 point
finish
  after 6 min: more points wins, else a draw
"""
