"""Where a spelling stands in a word, found by counting, and the words that do otherwise."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from enum import StrEnum
from operator import attrgetter
from typing import NamedTuple

from phonodrill.graphemes.correspondence import SPLIT
from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon

HIGHEST_BAND = 3
NEARLY_ALL = 0.9
"""Share of the words with a spelling that do so where it is said of the spelling."""
FEWEST = 3
"""Words with a spelling that it takes to say anything of it."""
ELSEWHERE = 3
"""Words with other spellings, or other sounds of it, that do otherwise: else it tells nothing."""
FRONT_LETTERS = "eiy"
SHORT_SOUNDS = {"a": "æ", "e": "ɛ", "i": "ɪ", "o": "ɑɔ", "u": "ʌ", "y": "ɪ"}
"""What a vowel letter says before a consonant that closes its syllable (common practice)."""


class Where(StrEnum):
    """Where a spelling stands in words of one syllable; what tells most goes first."""

    BEFORE_FRONT = "before e, i or y"
    CLOSING = "at the end, after one vowel letter with its short sound"
    LAST = "at the end"
    FIRST = "at the beginning"
    HARDLY_LAST = "hardly ever at the end"
    HARDLY_BEFORE_FRONT = "hardly ever before e, i or y"


_BY_NEXT_LETTER = (Where.BEFORE_FRONT, Where.HARDLY_BEFORE_FRONT)
_WITHOUT_EXCEPTION = (Where.HARDLY_LAST, Where.HARDLY_BEFORE_FRONT)


class Place(NamedTuple):
    """A spelling in a word of one syllable.

    Attributes:
        word: the word.
        spelling, sound: letters, and codes of what they say.
        is_first, is_last: whether the word begins with it, or ends in it.
        before, before_sound: the spelling before it and what that says, if any.
        after: the letter behind it, if any.
    """

    word: str
    spelling: str
    sound: str
    is_first: bool
    is_last: bool
    before: str = ""
    before_sound: str = ""
    after: str = ""

    def is_at(self, where: Where) -> bool:
        """Whether it stands so in its word."""
        if where in _BY_NEXT_LETTER:
            is_front = self.after != "" and self.after in FRONT_LETTERS
            return is_front is (where is Where.BEFORE_FRONT)
        if where is Where.FIRST:
            return self.is_first
        if where is Where.CLOSING:
            return self.is_last and self.before_sound in [*SHORT_SOUNDS.get(self.before, "")]
        return self.is_last is (where is Where.LAST)


class Habit(NamedTuple):
    """Where a spelling of a sound stands.

    Attributes:
        where: in nearly all of its words.
        breaking: its words in which it stands otherwise, the most familiar first.
        instead: words that end in another spelling of the sound, where this one closes
            them; or in which the letters say something else, where what is behind decides.
    """

    where: Where
    breaking: tuple[Place, ...]
    instead: tuple[Place, ...]

    def of_words(self, is_fit: Callable[[str], bool]) -> Habit:
        """Leave out what breaks it in words that are not fit to show."""
        breaking, instead = (
            tuple(place for place in places if is_fit(place.word))
            for places in (self.breaking, self.instead)
        )
        return Habit(self.where, breaking, instead)


def habit_of(spelling: str, sound: str, lexicon: Lexicon) -> Habit | None:
    """Say where a spelling of a sound stands in words of one syllable.

    Args:
        spelling: letters, as a correspondence has them.
        sound: codes of what they say.
        lexicon: the open lexicon; its base words of bands 1-3 are counted, once.

    Returns:
        None if it stands anywhere, or has too few words.
    """
    by_sound, by_spelling = lexicon.recall("letter places", lambda: _every_place(lexicon))
    otherwise_said = (place for place in by_spelling.get(spelling, ()) if place.sound != sound)
    return find_habit(spelling, sound, [*by_sound.get(sound, ()), *otherwise_said])


def find_habit(spelling: str, sound: str, places: Sequence[Place]) -> Habit | None:
    """Say where a spelling of a sound stands, among some words.

    What stands at an end is compared with other spellings of the sound; what is before
    certain letters, as c and g, with other sounds of the spelling.

    Args:
        spelling: letters, as a correspondence has them.
        sound: codes of what they say.
        places: each of the sound, and each of the spelling, the most familiar words first.

    >>> at_end = [Place(word, "ay", "E", False, True) for word in ("day", "say", "way")]
    >>> inside = [Place(word, "ai", "E", False, False) for word in ("rain", "wait", "sail")]
    >>> [str(find_habit(letters, "E", at_end + inside).where) for letters in ("ay", "ai")]
    ['at the end', 'hardly ever at the end']
    """
    # Where a split vowel stands needs no saying: around the last consonant.
    whole = [place for place in places if SPLIT not in place.spelling]
    of_sound = [place for place in whole if place.sound == sound]
    own = [place for place in of_sound if place.spelling == spelling]
    otherwise_spelled = [place for place in of_sound if place.spelling != spelling]
    otherwise_said = [p for p in whole if p.spelling == spelling and p.sound != sound]
    if len(own) < FEWEST:
        return None
    for where in Where:
        others = otherwise_said if where in _BY_NEXT_LETTER else otherwise_spelled
        share = 1 if where in _WITHOUT_EXCEPTION else NEARLY_ALL
        breaking = tuple(place for place in own if not place.is_at(where))
        elsewhere = sum(not place.is_at(where) for place in others)
        if len(own) - len(breaking) >= share * len(own) and elsewhere >= ELSEWHERE:
            has_rivals = where in (Where.BEFORE_FRONT, Where.CLOSING)
            instead = (place for place in others if has_rivals and place.is_at(where))
            return Habit(where, breaking, tuple(instead))
    return None


_Places = Mapping[str, Sequence[Place]]


def _every_place(lexicon: Lexicon) -> tuple[_Places, _Places]:
    """Split base words of one syllable: by sound and by spelling, the most familiar first."""
    words = lexicon.spelled(highest_band=HIGHEST_BAND, one_syllable=True)
    bases = (word for word in words if not word.endings)
    ordered = sorted(bases, key=lambda word: (word.band, -word.zipf, word.word))
    by_sound: dict[str, list[Place]] = {}
    by_spelling: dict[str, list[Place]] = {}
    for word in ordered:
        for place in _places_in(word, lexicon):
            by_sound.setdefault(place.sound, []).append(place)
            by_spelling.setdefault(place.spelling, []).append(place)
    return by_sound, by_spelling


def _places_in(word: Spelled, lexicon: Lexicon) -> Iterator[Place]:
    before = before_sound = ""
    for chunk in filter(attrgetter("sounds"), lexicon.chunks(word.chunks)):
        spelling, sound = chunk.written(word.word), chunk.heard(word.sounds)
        is_first, is_last = 0 in chunk.letters, len(word.word) - 1 in chunk.letters
        after = word.word[chunk.letters[-1] + 1 :][:1]
        yield Place(word.word, spelling, sound, is_first, is_last, before, before_sound, after)
        before, before_sound = spelling, sound
