"""Card → plain text of at most 78 columns, or Markdown."""

from __future__ import annotations

from textwrap import wrap

from compose.draw.card.card import Card, CardSection

WIDTH = 78


def text_of(card: Card) -> str:
    """The card as plain text: no line is longer than 78 letters, words longer than that are broken."""
    lines = [*wrap(card.title.upper(), WIDTH), "=" * min(len(card.title), WIDTH)]
    lines += [*wrap(card.subtitle, WIDTH), *wrap(card.about, WIDTH), ""]
    label_width = max(len(label) for label, _value in card.facts) + len(card.colon) + 1
    for label, value in card.facts:
        lines += wrap(f"{label + card.colon:<{label_width}}{value}", WIDTH, subsequent_indent=" " * label_width)
    for section in card.sections:
        lines += ["", section.heading, "-" * len(section.heading)]
        for line in section.lines:
            lines += wrap(line, WIDTH, initial_indent="- ", subsequent_indent="  ")
    lines += ["", "-" * WIDTH]
    for line in card.footer:
        lines += wrap(line, WIDTH)
    return "\n".join(line.rstrip() for line in lines) + "\n"


def markdown_of(card: Card) -> str:
    """The card as Markdown, one paragraph or list item to a line."""
    subtitle = f"*{_plain(card.subtitle)}*" if card.subtitle else ""
    parts = [f"# {_plain(card.title)}", subtitle, _plain(card.about)]
    parts.append("\n".join(f"- **{label}{card.colon}** {_plain(value)}" for label, value in card.facts))
    parts += [_section(section) for section in card.sections]
    parts.append("---")
    parts.append("  \n".join(f"*{_plain(line)}*" for line in card.footer))
    return "\n\n".join(part for part in parts if part) + "\n"


def _section(section: CardSection) -> str:
    mark = "> " if section.tone == "care" else ""
    items = "\n".join(f"{mark}- {_plain(line)}" for line in section.lines)
    return f"## {section.heading}\n\n{items}"


def _plain(text: str) -> str:
    """The text with every letter that Markdown would read as a mark escaped."""
    return "".join(f"\\{letter}" if letter in "\\`*_#<>[]|" else letter for letter in text)
