"""The estimate keeps to published orders; it is an estimate all the same."""

from __future__ import annotations

import pytest

from phonodrill import Item, Position
from phonodrill.tasks.difficulty import WEIGHTS, Level, Nearness, estimate, kind_score, level_of
from tests.case_files import cases

FIRST, LAST, EACH = Position.FIRST, Position.LAST, Position.EACH


@pytest.mark.source(
    "Liberman et al. 1974; Treiman & Zukowski 1991: syllable < onset and rime < single sound"
)
def test_larger_parts_are_easier() -> None:
    for task in ("isolate", "delete", "add", "substitute"):
        scores = [kind_score(task, at) for at in (Position.SYLLABLE, Position.ONSET, FIRST)]
        assert scores == sorted(scores)
        assert len(set(scores)) == 3
    for task in ("blend", "segment"):
        assert (
            kind_score(task, Position.SYLLABLE)
            < kind_score(task, Position.ONSET)
            < kind_score(task, EACH)
        )


@pytest.mark.source(
    "Content et al. 1986 (last < first); Treiman & Zukowski 1996 (single < cluster); "
    "Bruck & Treiman 1990 (second of a cluster hardest)"
)
def test_deletion_by_place() -> None:
    last = estimate("delete", LAST, "rOp", 1)
    first = estimate("delete", FIRST, "rOp", 1)
    cluster = estimate("delete", FIRST, "blO", 1)
    second = estimate("delete", Position.ONSET2, "blO", 1)
    assert last < first < cluster < second


@pytest.mark.source("Uhry & Ehri 1999: VC < CV < CVC; clusters: Schreuder & van Bon 1989")
def test_segmenting_by_make_up() -> None:
    words = ["Eʤ", "mi", "sEm", "stEm", "strEm"]
    scores = [estimate("segment", EACH, word, 1) for word in words]
    assert scores == sorted(scores)
    assert len(set(scores)) == 5


@pytest.mark.source(
    "Common Core, Appendix A: identity, isolation, blending, segmenting, adding, substituting; "
    "Adams 1990; Yopp 1988 (deletion hardest); Anthony et al. 2003 (blending < elision)"
)
def test_tasks_in_their_order() -> None:
    weights = [WEIGHTS[t] for t in ("identify", "isolate", "blend", "segment", "add", "substitute")]
    assert weights == sorted(weights)
    assert WEIGHTS["categorize"] < WEIGHTS["blend"] < WEIGHTS["delete"]
    for at in (FIRST, LAST, Position.ONSET2, Position.CODA1, Position.SYLLABLE):
        assert kind_score("substitute", at) >= kind_score("delete", at)


@pytest.mark.source(
    "Treiman & Weatherston 1992 (length); Read 1971 (tr, dr); Hogan 2010 (near foils); "
    "Treiman et al. 1998 (voice); Treiman 1984 (liquids); bands: common practice, no source"
)
def test_what_makes_an_item_harder() -> None:
    first = estimate("delete", FIRST, "rOp", 1)
    assert first < estimate("delete", FIRST, "rOpɪŋ", 1)
    assert first < estimate("delete", FIRST, "rOp", 2)
    assert estimate("delete", FIRST, "stɑp", 1) < estimate("delete", FIRST, "trɪp", 1)
    far = estimate("categorize", FIRST, "rOp", 1)
    near = estimate("categorize", FIRST, "rOp", 1, nearness=Nearness(near=True))
    voice = estimate("categorize", FIRST, "rOp", 1, nearness=Nearness(near=True, voice_only=True))
    assert far < near < voice
    assert estimate("delete", Position.CODA1, "nɛst", 1) < estimate(
        "delete", Position.CODA1, "bɛlt", 1
    )
    assert estimate("segment", EACH, "bɑks", 1) < estimate(
        "segment", EACH, "bɑks", 1, spelling="box"
    )


FOILS = {
    "none": Nearness(),
    "near": Nearness(near=True),
    "voice": Nearness(near=True, voice_only=True),
}


@pytest.mark.source("the steps of docs/tasks.md, added up by hand")
@pytest.mark.parametrize(
    ("task", "at", "sounds", "band", "spelling", "foil", "steps"), cases("difficulty.tsv")
)
def test_the_points_of_an_item(
    task: str, at: str, sounds: str, band: str, spelling: str, foil: str, steps: str
) -> None:
    points = estimate(
        task, Position(at), sounds, int(band), spelling=spelling, nearness=FOILS[foil]
    )
    assert points == pytest.approx(sum(map(float, steps.split("+"))), abs=1e-9)


@pytest.mark.parametrize(
    ("added", "level"),
    [
        (0, Level.EASY),
        (0.75, Level.EASY),
        (1, Level.MIDDLE),
        (1.75, Level.MIDDLE),
        (2, Level.HARD),
        (3, Level.HARD),
    ],
)
def test_levels(added: float, level: Level) -> None:
    assert level_of("isolate", FIRST, kind_score("isolate", FIRST) + added) is level


def test_near_foils_are_never_easy(every_item: list[Item]) -> None:
    for item in every_item:
        if item.task == "categorize" and item.at is FIRST and item.level is Level.EASY:
            assert {item.sound.sounds, item.new.sounds} not in ({"p", "b"}, {"t", "d"}, {"s", "z"})
