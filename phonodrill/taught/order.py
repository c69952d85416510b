"""Work out an order of steps that opens the most words, or sentences, soonest.

What is made as large as can be is the area under the growth curve: each target
counts once for every step at which it can be read already. First a greedy pass
takes, of the units that the constraints allow, the one with the highest smooth
score (a target counts half for each unit it still lacks, so a letter that many
nearly open words wait for comes early). Then units are moved to other places as
long as that enlarges the area and breaks no constraint. A few passes start from
scores mixed a little by chance; the best result is kept.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from phonodrill.graphemes.correspondence import Kind
from phonodrill.taught.constraints import FEWEST_OPENED, before, pairs_apart, waits
from phonodrill.taught.growth import NEVER, Target
from phonodrill.taught.units import Unit, owners

PASSES = 2
MIXED = 0.15
"""How far chance may change a score in all passes but the first."""
_DECAY = 0.5
_MISSING_LEAD = 1000

Order = list[int]


class Puzzle(NamedTuple):
    """All that the search needs, in numbers.

    Attributes:
        units: what is to be put in order, and what is taught already.
        started: unit -> step, below 0, for what is taught already.
        leads: for each unit those that must come before it.
        near: for each unit the others that must be apart from it, and how far.
        waits: for each unit the first place it may have.
        fewest: for each ending how many targets it must open at once; 0 for the others.
        targets: sets of units that open so many targets together.
        waiting: for each unit the numbers of the targets that need it.
    """

    units: tuple[Unit, ...]
    started: Mapping[int, int]
    leads: tuple[frozenset[int], ...]
    near: tuple[Mapping[int, int], ...]
    waits: tuple[int, ...]
    fewest: tuple[int, ...]
    targets: tuple[tuple[frozenset[int], int], ...]
    waiting: tuple[tuple[int, ...], ...]

    @property
    def open(self) -> list[int]:
        """The units to put in order."""
        return [unit for unit in range(len(self.units)) if unit not in self.started]


def pose(units: Sequence[Unit], targets: Iterable[Target], first: Mapping[str, int]) -> Puzzle:
    """State the puzzle.

    Args:
        units: what there is to teach.
        targets: what is to be read.
        first: for each thing taught already the step, the last one being 0, those
            before it below.
    """
    started = {
        index: max(first[thing] for thing in unit.things) - 1
        for index, unit in enumerate(units)
        if all(thing in first for thing in unit.things)
    }
    owner = owners(units)
    counted = Counter(
        need for target in targets if (need := _units_needed(target, owner, first)) is not None
    )
    needs = tuple(sorted(counted.items(), key=lambda item: (sorted(item[0]), item[1])))
    near: list[dict[int, int]] = [{} for _ in units]
    for one, other, distance in pairs_apart(units):
        near[one][other] = near[other][one] = distance
    return Puzzle(
        tuple(units),
        started,
        tuple(frozenset(before(unit, units)) - started.keys() for unit in units),
        tuple(near),
        tuple(0 if started else waits(unit) for unit in units),
        tuple(
            min(FEWEST_OPENED, sum(count for need, count in needs if index in need) // 2)
            if unit.kind is Kind.ENDING
            else 0
            for index, unit in enumerate(units)
        ),
        needs,
        tuple(
            tuple(number for number, (need, _) in enumerate(needs) if unit in need)
            for unit in range(len(units))
        ),
    )


def solve(puzzle: Puzzle, seed: int, passes: int = PASSES) -> Order:
    """Return the best order found.

    Args:
        puzzle: what is to be put in order.
        seed: of the chance that mixes the scores.
        passes: how many orders to improve and compare; 0 for one that is not improved,
            in a tenth of the time.
    """
    if not passes:
        return take_best(puzzle, [1.0] * len(puzzle.units))
    rng = random.Random(seed)
    orders = []
    for number in range(passes):
        mix = [1 + MIXED * rng.random() * bool(number) for _ in puzzle.units]
        orders.append(improve(puzzle, take_best(puzzle, mix)))
    return min(orders, key=lambda order: (len(breakers(puzzle, order)), -area(puzzle, order)))


def take_best(puzzle: Puzzle, mix: Sequence[float], *, by_score: bool = True) -> Order:
    """Put units in order by taking the best allowed one again and again.

    Args:
        puzzle: what is to be put in order.
        mix: a factor for the score of each unit.
        by_score: whether what is nearly open counts; otherwise only ``mix`` does.
    """
    scores = [0.0] * len(puzzle.units)
    lacking = [set(need) for need, _ in puzzle.targets]
    for need, count in puzzle.targets:
        for unit in need:
            scores[unit] += count * _DECAY ** len(need)
    order: Order = []
    left = set(puzzle.open)
    while left:
        ranked = _look_ahead(puzzle, left, scores) if by_score else [1.0] * len(scores)
        unit = min(
            left,
            key=lambda u: (_obstacles(puzzle, u, order, left, lacking), -ranked[u] * mix[u], u),
        )
        order.append(unit)
        left.remove(unit)
        for number in puzzle.waiting[unit]:
            gain = puzzle.targets[number][1] * _DECAY ** len(lacking[number])
            lacking[number].remove(unit)
            for other in lacking[number]:
                scores[other] += gain
    return order


def improve(puzzle: Puzzle, order: Order) -> Order:
    """Move single units as long as that enlarges the area and breaks no more constraints.

    A unit that breaks a constraint may also move at the cost of area.
    """
    order = list(order)
    done = completed(puzzle, order)
    faults = breakers(puzzle, order)
    found = True
    while found:
        found = False
        for unit in puzzle.open:
            for gain, place in _moves(puzzle, order, unit, done):
                if gain <= 0 and unit not in faults:
                    break
                moved = [other for other in order if other != unit]
                moved.insert(place, unit)
                left = breakers(puzzle, moved, len(faults))
                if len(left) < len(faults) or (len(left) == len(faults) and gain > 0):
                    order, faults, found = moved, left, True
                    done = completed(puzzle, order)
                    break
    return order


def area(puzzle: Puzzle, order: Sequence[int]) -> int:
    """Return how many targets can be read after each step, summed over the steps."""
    done = completed(puzzle, order)
    return sum(
        (len(order) - place) * _opened(puzzle, done[unit]) for place, unit in enumerate(order)
    )


def breakers(puzzle: Puzzle, order: Sequence[int], most: int = NEVER) -> list[int]:
    """Return the units that break a constraint, once for each one broken.

    Of two that are too near, the later one does. Beyond ``most`` the count may stop.
    """
    places = {**puzzle.started, **{unit: place for place, unit in enumerate(order)}}
    found: list[int] = []
    for unit in order:
        place = places[unit]
        if place < puzzle.waits[unit]:
            found.append(unit)
        found += [unit for lead in puzzle.leads[unit] if places[lead] > place]
        found += [
            unit
            for other, distance in puzzle.near[unit].items()
            if 0 < place - places[other] < distance
        ]
        if len(found) > most:
            return found
    endings = (unit for unit in order if puzzle.units[unit].kind is Kind.ENDING)
    return found + [u for u in endings if _opened_by(puzzle, u, places) < puzzle.fewest[u]]


def completed(puzzle: Puzzle, order: Sequence[int]) -> list[list[int]]:
    """Return for each unit the numbers of the targets that it opens, as the last they need."""
    places = [0] * len(puzzle.units)
    for place, unit in enumerate(order):
        places[unit] = place
    done: list[list[int]] = [[] for _ in puzzle.units]
    for number, (need, _) in enumerate(puzzle.targets):
        if need:
            done[max(need, key=places.__getitem__)].append(number)
    return done


def _units_needed(
    target: Target, owner: Mapping[str, int], first: Mapping[str, int]
) -> frozenset[int] | None:
    """The units that open a target: for each word its cheapest way, or None if none is enough."""
    needed: frozenset[int] = frozenset()
    for ways in target.words:
        lacking = (way - first.keys() for way in ways)
        possible = [
            frozenset(owner[thing] for thing in way) for way in lacking if way <= owner.keys()
        ]
        if not possible:
            return None
        needed |= min(possible, key=lambda units: (len(units), sorted(units)))
    return needed


def _look_ahead(puzzle: Puzzle, left: set[int], scores: Sequence[float]) -> list[float]:
    """The scores, a unit that must lead a better one raised towards that one's."""
    ranked = list(scores)
    for unit in left:
        for lead in puzzle.leads[unit]:
            ranked[lead] = max(ranked[lead], _DECAY * scores[unit])
    return ranked


