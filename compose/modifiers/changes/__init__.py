"""What each kind of change does to a sheet."""
