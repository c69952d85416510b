"""Mergers of US accents, on the normal form.

An item is safe when its answer is the same word for every listener, so each
merger names two sounds that its speakers do not tell apart, and where.

Sources: Labov, Ash & Boberg (2006), *The Atlas of North American English*:
cot/caught in some 40 % of the US, pin/pen before nasals in the South. Before R
the cot/caught vowels stay apart everywhere (*for* is not *far*).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import product
from typing import NamedTuple


class Merger(NamedTuple):
    """Two sounds that some speakers say alike.

    Attributes:
        name: the trade's name, from a pair of words.
        kept: code of the sound both are written as when merged.
        lost: code of the other.
        before: regular expression that what follows must match.
    """

    name: str
    kept: str
    lost: str
    before: str

    def merge(self, normal: str) -> str:
        """Write both sounds alike.

        >>> COT_CAUGHT.merge("kɔt"), COT_CAUGHT.merge("fɔr")
        ('kɑt', 'fɔr')
        """
        if self.lost not in normal:
            return normal
        return re.sub(f"{self.lost}{self.before}", self.kept, normal)

    def alternatives(self, normal: str) -> set[str]:
        """Return every form that the merger makes the same as this one, itself included.

        >>> sorted(PIN_PEN.alternatives("pɪn"))
        ['pɛn', 'pɪn']
        """
        if self.kept not in normal and self.lost not in normal:
            return {normal}
        parts = re.split(f"([{self.kept}{self.lost}]{self.before})", normal)
        choices = [
            (part,) if i % 2 == 0 else (self.kept, self.lost) for i, part in enumerate(parts)
        ]
        return {"".join(chosen) for chosen in product(*choices)}


COT_CAUGHT = Merger("cot-caught", "ɑ", "ɔ", "(?!r)")
PIN_PEN = Merger("pin-pen", "ɪ", "ɛ", "(?=[mnŋ])")
MERGERS: tuple[Merger, ...] = (COT_CAUGHT, PIN_PEN)


def heard_alike(normal: str) -> set[str]:
    """Return every form that some listener may hear as this one, under all mergers at once."""
    alike = {normal}
    for merger in MERGERS:
        alike = {form for each in alike for form in merger.alternatives(each)}
    return alike


def holds_in_every_accent(stimulus: str, answer: str, change: Callable[[str], str]) -> bool:
    """Whether a change of sounds leads from stimulus to answer for every listener.

    Each merger is applied to both words as its speakers say them: *pour*
    without its last sound is not *paw* where *paw* has the vowel of *pa*.

    Args:
        stimulus: normal form of the word that is said.
        answer: normal form of the word that should be heard.
        change: what the task does to the sounds.

    >>> holds_in_every_accent("pɔr", "pɔ", lambda sounds: sounds[:-1])
    False
    """
    return all(change(merger.merge(stimulus)) == merger.merge(answer) for merger in MERGERS)
