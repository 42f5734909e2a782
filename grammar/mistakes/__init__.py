"""What to say of a line that is no sentence, and of all that is wrong with a sheet."""
