"""How often is a truly weakest skill picked? A simulation with stated assumptions.

    python -m tests.benchmarks.simulate_next            # the tables of docs/progress.md
    python -m tests.benchmarks.simulate_next --plot docs/progress.svg

Assumptions:

* 24 students, 10 skills. A student's ability in a skill is the sum of what the student
  brings to all skills (normal, deviation 0.8), how hard the skill is for everybody
  (normal, deviation 0.8) and what is the student's own in it (normal, deviation 0.8), in
  logits, around 0.5: children in the midst of learning.
* An item is right with the probability of the two-parameter logistic model (Birnbaum 1968)
  with a floor for guessing: ``guess + (1 - guess) / (1 + exp(-slope * (ability - hard)))``.
  Items differ in how hard they are (normal, deviation 0.7) and how well they tell
  (slope, log-normal, median 1.2, deviation 0.25 of the logarithm); guessing is 0.1.
* Checks are of eight items on two skills drawn by chance, so that skills are asked
  unevenly, as in school. Nobody learns meanwhile. *Whole group*: all students are given
  every check. *Small groups*: students are parted in three by their mean ability, and
  every check is given to one of the three, drawn by chance.
* Truth for a student: the skill with the lowest ability. For the group: the skill with the
  lowest mean ability. The *weakest three* are the lowest three of the ten.

Compared, among the skills asked so far: one by chance, the lowest raw share right (ties:
by chance), and ours: for a student the estimate that ``next`` ranks by, for the group what
``next`` picks.
"""

from __future__ import annotations

import argparse
import random
from math import exp
from pathlib import Path
from typing import NamedTuple

from phonodrill.records.answer import Kind, Skill
from phonodrill.records.estimate import WEIGHT, estimate
from phonodrill.records.next_focus import choose_next
from phonodrill.records.standing import Standing, judge, shows_need, wilson
from phonodrill.render.plot import line_chart

STUDENTS, SKILLS, WEAKEST = 24, 10, 3
PER_CHECK, SKILLS_A_CHECK = 8, 2
CHECKS = (2, 4, 6, 8, 10, 12, 14, 16, 18, 20)
WAYS = ("chance", "raw", "ours")
Counts = list[list[list[int]]]
"""[right, asked] of each student and skill."""


class World(NamedTuple):
    """Abilities of a group: one row a student, one number a skill."""

    abilities: list[list[float]]
    skills: list[Skill]


class Hits(NamedTuple):
    """How often a way picked well, of the picks made."""

    weakest: float
    among: float


def make_world(rng: random.Random) -> World:
    """Draw a group."""
    hard = [rng.gauss(0, 0.8) for _ in range(SKILLS)]
    abilities = []
    for _ in range(STUDENTS):
        general = rng.gauss(0.5, 0.8)
        abilities.append([general - h + rng.gauss(0, 0.8) for h in hard])
    # Correspondences are all open to `next` if no order is given.
    return World(abilities, [Skill(Kind.CORRESPONDENCE, f"skill{n}=s") for n in range(SKILLS)])


def answer(ability: float, hard: float, slope: float, rng: random.Random) -> bool:
    """Answer an item: two-parameter logistic with a floor for guessing."""
    guess = 0.1
    chance = guess + (1 - guess) / (1 + exp(-slope * (ability - hard)))
    return rng.random() < chance


