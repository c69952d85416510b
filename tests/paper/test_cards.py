"""Each back stands behind its front; every card comes once."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as some

from phonodrill import Lexicon, Notation, open_gate
from phonodrill.paper.cards import Back, card_of, lay_out, mirrored
from phonodrill.paper.page import Card, Duplex, Grid, Script, Text
from phonodrill.paper.printed import Printed, print_words

GRIDS = some.builds(Grid, some.integers(1, 6), some.integers(1, 9))
TURNED = some.sampled_from([Duplex.LONG, Duplex.SHORT])


def numbered(count: int) -> list[Card]:
    return [Card((Text(f"front {n}"),), (Text(f"back {n}"),)) for n in range(count)]


@given(GRIDS, some.integers(1, 100), TURNED)
def test_backs_lie_behind_their_fronts(grid: Grid, count: int, duplex: Duplex) -> None:
    made = lay_out("", numbered(count), grid, duplex)
    seen = []
    assert len(made.sides) % 2 == 0
    for front, back in zip(made.sides[::2], made.sides[1::2], strict=True):
        assert front.is_front
        assert not back.is_front
        assert len(front.faces) == len(back.faces) == grid.cards
        for place, lines in enumerate(front.faces):
            row, column = divmod(place, grid.columns)
            if duplex is Duplex.LONG:
                column = grid.columns - 1 - column
            else:
                row = grid.rows - 1 - row
            behind = back.faces[row * grid.columns + column]
            if lines is None:
                assert behind is None
            else:
                assert behind is not None
                assert behind[0].text == lines[0].text.replace("front", "back")
                seen.append(lines[0].text)
    assert seen == [f"front {n}" for n in range(count)]


@given(GRIDS, TURNED)
def test_turning_twice_is_not_turning(grid: Grid, duplex: Duplex) -> None:
    places = list(range(grid.cards))
    assert mirrored(mirrored(places, grid, duplex), grid, duplex) == places


def test_no_backs_when_none_are_wanted_or_there_are_none() -> None:
    assert len(lay_out("", numbered(40), Grid(3, 6), Duplex.NONE).sides) == 3
    assert len(lay_out("", [Card()] * 18, Grid(3, 6)).sides) == 1


@pytest.fixture(scope="module")
def torches(lexicon: Lexicon) -> Printed:
    entry = lexicon.get("torches")
    assert entry
    return print_words(lexicon, open_gate(lexicon), [entry], Notation.MARKS)[0]


@pytest.mark.parametrize(
    ("back", "lines"),
    [
        (Back.NONE, ()),
        (Back.SOUNDS, (Text("/t ô r ch ĭ z/", Script.SOUNDS),)),
        (Back.CHUNKS, (Text("t · or · ch · es"), Text("/t ô r ch ĭ z/", Script.SOUNDS))),
        (Back.ENDING, (Text("/ĭz/", Script.SOUNDS), Text("torch → torches"))),
    ],
)
def test_backs(torches: Printed, back: Back, lines: tuple[Text, ...]) -> None:
    assert card_of(torches, back) == Card((Text("torches"),), lines)


def test_a_word_without_ending_has_its_sounds_instead(lexicon: Lexicon) -> None:
    entry = lexicon.get("fox")
    assert entry
    (fox,) = print_words(lexicon, open_gate(lexicon), [entry], Notation.IPA)
    assert card_of(fox, Back.ENDING).back == (Text("/f ɑ k s/", Script.SOUNDS),)
