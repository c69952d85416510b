"""How all that is known of a word is shown."""

from __future__ import annotations

from typing import Any

from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.render.document import Document, Section, Table
from phonodrill.sounds.notation import SCRIPT, Notation


def document(
    entry: Entry,
    notation: Notation | None,
    *,
    forms: list[str],
    bases: list[str],
    homophones: list[str],
    rhymes: list[str],
    fit: str,
) -> Document:
    """Show all that is known of a word."""
    said = entry.pronunciations
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
    ways = tuple(
        (
            f"/{way.spaced(notation or SCRIPT)}/",
            way.arpabet,
            str(way.syllables),
            way.origin or "CMUdict",
            way.second_opinion or "not listed",
            way.meaning or "-",
        )
        for way in said
    )
    data = {
        "word": entry.word,
        "band": entry.band,
        "zipf": entry.zipf,
        "parts_of_speech": list(entry.parts_of_speech),
        "pronunciations": [_pronunciation(way) for way in said],
        "bases": bases,
        "forms": forms,
        "homophones": homophones,
        "rhymes": rhymes,
        "in_class": fit,
    }
    records = [
        {"word": entry.word, "band": entry.band, "zipf": entry.zipf} | _pronunciation(way)
        for way in said
    ]
    headings = ("sounds", "ARPAbet", "syllables", "from", "second dictionary", "reading")
    sections = (
        Section("", Table(("what", "value"), tuple(facts.items()))),
        Section("How it is said", Table(headings, ways)),
    )
    return Document(entry.word, "", sections, data, records)


def _pronunciation(way: Pronunciation) -> dict[str, Any]:
    return {"arpabet": way.arpabet, "ipa": way.ipa, "syllables": way.syllables}
