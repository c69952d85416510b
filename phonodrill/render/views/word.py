"""How all that is known of a word is shown."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.graphemes.chunk import Chunk
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.render.document import Document, Section, Table
from phonodrill.sounds.notation import SCRIPT, Notation

if TYPE_CHECKING:
    from phonodrill.render.fields import words


class Way(NamedTuple):
    """One pronunciation with its letters.

    Attributes:
        said: the pronunciation.
        chunks: letters tied to sounds; none for an abbreviation.
        syllables: the letters of each syllable; none if a part may not be shown.
    """

    said: Pronunciation
    chunks: tuple[Chunk, ...]
    syllables: tuple[str, ...]


class Regularity(NamedTuple):
    """How regular one chunk of the word is.

    Attributes:
        spelling: its letters.
        sound: codes of its sounds.
        is_regular: whether it is a taught pattern.
        of_spelling: share of the words with this spelling in which it says this.
        of_sound: share of the words with this sound in which it is spelled so.
    """

    spelling: str
    sound: str
    is_regular: bool
    of_spelling: float
    of_sound: float


def document(
    entry: Entry,
    ways: Sequence[Way],
    regularity: Sequence[Regularity],
    notation: Notation | None,
    *,
    forms: list[str],
    bases: list[str],
    homophones: list[str],
    rhymes: list[str],
    fit: str,
) -> Document:
    """Show all that is known of a word."""
    style = notation or SCRIPT
    facts = {
        "band": f"{entry.band} ({entry.reason})" if entry.reason else str(entry.band),
        "in class": fit,
        "frequency (Zipf)": f"{entry.zipf:.2f}",
        "parts of speech": ", ".join(entry.parts_of_speech) or "-",
        "base word": ", ".join(bases) or "-",
        "forms": ", ".join(forms) or "-",
        "sounds the same": ", ".join(homophones) or "-",
        "rhymes with": ", ".join(rhymes) or "-",
    }
    said = tuple(
        (
            f"/{way.said.spaced(style)}/",
            way.said.arpabet,
            ": ".join(filter(None, (str(way.said.syllables), " · ".join(way.syllables)))),
            way.said.origin or "CMUdict",
            way.said.second_opinion or "not listed",
            way.said.meaning or "-",
        )
        for way in ways
    )
    headings = ("sounds", "ARPAbet", "syllables", "from", "second dictionary", "reading")
    pronunciations = [_pronunciation(entry.word, way) for way in ways]
    sections = (
        Section("", Table(("what", "value"), tuple(facts.items()))),
        Section("How it is said", Table(headings, said)),
        *_chunk_sections(entry.word, ways, style),
        *_regularity_section(regularity, style),
    )
    data: words.Word = {
        "word": entry.word,
        "band": entry.band,
        "zipf": entry.zipf,
        "parts_of_speech": list(entry.parts_of_speech),
        "pronunciations": pronunciations,
        "correspondences": [_regularity(row) for row in regularity],
        "bases": bases,
        "forms": forms,
        "homophones": homophones,
        "rhymes": rhymes,
        "in_class": fit,
    }
    records = [
        {"word": entry.word, "band": entry.band, "zipf": entry.zipf}
        | {key: said[key] for key in ("arpabet", "ipa", "syllables")}
        | {"chunks": " ".join(chunk["letters"] for chunk in said["chunks"])}
        for said in pronunciations
    ]
    return Document(entry.word, "", sections, data, records)


def _chunk_sections(word: str, ways: Sequence[Way], style: Notation) -> tuple[Section, ...]:
    """One table for each different split: letters above, sounds below."""
    seen: set[tuple[str, ...]] = set()
    sections = []
    for way in ways:
        letters = tuple(chunk.written(word) for chunk in way.chunks)
        sounds = tuple(_sounds(way, chunk, style) for chunk in way.chunks)
        if not letters or (*letters, *sounds) in seen:
            continue
        seen.add((*letters, *sounds))
        rows = [sounds]
        if not all(chunk.is_regular for chunk in way.chunks):
            rows.append(tuple("" if chunk.is_regular else "irregular" for chunk in way.chunks))
        reading = f" ({way.said.meaning})" if way.said.meaning else ""
        sections.append(Section(f"Letters and sounds{reading}", Table(letters, tuple(rows))))
    return tuple(sections)


def _sounds(way: Way, chunk: Chunk, style: Notation) -> str:
    spaced = way.said.spaced(style).split(" ")
    return " ".join(spaced[i] for i in chunk.sounds) or "(silent)"


def _regularity_section(rows: Sequence[Regularity], style: Notation) -> tuple[Section, ...]:
    if not rows:
        return ()
    headings = ("letters", "sound", "", "these letters say this", "this sound is spelled so")
    body = tuple(
        (
            row.spelling,
            f"/{write_sounds(row.sound, style)}/" if row.sound else "(silent)",
            "" if row.is_regular else "irregular",
            _percent(row.of_spelling),
            _percent(row.of_sound) if row.sound else "-",
        )
        for row in rows
    )
    return (Section("The least regular first", Table(headings, body)),)


def _percent(share: float) -> str:
    return "under 1% of words" if share < 0.01 else f"{share:.0%} of words"  # noqa: PLR2004


def _regularity(row: Regularity) -> words.Correspondence:
    return {
        "spelling": row.spelling,
        "arpabet": write_sounds(row.sound, Notation.ARPABET),
        "irregular": not row.is_regular,
        "share_of_spelling": round(row.of_spelling, 4),
        "share_of_sound": round(row.of_sound, 4),
    }


def _pronunciation(word: str, way: Way) -> words.Pronunciation:
    phones = way.said.arpabet.split(" ")
    return {
        "arpabet": way.said.arpabet,
        "ipa": way.said.ipa,
        "syllables": way.said.syllables,
        "syllable_letters": list(way.syllables),
        "chunks": [
            {
                "letters": chunk.written(word),
                "at": list(chunk.letters),
                "arpabet": [phones[i] for i in chunk.sounds],
                "irregular": not chunk.is_regular,
            }
            for chunk in way.chunks
        ],
    }
