"""How two games differ, and whether they do."""
