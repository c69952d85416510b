"""Build words step by step, and the list to sound out in chunks."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.endings.steps import Op, Step, steps_of
from phonodrill.endings.suffix import DERIVED
from phonodrill.graphemes.chunk import Chunk
from phonodrill.lesson.candidates import Candidate, Vocabulary, readings_of
from phonodrill.lesson.plan import BUILD, LIST
from phonodrill.lesson.request import Context
from phonodrill.lesson.rule_part import row_for, sound_in
from phonodrill.lesson.tree import Build, BuildStep, Built, Listed, Piece, SoundOut
from phonodrill.lesson.words import Words
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.sounds.notation import symbols

BUILD_ENDINGS = (
    "Letter cards: build the base, read it. Then change it step by step, and read again."
)
BUILD_SPELLINGS = (
    "Letter cards: lay one spelling after the other, say its sound, then read the word."
)
SOUND_OUT = "Point to each chunk: the class says its sound. Then sweep along and read the word."


def compose_build(context: Context, vocabulary: Vocabulary, words: Words, minutes: int) -> Build:
    """Write the steps of each word to build."""
    built = []
    for word in words.build:
        candidate = vocabulary.words[word]
        parts = used_as(_own_readings(candidate, context))
        base = candidate.base if candidate.ending else ""
        steps = tuple(_steps(candidate, context))
        built.append(Built(word, base, parts, steps, sound_in(candidate, context)))
    script = BUILD_ENDINGS if context.focus.endings else BUILD_SPELLINGS
    return Build(BUILD, minutes, "Build words", script, tuple(built))


def _steps(candidate: Candidate, context: Context) -> Iterator[BuildStep]:
    row = row_for(candidate, context)
    if row:
        yield BuildStep("base", candidate.base)
        letters = candidate.base
        for step in steps_of(row, candidate.base):
            if step.op is not Op.KEEP:
                letters = _apply(letters, step)
                yield BuildStep(describe(step), letters)
        return
    yield from _laid(candidate.word, context)


def _laid(word: str, context: Context) -> Iterator[BuildStep]:
    """Lay one spelling after the other; a gap stands where a letter is still missing."""
    laid = [""] * len(word)
    entry = context.lexicon.get(word)
    said = entry.usable_pronunciations[0] if entry else None
    for chunk in context.lexicon.chunks(context.lexicon.chunks_of(word)):
        for place in chunk.letters:
            laid[place] = word[place]
        last = max(place for place, letter in enumerate(laid) if letter)
        shows = "".join(letter or "_" for letter in laid[: last + 1])
        yield BuildStep(_lay(chunk, word, said, context), shows)


def _lay(chunk: Chunk, word: str, said: Pronunciation | None, context: Context) -> str:
    written = chunk.written(word)
    if said is None or not chunk.sounds:
        return f"{written}, silent"
    signs = symbols(said.shown, said.stress, context.style)
    return f"{written} /{''.join(signs[i] for i in chunk.sounds)}/"


def _apply(letters: str, step: Step) -> str:
    if step.op is Op.DROP:
        return letters.removesuffix(step.letters)
    if step.op is Op.CHANGE:
        return letters.removesuffix(step.letters) + step.to
    return letters + step.letters


def describe(step: Step) -> str:
    """Say one step in a few words."""
    if step.op is Op.CHANGE:
        return f"change {step.letters} to {step.to}"
    return f"{step.op} {step.letters}"


def compose_list(context: Context, vocabulary: Vocabulary, words: Words, minutes: int) -> SoundOut:
    """Split each word of the list into chunks; review words stand among the new ones."""
    listed = tuple(
        _listed(word, word in words.review, vocabulary, context) for word in words.listed
    )
    return SoundOut(LIST, minutes, "Sound out", SOUND_OUT, listed)


def used_as(parts: tuple[str, ...]) -> str:
    """Write how a word is used; nothing for the little words of grammar (*him*, *with*)."""
    return "" if parts[:1] == ("other",) else ", ".join(p for p in parts if p != "other")


def _own_readings(candidate: Candidate, context: Context) -> tuple[str, ...]:
    """Return how the word itself is used: *quickly* is an adverb, whatever its base is."""
    entry = context.lexicon.get(candidate.word)
    is_made = candidate.ending is not None and candidate.ending.ending in DERIVED
    own = entry.parts_of_speech if entry and is_made else ()
    return own or readings_of(candidate, context)


def _listed(word: str, is_review: bool, vocabulary: Vocabulary, context: Context) -> Listed:
    candidate = vocabulary.words.get(word)
    entry = context.lexicon.get(word)
    said = entry.usable_pronunciations[0] if entry else Pronunciation("", "", "")
    own = entry.parts_of_speech if entry else ()
    parts = _own_readings(candidate, context) if candidate else own
    return Listed(
        word,
        is_review,
        candidate.condition if candidate else "",
        used_as(parts),
        said.arpabet,
        pieces_of(word, said, context),
    )


def pieces_of(word: str, said: Pronunciation, context: Context) -> tuple[Piece, ...]:
    """Tie the letters of a word to its sounds, chunk by chunk."""
    signs = symbols(said.shown, said.stress, context.style)
    return tuple(
        Piece(
            chunk.written(word),
            chunk.letters,
            tuple(signs[i] for i in chunk.sounds),
            not chunk.is_regular,
        )
        for chunk in context.lexicon.chunks(said.chunks)
    )
