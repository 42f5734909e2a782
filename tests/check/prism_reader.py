"""Reads the few constructs of the PRISM language that the export writes, and walks through the states of a model."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping

from attrs import field, frozen

State = tuple[int, ...]
PYTHON = ((r"!", " not "), (r"&", " and "), (r"\|", " or "), (r"(?<![<>])=", "=="), (r"\btrue\b", "True"),
          (r"\bfalse\b", "False"))  # fmt: skip


@frozen
class Model:
    """A model by its variables, its commands (guard, and rate with updates) and its labels."""

    start: Mapping[str, int]
    most: Mapping[str, int]
    over: str
    commands: tuple[tuple[str, tuple[tuple[str, Mapping[str, str]], ...]], ...]
    labels: Mapping[str, str] = field(factory=dict)

    def walked(self) -> tuple[list[State], dict[tuple[State, State], float]]:
        """The states that can be reached, in their order, and the rates between them; no count may leave its range."""
        states, rates = [tuple(self.start.values())], defaultdict[tuple[State, State], float](float)
        for state in states:
            for after, rate in self._moves(state):
                assert all(0 <= count <= most for count, most in zip(after, self.most.values(), strict=True))
                assert rate > 0
                rates[state, after] += rate
                if after not in states:
                    states.append(after)
        return states, dict(rates)

    def _moves(self, state: State) -> Iterator[tuple[State, float]]:
        for guard, choices in self.commands:
            if self.holds(guard, state):
                for rate, updates in choices:
                    after = {name: self._value(updates.get(name, name), state) for name in self.start}
                    yield tuple(int(count) for count in after.values()), float(self._value(rate, state))

    def holds(self, condition: str, state: State) -> bool:
        return bool(self._value(condition, state))

    def _value(self, expression: str, state: State) -> float:
        known: dict[str, object] = dict(zip(self.start, state, strict=True))
        if re.search(r"\bover\b", expression):
            known["over"] = self.holds(self.over, state)
        for sign, python in PYTHON:
            expression = re.sub(sign, python, expression)
        return float(eval(expression, {"min": min, "max": max}, known))


def read(text: str) -> Model:
    lines = [line.split("//")[0].strip() for line in text.splitlines()]
    assert lines[0] == "ctmc" and lines.count("endmodule") == lines.count("endrewards") == 1
    variables = [found for line in lines if (found := re.fullmatch(r"(\w+) : \[0\.\.(\d+)\] init (\d+);", line))]
    over = next((line.split(" = ")[1].rstrip(";") for line in lines if line.startswith("formula over = ")), "false")
    labels = [found for line in lines if (found := re.fullmatch(r'label "(\w+)" = (.*);', line))]
    return Model(
        {each[1]: int(each[3]) for each in variables}, {each[1]: int(each[2]) for each in variables}, over,
        tuple(_command(line) for line in lines if line.startswith("<>")), {each[1]: each[2] for each in labels},
    )  # fmt: skip


def _command(line: str) -> tuple[str, tuple[tuple[str, Mapping[str, str]], ...]]:
    guard, rest = line.removeprefix("<> ").rstrip(";").split(" -> ")
    choices = re.split(r" \+ (?=[\d.e-]+ : )", rest)
    told = (choice.split(" : ") for choice in choices)
    return guard, tuple((rate, dict(re.findall(r"\((\w+)'=(.*?)\)(?= & |$)", updates))) for rate, updates in told)
