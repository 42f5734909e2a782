"""What every drawing is made of: shapes, signs, colours, letters, and their formats."""
