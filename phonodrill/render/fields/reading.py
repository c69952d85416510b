"""Fields of reading: words to read, pairs, spellings, passages, what was taught."""

from __future__ import annotations

from typing import Annotated, Literal, TypedDict

from phonodrill.reading.pairs import Kind, Place
from phonodrill.render.fields.common import Band, Count, Share
from phonodrill.taught.suggest import Goal


class DecodableWord(TypedDict):
    """A word that the class can read.

    Attributes:
        word: the word.
        pattern: its shape, as CVC; empty if it has none.
        band: how familiar it is.
        chunks: its letters by sound.
    """

    word: str
    pattern: str
    band: Band
    chunks: list[str]


class Decodable(TypedDict):
    """Words to read.

    Attributes:
        seed: makes the same choice again.
        fit: how many words there were to choose from.
        words: those chosen.
    """

    seed: int
    fit: Count
    words: list[DecodableWord]


class Pair(TypedDict):
    """Two words for contrast.

    Attributes:
        a: one word.
        b: the other.
        a_arpabet: how the one is said.
        b_arpabet: how the other is said.
        at: where in the words the difference is; empty where they sound the same.
        a_sound: the sound of the one that makes the difference; may be empty.
        b_sound: the sound of the other; empty where a sound is left off.
        a_chunks: letters of the one by sound.
        b_chunks: letters of the other by sound.
    """

    a: str
    b: str
    a_arpabet: str
    b_arpabet: str
    at: Annotated[str, Place] | Literal[""]
    a_sound: str
    b_sound: str
    a_chunks: list[str]
    b_chunks: list[str]


class Pairs(TypedDict):
    """Pairs of words.

    Attributes:
        kind: what the two words have to do with each other.
        seed: makes the same choice again.
        pairs: easy ones first.
    """

    kind: Annotated[str, Kind]
    seed: int
    pairs: list[Pair]


class SpellingShare(TypedDict):
    """A spelling of a sound, and how often it is used.

    Attributes:
        spelling: its letters.
        arpabet: the sound.
        words: how many base words have it.
        share_of_words: of the words with the sound (or with the spelling).
        share_of_uses: the same in running text.
        regular: whether it is a taught pattern.
        examples: words that have it.
        place: where it stands in nearly all words of one syllable; empty if anywhere.
        otherwise: those of these words in which it stands elsewhere.
        instead: words that have another spelling of the sound in its place, or in which the
            letters say another sound there.
    """

    spelling: str
    arpabet: str
    words: Count
    share_of_words: Share
    share_of_uses: Share
    regular: bool
    examples: list[str]
    place: str
    otherwise: list[str]
    instead: list[str]


class Spellings(TypedDict):
    """How a sound is spelled, or what a spelling says.

    Attributes:
        sound: the sound that was asked for, as ARPAbet; may be empty.
        spelling: the spelling that was asked for; may be empty.
        shares: the commonest first.
    """

    sound: str
    spelling: str
    shares: list[SpellingShare]


class NotYet(TypedDict):
    """A word of a passage that the class cannot read yet.

    Attributes:
        word: the word.
        count: how often it stands there.
        needs: what would have to be taught.
        guess: whether its reading is a guess.
    """

    word: str
    count: Count
    needs: list[str]
    guess: bool


class GuessedReading(TypedDict):
    """A word of a passage that the lexicon lacks.

    Attributes:
        word: the word.
        arpabet: the reading guessed.
    """

    word: str
    arpabet: str


class Passage(TypedDict):
    """A passage, measured by what the class was taught.

    Attributes:
        words: how many words it has.
        decodable: how many of them can be read by what was taught.
        taught_whole: how many were taught whole.
        not_for_class: how many are not for class; they are not repeated.
        numbers: how many numbers; they are no words here.
        share: share of the words that can be read.
        not_yet: words not yet readable, the commonest first.
        next_step: the one step that would make most words readable; may be empty.
        next_step_words: how many words it would make readable.
        beyond_band: words that children of the band may not know.
        guesses: words that the lexicon lacks.
    """

    words: Count
    decodable: Count
    taught_whole: Count
    not_for_class: Count
    numbers: Count
    share: Share
    not_yet: list[NotYet]
    next_step: str
    next_step_words: Count
    beyond_band: list[str]
    guesses: list[GuessedReading]


class CheckedStep(TypedDict):
    """A step of a taught file.

    Attributes:
        step: its number.
        line: of the file.
        text: as it is written.
        understood: what it was understood as.
        opens: how many words it makes readable.
        total: how many words can be read by then.
        examples: some of the words it opens.
        notes: what is used before it is taught, and the like.
    """

    step: Count
    line: Count
    text: str
    understood: list[str]
    opens: Count
    total: Count
    examples: list[str]
    notes: list[str]


class TaughtCheck(TypedDict):
    """A taught file, step by step.

    Attributes:
        file: its name.
        band: highest band of the words counted.
        steps: in order.
        problems: lines that could not be read.
    """

    file: str
    band: Band
    steps: list[CheckedStep]
    problems: list[str]


class SuggestedStep(TypedDict):
    """A step of a suggested order.

    Attributes:
        step: its number.
        taught: what is taught, as a line of a taught file.
        reason: why now.
        total: how much is open by then.
        is_new: whether it comes after what was taught already.
    """

    step: Count
    taught: str
    reason: str
    total: Count
    is_new: bool


class TaughtSuggestion(TypedDict):
    """A suggested teaching order.

    Attributes:
        goal: what the order is to open.
        band: highest band of the words counted.
        seed: of the search.
        steps: those taught already, then those that come next.
        growth: for this order and others, how much is open after 0, 1, 2 ... steps.
        constraints_broken: for each of these orders, how many constraints it breaks.
    """

    goal: Annotated[str, Goal]
    band: Band
    seed: int
    steps: list[SuggestedStep]
    growth: dict[str, list[Count]]
    constraints_broken: dict[str, Count]
