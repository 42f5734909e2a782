"""The resolved core: what a game means, in values. `reading/` makes it from a sheet."""
