"""What every reading asks: the names of the sheet, whose something is, and what has been read so far."""
