"""``phonodrill word`` and ``phonodrill lexicon``: what is known, and from where."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.errors import PhonodrillError, UnknownWordError
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.render import views
from phonodrill.render.document import Table
from phonodrill.selection import HIGHEST_KNOWN_BAND, may_be_said, may_be_shown, nearest_words

SHOWN_RHYMES = 12


def word(
    word: Annotated[str, typer.Argument(help="The word to look up.")],
    band: options.BandOption = 2,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show all that is known of a word; --band limits the rhymes."""
    with Lexicon() as lexicon:
        gate = open_gate(lexicon)
        entry = lexicon.get(word.strip())
        if entry is None:
            near = nearest_words(lexicon, word)
            raise UnknownWordError(
                f"{word!r} is not in the lexicon",
                " or ".join(f"phonodrill word {n}" for n in near) or "check the spelling",
            )
        if not may_be_shown(entry, gate):
            raise PhonodrillError("that is not a word for class", "another word")
        document = views.word(
            entry,
            notation,
            forms=_shown(lexicon, gate, [row.form for row in lexicon.forms_of(entry.word)]),
            bases=_shown(lexicon, gate, [row.base for row in lexicon.bases_of(entry.word)]),
            homophones=_homophones(lexicon, gate, entry),
            rhymes=_rhymes(lexicon, gate, entry, band),
            fit=_fit(entry, gate),
        )
    deliver(document, format_, out)


def lexicon(
    disagreements: Annotated[
        bool,
        typer.Option("--disagreements", help="List forms that are not base + ending."),
    ] = False,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show sources, versions, licenses and counts."""
    with Lexicon() as lexicon:
        counts = {
            "words": lexicon.count("word"),
            "pronunciations": lexicon.count("pronunciation"),
            "words of band 1": lexicon.count("word", "band = 1"),
            "words of band 2": lexicon.count("word", "band = 2"),
            "words of band 3": lexicon.count("word", "band = 3"),
            "heteronyms": lexicon.count("word", "is_heteronym"),
            "confirmed by the second dictionary": lexicon.count(
                "pronunciation", "second_opinion = 'confirmed'"
            ),
            "contradicted by it": lexicon.count("pronunciation", "second_opinion = 'contradicted'"),
            "mended": lexicon.count("pronunciation", "origin = 'mended'"),
            "built from base + ending": lexicon.count("pronunciation", "origin = 'base + ending'"),
            "never said": lexicon.count("never_say"),
            "forms that are not base + ending": lexicon.count("disagreement"),
        }
        rows = tuple(lexicon.disagreements()) if disagreements else ()
        sources = lexicon.sources()
    checks = Table(("word", "base", "expected", "found"), rows)
    deliver(views.lexicon(sources, counts, checks), format_, out)


def _shown(lexicon: Lexicon, gate: Gate, words: list[str]) -> list[str]:
    entries = filter(None, map(lexicon.get, dict.fromkeys(words)))
    return [entry.word for entry in entries if may_be_shown(entry, gate)]


def _homophones(lexicon: Lexicon, gate: Gate, entry: Entry) -> list[str]:
    found: dict[str, None] = {}
    for way in entry.usable_pronunciations:
        for other in lexicon.sounding_like(way.normal):
            if other.word != entry.word and other.band and may_be_shown(other, gate):
                found[other.word] = None
    return list(found)


def _rhymes(lexicon: Lexicon, gate: Gate, entry: Entry, band: int) -> list[str]:
    way = next(iter(entry.usable_pronunciations), entry.pronunciations[0])
    words = lexicon.rhyming_with(way.rhyme, highest_band=min(band, HIGHEST_KNOWN_BAND))
    entries = filter(None, map(lexicon.get, words))
    fit = [other.word for other in entries if other != entry and may_be_said(other, gate)]
    return fit[:SHOWN_RHYMES]


def _fit(entry: Entry, gate: Gate) -> str:
    if not may_be_said(entry, gate):
        return "no"
    return "only when asked for, with its reading" if entry.is_heteronym else "yes"
