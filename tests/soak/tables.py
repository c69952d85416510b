"""CMUdict and our tables, read as data: how words are said, how familiar, what is never said."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

from tests.raw_cmudict import plain, raw_cmudict
from tests.soak.phones import Phones, for_gate

WORDLISTS = Path(__file__).parents[2] / "wordlists"
HIGHEST_BAND = 3


def rows(name: str) -> Iterator[list[str]]:
    """Yield the rows of a table, without comments and header."""
    lines = (WORDLISTS / name).read_text("utf-8").splitlines()
    body = [line.split("\t") for line in lines if line and not line.startswith("#")]
    yield from body[1:]


@cache
def _fixes() -> dict[str, list[tuple[str, Phones]]]:
    found: dict[str, list[tuple[str, Phones]]] = {}
    for word, _, action, arpabet, *_ in rows("pronunciation_fixes.tsv"):
        if action != "accept":
            found.setdefault(word, []).append((action, tuple(arpabet.split())))
    return found


@cache
def listed_ways(word: str) -> tuple[Phones, ...]:
    """Return every way CMUdict lists a word, mended by our table, with stress."""
    ways = list(raw_cmudict().get(word, []))
    fixes = _fixes().get(word, [])
    said = [phones for action, phones in fixes if action == "say"]
    dropped = [phones for action, phones in fixes if action == "drop"]
    added = [phones for action, phones in fixes if action == "add"]
    return tuple(way for way in said or ways if way not in dropped) + tuple(added)


@cache
def ways(word: str) -> frozenset[Phones]:
    """Return every way to say a word, without stress."""
    return frozenset(plain(phones) for phones in listed_ways(word))


class NeverSay(NamedTuple):
    """What is never said or shown.

    Attributes:
        spellings: never shown.
        sounds: never said, not even in a sentence or inside two words.
        alone: not said as a word by itself.
    """

    spellings: frozenset[str]
    sounds: frozenset[Phones]
    alone: frozenset[Phones]


@cache
def never_say() -> NeverSay:
    """Read the never-say table."""
    spellings: set[str] = set()
    sounds: set[Phones] = set()
    alone: set[Phones] = set()
    for word, arpabet, _, blocks, *_ in rows("never_say.tsv"):
        written = [plain(way.split()) for way in arpabet.split(" / ") if way]
        forms = {for_gate(way) for way in written or ways(word)}
        if blocks != "alone":
            spellings.add(word)
        if blocks != "spelling":
            alone |= forms
        if blocks == "sound":
            sounds |= forms
    return NeverSay(frozenset(spellings), frozenset(sounds), frozenset(alone))


@cache
def is_unfit(word: str) -> bool:
    """Whether a word may not stand by itself: by its letters or in any way to say it."""
    unfit = never_say()
    return word in unfit.spellings or any(for_gate(way) in unfit.alone for way in ways(word))


@cache
def is_unfit_in_sentence(word: str) -> bool:
    """Whether a word may not even stand in a sentence."""
    unfit = never_say()
    return word in unfit.spellings or any(for_gate(way) in unfit.sounds for way in ways(word))


@cache
def _bands() -> dict[str, int]:
    return {row[0]: int(row[1]) for row in rows("vocabulary.tsv")}


@cache
def band_of(word: str) -> int:
    """Return how familiar a word is: its own row, else that of what it may be a form of.

    0: not for class, or not in the table.
    """
    bands = _bands()
    if word in bands:
        return bands[word]
    found = [bands[base] for base in _inflected(word) if bands.get(base)]
    return min(found, default=0)


@cache
def bases_of(word: str) -> frozenset[str]:
    """Return every spelling from which a word may be made with an ending."""
    return frozenset({*_inflected(word), *_made_with_y(word)} - {word})


def _inflected(word: str) -> set[str]:
    """Return spellings whose form a word may be, by rule or by the lemmas of lemminflect."""
    from lemminflect import getAllLemmas

    lemmas = {lemma for found in getAllLemmas(word).values() for lemma in found}
    return {*_possible_bases(word), *lemmas} - {word}


def _made_with_y(word: str) -> Iterator[str]:
    """Yield spellings from which a word in y or ly may be made: fog, noise, happy, gentle."""
    if word.endswith("y"):
        stem = word[:-1]
        yield from (stem, stem + "e")
        if stem[-2:-1] == stem[-1:]:
            yield stem[:-1]
    if word.endswith("ly"):
        stem = word[:-2]
        yield from (stem, stem + "le", stem + "l", stem.removesuffix("i") + "y")


@cache
def written_habits(letters: str) -> tuple[frozenset[Phones], ...]:
    """Return the sounds of a spelling, together those that CMUdict writes now so, now so."""
    return tuple(
        frozenset(tuple(way.replace("AX", "@").split()) for way in sounds.split(" / "))
        for spelling, sounds, *_ in rows("correspondences.tsv")
        if spelling == letters
    )


def _possible_bases(word: str) -> Iterator[str]:
    """Yield spellings whose regular form this may be."""
    for ending in ("s", "es", "d", "ed", "ing", "er", "r", "est", "st"):
        stem = word.removesuffix(ending)
        if stem == word or len(stem) < 2:
            continue
        yield stem
        yield stem + "e"
        if stem.endswith("i"):
            yield stem[:-1] + "y"
        if stem.endswith("v"):
            yield from (stem[:-1] + "f", stem[:-1] + "fe")
        if stem[-1] == stem[-2]:
            yield stem[:-1]
        if stem.endswith("y"):
            yield stem[:-1] + "ie"
