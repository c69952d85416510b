"""Weigh the correspondences by expectation-maximisation (install time only).

Dempster, Laird & Rubin (1977), *Journal of the Royal Statistical Society* B 39.
A word's lattice holds all its splits; each round shares a word's count among
them by the weights so far (forward-backward), then sets the weights to the
shares of the counts.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from phonodrill.graphemes.lattice import Edge, Lattice, Node

ROUNDS = 6
_UNSEEN = 0.05
"""Count given to a correspondence that no training word uses."""


def train(lattices: Iterable[Lattice], size: int, *, rounds: int = ROUNDS) -> list[float]:
    """Weigh the correspondences.

    Args:
        lattices: of the training words, from correspondences only.
        size: number of correspondences.
        rounds: how often the counts are shared anew.

    Returns:
        A price each: the negative natural log of its share.
    """
    ambiguous: list[Lattice] = []
    certain = [_UNSEEN] * size
    for lattice in lattices:
        if len({edge.start for edge in lattice.edges}) == len(lattice.edges):
            for edge in lattice.edges:
                if edge.row >= 0:
                    certain[edge.row] += 1
        else:
            ambiguous.append(lattice)
    weights = [1.0 / size] * size
    for _ in range(rounds):
        counts = list(certain)
        for lattice in ambiguous:
            _share(lattice, weights, counts)
        total = math.fsum(counts)
        weights = [count / total for count in counts]
    return [-math.log(weight) for weight in weights]


def _share(lattice: Lattice, weights: Sequence[float], counts: list[float]) -> None:
    forward: dict[Node, float] = {lattice.start: 1.0}
    for edge in lattice.edges:
        flow = forward[edge.start] * _weight(edge, weights)
        forward[edge.end] = forward.get(edge.end, 0.0) + flow
    backward: dict[Node, float] = {lattice.end: 1.0}
    for edge in reversed(lattice.edges):
        flow = backward[edge.end] * _weight(edge, weights)
        backward[edge.start] = backward.get(edge.start, 0.0) + flow
    total = forward[lattice.end]
    for edge in lattice.edges:
        if edge.row >= 0:
            through = forward[edge.start] * _weight(edge, weights) * backward[edge.end]
            counts[edge.row] += through / total


def _weight(edge: Edge, weights: Sequence[float]) -> float:
    return math.exp(-edge.price) * (weights[edge.row] if edge.row >= 0 else 1.0)
