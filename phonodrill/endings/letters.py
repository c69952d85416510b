"""A base that no dictionary lists, judged from its letters alone.

Only what the rules ask for is guessed: the last sound, how many syllables there
are and whether the last one is stressed. The letters at the end are read in their
commonest way (common practice, no source).
"""

from __future__ import annotations

import re

from phonodrill.endings.conditions import BaseWord

_LAST_SOUNDS: tuple[tuple[str, str], ...] = (
    ("sque", "k"),
    ("eigh", "E"),
    ("augh", "f"),
    ("ough", "f"),
    ("que", "k"),
    ("gue", "ɡ"),
    ("igh", "I"),
    ("tch", "ʧ"),
    ("che", "ʃ"),
    ("the", "ð"),
    ("ch", "ʧ"),
    ("sh", "ʃ"),
    ("zh", "ʒ"),
    ("th", "θ"),
    ("ph", "f"),
    ("gh", "ɡ"),
    ("ng", "ŋ"),
    ("mb", "m"),
    ("mn", "m"),
    ("ah", "ɑ"),
    ("eh", "E"),
    ("oh", "O"),
    ("uh", "ʌ"),
    ("ee", "i"),
    ("oe", "O"),
    ("ie", "i"),
    ("ye", "I"),
    ("ue", "u"),
    ("aw", "ɔ"),
    ("ew", "u"),
    ("ow", "O"),
    ("ay", "E"),
    ("oy", "Y"),
    ("ey", "i"),
    ("ce", "s"),
    ("ge", "ʤ"),
    ("se", "z"),
    ("ze", "z"),
)
_BY_LETTER = dict(zip("abcdfghijklmnopqrstuvwxyz", "ʌbkdfɡhiʤklmnOpkrstuvusiz", strict=True))
_VOWEL_GROUP = re.compile(r"[aeiouy]+")
_SILENT_E = re.compile(r"[^aeiouy]e$")
_SYLLABIC_LE = re.compile(r"[^aeiouylrw]le$")


def from_letters(word: str, part_of_speech: str = "", *, is_name: bool = False) -> BaseWord:
    """Judge a base by its letters.

    Args:
        word: lower case, letters only; at least one.
        part_of_speech: the reading asked for, or empty.
        is_name: whether it is a name.

    >>> from_letters("gutch").last, from_letters("zib").stressed_end
    ('ʧ', True)
    """
    syllables = count_syllables(word)
    return BaseWord(word, _last_sound(word), syllables, syllables == 1, part_of_speech, is_name)


def count_syllables(word: str) -> int:
    """Count the vowel groups that are heard; at least one.

    >>> count_syllables("skate"), count_syllables("puzzle"), count_syllables("finches")
    (1, 2, 2)
    """
    groups = len(_VOWEL_GROUP.findall(word.replace("qu", "kw")))
    silent = _SILENT_E.search(word) is not None and not _SYLLABIC_LE.search(word)
    return max(1, groups - silent)


def _last_sound(word: str) -> str:
    for letters, sound in _LAST_SOUNDS:
        if word.endswith(letters):
            return sound
    if word.endswith("e"):
        has_other_vowel = _VOWEL_GROUP.search(word[:-1])
        return _BY_LETTER.get(word[-2:-1], "i") if has_other_vowel else "i"
    return _BY_LETTER.get(word[-1], "ʌ")
