"""The page of the word tables: their README as it stands beside them."""

from __future__ import annotations

from pathlib import Path

from docs.made.links import relink

ROOT = Path(__file__).parents[2]


def make_page() -> str:
    """Return the README of the tables."""
    text = (ROOT / "wordlists" / "README.md").read_text("utf-8")
    return relink(text, "reference/tables.md", home="wordlists")
