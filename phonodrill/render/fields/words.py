"""Fields of words: what is known of one, sentences, a teacher's own, the lexicon's sources."""

from __future__ import annotations

from typing import Annotated, Literal, NotRequired, TypedDict

from phonodrill.render.fields.common import Band, Chunk, Count, Keyword, Share


class Pronunciation(TypedDict):
    """One way to say a word.

    Attributes:
        arpabet: as in CMUdict, stress digits among it.
        ipa: the same in IPA.
        syllables: how many.
        syllable_letters: the letters of each syllable; none if a part may not be shown.
        chunks: the letters tied to sounds; none for an abbreviation.
    """

    arpabet: str
    ipa: str
    syllables: Count
    syllable_letters: list[str]
    chunks: list[Chunk]


class Correspondence(TypedDict):
    """A spelling of the word with its sound, and how regular it is.

    Attributes:
        spelling: its letters.
        arpabet: what they say; empty where they are silent.
        irregular: whether it is no taught pattern.
        share_of_spelling: share of the words with these letters in which they say this.
        share_of_sound: share of the words with this sound in which it is spelled so.
    """

    spelling: str
    arpabet: str
    irregular: bool
    share_of_spelling: Share
    share_of_sound: Share


class Word(TypedDict):
    """All that is known of a word.

    Attributes:
        word: the word.
        band: how familiar: 1 to 3, 4 for older children, 0 not for class or not known.
        zipf: how often it is used, as a Zipf frequency.
        parts_of_speech: what it may be in a sentence.
        pronunciations: the usual one first.
        correspondences: its spellings, the least regular first.
        bases: words it comes from.
        forms: its inflected forms.
        homophones: words that sound the same.
        rhymes: words that rhyme with it.
        in_class: whether a drill may use it, or why not.
    """

    word: str
    band: Band
    zipf: Annotated[float, Keyword("minimum", 0)]
    parts_of_speech: list[str]
    pronunciations: list[Pronunciation]
    correspondences: list[Correspondence]
    bases: list[str]
    forms: list[str]
    homophones: list[str]
    rhymes: list[str]
    in_class: str


class GuessedPronunciation(TypedDict):
    """A guessed way to say a word.

    Attributes:
        arpabet: as in CMUdict, stress digits among it.
        ipa: the same in IPA.
        syllables: how many.
        origin: always guess.
        chunks: the letters tied to sounds.
    """

    arpabet: str
    ipa: str
    syllables: Count
    origin: Literal["guess"]
    chunks: list[Chunk]


class GuessedWord(TypedDict):
    """A word that the lexicon lacks, with a guess how it is said.

    Attributes:
        word: the word.
        guess: always true.
        guessed_from: the known words it is made of; none if it was read off its letters.
        pronunciations: the guess.
    """

    word: str
    guess: Literal[True]
    guessed_from: list[str]
    pronunciations: list[GuessedPronunciation]


class Sentence(TypedDict):
    """A sentence.

    Attributes:
        word: the word it is for.
        sentence: the whole sentence.
        cloze: the sentence with a gap for the word.
        part_of_speech: how the word is used in it.
        topic: what it is about.
    """

    word: str
    sentence: str
    cloze: str
    part_of_speech: str
    topic: str


class Sentences(TypedDict):
    """Sentences for a word.

    Attributes:
        word: the word.
        sentences: those found.
    """

    word: str
    sentences: list[Sentence]


class OwnWord(TypedDict):
    """A word that the teacher added or blocked.

    Attributes:
        word: the word.
        action: what is done with it.
        band: the band an added word takes; empty for a blocked one.
    """

    word: str
    action: Literal["add", "block"]
    band: Band | Literal[""]


class OwnWords(TypedDict):
    """A teacher's own words.

    Attributes:
        words: by spelling.
    """

    words: list[OwnWord]


class Source(TypedDict):
    """A source of the lexicon.

    Attributes:
        name: of the source.
        version: which was used.
        license: of what is taken.
        credit: who made it.
        used_for: what is taken.
    """

    name: str
    version: str
    license: str
    credit: str
    used_for: str


class Disagreement(TypedDict):
    """A form that is not said as its base and the ending would be.

    Attributes:
        word: the form.
        base: its base.
        expected: how base and ending would be said.
        found: how the dictionary says it.
    """

    word: str
    base: str
    expected: str
    found: str


class Sources(TypedDict):
    """Where the lexicon comes from.

    Attributes:
        sources: one by one.
        counts: what is counted, in words, and how many there are.
        disagreements: forms that are not base + ending; only if asked for.
    """

    sources: list[Source]
    counts: dict[str, Count]
    disagreements: list[Disagreement]


class Printed(TypedDict):
    """A word of a printed list, with its facts where the key is printed.

    Attributes:
        word: the word.
        sounds: how it sounds; several readings are parted by or.
        arpabet: as in CMUdict.
        syllables: its letters by syllable.
        chunks: its letters by sound.
        base: what it comes from; empty if it has no ending.
        ending: how its ending is spelled; may be empty.
        ending_sound: what the ending says, in IPA; may be empty.
        watch_out: what to warn of; may be empty.
    """

    word: str
    sounds: NotRequired[str]
    arpabet: NotRequired[str]
    syllables: NotRequired[str]
    chunks: NotRequired[str]
    base: NotRequired[str]
    ending: NotRequired[str]
    ending_sound: NotRequired[str]
    watch_out: NotRequired[str]


class PrintedList(TypedDict):
    """A list of words to print.

    Attributes:
        seed: makes the same choice again; where words were drawn by their ending.
        words: in order.
    """

    seed: NotRequired[int]
    words: list[Printed]


class Card(TypedDict):
    """A word card.

    Attributes:
        front: what stands on it.
        back: what stands behind it; may be empty.
    """

    front: str
    back: str


class Cards(TypedDict):
    """Word cards to print.

    Attributes:
        seed: makes the same choice again; where words were drawn by their ending.
        cards: in order.
    """

    seed: NotRequired[int]
    cards: list[Card]


class Column(TypedDict):
    """A column of a sorting mat.

    Attributes:
        heading: what stands above it.
        words: those that belong there: the key.
    """

    heading: str
    words: list[str]


class Mat(TypedDict):
    """A mat to sort cards on.

    Attributes:
        seed: makes the same choice again; where words were drawn by their ending.
        columns: from left to right.
        in_several: words that would belong to several columns.
        in_none: words that belong to none.
    """

    seed: NotRequired[int]
    columns: list[Column]
    in_several: list[str]
    in_none: list[str]


class Box(TypedDict):
    """A sound box, or letters without a sound.

    Attributes:
        letters: the letters in it.
        sounds: what they say; none where they are silent.
        irregular: whether it is the odd part of the word.
        closes: number of the box, from 0, with whose letters a silent e belongs; else null.
    """

    letters: str
    sounds: list[str]
    irregular: bool
    closes: Count | None


class BoxedWord(TypedDict):
    """A word in sound boxes.

    Attributes:
        word: the word.
        arpabet: how it is said.
        boxes: from left to right.
    """

    word: str
    arpabet: str
    boxes: list[Box]


class Boxes(TypedDict):
    """Sound boxes to print.

    Attributes:
        seed: makes the same choice again; where words were drawn by their ending.
        words: in order.
    """

    seed: NotRequired[int]
    words: list[BoxedWord]
