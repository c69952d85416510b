"""Renderers: one file a format; none of them asks the lexicon anything."""
