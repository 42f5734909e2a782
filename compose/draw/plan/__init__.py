"""The floor plan: the court, its areas, who and what stands where, in the hall."""
