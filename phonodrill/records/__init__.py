"""Groups, checks and results kept; needs found in them; the next focus chosen."""
