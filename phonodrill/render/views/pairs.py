"""How pairs of words are shown."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from phonodrill.graphemes.chunk import Chunk
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.lexicon.entry import Spelled
from phonodrill.reading.pairs import Kind, Pair
from phonodrill.render.document import Document, Section, Table, counted
from phonodrill.sounds.notation import SCRIPT, Notation, arpabet

if TYPE_CHECKING:
    from phonodrill.render.fields import reading

_TITLES = {
    Kind.MINIMAL: "Pairs in which one sound differs",
    Kind.DELETION: "Pairs in which one sound is left off",
    Kind.SPELLING: "Pairs that sound the same",
}


def document(
    kind: Kind,
    pairs: Sequence[Pair],
    chunks: Mapping[str, Sequence[Chunk]],
    seed: int,
    notation: Notation | None,
) -> Document:
    """Show pairs side by side.

    Args:
        kind: what they have to do with each other.
        pairs: easy ones first.
        chunks: of each word.
        seed: makes the same choice again.
        notation: how sounds are written.
    """
    style = notation or SCRIPT

    def split(word: Spelled) -> list[str]:
        return [chunk.written(word.word) for chunk in chunks[word.word]]

    rows: tuple[tuple[str, ...], ...] = tuple(
        (
            pair.a.word,
            "-".join(split(pair.a)),
            pair.b.word,
            "-".join(split(pair.b)),
            _difference(pair, style),
            pair.at,
        )
        for pair in pairs
    )
    headings: tuple[str, ...] = ("word", "letters", "word", "letters", "sounds", "where")
    if kind is Kind.SPELLING:
        headings, rows = headings[:4], tuple(row[:4] for row in rows)
    records: list[reading.Pair] = [
        {
            "a": pair.a.word,
            "b": pair.b.word,
            "a_arpabet": arpabet(pair.a.sounds, pair.a.stress),
            "b_arpabet": arpabet(pair.b.sounds, pair.b.stress),
            "at": pair.at,
            "a_sound": write_sounds(pair.sounds[0], Notation.ARPABET),
            "b_sound": write_sounds(pair.sounds[1], Notation.ARPABET),
            "a_chunks": split(pair.a),
            "b_chunks": split(pair.b),
        }
        for pair in pairs
    ]
    flat = [
        {**row, "a_chunks": "-".join(row["a_chunks"]), "b_chunks": "-".join(row["b_chunks"])}
        for row in records
    ]
    data: reading.Pairs = {"kind": str(kind), "seed": seed, "pairs": records}
    about = f"{counted(len(pairs), 'pair')}, seed {seed}"
    return Document(_TITLES[kind], about, (Section("", Table(headings, rows)),), data, flat)


def _difference(pair: Pair, style: Notation) -> str:
    return " : ".join(f"/{write_sounds(code, style)}/" if code else "-" for code in pair.sounds)
