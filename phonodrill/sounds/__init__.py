"""Phonemes, notations, units and accents: everything that needs no dictionary."""
