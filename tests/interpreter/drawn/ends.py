"""Draws how a round ends and writes the lines of finish that say it."""

from __future__ import annotations

from tests.interpreter.drawn.records import NOBODY, Draft


def draw_ends(draft: Draft) -> None:
    """One or two ways to win or to end, perhaps a bell, perhaps what counts where two win at once."""
    if draft.solo:
        draft.say(
            "finish",
            draft.one_of(
                "the round ends when a side has at most 1 player in, nobody wins", "play goes on until the clock stops"
            ),
        )
        draft.say("finish", "after 4 min: nobody wins")
        return
    draft.points_wanted = any(" scores " in line for line in draft.lines["when"])
    if draft.points_wanted:
        number = draft.dice.choice((1, 2, 2, 3))
        draft.say(
            "finish",
            draft.one_of(
                f"the first side to {number} points wins", f"a side wins when it has at least {number} points"
            ),
        )
        draft.may_win |= draft.may_score
    if not draft.points_wanted or draft.in_one_of(2):
        for _ in range(1 + draft.in_one_of(3)):
            _way(draft)
    if draft.in_one_of(2):
        _bell(draft)
    if draft.in_one_of(3):
        draft.say("finish", draft.one_of("both at once: a draw", "both at once: nobody wins"))


def _way(draft: Draft) -> None:
    """A way to win, said of the winner or of the loser, of every side or of one."""
    two = len(draft.sides) == 2
    owned = [each for each in draft.targets if draft.of_all(each.kind) and NOBODY not in each.owners]
    side = draft.dice.choice(draft.sides)
    other = draft.others(side)[0]
    verb = "have" if draft.by_players else "has"
    choices = [
        ("a side wins when the other side has no players in", draft.sides),
        ("a side wins when the other side has at most 1 player in", draft.sides),
        (f"{side} wins when {other} {verb} no players in", (side,)),
    ]
    if owned:
        kinds = owned[0].kinds
        choices += [
            (f"the round ends when each side has no {kinds} standing, a draw", ()),
            (f"a side wins when the other side has no {kinds} standing", draft.sides),
            (f"a side wins when the other side has all {kinds} down", draft.sides),
            (f"{side} wins when {other} {verb} no {kinds} standing", (side,)),
            (f"a side wins when the other side has no {kinds} standing and it has at least 1 player in", draft.sides),
            (
                f"a side wins when the other side has no {kinds} standing or the other side has no players in",
                draft.sides,
            ),
            (f"the round ends when a side has no {kinds} standing, nobody wins", ()),
        ]
        if two:
            choices += [
                (f"a side loses when it has no {kinds} standing", draft.sides),
                (f"the other side wins when a side has no {kinds} standing", draft.sides),
                (f"the round ends when a side has no {kinds} standing, the other side wins", draft.sides),
            ]
    if two:
        choices.append(("a side loses when it has no players in", draft.sides))
    if draft.bench:
        choices.append((f"a side wins when it has at least 1 player on the {draft.bench}", draft.sides))
    if draft.queue and not draft.queue_is_shared:
        choices.append((f"a side wins when the other side has at least 2 players in the {draft.queue}", draft.sides))
    line, winners = draft.dice.choice(choices)
    if line not in draft.lines["finish"]:
        draft.say("finish", line)
    draft.may_win |= set(winners)


def _bell(draft: Draft) -> None:
    things = draft.targets[0].kinds
    results = ["more players in wins"]
    if draft.of_all(draft.targets[0].kind):
        results += [f"more {things} standing wins", f"fewer {things} down wins"]
    counted = f"{things} standing" if draft.of_all(draft.targets[0].kind) else "players in"
    if draft.in_one_of(3):
        draft.say("finish", f"at the end {counted} score {draft.one_of('1 point', '2 points')}")
        results = ["more points wins", "fewer points wins"]
    elif draft.points_wanted:
        results += ["more points wins", "fewer points wins"]
    chosen = draft.dice.sample(results, min(len(results), draft.dice.choice((1, 1, 2))))
    last = draft.one_of("a draw", "nobody wins", f"{draft.sides[0]} wins")
    draft.say("finish", f"after 6 min: {', else '.join([*chosen, last])}")