def _obstacles(
    puzzle: Puzzle, unit: int, order: Order, left: set[int], lacking: Sequence[set[int]]
) -> int:
    """Count what speaks against taking a unit next; a lead that is missing counts most."""
    here = len(order)
    faults = _MISSING_LEAD * len(puzzle.leads[unit] & left) + (here < puzzle.waits[unit])
    for other, distance in puzzle.near[unit].items():
        if other in puzzle.started:
            faults += here - puzzle.started[other] < distance
        else:
            faults += other in order[max(0, here - distance + 1) :]
    if puzzle.units[unit].kind is Kind.ENDING:
        opened = [number for number in puzzle.waiting[unit] if len(lacking[number]) == 1]
        faults += _opened(puzzle, opened) < puzzle.fewest[unit]
    return faults


def _opened(puzzle: Puzzle, numbers: Iterable[int]) -> int:
    return sum(puzzle.targets[number][1] for number in numbers)


def _opened_by(puzzle: Puzzle, unit: int, places: Mapping[int, int]) -> int:
    here = places[unit]
    needs = (puzzle.targets[number] for number in puzzle.waiting[unit])
    return sum(count for need, count in needs if all(places[other] <= here for other in need))


def _moves(
    puzzle: Puzzle, order: Order, unit: int, done: Sequence[Sequence[int]]
) -> list[tuple[int, int]]:
    """Return ``(gain of area, new place)`` for the places the unit may have, the best first."""
    here = order.index(unit)
    moves = []
    gain, own = 0, list(done[unit])
    for place in range(here - 1, -1, -1):
        other = order[place]
        if other in puzzle.leads[unit] or place < puzzle.waits[unit]:
            break
        # Targets that need both still wait for the later of the two.
        own = [number for number in own if other not in puzzle.targets[number][0]]
        gain += _opened(puzzle, own) - _opened(puzzle, done[other])
        moves.append((gain, place))
    gain, own = 0, list(done[unit])
    for place in range(here + 1, len(order)):
        other = order[place]
        if unit in puzzle.leads[other]:
            break
        both = [number for number in done[other] if unit in puzzle.targets[number][0]]
        gain += _opened(puzzle, done[other]) - _opened(puzzle, both) - _opened(puzzle, own)
        own += both
        moves.append((gain, place))
    return sorted(moves, key=lambda move: (-move[0], move[1]))
