"""A queue before a few threads: work is done in its turn, or given up."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from typing import Any, TypeVar

from phonodrill.web.settings import LONGEST_WORK

R = TypeVar("R")


class BusyError(Exception):
    """A request waited too long, or the page is stopping."""


class Turns:
    """Does work in threads of its own, in the order in which it was asked for.

    Args:
        threads: how many.
        name: of the threads.
        begin: is called once in each thread.
    """

    def __init__(self, threads: int, name: str, begin: Callable[[], object] | None = None) -> None:
        self._threads = ThreadPoolExecutor(threads, name, begin)
        self._waiting: set[asyncio.Future[Any]] = set()
        self._is_stopping = False

    async def take(self, work: Callable[[], R]) -> R:
        """Do some work.

        Raises:
            BusyError: if it took too long, or nothing is done any more.
        """
        if self._is_stopping:
            raise BusyError
        turn = partial(self._do, work)
        future = asyncio.get_running_loop().run_in_executor(self._threads, turn)
        self._waiting.add(future)
        future.add_done_callback(self._waiting.discard)
        # Nobody may be left to take what goes wrong; then it is no fault to be logged.
        future.add_done_callback(lambda done: done.cancelled() or done.exception())
        try:
            return await asyncio.wait_for(asyncio.shield(future), LONGEST_WORK)
        except TimeoutError as error:
            future.cancel()
            raise BusyError from error

    def stop(self) -> None:
        """Take no more work, and give up what is waited for."""
        self._is_stopping = True
        for future in tuple(self._waiting):
            # From a signal, so in the middle of anything; the loop may be asleep.
            future.get_loop().call_soon_threadsafe(future.cancel)

    def close(self, last: Callable[[], object] | None = None) -> None:
        """End the threads.

        Args:
            last: is called in one of them, after all that was asked for; without, what is
                not begun is given up.
        """
        if last:
            self._threads.submit(last).result()
        self._threads.shutdown(cancel_futures=True)

    def _do(self, work: Callable[[], R]) -> R:
        if self._is_stopping:
            raise BusyError
        return work()
