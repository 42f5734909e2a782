"""What a shell completes: names of games, modifiers, classes and halls, and the values of options.

Names are completed as those of their files, for a shell parts words at spaces; the program takes both.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

ASKED_BY = "_RULEWEAVE_COMPLETE"  # the variable in which a shell asks for what may come next


def games(begun: str) -> list[str]:
    """Games and remixes of the folder, the shelf and the library."""
    return _named(("game", "remix"), begun)


def modifiers(begun: str) -> list[str]:
    """Modifiers of the folder, the shelf and the library."""
    return _named(("modifier",), begun)


def classes(begun: str) -> list[str]:
    """Classes of the folder and the library."""
    return _named(("class",), begun)


def halls(begun: str) -> list[str]:
    """Halls of the library."""
    import library

    return _beginning(library.halls(), begun)


def beginnings(begun: str) -> list[str]:
    """Kinds of play to begin from."""
    import library

    return _beginning((path.stem for path in library.beginning_paths()), begun)


def skills(begun: str) -> list[str]:
    """Skills of the language."""
    from grammar.core.values import Skill

    return _beginning((skill.value for skill in Skill), begun)


def codes(begun: str) -> list[str]:
    """Codes of findings."""
    from library.finding_codes import explanations

    return _beginning(explanations(), begun)


def _one_of(*values: str) -> Callable[[str], list[str]]:
    return lambda begun: _beginning(values, begun)


# By the names of arguments and options, which mean the same in every command.
COMPLETERS: Mapping[str, Callable[[str], list[str]]] = {
    "name": games,
    "names": games,
    "played": games,
    "base": games,
    "one": games,
    "other": games,
    "modifier": modifiers,
    "only": modifiers,
    "class_name": classes,
    "hall": halls,
    "kind": beginnings,
    "code": codes,
    "skill": skills,
    "language": _one_of("en", "fr"),
    "units": _one_of("metric", "feet"),
    "paper": _one_of("a4", "letter"),
    "sort": _one_of("name", "age", "few pupils", "many pupils", "minutes", "wait"),
    "keep": _one_of("ours", "theirs", "both"),
    "rest": _one_of("ours", "theirs", "base"),
}


def asked() -> bool:
    """Whether a shell asks what may come next."""
    return ASKED_BY in os.environ


def with_completion(command: Any) -> Any:
    """A command and all below it, whose parameters know what may come next."""
    for each in _all(command):
        for parameter in each.params:
            complete = COMPLETERS.get(parameter.name)
            if complete is not None:
                parameter._custom_shell_complete = _asked_of(complete)
    return command


def _asked_of(complete: Callable[[str], list[str]]) -> Callable[[Any, Any, str], list[Any]]:
    def completed(context: Any, parameter: Any, begun: str) -> list[Any]:
        return [_Completion(each) for each in complete(begun)]

    return completed


class _Completion:
    """What the library of commands asks of one that may come next."""

    type, help = "plain", None

    def __init__(self, value: str) -> None:
        self.value = value


def _all(command: Any) -> Iterator[Any]:
    yield command
    for each in getattr(command, "commands", {}).values():
        yield from _all(each)


def _named(kinds: Sequence[str], begun: str) -> list[str]:
    from compose.terminal.typed.at_hand import at_hand

    return _beginning((each.slug for each in at_hand(kinds)), begun.replace(" ", "-"))


def _beginning(names: Iterable[str], begun: str) -> list[str]:
    return sorted(name for name in names if name.lower().startswith(begun.lower()))
