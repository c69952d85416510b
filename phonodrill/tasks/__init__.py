"""Phonemic tasks: one module each, found through the registry."""
