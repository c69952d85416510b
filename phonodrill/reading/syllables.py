"""The syllables of a word in its letters, from its sounds.

Syllables are divided on the sounds by maximal onset and tied back to the
letters by the chunks, so *hammer* is ha-mmer: what is heard, not the division
of print. Where two words are joined, a syllable begins with the second: bed-room.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import zip_longest

from phonodrill.graphemes.chunk import Chunk
from phonodrill.sounds.syllables import syllable_starts


def written_syllables(word: str, sounds: str, chunks: Sequence[Chunk], joint: int = 0) -> list[str]:
    """Divide the letters of a word into syllables.

    A chunk goes with the syllable of its first sound; letters without sound go
    with those before them, an h with those behind it: ve-hi-cle.

    Args:
        word: the spelling.
        sounds: codes, one a phoneme.
        chunks: letters tied to sounds; if empty, the word is not divided.
        joint: index of the sound with which the second of two joined words begins.

    Returns:
        The letters of each syllable; joined they are the word.
    """
    starts = syllable_starts(sounds, joint)
    if len(starts) < 2 or not chunks:  # noqa: PLR2004
        return [word]
    place = dict.fromkeys(range(len(word)), 0)
    for chunk, following in zip_longest(chunks, chunks[1:]):
        is_h = not chunk.sounds and following and word[chunk.letters[0]] == "h"
        sounds_of = following.sounds if is_h else chunk.sounds
        if sounds_of:
            syllable = bisect_right(starts, sounds_of[0]) - 1
            place.update(dict.fromkeys(chunk.letters, syllable))
    divided = [""] * len(starts)
    syllable = 0
    for letter, char in enumerate(word):
        syllable = max(syllable, place[letter])
        divided[syllable] += char
    return [part for part in divided if part]
