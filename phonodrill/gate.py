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

    def allows_join(self, before: Iterable[str], after: Iterable[str]) -> bool:
        """Whether two words said one after the other do not run into an unfit one.

        Args:
            before: normal forms of the first word.
            after: normal forms of the second.
        """
        last = list(after)
        return not any(first + second in self.sounds for first in before for second in last)


def open_gate(lexicon: Lexicon, blocked: Iterable[str] = ()) -> Gate:
    """Load the gate from the lexicon's never-say table.

    Args:
        lexicon: the open lexicon.
        blocked: a teacher's own words that must not be used, nor what sounds like them.
    """
    own = frozenset(blocked)
    # A lesson asks for it dozens of times.
    return lexicon.recall(("gate", own), lambda: _load(lexicon, own))


def _load(lexicon: Lexicon, blocked: frozenset[str]) -> Gate:
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
    for word in blocked:
        spellings.add(word)
        entry = lexicon.get(word)
        if entry:
            alone.update(said.normal for said in entry.pronunciations)
    return Gate(frozenset(sounds), frozenset(alone), frozenset(spellings))
