"""Where a spelling stands in a word, found by counting, and the words that do otherwise."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
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
"""Words with other spellings that do otherwise: else it is a habit of the sound."""
SHORT_SOUNDS = {"a": "æ", "e": "ɛ", "i": "ɪ", "o": "ɑɔ", "u": "ʌ", "y": "ɪ"}
"""What a vowel letter says before a consonant that closes its syllable (common practice)."""


class Where(StrEnum):
    """Where a spelling stands in words of one syllable."""

    CLOSING = "at the end, after one vowel letter with its short sound"
    LAST = "at the end"
    FIRST = "at the beginning"
    HARDLY_LAST = "hardly ever at the end"


class Place(NamedTuple):
    """A spelling in a word of one syllable.

    Attributes:
        word: the word.
        spelling, sound: letters, and codes of what they say.
        is_first, is_last: whether the word begins with it, or ends in it.
        before, before_sound: the spelling before it and what that says, if any.
    """

    word: str
    spelling: str
    sound: str
    is_first: bool
    is_last: bool
    before: str = ""
    before_sound: str = ""

    def is_at(self, where: Where) -> bool:
        """Whether it stands so in its word."""
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
        instead: words that another spelling of the sound closes, where this one does.
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
    places = lexicon.recall(("letter places", sound), lambda: _places_of(sound, lexicon))
    return find_habit(spelling, places)


def find_habit(spelling: str, places: Sequence[Place]) -> Habit | None:
    """Say where one spelling of a sound stands.

    Args:
        spelling: letters, as a correspondence has them.
        places: every spelling of the sound in every word counted, the most familiar first.

    >>> at_end = [Place(word, "ay", "E", False, True) for word in ("day", "say", "way", "hay")]
    >>> inside = [Place(word, "ai", "E", False, False) for word in ("rain", "wait", "sail", "aim")]
    >>> str(find_habit("ay", at_end + inside).where), str(find_habit("ai", at_end + inside).where)
    ('at the end', 'hardly ever at the end')
    """
    # Where a split vowel stands needs no saying: around the last consonant.
    whole = [place for place in places if SPLIT not in place.spelling]
    own = [place for place in whole if place.spelling == spelling]
    others = [place for place in whole if place.spelling != spelling]
    if len(own) < FEWEST:
        return None
    for where in Where:
        breaking = tuple(place for place in own if not place.is_at(where))
        share = 1 if where is Where.HARDLY_LAST else NEARLY_ALL
        elsewhere = sum(not place.is_at(where) for place in others)
        if len(own) - len(breaking) >= share * len(own) and elsewhere >= ELSEWHERE:
            closing = (p for p in others if where is Where.CLOSING and p.is_at(where))
            return Habit(where, breaking, tuple(closing))
    return None


def _places_of(sound: str, lexicon: Lexicon) -> Sequence[Place]:
    words = lexicon.recall("words of one syllable", lambda: _short_words(lexicon))
    # A word has several sounds: it is split once.
    split: dict[str, list[Place]] = lexicon.recall("letter places of words", dict)
    found = []
    for word in words:
        if sound in word.sounds:
            if word.word not in split:
                split[word.word] = [*_places_in(word, lexicon)]
            found += [place for place in split[word.word] if place.sound == sound]
    return found


def _short_words(lexicon: Lexicon) -> Sequence[Spelled]:
    """Return base words of one syllable, the most familiar first."""
    words = lexicon.spelled(highest_band=HIGHEST_BAND, one_syllable=True)
    bases = (word for word in words if not word.endings)
    return sorted(bases, key=lambda word: (word.band, -word.zipf, word.word))


def _places_in(word: Spelled, lexicon: Lexicon) -> Iterator[Place]:
    before = before_sound = ""
    for chunk in filter(attrgetter("sounds"), lexicon.chunks(word.chunks)):
        spelling, sound = chunk.written(word.word), chunk.heard(word.sounds)
        is_first, is_last = 0 in chunk.letters, len(word.word) - 1 in chunk.letters
        yield Place(word.word, spelling, sound, is_first, is_last, before, before_sound)
        before, before_sound = spelling, sound
