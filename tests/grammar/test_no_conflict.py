"""Lark resolves shift/reduce conflicts in silence; this grammar has none that it could resolve wrongly."""

from __future__ import annotations

import logging

import pytest
from lark import Lark, logger

from grammar import language


def conflicts(grammar: str, starts: list[str], caplog: pytest.LogCaptureFixture) -> list[str]:
    """What Lark says of conflicts while it makes a parser."""
    before = logger.level
    logger.setLevel(logging.DEBUG)
    logger.addHandler(caplog.handler)
    try:
        Lark(grammar, parser="lalr", lexer="basic", start=starts, maybe_placeholders=True, debug=True)
    finally:
        logger.removeHandler(caplog.handler)
        logger.setLevel(before)
    return [record.getMessage() for record in caplog.records if "conflict" in record.getMessage().lower()]


def test_grammar_has_no_conflict(caplog: pytest.LogCaptureFixture) -> None:
    starts = [language.start_symbol(section) for section in language.STARTS]
    assert conflicts(language.GRAMMAR_FILE.read_text(encoding="utf-8"), starts, caplog) == []


def test_a_conflict_would_be_seen(caplog: pytest.LogCaptureFixture) -> None:
    dangling = 'start: "if" start | "if" start "else" start | "x"'
    assert conflicts(dangling, ["start"], caplog)
