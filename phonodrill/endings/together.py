"""Whether two words share an ending.

Kept apart from what takes words with endings apart: a warm-up asks only this.
"""

from __future__ import annotations

from phonodrill.endings.suffix import SPELLED, SPELLINGS, SUFFIX_OF
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.entry import Entry


def ending_of(spelled: str) -> str:
    """Return the ending that is spelled so.

    Raises:
        PhonodrillError: if there is none.

    >>> ending_of("ies")
    's'
    """
    if spelled not in SUFFIX_OF:
        raise PhonodrillError(f"{spelled!r} is no ending", f"one of {', '.join(SPELLINGS)}")
    return SUFFIX_OF[spelled]


def check_ending(suffix: str) -> None:
    """Make sure that a text names an ending, however it is spelled then.

    Raises:
        PhonodrillError: if not.
    """
    if suffix not in SPELLED:
        raise PhonodrillError(f"{suffix!r} is no ending to add", f"one of {', '.join(SPELLED)}")


def has_ending(entry: Entry, suffix: str) -> bool:
    """Whether a word carries an ending, however it is spelled (*rushes*, *hedges*: s)."""
    return any(SUFFIX_OF.get(spelled) == suffix for spelled in entry.endings)


def belongs_together(stimulus: Entry, answer: Entry) -> bool:
    """Whether an oral item stays with its ending: the base is left, or the ending is.

    A warm-up for an ending asks this of every item, so that it draws on the same
    words as the lesson.

    Args:
        stimulus: a word with an ending.
        answer: the word that is left without one of its sounds.
    """
    if answer.word == stimulus.base:
        return True
    return any(has_ending(answer, SUFFIX_OF[spelled]) for spelled in stimulus.endings)
