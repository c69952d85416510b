"""The one thread in which all words are chosen.

The lexicon belongs to one thread, and Python runs one thread at a time anyway: a
queue before one worker serves requests in their order, and what it remembers is
remembered for all.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, Concatenate, ParamSpec, TypeVar

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay, read_overlay
from phonodrill.services.lesson import Lessons
from phonodrill.services.taught_lists import FOLDER
from phonodrill.web.long_open import LongOpenLexicon
from phonodrill.web.mild import leave_out_unfit
from phonodrill.web.settings import Settings
from phonodrill.web.turns import Turns

PRESSES = 2
"""Files that are written at the same time."""
P = ParamSpec("P")
R = TypeVar("R")


class Desk:
    """Opens the lexicon and answers requests one after another.

    Args:
        settings: where the teacher's own words are.

    Attributes:
        lessons: the last lessons, for the thread that has the lexicon.
    """

    def __init__(self, settings: Settings) -> None:
        self.settings = settings
        self._words = Turns(1, "desk", partial(FOLDER.set, settings.taught_folder))
        self._press = Turns(PRESSES, "press")
        self._lexicon: Lexicon | None = None
        self.lessons = Lessons()

    async def ask(
        self, answer: Callable[Concatenate[Lexicon, P], R], *args: P.args, **kwargs: P.kwargs
    ) -> R:
        """Call a function with the lexicon, in its turn.

        Raises:
            BusyError: if it took too long.
        """
        return await self._words.take(partial(self._answer, partial(answer, **kwargs), args))

    async def press(self, write: Callable[P, R], *args: P.args, **kwargs: P.kwargs) -> R:
        """Call a function that writes a file and needs no lexicon, so that words need not wait.

        Raises:
            BusyError: if it took too long.
        """
        return await self._press.take(partial(write, *args, **kwargs))

    def own_words(self) -> Overlay:
        """Read the teacher's own words."""
        file = self.settings.words_file
        return read_overlay(file) if file else NO_OVERLAY

    def stop(self) -> None:
        """Work out nothing more, and give up what is waited for."""
        self._words.stop()
        self._press.stop()

    def close(self) -> None:
        """Close the lexicon."""
        self.stop()
        self._press.close()
        self._words.close(self._close)

    def _answer(self, answer: Callable[..., R], args: tuple[Any, ...]) -> R:
        lexicon = self._open()
        try:
            return answer(lexicon, *args)
        except PhonodrillError as error:
            # What was typed is said again in many of them, and a class may be looking on.
            error.message = leave_out_unfit(error.message, lexicon)
            error.hint = leave_out_unfit(error.hint, lexicon)
            raise

    def _open(self) -> Lexicon:
        if self._lexicon is None:
            self._lexicon = LongOpenLexicon()
        return self._lexicon

    def _close(self) -> None:
        if self._lexicon:
            self._lexicon.close()
            self._lexicon = None
