"""Distances between sounds, and where words are cut."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill import Position
from phonodrill.sounds.features import PLACES, VOWEL_SHAPES, distance, features_apart
from phonodrill.sounds.inventory import BY_ARPABET, BY_CODE, PHONEMES
from phonodrill.sounds.places import cut_at
from phonodrill.sounds.syllables import clear_syllables
from phonodrill.sounds.units import has_r_vowel, hides_y, stop_after_s

CODES = [phoneme.code for phoneme in PHONEMES]


def test_every_sound_has_its_features() -> None:
    consonants = [symbol for _, symbols in PLACES for symbol in symbols.split()]
    assert len(consonants) == len(set(consonants)) == 24
    assert {*consonants, *VOWEL_SHAPES} == set(BY_ARPABET)


@given(st.sampled_from(CODES), st.sampled_from(CODES))
def test_distance_is_a_distance(one: str, two: str) -> None:
    assert distance(one, two) == distance(two, one)
    assert (distance(one, two) == 0) is (one == two) is (features_apart(one, two) == 0)
    assert 0 <= distance(one, two) <= 1


@pytest.mark.source("Treiman, Broderick, Tincoff & Rodriguez (1998); the classes are the IPA's")
def test_near_pairs_differ_in_one_feature() -> None:
    for pair in ("pb", "td", "kɡ", "fv", "θð", "sz", "ʃʒ", "ʧʤ", "pt", "mn", "sʃ", "fθ"):
        assert features_apart(*pair) == 1, pair
    for pair in ("pz", "mk", "sɡ", "ʧl", "iɑ", "ɪO"):
        assert features_apart(*pair) > 1, pair
    near = [distance(*pair) for pair in ("pb", "td", "kɡ")]
    far = [distance(*pair) for pair in ("pl", "tm", "kr")]
    assert max(near) < min(far)


@pytest.mark.parametrize(
    ("one", "two", "features", "far"),
    [
        # By voice, place, manner, and all three.
        ("p", "b", 1, 0.15),
        ("p", "t", 1, 0.2),
        ("p", "k", 1, 0.2),
        ("f", "θ", 1, 1 / 15),
        ("t", "s", 1, 0.5),
        ("m", "b", 1, 0.3),
        ("s", "z", 1, 0.15),
        ("l", "r", 2, 1 / 15),
        ("w", "j", 1, 0.2),
        ("ʧ", "ʃ", 1, 0.3),
        ("h", "m", 3, 0.85),
        ("s", "m", 3, 0.95),
        # By height, backness with rounding, glide, R.
        ("i", "ɪ", 1, 1 / 24),
        ("ɪ", "ɛ", 1, 1 / 8),
        ("u", "ʊ", 1, 1 / 24),
        ("ɔ", "O", 2, (2 / 6 + 0.5) / 4),
        ("ɑ", "ɔ", 2, (2 / 6 + 0.5) / 4),
        ("I", "W", 1, 0.125),
        ("ʌ", "ɝ", 2, (1 / 6 + 1) / 4),
        ("i", "u", 1, (1 + 0.5) / 4),
        # Of two kinds.
        ("p", "i", 4, 1.0),
        ("i", "j", 4, 1.0),
    ],
)
@pytest.mark.source("worked out by hand from the features of the IPA; the weights are ours")
def test_how_far_two_sounds_are_apart(one: str, two: str, features: int, far: float) -> None:
    assert features_apart(one, two) == features
    assert distance(one, two) == pytest.approx(far)


def ranks(values: list[float]) -> list[float]:
    order = sorted(values)
    return [order.index(value) + (order.count(value) - 1) / 2 for value in values]


def rank_correlation(one: list[float], two: list[float]) -> float:
    """Spearman's: the correlation of the ranks."""
    a, b = ranks(one), ranks(two)
    mean = sum(a) / len(a)
    above = sum((x - mean) * (y - mean) for x, y in zip(a, b, strict=True))
    below = (sum((x - mean) ** 2 for x in a) * sum((y - mean) ** 2 for y in b)) ** 0.5
    return float(above / below)


@pytest.mark.source("panphon 0.22.2 (PyPI): feature vectors of IPA segments, a general library")
def test_the_order_of_distances_is_that_of_panphon() -> None:
    import panphon

    table = panphon.FeatureTable()

    def theirs(one: str, two: str) -> float:
        a, b = (table.word_to_vector_list(BY_CODE[c].ipa, numeric=True)[0] for c in (one, two))
        return float(sum(abs(x - y) for x, y in zip(a, b, strict=True)))

    # Its affricates and diphthongs are two segments, its /r/ sounds other kinds of one.
    single = [p for p in PHONEMES if len(p.ipa) == 1 and p.arpabet not in ("ER", "R")]
    for is_vowel, least in ((False, 0.6), (True, 0.6)):
        pairs = list(combinations([p.code for p in single if p.is_vowel is is_vowel], 2))
        assert len(pairs) > 30
        found = rank_correlation([distance(*p) for p in pairs], [theirs(*p) for p in pairs])
        assert found > least, (is_vowel, found)


