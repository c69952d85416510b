"""Pages that stand elsewhere in the project: the start, and the tables of words."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
_LINK = re.compile(r"\]\((?!https?:|#)([^)]+)\)")


def make_start() -> str:
    """Return the README with its links as they are seen from docs/."""
    return _relink((ROOT / "README.md").read_text("utf-8"), depth="")


def make_page() -> str:
    """Return the README of the tables."""
    return _relink((ROOT / "wordlists" / "README.md").read_text("utf-8"), depth="../")


def _relink(text: str, depth: str) -> str:
    """Point links into docs/ at the page; what lies outside the site is only named."""

    def relinked(match: re.Match[str]) -> str:
        target = match[1].removeprefix("../")
        if target.startswith("docs/"):
            return f"]({depth}{target.removeprefix('docs/')})"
        if target.startswith("wordlists/README.md"):
            return f"]({depth}reference/tables.md)"
        return "]()"

    linked = _LINK.sub(relinked, text)
    return re.sub(r"\[([^\]]+)\]\(\)", r"\1", linked)
