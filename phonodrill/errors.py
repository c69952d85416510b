"""The one family of errors that phonodrill raises on purpose."""

from __future__ import annotations


class PhonodrillError(Exception):
    """Something a user can put right.

    Args:
        message: what was wrong, in one line.
        hint: what to do about it, in one line; empty if there is nothing to suggest.
    """

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


class TableError(PhonodrillError):
    """A line of a word table cannot be used; the message names file and line."""


class UnknownSoundError(PhonodrillError):
    """A symbol is none of the 39 phonemes in any of the three notations."""


class UnknownWordError(PhonodrillError):
    """A word is not in the lexicon."""


class LexiconMissingError(PhonodrillError):
    """The compiled lexicon is not there, or is of another version."""
