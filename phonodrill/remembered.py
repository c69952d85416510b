"""The last results, so that what is asked again is not worked out again."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from typing import TYPE_CHECKING, Any, Generic, TypeVar
from weakref import WeakKeyDictionary

if TYPE_CHECKING:
    from phonodrill.lexicon.store import Lexicon

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


MOST_RECALLED = 40
"""Tables kept of one lexicon: those that a page's visitors ask for at about one time."""


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


_OF_LEXICON: WeakKeyDictionary[Lexicon, Remembered[Hashable, Any]] = WeakKeyDictionary()


def recall(lexicon: Lexicon, key: Hashable, make: Callable[[], V]) -> V:
    """Return what was worked out from a lexicon before, or work it out.

    Args:
        lexicon: what it was worked out from; when it goes, this goes with it.
        key: all else that it depends on, and a name for what it is.
        make: works it out.
    """
    kept = _OF_LEXICON.setdefault(lexicon, Remembered(MOST_RECALLED))
    found: V = kept.recall(key, make)
    return found
