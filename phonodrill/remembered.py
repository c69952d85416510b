"""The last results, so that what is asked again is not worked out again."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from typing import Generic, TypeVar

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


class Remembered(Generic[K, V]):
    """Keeps the results that were asked for last, and no more than so many.

    Args:
        most: how many are kept; the one not asked for longest is forgotten.

    >>> squares = Remembered(2)
    >>> [squares.recall(number, lambda: number * number) for number in (2, 3, 2, 4)]
    [4, 9, 4, 16]
    >>> 3 in squares, 2 in squares
    (False, True)
    """

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[K, V] = OrderedDict()

    def __contains__(self, key: K) -> bool:
        return key in self._kept

    def __len__(self) -> int:
        return len(self._kept)

    def recall(self, key: K, make: Callable[[], V]) -> V:
        """Return the result for a key; make it if it is not remembered.

        Args:
            key: all that the result depends on.
            make: makes it; what it raises is passed on and nothing is kept.
        """
        if key not in self._kept:
            made = make()
            self._kept[key] = made
            if len(self._kept) > self._most:
                self._kept.popitem(last=False)
            return made
        self._kept.move_to_end(key)
        return self._kept[key]
