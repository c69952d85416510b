"""The order in which the results of a check are entered, with a way back."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from phonodrill.records.kept import Check, Result
from phonodrill.records.store import Store


class Turn(NamedTuple):
    """One item that one student answers next."""

    student: str
    position: int


class Entering:
    """One student after another, item by item; each result is on the disk at once.

    Args:
        store: the open store.
        check: the check.
        turns: in order, as :func:`turns_of` gives them.
        before: what was entered already, which undoing brings back.
    """

    def __init__(
        self,
        store: Store,
        check: Check,
        turns: Sequence[Turn],
        before: Mapping[Turn, Result] | None = None,
    ) -> None:
        self._store = store
        self._check = check
        self._turns = turns
        self._before = before or {}
        self._entered: set[Turn] = set()
        self._place = 0

    @property
    def turn(self) -> Turn | None:
        """Whose turn it is, or None at the end."""
        return self._turns[self._place] if self._place < len(self._turns) else None

    @property
    def count(self) -> int:
        """How many results were entered and stand."""
        return len(self._entered)

    @property
    def left(self) -> int:
        """How many turns are left."""
        return len(self._turns) - self._place

    def enter(self, *, right: bool, said: str = "") -> None:
        """Enter a result and go on.

        Raises:
            PhonodrillError: if it cannot be kept; it is still the same turn then.
        """
        turn = self._turns[self._place]
        self._store.enter_result(self._check.key, Result(turn.position, turn.student, right, said))
        self._entered.add(turn)
        self._place += 1

    def skip(self) -> None:
        """Go on without a result."""
        self._place += 1

    def go_back(self) -> bool:
        """Take the last turn back, with what was entered in it; False if there is none.

        Raises:
            PhonodrillError: if it cannot be taken back.
        """
        if not self._place:
            return False
        turn = self._turns[self._place - 1]
        if turn in self._entered:
            if turn in self._before:
                self._store.enter_result(self._check.key, self._before[turn])
            else:
                self._store.undo_result(self._check.key, turn.position, turn.student)
            self._entered.remove(turn)
        self._place -= 1
        return True


def turns_of(
    check: Check, students: Iterable[str], entered: Iterable[Turn] = ()
) -> tuple[Turn, ...]:
    """Return the turns of a check, student by student, without those entered already."""
    done = set(entered)
    positions = range(1, len(check.items) + 1)
    turns = (Turn(student, position) for student in students for position in positions)
    return tuple(turn for turn in turns if turn not in done)
