"""Sharing: packs that travel between schools, the own shelf, merging, and the common shelf with its page."""
