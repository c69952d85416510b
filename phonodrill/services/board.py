"""What is shown to a class one at a time: oral items, words of a lesson, words typed in."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lesson.from_data import Read
from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.paper.printed import split_word
from phonodrill.selection import look_up, own_entries
from phonodrill.services.warmup import Wish, warm_up
from phonodrill.services.word_list import problems_of, typed_words, why_unusable
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.tasks import script
from phonodrill.tasks.item import Item

MOST_WORDS = 60
"""More than these are not shown in a lesson."""


class Boxes(StrEnum):
    """What is put into the sound boxes under an item."""

    NONE = "none"
    SOUNDS = "sounds"
    LETTERS = "letters"


class Box(NamedTuple):
    """Letters that stand together, and a box for each of their sounds.

    Attributes:
        letters: written under the boxes; empty where only sounds are shown.
        sounds: one sign a box; none for letters that say nothing.
    """

    letters: str
    sounds: tuple[str, ...]


class Slide(NamedTuple):
    """One thing to show.

    Attributes:
        title: what kind of item it is, small.
        ask: what is asked or read, large.
        answer: shown afterwards.
        heard: how it sounds, shown with the answer.
        spoken: what the browser may speak: words, never a single sound; may be empty.
        is_word: whether ``ask`` is a single word.
        boxes: one box a sound, to be filled one by one.
    """

    title: str
    ask: str
    answer: str
    heard: str
    spoken: str
    is_word: bool = False
    boxes: tuple[Box, ...] = ()


class Board(NamedTuple):
    """Slides in their order.

    Attributes:
        title: what they are about.
        slides: at least one.
        notes: one line each on what could not be shown.
    """

    title: str
    slides: tuple[Slide, ...]
    notes: tuple[str, ...] = ()


def show_items(
    lexicon: Lexicon, wish: Wish, boxes: Boxes, notation: Notation | None, overlay: Overlay
) -> Board:
    """Show the items of an oral warm-up.

    Raises:
        PhonodrillError: if options do not go together or no item fits.
    """
    result = warm_up(lexicon, wish, overlay)
    style = notation or SCRIPT
    title = script.title(result.task, result.at)
    slides = tuple(_item(item, title, lexicon, boxes, style) for item in result.items)
    return Board(title, slides, result.notes)


def show_lesson(reads: Sequence[Read], boxes: Boxes, overlay: Overlay = NO_OVERLAY) -> Board:
    """Show the words of lessons, but those that are dictated or checked."""
    context = reads[0].ready.context
    chosen = [read.choice.words for read in reads]
    hidden = {word for words in chosen for word in (*words.dictation, *words.check)}
    shown = (
        word
        for words in chosen
        for word in (*words.rule, *words.build, *words.listed, *words.sort)
        if word not in hidden
    )
    lexicon = context.lexicon
    entries = look_up(shown, lexicon, own_entries(lexicon, overlay))
    title = reads[0].lesson.title
    return Board(title, _words(entries, lexicon, boxes, context.style))


def show_words(
    lexicon: Lexicon, text: str, boxes: Boxes, notation: Notation | None, overlay: Overlay
) -> Board:
    """Show words that were typed in.

    Raises:
        PhonodrillError: if none of them can be shown.
    """
    own = own_entries(lexicon, overlay)
    gate = open_gate(lexicon, overlay.words("block"))
    lines = typed_words(text)[:MOST_WORDS]
    usable, problems = problems_of(lines, why_unusable(lexicon, gate, own), "word")
    if not usable:
        why = problems[0] if problems else "there is none"
        raise PhonodrillError(f"none of these words can be shown: {why}", "torches, ropes, gulls")
    entries = look_up(usable, lexicon, own)
    return Board("Words", _words(entries, lexicon, boxes, notation or SCRIPT), tuple(problems))


def _words(
    entries: Sequence[Entry], lexicon: Lexicon, boxes: Boxes, style: Notation
) -> tuple[Slide, ...]:
    return tuple(_word(entry, lexicon, boxes, style) for entry in entries)


def _word(entry: Entry, lexicon: Lexicon, boxes: Boxes, style: Notation) -> Slide:
    said = entry.usable_pronunciations[0]
    split = split_word(entry.word, said, lexicon.chunks(said.chunks), style)
    chunks = " · ".join(split.chunks) or entry.word
    return Slide(
        "Read the word",
        entry.word,
        chunks,
        f"/{said.spaced(style)}/",
        entry.word,
        is_word=True,
        boxes=_boxes(entry.word, said, lexicon, boxes, style),
    )


def _item(item: Item, title: str, lexicon: Lexicon, boxes: Boxes, style: Notation) -> Slide:
    phrase = script.say(item, style)
    # Where parts or choices are said there is no stimulus: boxes are for what they give.
    word, said = item.stimulus, item.stimulus_said
    if not word or item.choices:
        word, said = item.answer, item.answer_said
    heard = " → ".join(
        f"/{way.spaced(style)}/"
        for way in dict.fromkeys((item.stimulus_said, item.answer_said))
        if way.sounds and not item.choices
    )
    spoken = "" if item.made_up else item.stimulus or ", ".join(c.word for c in item.choices)
    filled = _boxes(word, said, lexicon, boxes, style) if said.sounds else ()
    return Slide(title, phrase.ask, phrase.answer, heard, spoken, boxes=filled)


def _boxes(
    word: str, said: Pronunciation, lexicon: Lexicon, boxes: Boxes, style: Notation
) -> tuple[Box, ...]:
    if boxes is Boxes.NONE:
        return ()
    chunks = lexicon.chunks(said.chunks)
    if boxes is Boxes.SOUNDS or not chunks:
        return tuple(Box("", (sign,)) for sign in said.spaced(style).split(" "))
    pieces = split_word(word, said, chunks, style).pieces
    return tuple(Box(piece.letters, piece.sounds) for piece in pieces)
