"""What the net and the check say, in English."""
