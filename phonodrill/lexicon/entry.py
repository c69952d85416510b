"""What the lexicon answers with."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.graphemes.correspondence import Correspondence
from phonodrill.sounds import notation
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.syllables import count_syllables

LISTED = ""
"""Origin of a pronunciation that stands in CMUdict as it is."""
MENDED = "mended"
"""Origin of a pronunciation of our own table."""
DERIVED = "base + ending"
"""Origin of a pronunciation that no dictionary lists but that of its base."""
NAME = "name"
"""Reason for band 0 of what is known only as a name."""
GUESSED = "guess"
"""Origin of a pronunciation that was read off the spelling: no dictionary has the word."""
INFLECTIONS = {
    "plural": "s",
    "third person": "s",
    "past": "ed",
    "past participle": "ed",
    "present participle": "ing",
    "comparative": "er",
    "superlative": "est",
}
"""Inflection -> the ending that a regular form of it has."""
UNFIT_REASONS = frozenset({"adult", "bodily", "insult", "violent"})
"""Reasons for band 0 that bar a word itself; the others (name, foreign...) only its use."""


class Pronunciation(NamedTuple):
    """One way to say a word.

    Attributes:
        sounds: one code a phoneme (see :mod:`phonodrill.sounds.inventory`).
        stress: one digit a vowel.
        normal: the form for comparing.
        rhyme: normal form from the last stressed vowel on.
        origin: where it comes from; empty: CMUdict.
        second_opinion: what a second dictionary says of it.
        with_base: whether it is its base word + ending: agrees, differs, or empty.
        usable: whether it may be used without being asked for.
        meaning: for a heteronym, which reading this is.
        chunks: its letters tied to its sounds (see :mod:`phonodrill.graphemes.chunk`).
        joint: index of the sound with which the second of two joined words begins, if no
            syllable would begin there by rule; else 0.
        has_weak_ending: whether -es, -ed, -est or 's was added to a base that ends in no
            weak vowel of its own.
    """

    sounds: str
    stress: str
    normal: str
    rhyme: str = ""
    origin: str = ""
    second_opinion: str = ""
    with_base: str = ""
    usable: bool = True
    meaning: str = ""
    chunks: str = ""
    joint: int = 0
    has_weak_ending: bool = False

    @property
    def is_listed(self) -> bool:
        """Whether a dictionary has it, so that it was not built from base + ending."""
        return self.origin != DERIVED

    @property
    def shown(self) -> str:
        """The sounds as they are shown: the weak vowel of -es, -ed, -est and 's is always ɪ.

        CMUdict writes it now as AH0, now as IH0. That of *bananas* is of its base and stays.
        """
        ending = self.sounds[self.sounds.rfind("ʌ") :]
        is_weak = ending in ("ʌz", "ʌd", "ʌst") and self.stress[-1] == "0"
        if not (is_weak and self.has_weak_ending):
            return self.sounds
        return f"{self.sounds.removesuffix(ending)}ɪ{ending[1:]}"

    @property
    def arpabet(self) -> str:
        """The phones as CMUdict writes them."""
        return notation.arpabet(self.sounds, self.stress)

    @property
    def ipa(self) -> str:
        """The pronunciation in IPA."""
        return notation.ipa(self.shown, self.stress, self.joint)

    @property
    def syllables(self) -> int:
        """How many syllables it has."""
        return count_syllables(self.sounds)

    def write(self, style: Notation) -> str:
        """The pronunciation in the notation asked for."""
        return notation.write(self.shown, self.stress, style, self.joint)

    def spaced(self, style: Notation) -> str:
        """The pronunciation sound by sound, parted by spaces."""
        return " ".join(notation.symbols(self.shown, self.stress, style))


class Inflection(NamedTuple):
    """A form and its base.

    Attributes:
        form: the inflected word.
        base: the word it comes from.
        part_of_speech: noun, verb, adjective or adverb.
        inflection: plural, third person, past, ...
        ending: as spelled: s, es, ies, ves, ed, ing; empty if irregular.
    """

    form: str
    base: str
    part_of_speech: str
    inflection: str
    ending: str


class Sentence(NamedTuple):
    """A short sentence of the bank.

    Attributes:
        word: the word it is for, in the form it has there.
        part_of_speech: how the word is used there.
        topic: what it is about.
        text: the sentence.
    """

    word: str
    part_of_speech: str
    topic: str
    text: str


class FrequentWord(NamedTuple):
    """A word much used in text for children.

    Attributes:
        word: the spelling.
        place: rank by use among words of bands 1-2.
        is_dolch: whether it is one of the 220 service words of Dolch (1936).
        irregular_part: letters that do not spell regularly, or empty.
    """

    word: str
    place: int
    is_dolch: bool
    irregular_part: str


class Counted(NamedTuple):
    """A correspondence of the inventory and how common it is in words of bands 1-3.

    Attributes:
        code: the character that stands for it in stored chunks.
        correspondence: spelling and sounds.
        words: how many words have it.
        uses: how often those words stand in a million words of text.
    """

    code: str
    correspondence: Correspondence
    words: int
    uses: float


class Spelled(NamedTuple):
    """As much of a word as reading it takes, in its first usable pronunciation.

    Attributes:
        word, band, zipf, base, endings: as in :class:`Entry`.
        sounds, stress, normal, chunks: as in :class:`Pronunciation`.
        normals: of every way it may be said, for the gate.
    """

    word: str
    band: int
    zipf: float
    base: str
    endings: tuple[str, ...]
    sounds: str
    stress: str
    normal: str
    chunks: str
    normals: tuple[str, ...] = ()


class Entry(NamedTuple):
    """All that is stored of one word.

    Attributes:
        word: the spelling.
        zipf: log10 of its uses in a billion words (0 if never seen).
        band: familiarity, 1 (age 5-6) to 4 (older); 0 not for class.
        reason: why band 0, or that it was not reviewed.
        parts_of_speech: main one first.
        picturable: whether a picture would show it.
        is_name: known only as a name, or not known as a word.
        is_heteronym: one spelling, several words with different sounds.
        base: its commonest base word, or the word itself.
        endings: spelled endings it has as an inflected form (s, es, ies, ves, ed, ing).
        pronunciations: all variants, the commonest first.
    """

    word: str
    zipf: float
    band: int
    reason: str
    parts_of_speech: tuple[str, ...]
    picturable: bool
    is_name: bool
    is_heteronym: bool
    base: str
    endings: tuple[str, ...]
    pronunciations: tuple[Pronunciation, ...]

    @property
    def needs_capital(self) -> bool:
        """Whether it is written with a capital (*Monday*), which nothing stored has."""
        return self.parts_of_speech[:1] in (("proper noun",), ("proper adjective",))

    @property
    def usable_pronunciations(self) -> tuple[Pronunciation, ...]:
        """Those that may be used without being asked for."""
        return tuple(p for p in self.pronunciations if p.usable)
