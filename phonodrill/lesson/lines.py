"""Sentences with words of the lesson, and the dictation."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator

from phonodrill.lesson.candidates import Vocabulary
from phonodrill.lesson.focus import spellings_of_sound
from phonodrill.lesson.letters import heard, is_taught, shown
from phonodrill.lesson.plan import DICTATION, SENTENCES
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Dictation, HeardSound, HeardWord, Line, Sentences
from phonodrill.lesson.words import Words
from phonodrill.lexicon.entry import Sentence
from phonodrill.selection import spelled_of
from phonodrill.sentences import cloze, entry_of, find_sentences, words_of
from phonodrill.sounds.normal import WEAK

READ = "Read each sentence. Which word is from today? Is it more than one, or what someone does?"
READ_PLAIN = "Read each sentence. Find the word from today."
DICTATE = (
    "Say each sound, then each word, then the sentence, twice. The class repeats, writes, "
    "and checks."
)
HEARD_SOUNDS = 3
MOST_TRIED = 60


def draw_sentences(
    context: Context,
    vocabulary: Vocabulary,
    words: Words,
    count: int,
    resting: frozenset[str],
    rng: random.Random,
) -> tuple[tuple[Sentence, ...], list[str]]:
    """Choose sentences: words of the lesson first, readings in turn, easy to read first.

    Returns:
        The sentences, and a note if other words had to be taken.
    """
    own = [*words.build, *words.listed, *words.rule, *words.sort]
    own = [word for word in own if word in vocabulary.words]
    found = _by_reading(context, own)
    taken = _in_turn(found, count)
    notes = []
    if len(taken) < count:
        barred = {*own, *words.dictation, *words.check, *resting}
        others = [word for word in vocabulary.words if word not in barred]
        more = _by_reading(context, rng.sample(others, min(MOST_TRIED, len(others))))
        added = _in_turn(more, count - len(taken))
        if added:
            named = ", ".join(sentence.word for sentence in added)
            notes.append(f"sentences: some are about words that no list here has: {named}")
        taken += added
    if not taken and count:
        notes.append("no sentences: the bank has none with these words")
    elif len(taken) < count:
        notes.append(f"sentences: {len(taken)} of {count}")
    return tuple(taken), notes


def _by_reading(context: Context, words: Iterable[str]) -> dict[str, list[Sentence]]:
    """Collect sentences by how their word is used, those the class can read best first."""
    found: dict[str, list[Sentence]] = {}
    for word in dict.fromkeys(words):
        for sentence in find_sentences(context.lexicon, context.gate, word):
            found.setdefault(sentence.part_of_speech, []).append(sentence)
    for sentences in found.values():
        sentences.sort(key=lambda sentence: len(not_yet(sentence.text, context)))
    return found


def _in_turn(found: dict[str, list[Sentence]], count: int) -> list[Sentence]:
    taken: list[Sentence] = []
    piles = [list(found[part]) for part in sorted(found)]
    while piles and len(taken) < count:
        for pile in piles:
            used = {sentence.word for sentence in taken}
            free = [sentence for sentence in pile if sentence.word not in used]
            pile[:] = free
            if free and len(taken) < count:
                taken.append(pile.pop(0))
        piles = [pile for pile in piles if pile]
    return taken


def not_yet(text: str, context: Context) -> tuple[str, ...]:
    """Return the words of a sentence that the class cannot read yet."""
    return tuple(dict.fromkeys(_unreadable(text, context)))


def _unreadable(text: str, context: Context) -> Iterator[str]:
    if context.known is None:
        return
    for word in words_of(text):
        spelling = entry_of(context.lexicon, word)
        entry = context.lexicon.get(spelling)
        if context.known.knows_whole(spelling):
            continue
        if entry is None or not context.known.reads(spelled_of(entry), context.lexicon.chunks_of):
            yield word


def compose_sentences(context: Context, sentences: tuple[Sentence, ...], minutes: int) -> Sentences:
    """Write the sentences out."""
    lines = tuple(
        Line(
            sentence.text,
            sentence.word,
            sentence.part_of_speech,
            cloze(sentence),
            not_yet(sentence.text, context),
        )
        for sentence in sentences
    )
    parts = {sentence.part_of_speech for sentence in sentences}
    script = READ if {"plural noun", "verb"} <= parts else READ_PLAIN
    return Sentences(SENTENCES, minutes, "Read sentences", script, lines)


def draw_dictated(
    context: Context,
    vocabulary: Vocabulary,
    words: Words,
    used: Iterable[Sentence],
    rng: random.Random,
) -> str:
    """Choose the sentence to write: short, without a sorted word, not read before."""
    read = {sentence.text for sentence in used}
    own = [w for w in (*words.dictation, *words.listed, *words.build) if w in vocabulary.words]
    every = words.every
    others = [w for w in vocabulary.words if w not in every]
    for tried in (own, rng.sample(others, min(MOST_TRIED, len(others)))):
        found = [
            sentence
            for word in tried
            for sentence in find_sentences(context.lexicon, context.gate, word)
            if sentence.text not in read and set(words_of(sentence.text)).isdisjoint(words.sort)
        ]
        if found:
            best = min(found, key=lambda s: (len(not_yet(s.text, context)), len(words_of(s.text))))
            return best.text
    return ""


def compose_dictation(context: Context, words: Words, sentence: str, minutes: int) -> Dictation:
    """Write the dictation out."""
    heard_words = []
    for word in words.dictation:
        entry = context.lexicon.get(word)
        said = entry.usable_pronunciations[0].arpabet if entry else ""
        heard_words.append(HeardWord(word, said))
    sounds = tuple(_sounds(context, words))[:HEARD_SOUNDS]
    return Dictation(DICTATION, minutes, "Dictation", DICTATE, sounds, tuple(heard_words), sentence)


def _sounds(context: Context, words: Words) -> Iterator[HeardSound]:
    """Yield sounds to write: the focus's own, then those of the words dictated.

    Every taught spelling of the sound is right, also one that no word here has.
    """
    by_code = {row.code: row for row in context.lexicon.correspondences()}
    stored = "".join(map(context.lexicon.chunks_of, words.dictation))
    own = [by_code[code] for code in dict.fromkeys(stored) if code in by_code]
    own.sort(key=lambda row: -len(row.correspondence.spelling))
    codes = dict.fromkeys(
        row.correspondence.sound
        for row in (*context.focus.rows, *own)
        if row.correspondence.is_regular and len(row.correspondence.sound) == 1
    )
    for code in codes:
        if code == WEAK:
            continue
        rows = spellings_of_sound(code, context.lexicon)
        known = [row for row in rows if is_taught(row, context)]
        if known:
            spellings = tuple(shown(row.correspondence) for row in known)
            yield HeardSound(heard(known[0].correspondence, context), spellings)
