"""Endings: how they are spelled, what they say, and sorting words by both."""
