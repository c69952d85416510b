"""``phonodrill pairs``: pairs of words for contrast."""

from __future__ import annotations

import random
from collections.abc import Iterable
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.reading.pairs import (
    Kind,
    Pair,
    Place,
    choose_pairs,
    deletion_pairs,
    minimal_pairs,
    said_with_either_vowel,
    spelling_pairs,
)
from phonodrill.render.views import pairs as view
from phonodrill.sounds.notation import parse_sound

TWO = 2
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def pairs(
    kind: Annotated[
        Kind,
        typer.Option("--kind", help="One sound differs, one is left off, or only the spelling."),
    ] = Kind.MINIMAL,
    sounds: Annotated[
        str, typer.Option("--sounds", help="The two sounds of a minimal pair: i:e, sh:ch, p:b.")
    ] = "",
    at: Annotated[Place, typer.Option("--at", help="Where the sound is.")] = Place.ANY,
    taught: options.TaughtOption = None,
    endings: Annotated[
        bool, typer.Option("--endings", help="Also words with -s, -es, -ed, -ing.")
    ] = False,
    band: options.BandOption = 2,
    count: options.CountOption = 12,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """List pairs of words for contrast, both parts in chunks."""
    count = options.check_count(count)
    wanted = _two_sounds(sounds, kind)
    seed = options.seed_or_new(seed)
    with Lexicon() as lexicon:
        gate = open_gate(lexicon, own_words().words("block"))
        known = options.known_from(taught, lexicon)
        words = find_words(lexicon, gate, Wanted(known, endings=endings), highest_band=band)
        either_vowel = said_with_either_vowel(lexicon.correspondences())
        found = _find(kind, at, wanted, words, either_vowel)
        chosen = choose_pairs(found, count, random.Random(seed))
        if not chosen:
            raise PhonodrillError(
                "no pair of words fits", "other --sounds, --at any, --band 3 or more steps taught"
            )
        if len(chosen) < count:
            report([f"{len(chosen)} of {count} pairs; for more: --at any, --band 3, --endings"])
        chunks = {
            word.word: lexicon.chunks(word.chunks) for pair in chosen for word in (pair.a, pair.b)
        }
    deliver(view.document(kind, chosen, chunks, seed, notation), format_, out)


def _find(
    kind: Kind,
    at: Place,
    sounds: tuple[str, ...],
    words: list[Spelled],
    either_vowel: frozenset[str],
) -> Iterable[Pair]:
    if kind is Kind.MINIMAL:
        return minimal_pairs(words, either_vowel, at, sounds)
    if kind is Kind.DELETION:
        if at is Place.VOWEL:
            raise PhonodrillError("a vowel is not left off", "--at first or --at last")
        return deletion_pairs(words, either_vowel, at)
    if at is not Place.ANY:
        raise PhonodrillError("spelling pairs differ in no sound", "leave out --at")
    return spelling_pairs(words)


def _two_sounds(text: str, kind: Kind) -> tuple[str, ...]:
    if not text:
        return ()
    if kind is not Kind.MINIMAL:
        raise PhonodrillError("--sounds is for minimal pairs", "--kind minimal")
    parts = text.split(":")
    if len(parts) != TWO or not all(parts):
        raise PhonodrillError(f"--sounds is {text!r}", "two sounds parted by a colon: i:e, sh:ch")
    codes = tuple(map(parse_sound, parts))
    if codes[0] == codes[1]:
        raise PhonodrillError(f"--sounds {text} names one sound twice", "two sounds: i:e, sh:ch")
    return codes
