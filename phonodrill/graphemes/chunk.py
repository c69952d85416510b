"""The letters of one correspondence inside a word, and how they are stored.

A word's chunks are stored as one short text beside its pronunciation: a
character for each correspondence, ``~`` for the e that closes a split vowel,
and ``?`` with two digits, letters and sounds, for a chunk that no
correspondence covers.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from phonodrill.graphemes.correspondence import SPLIT, Correspondence

CLOSING_CODE = "~"
ODD_CODE = "?"
_RESERVED = frozenset("~?0123456789")


class Chunk(NamedTuple):
    """Letters of a word tied to sounds, as places in the two.

    Attributes:
        letters: indexes of its letters; a split vowel's two stand apart.
        sounds: indexes of its sounds, possibly none.
        correspondence: which one it is, or None if the inventory has none.
    """

    letters: tuple[int, ...]
    sounds: tuple[int, ...]
    correspondence: Correspondence | None

    @property
    def is_regular(self) -> bool:
        """Whether it is a taught pattern, not the odd part of its word."""
        return self.correspondence is not None and self.correspondence.is_regular

    def written(self, word: str) -> str:
        """Its letters, a split vowel as ``a_e``."""
        if self.correspondence and SPLIT in self.correspondence.spelling:
            return self.correspondence.spelling
        return "".join(word[i] for i in self.letters)

    def heard(self, sounds: str) -> str:
        """The codes of its sounds."""
        return "".join(sounds[i] for i in self.sounds)


def codes() -> Iterator[str]:
    """Yield the characters that may stand for a correspondence, shortest first."""
    yield from (chr(n) for n in range(33, 127) if chr(n) not in _RESERVED)
    yield from (chr(n) for n in range(0xA1, 0x2000) if chr(n).isalpha())


def encode(chunks: Sequence[Chunk], code_of: Mapping[Correspondence, str]) -> str:
    """Write the chunks of a word as they are stored.

    Args:
        chunks: in the order of their first letters.
        code_of: the character of each correspondence.
    """
    signs: dict[int, str] = {}
    for chunk in chunks:
        first, *rest = chunk.letters
        if chunk.correspondence is None:
            signs[first] = f"{ODD_CODE}{len(chunk.letters)}{len(chunk.sounds)}"
        else:
            signs[first] = code_of[chunk.correspondence]
        if rest and rest[-1] - first >= len(chunk.letters):
            signs[rest[-1]] = CLOSING_CODE
    return "".join(signs[place] for place in sorted(signs))


def decode(stored: str, correspondences: Mapping[str, Correspondence]) -> tuple[Chunk, ...]:
    """Read the chunks of a word.

    Args:
        stored: as :func:`encode` wrote them.
        correspondences: by their characters.
    """
    chunks: list[Chunk] = []
    letter = sound = opened = 0
    signs = iter(stored)
    for sign in signs:
        if sign == CLOSING_CODE:
            chunks[opened] = chunks[opened]._replace(letters=(*chunks[opened].letters, letter))
            letter += 1
            continue
        found = correspondences.get(sign)
        if found is None:
            letters, sounds = int(next(signs)), int(next(signs))
        else:
            is_split = SPLIT in found.spelling
            letters, sounds = 1 if is_split else len(found.spelling), len(found.sound)
            opened = len(chunks) if is_split else opened
        chunks.append(
            Chunk(
                tuple(range(letter, letter + letters)),
                tuple(range(sound, sound + sounds)),
                found,
            )
        )
        letter += letters
        sound += sounds
    return tuple(chunks)


def correspondence_codes(stored: str) -> list[str]:
    """Return the characters of the correspondences in stored chunks, one an occurrence."""
    return [sign for sign in stored if sign not in _RESERVED]
