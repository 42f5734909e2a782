"""Lines of the play: what players try, where they stay, whose task is whose, what they have."""
