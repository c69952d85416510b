"""Endings as a user writes them."""

from __future__ import annotations

from phonodrill.errors import PhonodrillError


def parse_endings(text: str, known: tuple[str, ...]) -> frozenset[str]:
    """Read a comma-separated list of endings.

    Args:
        text: for example ``"es,-ies"``; empty gives none.
        known: those the command can do.

    Raises:
        PhonodrillError: naming the ending that is not known and the nearest one.
    """
    found = set()
    for part in filter(None, text.split(",")):
        ending = part.strip().lower().lstrip("-")
        if ending not in known:
            import difflib

            near = difflib.get_close_matches(ending, known, n=1, cutoff=0.3)
            raise PhonodrillError(
                f"unknown ending {part.strip()!r}",
                f"--ending {near[0]}" if near else f"--ending with any of {','.join(known)}",
            )
        found.add(ending)
    return frozenset(found)