def simulate_checks(world: World, checks: int, rng: random.Random, parts: int = 1) -> Counts:
    """Give checks, each to one of so many small groups."""
    counts = [[[0, 0] for _ in range(SKILLS)] for _ in range(STUDENTS)]
    order = sorted(range(STUDENTS), key=lambda student: sum(world.abilities[student]))
    size = STUDENTS // parts
    for _ in range(checks * parts):
        start = size * rng.randrange(parts)
        for skill in rng.sample(range(SKILLS), SKILLS_A_CHECK):
            for _ in range(PER_CHECK // SKILLS_A_CHECK):
                hard, slope = rng.gauss(0, 0.7), rng.lognormvariate(0.182, 0.25)
                for student in order[start : start + size]:
                    right = answer(world.abilities[student][skill], hard, slope, rng)
                    counts[student][skill][0] += right
                    counts[student][skill][1] += 1
    return counts


def standings_of(world: World, counts: Counts) -> list[Standing]:
    """Write counts as standings."""
    return [
        Standing(
            f"{s:02}",
            skill,
            right,
            asked,
            wilson(right, asked),
            judge(right, asked),
            shows_need(right, asked),
            "",
        )
        for s, row in enumerate(counts)
        for skill, (right, asked) in zip(world.skills, row, strict=True)
        if asked
    ]


def pick_lowest(shares: dict[int, float], rng: random.Random) -> int:
    """Return the skill of the lowest share; ties by chance."""
    lowest = min(shares.values())
    return rng.choice([skill for skill, share in shares.items() if share == lowest])


def picks_of_students(
    world: World, counts: Counts, weight: float, rng: random.Random
) -> dict[str, list[int]]:
    """Return what each way picks for each student, the number of the skill."""
    estimates = estimate(standings_of(world, counts), weight)
    found: dict[str, list[int]] = {way: [] for way in WAYS}
    for student, row in enumerate(counts):
        asked = [skill for skill in range(SKILLS) if row[skill][1]]
        if not asked:
            for way in WAYS:
                found[way].append(-1)
            continue
        raw = {skill: row[skill][0] / row[skill][1] for skill in asked}
        ours = {skill: estimates[f"{student:02}", world.skills[skill]] for skill in asked}
        found["chance"].append(rng.choice(asked))
        found["raw"].append(pick_lowest(raw, rng))
        found["ours"].append(pick_lowest(ours, rng))
    return found


def picks_of_group(world: World, counts: Counts, rng: random.Random) -> dict[str, int]:
    """Return what each way picks for the group; ``next`` itself for ours."""
    asked = [skill for skill in range(SKILLS) if any(row[skill][1] for row in counts)]
    sums = {skill: [sum(row[skill][i] for row in counts) for i in (0, 1)] for skill in asked}
    raw = {skill: right / every for skill, (right, every) in sums.items()}
    chosen = choose_next(standings_of(world, counts))
    # Where nothing is short of the mark, `next` picks nothing: that is a miss.
    ours = world.skills.index(chosen[0].skill) if chosen else -1
    return {"chance": rng.choice(asked), "raw": pick_lowest(raw, rng), "ours": ours}


def run(
    worlds: int, checks: int, seed: int, weight: float = WEIGHT, parts: int = 1
) -> dict[str, Hits]:
    """Simulate some groups and count the good picks for their students."""
    hits = {way: [0, 0] for way in WAYS}
    for number in range(worlds):
        world, counts, rng = _simulate(number, checks, seed, parts)
        for way, chosen in picks_of_students(world, counts, weight, rng).items():
            for own, pick in zip(world.abilities, chosen, strict=True):
                _count(hits[way], own, pick)
    return _shares(hits, worlds * STUDENTS)


def run_groups(worlds: int, checks: int, seed: int, parts: int = 1) -> dict[str, Hits]:
    """Simulate some groups and count the good picks for each as a whole."""
    hits = {way: [0, 0] for way in WAYS}
    for number in range(worlds):
        world, counts, rng = _simulate(number, checks, seed, parts)
        means = [sum(row[skill] for row in world.abilities) for skill in range(SKILLS)]
        for way, pick in picks_of_group(world, counts, rng).items():
            _count(hits[way], means, pick)
    return _shares(hits, worlds)


def _simulate(
    number: int, checks: int, seed: int, parts: int
) -> tuple[World, Counts, random.Random]:
    rng = random.Random(f"{seed} {number} {checks} {parts}")
    world = make_world(rng)
    return world, simulate_checks(world, checks, rng, parts), rng


def _count(hits: list[int], abilities: list[float], pick: int) -> None:
    if pick >= 0:
        rank = sorted(range(SKILLS), key=abilities.__getitem__).index(pick)
        hits[0] += rank == 0
        hits[1] += rank < WEAKEST


def _shares(hits: dict[str, list[int]], every: int) -> dict[str, Hits]:
    return {way: Hits(first / every, low / every) for way, (first, low) in hits.items()}


def draw(rows: list[tuple[int, dict[str, Hits]]]) -> str:
    """Draw how often each way finds a student's weakest skill."""
    names = {"ours": "next", "raw": "lowest raw share", "chance": "by chance"}
    return line_chart(
        "How often a student’s truly weakest skill of ten is picked",
        "items given to each student",
        "per cent",
        {name: [round(100 * hits[way].weakest) for _, hits in rows] for way, name in names.items()},
        marks=[str(items) for items, _ in rows],
    )


def write_table(name: str, rows: list[tuple[int, dict[str, Hits]]]) -> None:
    """Print a table in Markdown."""
    print(f"{name}:\n")
    print("| items | weakest: chance | raw | ours | of weakest three: chance | raw | ours |")
    print("|--:|--:|--:|--:|--:|--:|--:|")
    for items, hits in rows:
        first = " | ".join(f"{hits[way].weakest:.1%}" for way in WAYS)
        low = " | ".join(f"{hits[way].among:.1%}" for way in WAYS)
        print(f"| {items} | {first} | {low} |")
    print()


def main() -> None:
    """Print the tables, and draw the plot if asked."""
    parser = argparse.ArgumentParser(description="How often is a weakest skill picked?")
    parser.add_argument("--worlds", type=int, default=400, help="groups simulated a row")
    parser.add_argument("--seed", type=int, default=2)
    parser.add_argument("--plot", type=Path, help="SVG file to write")
    args = parser.parse_args()
    rows = [(PER_CHECK * n, run(args.worlds, n, args.seed)) for n in CHECKS]
    write_table("Students, whole group", rows)
    small = [(PER_CHECK * n, run(args.worlds, n, args.seed, parts=3)) for n in CHECKS]
    write_table("Students, small groups", small)
    for parts, name in ((1, "Group, whole group"), (3, "Group, small groups")):
        found = [(PER_CHECK * n, run_groups(args.worlds, n, args.seed, parts)) for n in CHECKS]
        write_table(name, found)
    for weight in (1, 2, 4, 8, 16):
        shares = [run(args.worlds // 4, n, args.seed, weight)["ours"].weakest for n in (4, 10, 20)]
        print(f"weight {weight}: " + ", ".join(f"{share:.1%}" for share in shares))
    if args.plot:
        args.plot.write_text(draw(rows), encoding="utf-8")


if __name__ == "__main__":
    main()
