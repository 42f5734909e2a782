"""What the sentences of a read-back are about."""

from __future__ import annotations

from enum import Enum


class Topic(Enum):
    """What a sentence is about, under the heading that it stands under."""

    BEFORE = "Before it starts"
    DOES = "Who may do what"
    FOLLOWS = "What follows"
    BALLS = "Where balls come to lie, and who fetches them"
    WAITS = "Who waits, and how they come back"
    ENDS = "How it ends"
    CHOICES = "Choices for the class"
    ANYWAY = "So in every game"
    UNREAD = "Not read by the check"
