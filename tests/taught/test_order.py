from __future__ import annotations

import random

import pytest

from phonodrill import Lexicon
from phonodrill.graphemes.correspondence import Kind
from phonodrill.sounds.inventory import BY_CODE, code
from phonodrill.taught.constraints import (
    CONFUSED,
    CONSTRAINTS,
    FEWEST_OPENED,
    LOOK_ALIKE,
    apart,
    before,
    confusion,
)
from phonodrill.taught.growth import first_taught
from phonodrill.taught.order import area, breakers, completed, improve, pose, solve, take_best
from phonodrill.taught.suggest import Material
from phonodrill.taught.units import Unit, find_units
from tests.conftest import ROOT


@pytest.fixture(scope="module")
def units(material: Material) -> list[Unit]:
    return find_units(material.inventory, material.words)


def named(units: list[Unit], token: str) -> Unit:
    return next(unit for unit in units if unit.token == token)


@pytest.mark.source("common practice, no source: neighbors that are taken for each other")
@pytest.mark.parametrize(
    ("one", "other"), [("e", "i"), ("b", "d"), ("p", "b"), ("m", "n"), ("f", "th")]
)
def test_confusable_steps_are_kept_apart(units: list[Unit], one: str, other: str) -> None:
    assert apart(named(units, one), named(units, other)) >= 2


@pytest.mark.source("International Phonetic Association (1999): voicing and manner")
def test_voice_pairs_differ_in_voice_only() -> None:
    for one, other in ("PB", "TD", "KG", "FV", "SZ"):
        first, second = (BY_CODE[code(symbol)] for symbol in (one, other))
        assert first.voiced is not second.voiced
        assert first.kind is second.kind
        assert confusion(first.code, second.code)
    assert all(len(pair) == 2 and pair <= BY_CODE.keys() for pair in CONFUSED)
    assert all(group.isalpha() and group.islower() for group in LOOK_ALIKE)


@pytest.mark.parametrize(
    ("token", "leads"),
    [
        ("sh", {"s", "h"}),
        ("a_e", {"a", "e", "i", "o", "u"}),
        ("ff, ll, ss", {"f", "l", "s"}),
        ("ar", {"a", "r"}),
        ("tch", {"ch", "t"}),
        ("c=s", {"c"}),
        ("-es", {"-s", "e"}),
        ("-ies", {"-es", "y=ē", "i"}),
        ("-ing", {"ng", "i"}),
    ],
)
def test_what_comes_first(units: list[Unit], token: str, leads: set[str]) -> None:
    assert leads <= {units[index].token for index in before(named(units, token), units)}


def test_unrelated_steps_need_no_distance(units: list[Unit]) -> None:
    assert apart(named(units, "a"), named(units, "m")) == 0
    assert apart(named(units, "c"), named(units, "c=s")) == 10
    assert before(named(units, "t"), units) == []


def test_the_area_is_that_of_the_growth_curve(material: Material, units: list[Unit]) -> None:
    puzzle = pose(units, material.words, {})
    order = puzzle.open
    random.Random(3).shuffle(order)
    done = completed(puzzle, order)
    total = height = 0
    for unit in order:
        height += sum(puzzle.targets[number][1] for number in done[unit])
        total += height
    assert area(puzzle, order) == total


def test_improving_keeps_the_constraints(material: Material, units: list[Unit]) -> None:
    puzzle = pose(units, material.words[::4], {})
    start = take_best(puzzle, [1.0] * len(units))
    better = improve(puzzle, start)
    assert sorted(better) == sorted(start) == list(range(len(units)))
    before, after = (
        (len(breakers(puzzle, order)), -area(puzzle, order)) for order in (start, better)
    )
    assert after < before


def test_improving_is_as_good_as_trying_every_order(lexicon: Lexicon, material: Material) -> None:
    from itertools import permutations

    wanted = {"s", "l", "n", "a", "t", "p", "-s"}
    units = [u for u in find_units(material.inventory, material.words) if u.token in wanted]
    puzzle = pose(units, material.words, dict.fromkeys(lexicon.correspondences()[0].code, 0))
    best = min(
        permutations(puzzle.open),
        key=lambda order: (len(breakers(puzzle, order)), -area(puzzle, order)),
    )
    found = solve(puzzle, 1)
    assert len(breakers(puzzle, found)) == len(breakers(puzzle, best))
    assert area(puzzle, found) >= 0.98 * area(puzzle, best)


def test_a_seed_gives_the_same_order(material: Material, units: list[Unit]) -> None:
    puzzle = pose(units, material.words[::6], {})
    assert solve(puzzle, 4) == solve(puzzle, 4)


def test_what_is_taught_is_left_out_and_still_kept_apart(
    material: Material, units: list[Unit]
) -> None:
    known = {thing: 0 for token in ("m", "a") for thing in named(units, token).things}
    puzzle = pose(units, material.words, known)
    assert {units[index].token for index in puzzle.started} == {"m", "a"}
    order = take_best(puzzle, [1.0] * len(units))
    assert units[order[0]].token != "n"
    assert len(order) == len(units) - 2


def test_endings_wait_for_their_words(material: Material, units: list[Unit]) -> None:
    puzzle = pose(units, material.words, {})
    ending = units.index(named(units, "-ing"))
    rest = [unit for unit in puzzle.open if unit != ending]
    leads = [unit for unit in rest if unit in puzzle.leads[ending]]
    early = [*leads, ending, *[unit for unit in rest if unit not in leads]]
    opened = sum(puzzle.targets[n][1] for n in completed(puzzle, early)[ending])
    assert opened < FEWEST_OPENED
    assert units[ending].kind is Kind.ENDING


def test_the_docs_show_the_table_of_constraints() -> None:
    shown = (ROOT / "docs" / "taught.md").read_text("utf-8")
    for constraint in CONSTRAINTS:
        assert f"| {constraint.rule} | {constraint.reason} | {constraint.source} |" in shown


def test_nothing_is_open_before_it_is_taught(material: Material) -> None:
    from phonodrill.taught.steps import parse_steps

    first = first_taught(parse_steps(["s"], material.inventory))
    assert not [word.text for word in material.words if word.opens_at(first) <= 1]
