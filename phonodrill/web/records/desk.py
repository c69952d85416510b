"""The one thread that reads and writes the records, and how their errors are told."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial
from typing import Any, Concatenate, ParamSpec, TypeVar

from fastapi import Request

from phonodrill.errors import PhonodrillError
from phonodrill.records.kept import Result
from phonodrill.records.place import Place, find_place
from phonodrill.records.store import Store
from phonodrill.remembered import Remembered
from phonodrill.web.page import Problem
from phonodrill.web.records.errors import RecordsError
from phonodrill.web.turns import Turns

P = ParamSpec("P")
R = TypeVar("R")
_PAGES = (
    (re.compile(r"phonodrill group \w+(?: --students)?(?:, or phonodrill group add)?"), "Groups"),
    (re.compile(r"phonodrill check (?:list|show \d+)"), "Check"),
)
"""Commands that a hint names, and the page that does the same."""
UNAVAILABLE = 503
MOST_REPLACED = 2000
"""Items for which what was entered before is remembered."""


Stack = list[Result | None]


class RecordsDesk:
    """Opens the records when they are first asked for; answers one after another.

    Attributes:
        replaced: what was entered before the last taps on an item, by check, student and
            position, so that undoing brings it back; for the thread that has the records.
    """

    def __init__(self) -> None:
        self._turns = Turns(1, "records")
        self._store: Store | None = None
        self.replaced: Remembered[tuple[str, str, int], Stack] = Remembered(MOST_REPLACED)

    async def ask(
        self, answer: Callable[Concatenate[Store, P], R], *args: P.args, **kwargs: P.kwargs
    ) -> R:
        """Call a function with the store, in its turn.

        Raises:
            RecordsError: if the records cannot be opened or used, or lack what is asked for.
            BusyError: if it took too long.
        """
        return await self._turns.take(partial(self._answer, partial(answer, **kwargs), args))

    def forget(self) -> None:
        """Forget what was entered before, as a student was erased."""
        self.replaced = Remembered(MOST_REPLACED)

    def close(self) -> None:
        """Close the records."""
        self._turns.close(self._close)

    def _answer(self, answer: Callable[..., R], args: tuple[Any, ...]) -> R:
        store = self._open()
        try:
            return answer(store, *args)
        except PhonodrillError as error:
            raise RecordsError(told(error, store.place)) from None

    def _open(self) -> Store:
        if self._store is None:
            place = None
            try:
                place = find_place()
                self._store = Store(place)
            except PhonodrillError as error:
                raise RecordsError(told(error, place, UNAVAILABLE)) from None
        return self._store

    def _close(self) -> None:
        if self._store:
            self._store.close()
            self._store = None


def records_of(request: Request) -> RecordsDesk:
    """Return the desk that has the records."""
    desk: RecordsDesk = request.app.state.records
    return desk


def told(error: PhonodrillError, place: Place | None, status: int = 400) -> Problem:
    """Word an error of the records for a page.

    Args:
        error: what happened.
        place: where the records are, which a page does not tell; None if not known.
        status: of HTTP.

    >>> from pathlib import Path
    >>> place = Place(Path("/home/harbor/records.sqlite"))
    >>> error = PhonodrillError(f"{place.shown} is damaged", "phonodrill group list")
    >>> told(error, place)
    Problem(message='the file of records is damaged', hint='the page Groups', status=400)
    """
    message, hint = error.message, error.hint
    if place and place.path:
        for path, name in ((place.path, "file"), (place.path.parent, "folder")):
            message = message.replace(str(path), f"the {name} of records")
            hint = hint.replace(str(path), f"the {name} of records")
    for command, page in _PAGES:
        hint = command.sub(f"the page {page}", hint)
    return Problem(message, hint, status)
