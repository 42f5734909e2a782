"""Parts of a line that name what is aimed at, what somebody has, who carries or is frozen, and when."""
