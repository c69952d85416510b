"""What the lexicon holds and where it comes from."""

from __future__ import annotations

from phonodrill.lexicon.store import Lexicon


def count_words(lexicon: Lexicon) -> dict[str, int]:
    """Return ``what is counted -> how many``, worded for people."""
    return {
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
