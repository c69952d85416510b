"""How what is printed on paper is shown on a screen or in a file of another format."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from phonodrill.paper.mat import Columns
from phonodrill.paper.page import Card, Key, Text
from phonodrill.paper.printed import Printed
from phonodrill.render.document import Document, Section, Table, Words


def cards(title: str, about: str, made: Sequence[Card]) -> Document:
    """Show cards: front and back."""
    rows = [(_joined(card.front), _joined(card.back)) for card in made]
    records = [{"front": front, "back": back} for front, back in rows]
    section = Section("", Table(("front", "back"), tuple(rows)))
    return Document(title, about, (section,), {"cards": records}, records)


def mat(title: str, about: str, columns: Columns) -> Document:
    """Show the columns of a mat with their words, which are the key."""
    groups = [(column.heading.text, column.words) for column in columns.columns]
    rest = [("in several", columns.in_several), ("in none", columns.in_none)]
    sections = [
        Section(f"{heading}  ({len(words)})", Words(words))
        for heading, words in [*groups, *((name, words) for name, words in rest if words)]
    ]
    data = {
        "columns": [{"heading": heading, "words": list(words)} for heading, words in groups],
        "in_several": list(columns.in_several),
        "in_none": list(columns.in_none),
    }
    records = [{"word": word, "heading": heading} for heading, words in groups for word in words]
    return Document(title, about, tuple(sections), data, records)


def boxes(title: str, about: str, words: Sequence[Printed]) -> Document:
    """Show the boxes of each word, letters outside a box in round brackets."""
    rows = [(word.word, _boxes(word), str(word.split.sounds)) for word in words if word.split]
    section = Section("", Table(("word", "boxes", "sounds"), tuple(rows)))
    data = {"words": [_split(word) for word in words if word.split]}
    records = [{"word": word, "boxes": letters, "sounds": sounds} for word, letters, sounds in rows]
    return Document(title, about, (section,), data, records)


def word_list(title: str, about: str, words: Sequence[Printed], key: Key | None) -> Document:
    """Show a list of words, with its key if there is one."""
    sections = [Section("", Words(tuple(word.word for word in words)))]
    records: list[dict[str, Any]] = [{"word": word.word} for word in words]
    if key:
        rows = tuple(tuple(_joined(cell, " ") for cell in row) for row in key.rows)
        sections.append(Section("Key", Table(key.headings, rows)))
        records = [_facts(word) for word in words]
    return Document(title, about, tuple(sections), {"words": records}, records)


def _facts(word: Printed) -> dict[str, Any]:
    ending = word.ending
    return {
        "word": word.word,
        "sounds": " or ".join(word.readings),
        "arpabet": word.arpabet,
        "syllables": " · ".join(word.syllables),
        "chunks": " · ".join(word.split.chunks) if word.split else "",
        "base": word.base,
        "ending": ending.ending if ending else "",
        "ending_sound": ending.sound if ending else "",
        "watch_out": ending.watch_out if ending else "",
    }


def _boxes(word: Printed) -> str:
    pieces = word.split.pieces if word.split else ()
    return " ".join(f"[{p.letters}]" if p.sounds else f"({p.letters})" for p in pieces)


def _split(word: Printed) -> dict[str, Any]:
    pieces = word.split.pieces if word.split else ()
    return {
        "word": word.word,
        "arpabet": word.arpabet,
        "boxes": [
            {
                "letters": piece.letters,
                "sounds": list(piece.sounds),
                "irregular": not piece.is_regular,
                "closes": piece.closes if piece.closes >= 0 else None,
            }
            for piece in pieces
        ],
    }


def _joined(texts: Sequence[Text], between: str = "; ") -> str:
    return between.join(text.text for text in texts)
