"""What a forecast finds wanting."""
