"""How often something is tried and how often it comes off."""
