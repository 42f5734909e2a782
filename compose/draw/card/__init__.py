"""The card: all that a teacher needs on one page, on paper and on the screen."""
