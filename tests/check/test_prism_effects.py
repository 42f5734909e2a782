"""What the PRISM-language export says of effects, worked out as the sums that it is, against plain counting."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from compose.check.prism_expressions import after, variable_names
from compose.net.net import Effect, Move, Net, Room
from tests.check.brute import Plain, apply
from tests.check.build import rule
from tests.check.random_nets import effects, nets

TOLD = rule("a rule")


def worked_out(net: Net, done: tuple[Effect, ...], marking: tuple[int, ...]) -> tuple[int, ...]:
    """The marking after effects by the expressions of the export; min and max mean there what they mean here."""
    names = variable_names(net)
    values = {name: count for name, count in zip(names, marking, strict=True) if name != "0"}
    told = after(done, net.places, names)
    return tuple(
        int(eval(told[place], {"min": min, "max": max}, values)) if place in told else count
        for place, count in enumerate(marking)
    )


@given(net=nets(), done=effects(), data=st.data())
def test_expressions_give_the_counts_that_plain_counting_gives(
    net: Net, done: tuple[Effect, ...], data: st.DataObject
) -> None:
    marking = tuple(data.draw(st.integers(0, place.capacity)) for place in net.places)
    assert worked_out(net, done, marking) == apply(done, marking, net, ("transition", 0), Plain([]))


@given(net=nets(), most=st.integers(0, 3), data=st.data())
def test_nobody_comes_in_where_there_is_no_room(net: Net, most: int, data: st.DataObject) -> None:
    marking = tuple(data.draw(st.integers(0, place.capacity)) for place in net.places)
    go = Move(0, 1, None, TOLD, (Room((1, 2), most),))
    moved = worked_out(net, (go,), marking)[1] - marking[1]
    assert 0 <= moved <= max(0, most - marking[1] - marking[2])
