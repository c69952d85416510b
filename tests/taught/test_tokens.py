from __future__ import annotations

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill.errors import PhonodrillError
from phonodrill.graphemes.correspondence import Kind
from phonodrill.lexicon.entry import Counted
from phonodrill.lexicon.store import Lexicon
from phonodrill.taught.tokens import companions, read_token, write_token


@pytest.fixture(scope="module")
def inventory(lexicon: Lexicon) -> tuple[Counted, ...]:
    return lexicon.correspondences()


@pytest.mark.parametrize(
    ("token", "sounds"),
    [
        ("s", ["s"]),
        ("s=z", ["z"]),
        ("c", ["k"]),
        ("c=s", ["s"]),
        ("C=/s/", ["s"]),
        ("e", ["ɛ"]),
        ("a", ["æ"]),
        ("y", ["j"]),
        ("y=ē", ["i"]),
        ("y=IY", ["i"]),
        ("th", ["θ"]),
        ("th=/ð/", ["ð"]),
        ("x", ["ks"]),
        ("x=g+z", ["ɡz"]),
        ("a_e", ["E"]),
        ("ar", ["ɑr"]),
        ("er=î+r", ["ɪr"]),
        ("-es", ["əz", "z"]),
        ("-ed", ["əd", "d", "t"]),
        ("-ed=t", ["t"]),
        ("-ing", []),
        ("nk", ["ŋ", "k"]),
        ("tion", ["ʃ"]),
        ("h=silent", [""]),
    ],
)
def test_what_a_token_means(inventory: tuple[Counted, ...], token: str, sounds: list[str]) -> None:
    found = [row.correspondence.sound for row in read_token(token, inventory)]
    assert sorted(found) == sorted(sounds)


@pytest.mark.parametrize(
    ("token", "message", "hint"),
    [
        ("zq", "no correspondence is spelled 'zq'", "did you mean"),
        ("c=f", "c does not say that", "c=k, c=s"),
        ("c=%", "unknown sound", "write it like"),
        ("a__e", "cannot read", "a_e"),
        ("-q", "no correspondence is spelled '-q'", ""),
        ("", "cannot read", ""),
    ],
)
def test_tokens_that_cannot_be_read(
    inventory: tuple[Counted, ...], token: str, message: str, hint: str
) -> None:
    with pytest.raises(PhonodrillError) as caught:
        read_token(token, inventory)
    assert message in caught.value.message
    assert hint in caught.value.hint


def test_every_correspondence_can_be_written_and_read(inventory: tuple[Counted, ...]) -> None:
    for row in inventory:
        found = row.correspondence
        if found.kind is Kind.ENDING or found.is_before_rr or not found.spelling[0].isalpha():
            continue
        assert read_token(write_token(row, inventory), inventory) == (row,)


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    with Lexicon() as lexicon, contextlib.suppress(PhonodrillError):
        read_token(text, lexicon.correspondences())


@pytest.mark.parametrize(
    ("token", "opens", "keeps_shut"),
    [
        ("a", "a a=ə", "a=ā a=ŏ"),
        ("u_e", "u_e u_e=y+o͞o u_e=ə", "u=o͞o"),
        ("o", "o o=ô o=ə", "o=ō o=ŭ"),
        ("dge", "dge dg", "ge g=j"),
        ("or", "or", "or=ûr"),
        ("-s", "-s", "s"),
    ],
)
def test_what_comes_with_a_correspondence(
    inventory: tuple[Counted, ...], token: str, opens: str, keeps_shut: str
) -> None:
    def codes(tokens: str) -> set[str]:
        return {row.code for part in tokens.split() for row in read_token(part, inventory)}

    taught = read_token(token, inventory)
    found = frozenset[str]().union(*(companions(row, inventory) for row in taught))
    assert codes(opens) <= found
    assert found.isdisjoint(codes(keeps_shut))
