"""Two schools changed the same game: one game again."""