@pytest.mark.parametrize(
    ("sounds", "at", "middle"),
    [
        ("slɪp", Position.ONSET2, "l"),
        ("strɪp", Position.ONSET2, None),
        ("kjut", Position.ONSET2, None),
        ("nɛst", Position.CODA1, "s"),
        ("kɑrd", Position.CODA1, None),
        ("nɛkst", Position.CODA1, "k"),
        ("spl" + "æʃ", Position.ONSET, "spl"),
        ("spl" + "æʃ", Position.RIME, "æʃ"),
        ("hɔrn", Position.VOWEL, None),
        ("kjut", Position.VOWEL, None),
        ("fɛri", Position.VOWEL, None),
        ("O", Position.FIRST, None),
        ("kɑr", Position.LAST, None),
        ("ɛri", Position.LAST, "i"),
        ("æpt", Position.ONSET, None),
    ],
)
def test_where_words_are_cut(sounds: str, at: Position, middle: str | None) -> None:
    found = cut_at(sounds, at)
    assert (found.middle if found else None) == middle


@given(st.text(st.sampled_from("pstrlkæiəʌn"), min_size=1, max_size=8), st.sampled_from(Position))
def test_a_cut_loses_nothing(sounds: str, at: Position) -> None:
    for r_joins in (False, True):
        found = cut_at(sounds, at, r_joins=r_joins)
        assert found is None or (found.left + found.middle + found.right == sounds and found.middle)


@pytest.mark.source("Lotz, Abramson, Gerstman, Ingemann & Nemser (1960), Language and Speech 3")
def test_units() -> None:
    assert stop_after_s("stɑp")
    assert stop_after_s("skul")
    assert not stop_after_s("smIl")
    assert hides_y("mjuzɪk")
    assert not hides_y("jɛlO")
    assert has_r_vowel("bɝd")
    assert has_r_vowel("hɔrn")
    assert not has_r_vowel("ɛrO")


@pytest.mark.source(
    "Lotz et al. (1960) for p, t, k; that no other sound changes: value from memory"
)
def test_only_a_voiceless_stop_is_said_afresh_behind_s() -> None:
    for sounds in ("stɑp", "spɪn", "skul", "strɪŋ", "st"):
        assert stop_after_s(sounds), sounds
    for sounds in ("slɪp", "smIl", "snEl", "swɪm", "sɪt", "tɑp", "Ist", "s", ""):
        assert not stop_after_s(sounds), sounds


@pytest.mark.source("words like cute and few have /j/ inside, yes at its head: value from memory")
def test_y_is_hidden_behind_any_consonant_and_never_first() -> None:
    for sounds in ("kjut", "fju", "mjuzɪk", "ʌmjuz", "bɛljən"):
        assert hides_y(sounds), sounds
    for sounds in ("jɛs", "j", "tub", ""):
        assert not hides_y(sounds), sounds


@pytest.mark.parametrize(
    ("sounds", "stress", "syllables"),
    [
        # One consonant behind a stressed short vowel belongs to both sides.
        ("lɛmʌn", "10", []),
        ("rɪvɝ", "10", []),
        ("ræbɪt", "10", []),
        ("wʊmʌn", "10", []),
        ("hʌni", "10", []),
        ("sʌpOz", "01", ["sʌ", "pOz"]),
        ("bɪfɔr", "01", ["bɪ", "fɔr"]),
        ("prɪpɛr", "01", ["prɪ", "pɛr"]),
        # A full short vowel, also a weak one, does not end a syllable.
        ("ræpid", "02", []),
        # An s before a consonant goes either way.
        ("mɑnstɝ", "10", []),
        ("wɪspɝ", "10", []),
        ("hʌskʌn", "10", []),
        ("pɑrsli", "10", []),
        ("krɪsmʌs", "10", []),
        ("kɔrsnʌt", "10", []),
        ("bɑkswʊd", "10", []),
        # Vowels side by side, r behind a vowel.
        ("lIʌn", "10", []),
        ("tɝki", "10", []),
        ("stɔri", "10", []),
        ("sʌnrIz", "12", ["sʌn", "rIz"]),
        ("sʌndE", "12", ["sʌn", "dE"]),
        ("tIɡɝ", "10", ["tI", "ɡɝ"]),
        ("pɪknɪk", "10", ["pɪk", "nɪk"]),
        ("kræb", "1", ["kræb"]),
        # The last pair is judged as the first is.
        ("dɪplOmʌ", "010", ["dɪ", "plO", "mʌ"]),
        ("ɪmpɑsʌbʌl", "0100", []),
    ],
)
@pytest.mark.source("what print and speech divide alike: common practice, no source")
def test_where_all_would_divide(sounds: str, stress: str, syllables: list[str]) -> None:
    assert clear_syllables(sounds, stress) == syllables


@pytest.mark.source("Common Core, Appendix A, VC-CV words; open ones: common practice, no source")
def test_only_undisputed_syllables_are_split() -> None:
    assert clear_syllables("næpkɪn", "10") == ["næp", "kɪn"]
    assert clear_syllables("rObɑt", "12") == ["rO", "bɑt"]
    assert clear_syllables("hæmɝ", "10") == []
    assert clear_syllables("mɑnstɝ", "10") == []
    assert clear_syllables("ɑkʌpɑɪ", "102") == []
