"""Revisions of the tables of the records."""
