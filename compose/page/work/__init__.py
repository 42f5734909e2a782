"""The processes that think for the page, and how they are asked."""
