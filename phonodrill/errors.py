"""The one family of errors that phonodrill raises on purpose."""

from __future__ import annotations

MOST_LETTERS = 1000
"""What is said may repeat what was written, of which a damaged file has no end."""


def one_line(text: str) -> str:
    r"""Make a text fit to be shown: one line, not too long, no sign that harms a screen.

    >>> one_line("no word\nin 'gulls\x1b[2J\u202e'")
    "no word in 'gulls\\x1b[2J\\u202e'"
    """
    if len(text) > MOST_LETTERS:
        text = f"{text[:MOST_LETTERS]}…"
    if text.isprintable():
        return text
    line = " ".join(text.split())
    return "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in line)


class PhonodrillError(Exception):
    """Something a user can put right.

    Args:
        message: what was wrong; made one line, see :func:`one_line`.
        hint: what to do about it; empty if there is nothing to suggest.
    """

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(one_line(message))
        self.message = one_line(message)
        self.hint = one_line(hint)


class TableError(PhonodrillError):
    """A line of a word table cannot be used; the message names file and line."""


class UnknownSoundError(PhonodrillError):
    """A symbol is none of the 39 phonemes in any of the three notations."""


class UnknownWordError(PhonodrillError):
    """A word is not in the lexicon."""


class LexiconMissingError(PhonodrillError):
    """The compiled lexicon is not there, or is of another version."""
