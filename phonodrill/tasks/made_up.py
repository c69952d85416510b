"""Made-up words of one syllable: legal English, regular spelling, no real word by sound.

Onsets, vowels and codas are those English words begin and end with (Hammond
1999, *The Phonology of English*; onsets as in Roach's tables). Only short
vowels, whose spelling is one letter, so that each word has one regular spelling
and one reading. None sounds like a word of the dictionary in any accent, none
passes for an unfit word by sound, and none says a consonant twice around s
(*spap* is no English word).
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import NamedTuple

from phonodrill.lexicon.entry import Pronunciation
from phonodrill.selection import Pool, Query
from phonodrill.sounds.accents import EVERY_ACCENT
from phonodrill.sounds.features import features_apart
from phonodrill.sounds.inventory import BY_CODE, VOWELS
from phonodrill.sounds.places import Position, cut_at
from phonodrill.tasks.change import middle_part, part_of
from phonodrill.tasks.difficulty import estimate
from phonodrill.tasks.item import Item, Part
from phonodrill.tasks.real_words import REAL_WORDS

SHORT_VOWELS = {"a": "æ", "e": "ɛ", "i": "ɪ", "o": "ɑ", "u": "ʌ"}
ONSETS = {
    **dict(zip("bdfhjlmnprtvz", "bdfhʤlmnprtvz", strict=True)),
    "g": "ɡ",
    "s": "s",
    "w": "w",
    "y": "j",
    "sh": "ʃ",
    "ch": "ʧ",
    "th": "θ",
    "bl": "bl",
    "br": "br",
    "dr": "dr",
    "fl": "fl",
    "fr": "fr",
    "gl": "ɡl",
    "gr": "ɡr",
    "pl": "pl",
    "pr": "pr",
    "sl": "sl",
    "sm": "sm",
    "sn": "sn",
    "sp": "sp",
    "st": "st",
    "sw": "sw",
    "tr": "tr",
    "thr": "θr",
    "str": "str",
    "spl": "spl",
    "spr": "spr",
}
"""Onset as spelled -> its sounds; /k/ is spelled by the vowel behind it, see `_k`."""
K_ONSETS = ("", "l", "r")
CODAS = {
    "b": "b",
    "d": "d",
    "g": "ɡ",
    "m": "m",
    "n": "n",
    "p": "p",
    "t": "t",
    "ck": "k",
    "ff": "f",
    "ss": "s",
    "zz": "z",
    "sh": "ʃ",
    "tch": "ʧ",
    "th": "θ",
    "ft": "ft",
    "lf": "lf",
    "lp": "lp",
    "lt": "lt",
    "mp": "mp",
    "nd": "nd",
    "nt": "nt",
    "nk": "ŋk",
    "ng": "ŋ",
    "sk": "sk",
    "sp": "sp",
    "st": "st",
}
"""Coda as spelled behind a short vowel -> its sounds."""
CONSONANTS = "".join(code for code in BY_CODE if code not in VOWELS)
SHORTEST_UNFIT = 3
"""Sounds or letters that an unfit word must have for a made-up word not to contain it."""


class MadeUp(NamedTuple):
    """A made-up word: how it is spelled and read."""

    word: str
    said: Pronunciation


def blends(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield made-up words to blend."""
    for made in made_up_words(pool):
        parts = _parts(pool, made, at)
        if parts and _has_sound(parts, query):
            yield _apart("blend", at, made, parts)


