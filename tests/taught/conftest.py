from __future__ import annotations

import pytest

from phonodrill import Gate, Lexicon
from phonodrill.reading.material import frequent_targets, read_words, word_targets
from phonodrill.taught.steps import Taught
from phonodrill.taught.suggest import Goal, Material, Suggestion, suggest
from phonodrill.taught.tokens import always_open


@pytest.fixture(scope="session")
def material(lexicon: Lexicon, gate: Gate) -> Material:
    words = word_targets(lexicon, read_words(lexicon, gate, 2))
    return Material(lexicon.correspondences(), words, (), frequent_targets(lexicon, gate))


@pytest.fixture(scope="session")
def nothing(lexicon: Lexicon) -> Taught:
    return Taught((), always_open(lexicon.correspondences()))


@pytest.fixture(scope="session")
def shipped(material: Material, nothing: Taught) -> Suggestion:
    return suggest(material, Goal.DECODABLE, 1, nothing)
