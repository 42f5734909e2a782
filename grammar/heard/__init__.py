"""What means the same as a sentence of the language, in other words."""