def segmentations(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield made-up words to take apart."""
    for made in made_up_words(pool):
        parts = _parts(pool, made, at)
        if parts and _has_sound(parts, query):
            yield _apart("segment", at, made, parts)


def substitutions(pool: Pool, query: Query, at: Position) -> Iterator[Item]:
    """Yield made-up words that one change turns into another made-up word."""
    words = list(made_up_words(pool))
    frames: dict[tuple[str, str], list[MadeUp]] = {}
    for made in words:
        cut = cut_at(made.said.sounds, at)
        if cut:
            frames.setdefault((cut.left, cut.right), []).append(made)
    rng = pool.rng or random.Random(0)
    for made in words:
        cut = cut_at(made.said.sounds, at)
        others = frames.get((cut.left, cut.right), []) if cut else []
        if cut is None or len(others) < 2:  # noqa: PLR2004
            continue
        other = rng.choice([word for word in others if word != made])
        there = cut_at(other.said.sounds, at)
        if there is None:
            continue
        old, new = middle_part(made.said, cut), middle_part(other.said, there)
        if not (pool.gate.allows("", [old.sounds]) and pool.gate.allows("", [new.sounds])):
            continue
        if query.sound and query.sound not in (old.sounds, new.sounds):
            continue
        longer = max(made.said.sounds, other.said.sounds, key=len)
        yield Item(
            task="substitute",
            at=at,
            stimulus=made.word,
            stimulus_said=made.said,
            sound=old,
            answer=other.word,
            answer_said=other.said,
            base=made.word,
            difficulty=estimate("substitute", at, longer, 1),
            made_up=True,
            new=new,
        )


def made_up_words(pool: Pool) -> Iterator[MadeUp]:
    """Yield every made-up word that is safe to say, in the pool's order of chance."""
    forms = list(_forms())
    if pool.rng:
        pool.rng.shuffle(forms)
    for spelling, sounds in forms:
        if _is_safe(pool, spelling, sounds):
            yield MadeUp(spelling, Pronunciation(sounds, "1", sounds, sounds, "made up"))


def _forms() -> Iterator[tuple[str, str]]:
    for letter, vowel in SHORT_VOWELS.items():
        for onset, first in [*ONSETS.items(), *(_k(rest, letter) for rest in K_ONSETS)]:
            for coda, last in CODAS.items():
                if _is_english(first, vowel, last, onset, letter):
                    yield onset + letter + coda, first + vowel + last


def _k(rest: str, letter: str) -> tuple[str, str]:
    """Spell /k/: k before e and i, else c."""
    return ("k" if not rest and letter in "ei" else "c") + rest, "k" + rest


def _is_english(first: str, vowel: str, last: str, onset: str, letter: str) -> bool:
    """Whether the parts go together, in sound and in a spelling with one reading."""
    if last.startswith("ŋ") and vowel not in "æɪʌ":
        return False
    if first.startswith("s") and len(first) > 1 and first[1] in last:
        return False
    # A nasal hides whether e or i was said.
    if vowel in "ɪɛ" and last[0] in "mnŋ":
        return False
    return first[-1:] != last and _has_one_reading(onset, letter, last)


def _has_one_reading(onset: str, letter: str, last: str) -> bool:
    """Whether the letters are read in one way: not as in *swan*, *post*, *ball*, *push*, *gem*."""
    if letter == "a":
        return not onset.endswith("w") and last[0] != "l"
    if letter == "o":
        return onset != "w" and last[0] not in "lfsθ" and last != "nt"
    if letter == "u":
        return not (onset in ("b", "p") and last in ("t", "ʃ", "ʧ", "s", "l"))
    return onset != "g"


def _is_safe(pool: Pool, spelling: str, sounds: str) -> bool:
    lexicon, unfit = pool.lexicon, pool.gate.sounds
    if spelling in REAL_WORDS or lexicon.get(spelling):
        return False
    if not pool.gate.allows(spelling, [sounds]):
        return False
    letters = {spelling[a:b] for a in range(len(spelling)) for b in range(a + SHORTEST_UNFIT, 9)}
    if not pool.gate.spellings.isdisjoint(letters - {spelling}):
        return False
    inside = {sounds[a:b] for a in range(len(sounds)) for b in range(a + SHORTEST_UNFIT, 9)}
    if not unfit.isdisjoint(inside) or any(form in unfit for form in _one_feature_away(sounds)):
        return False
    return not any(lexicon.is_listed(form) for form in EVERY_ACCENT.heard_alike(sounds))


def _one_feature_away(sounds: str) -> Iterator[str]:
    """Yield what a word might be misheard as: one consonant changed by one feature."""
    for index, code in enumerate(sounds):
        if code not in VOWELS:
            for other in CONSONANTS:
                if features_apart(code, other) == 1:
                    yield sounds[:index] + other + sounds[index + 1 :]


def _parts(pool: Pool, made: MadeUp, at: Position) -> tuple[Part, ...]:
    sounds = made.said.sounds
    if at is Position.ONSET:
        vowel = next(index for index, code in enumerate(sounds) if code in VOWELS)
        if not pool.gate.allows("", [sounds[vowel:]]):
            return ()
        return part_of(made.said, 0, vowel), part_of(made.said, vowel, len(sounds))
    if at is Position.EACH:
        return tuple(part_of(made.said, index, index + 1) for index in range(len(sounds)))
    return ()


def _has_sound(parts: tuple[Part, ...], query: Query) -> bool:
    return not query.sound or query.sound in (part.sounds for part in parts)


def _apart(task: str, at: Position, made: MadeUp, parts: tuple[Part, ...]) -> Item:
    blended = task == "blend"
    return Item(
        task=task,
        at=at,
        stimulus="" if blended else made.word,
        stimulus_said=made.said,
        sound=parts[0],
        answer=made.word if blended else "",
        answer_said=made.said,
        base=made.word,
        difficulty=estimate(task, at, made.said.sounds, 1),
        made_up=True,
        parts=parts,
    )
