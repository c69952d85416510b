"""Where syllables begin, by the maximal-onset principle.

Put as many consonants into an onset as can begin an English word (Kahn 1976;
Selkirk 1981). Lax vowels are left in open syllables (hammer is hæ.mər), as
the sources named do. Onsets: the native core in Hammond (1999), *The Phonology
of English*; consonant + /j/ only before /u/.
"""

from __future__ import annotations

from itertools import pairwise

from phonodrill.sounds.inventory import VOWELS

_PAIRS = (
    "pr tr kr br dr ɡr fr θr ʃr pl kl bl ɡl fl sl st sp sk sm sn sw kw tw dw ɡw "
    "mj fj kj hj pj bj vj"
)
_TRIPLES = "str spr skr spl skw skj spj"
ONSETS: frozenset[str] = frozenset(
    ["", *"bdɡkptʧʤðfhsʃθvzʒmnlrwj", *_PAIRS.split(), *_TRIPLES.split()]
)


def syllable_starts(sounds: str, joint: int = 0) -> list[int]:
    """Return the index at which each syllable begins.

    Args:
        sounds: codes, one a phoneme; at least one vowel.
        joint: where the second of two joined words begins, and a syllable with it; 0: none.

    Returns:
        One index a vowel; the first is 0.

    >>> syllable_starts("ɛkstrʌ")
    [0, 2]
    >>> syllable_starts("bɛdrum"), syllable_starts("bɛdrum", joint=3)
    ([0, 2], [0, 3])
    """
    vowels = [i for i, char in enumerate(sounds) if char in VOWELS]
    starts = [0] if vowels else []
    for left, right in pairwise(vowels):
        start = right
        while start - 1 > left and _can_begin(sounds[start - 1 : right], sounds[right]):
            start -= 1
        starts.append(joint if left < joint <= right else start)
    return starts


def count_syllables(sounds: str) -> int:
    """Count syllables: one a vowel.

    >>> count_syllables("tɔrʧɪz")
    2
    """
    return sum(char in VOWELS for char in sounds)


def clear_syllables(sounds: str, stress: str) -> list[str]:
    """Split a word into syllables, if all would split it there.

    A single consonant behind a stressed lax vowel belongs to both sides
    (*hammer*), and so does an s before a stop (*monster*): such words give an
    empty list.

    Args:
        sounds: codes, one a phoneme.
        stress: one digit a vowel.

    >>> clear_syllables("næpkɪn", "10"), clear_syllables("hæmɝ", "10")
    (['næp', 'kɪn'], [])
    """
    starts = syllable_starts(sounds)
    syllables = [sounds[a:b] for a, b in pairwise([*starts, len(sounds)])]
    for (first, second), digit in zip(pairwise(syllables), stress, strict=False):
        is_open = first[-1] in VOWELS
        # Unstressed, ʌ and ɪ are the weak vowel, which may end a syllable.
        if is_open and first[-1] in _LAX and (digit != "0" or first[-1] not in "ʌɪ"):
            return []
        if second[0] in VOWELS or second[:2] in _DISPUTED or (is_open and first[-1] == "ɝ"):
            return []
        if is_open and second[:1] == "r":
            return []
    return syllables


_LAX = frozenset("ɪɛæʌʊɑ")
_DISPUTED = frozenset(["sp", "st", "sk", "sl", "sm", "sn", "sw"])


def _can_begin(onset: str, vowel: str) -> bool:
    if len(onset) > 1 and onset[-1] == "j" and vowel not in "uʊ":
        return False
    return onset in ONSETS
