"""How often is a truly weakest skill picked? A simulation with stated assumptions.

    python -m tests.benchmarks.simulate_next            # the table of docs/progress.md
    python -m tests.benchmarks.simulate_next --plot docs/progress.svg

Assumptions:

* 24 students, 10 skills. A student's ability in a skill is the sum of what the student
  brings to all skills (normal, deviation 0.8), how hard the skill is for everybody
  (normal, deviation 0.8) and what is the student's own in it (normal, deviation 0.8), in
  logits, around 0.5: children in the midst of learning.
* An item is right with the probability of the two-parameter logistic model (Birnbaum 1968)
  with a floor for guessing: ``guess + (1 - guess) / (1 + exp(-slope * (ability - hard)))``.
  Items differ in how hard they are (normal, deviation 0.7) and how well they tell
  (slope, log-normal around 1.2, deviation 0.25 of the logarithm); guessing is 0.1.
* Checks are of eight items on two skills drawn by chance, the same for all students, so
  that skills are asked unevenly, as in school.
* Truth: the skill with the lowest ability; the *weakest third* are the lower three.

Compared: a skill by chance among those asked, the lowest raw share right (ties: by
chance), and the estimate that ``next`` ranks by.
"""

from __future__ import annotations

import argparse
import random
from math import exp
from pathlib import Path
from typing import NamedTuple

from phonodrill.records.answer import Kind, Skill
from phonodrill.records.estimate import WEIGHT, estimate
from phonodrill.records.standing import Standing, judge, wilson
from phonodrill.render.plot import line_chart

STUDENTS, SKILLS, THIRD = 24, 10, 3
PER_CHECK, SKILLS_A_CHECK = 8, 2
CHECKS = (2, 4, 6, 8, 10, 12, 14, 16, 18, 20)
WAYS = ("chance", "raw", "ours")


class World(NamedTuple):
    """Abilities of a group: one row a student, one number a skill."""

    abilities: list[list[float]]
    skills: list[Skill]


class Hits(NamedTuple):
    """How often a way picked well, of the picks made."""

    weakest: float
    third: float


def make_world(rng: random.Random) -> World:
    """Draw a group."""
    hard = [rng.gauss(0, 0.8) for _ in range(SKILLS)]
    abilities = []
    for _ in range(STUDENTS):
        general = rng.gauss(0.5, 0.8)
        abilities.append([general - h + rng.gauss(0, 0.8) for h in hard])
    return World(abilities, [Skill(Kind.CONDITION, f"skill {n}") for n in range(SKILLS)])


def answer(ability: float, hard: float, slope: float, rng: random.Random) -> bool:
    """Answer an item: two-parameter logistic with a floor for guessing."""
    guess = 0.1
    chance = guess + (1 - guess) / (1 + exp(-slope * (ability - hard)))
    return rng.random() < chance


def simulate_checks(world: World, checks: int, rng: random.Random) -> list[list[list[int]]]:
    """Give checks; return (right, asked) of each student and skill."""
    counts = [[[0, 0] for _ in range(SKILLS)] for _ in range(STUDENTS)]
    for _ in range(checks):
        for skill in rng.sample(range(SKILLS), SKILLS_A_CHECK):
            for _ in range(PER_CHECK // SKILLS_A_CHECK):
                hard, slope = rng.gauss(0, 0.7), rng.lognormvariate(0.182, 0.25)
                for student in range(STUDENTS):
                    right = answer(world.abilities[student][skill], hard, slope, rng)
                    counts[student][skill][0] += right
                    counts[student][skill][1] += 1
    return counts


def standings_of(world: World, counts: list[list[list[int]]]) -> list[Standing]:
    """Write counts as standings."""
    return [
        Standing(f"{s:02}", skill, right, asked, wilson(right, asked), judge(right, asked), "")
        for s, row in enumerate(counts)
        for skill, (right, asked) in zip(world.skills, row, strict=True)
        if asked
    ]


def picks(
    world: World, counts: list[list[list[int]]], weight: float, rng: random.Random
) -> dict[str, list[int]]:
    """Return what each way picks for each student, the number of the skill."""
    estimates = estimate(standings_of(world, counts), weight)
    found: dict[str, list[int]] = {way: [] for way in WAYS}
    for student, row in enumerate(counts):
        asked = [skill for skill in range(SKILLS) if row[skill][1]]
        found["chance"].append(rng.choice(asked))
        raw = {skill: row[skill][0] / row[skill][1] for skill in asked}
        lowest = min(raw.values())
        found["raw"].append(rng.choice([skill for skill in asked if raw[skill] == lowest]))
        code = f"{student:02}"
        ours = {skill: estimates[code, world.skills[skill]] for skill in asked}
        found["ours"].append(min(asked, key=lambda skill: ours[skill]))
    return found


def run(worlds: int, checks: int, seed: int, weight: float = WEIGHT) -> dict[str, Hits]:
    """Simulate some groups and count the good picks of each way."""
    hits = {way: [0, 0] for way in WAYS}
    for number in range(worlds):
        rng = random.Random(f"{seed} {number} {checks}")
        world = make_world(rng)
        for way, chosen in picks(world, simulate_checks(world, checks, rng), weight, rng).items():
            for own, pick in zip(world.abilities, chosen, strict=True):
                rank = sorted(range(SKILLS), key=own.__getitem__).index(pick)
                hits[way][0] += rank == 0
                hits[way][1] += rank < THIRD
    every = worlds * STUDENTS
    return {way: Hits(first / every, third / every) for way, (first, third) in hits.items()}


def rows_of(worlds: int, seed: int) -> list[tuple[int, dict[str, Hits]]]:
    """Return the items given to each student, and the hits of each way."""
    return [(PER_CHECK * checks, run(worlds, checks, seed)) for checks in CHECKS]


def draw(rows: list[tuple[int, dict[str, Hits]]]) -> str:
    """Draw how often each way finds the weakest skill."""
    names = {"ours": "next", "raw": "lowest raw share", "chance": "by chance"}
    return line_chart(
        "How often a truly weakest skill is picked",
        "items given to each student",
        "per cent of students",
        {name: [round(100 * hits[way].weakest) for _, hits in rows] for way, name in names.items()},
        marks=[str(items) for items, _ in rows],
    )


def main() -> None:
    """Print the table, and draw the plot if asked."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--worlds", type=int, default=400, help="groups simulated a row")
    parser.add_argument("--seed", type=int, default=2)
    parser.add_argument("--plot", type=Path, help="SVG file to write")
    args = parser.parse_args()
    rows = rows_of(args.worlds, args.seed)
    print("| items | chance | lowest raw share | `next` | third: chance | raw share | `next` |")
    print("|--:|--:|--:|--:|--:|--:|--:|")
    for items, hits in rows:
        first = " | ".join(f"{hits[way].weakest:.1%}" for way in WAYS)
        third = " | ".join(f"{hits[way].third:.1%}" for way in WAYS)
        print(f"| {items} | {first} | {third} |")
    if args.plot:
        args.plot.write_text(draw(rows), encoding="utf-8")


if __name__ == "__main__":
    main()
