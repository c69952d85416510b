"""What may be heard in class: the one gate that everything said passes.

Words are judged by sound, so a result that merely sounds like an unfit word is
stopped however it is spelled. What one listener tells apart, another does not,
so a never-say word bars every form that some US accent makes the same (the
compiled list holds them all).
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from phonodrill.lexicon.store import Lexicon


class Gate(NamedTuple):
    """The compiled never-say list.

    Attributes:
        sounds: normal forms that are never said, not even inside a sentence.
        alone: normal forms that are not said as a word by itself.
        spellings: spellings that are never shown.
    """

    sounds: frozenset[str]
    alone: frozenset[str]
    spellings: frozenset[str]

    def allows(self, spelling: str, normals: Iterable[str], *, alone: bool = True) -> bool:
        """Whether a word may be said and shown.

        Args:
            spelling: how it is written, lower case.
            normals: normal forms of every way it may be said.
            alone: whether it stands by itself (an item, an answer, a card) and
                not inside a sentence.
        """
        if spelling in self.spellings:
            return False
        barred = self.alone if alone else self.sounds
        return barred.isdisjoint(normals)


def open_gate(lexicon: Lexicon) -> Gate:
    """Load the gate from the lexicon's never-say table."""
    sounds: set[str] = set()
    alone: set[str] = set()
    spellings: set[str] = set()
    for word, normal, _, blocks in lexicon.never_say():
        if blocks != "alone":
            spellings.add(word)
        if blocks != "spelling":
            alone.add(normal)
        if blocks == "sound":
            sounds.add(normal)
    return Gate(frozenset(sounds), frozenset(alone), frozenset(spellings))
