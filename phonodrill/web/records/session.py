"""Who is signed in, and how often a passphrase may be tried."""

from __future__ import annotations

import hmac
import secrets
import threading
import time

from phonodrill.records.passphrase import derive_key

COOKIE = "phonodrill_session"
LASTS = 8 * 3600
"""Seconds for which one is signed in: a day at school."""
FREE_TRIES = 5
FIRST_WAIT = 30
LONGEST_WAIT = 900
FORGOTTEN = 3600
"""Seconds without a try after which earlier ones are forgotten."""
_PURPOSE = "session"


def new_session(now: float | None = None) -> str:
    """Return what the cookie of one who signs in holds: when it ends, signed.

    It is signed with a key that comes from the passphrase: a new passphrase ends every
    session, and all servers with the same one agree. Nothing of it is kept here.
    """
    ends = f"{int((now or time.time()) + LASTS)}.{secrets.token_hex(8)}"
    return f"{ends}.{_sign(ends)}"


def is_session(cookie: str, now: float | None = None) -> bool:
    """Whether a cookie says that its visitor is signed in."""
    ends, _, signature = cookie.rpartition(".")
    expected = _sign(ends)
    if not expected or not hmac.compare_digest(expected.encode(), signature.encode()):
        return False
    return int(ends.partition(".")[0]) > (now or time.time())


class Tries:
    """Counts wrong passphrases, of all visitors together.

    All are counted as one, for behind a proxy all come from one address. Who is signed in
    already is not kept waiting.
    """

    def __init__(self) -> None:
        self._count = 0
        self._last = 0.0
        self._opens = 0.0
        self._lock = threading.Lock()

    def begin(self, now: float) -> int:
        """Begin a try; it counts as wrong until :meth:`forget` is called.

        Args:
            now: seconds of a clock that only goes forward.

        Returns:
            0, or for how many seconds nobody may try.
        """
        with self._lock:
            if now < self._opens:
                return int(self._opens - now) + 1
            if now - self._last > FORGOTTEN:
                self._count = 0
            self._count += 1
            self._last = now
            beyond = self._count - FREE_TRIES
            if beyond >= 0:
                # No more doublings than are needed: the number must not grow for ever.
                self._opens = now + min(FIRST_WAIT * 2 ** min(beyond, 10), LONGEST_WAIT)
            return 0

    def forget(self) -> None:
        """Forget all wrong tries, as the passphrase was given."""
        with self._lock:
            self._count = 0
            self._opens = 0.0


def _sign(text: str) -> str:
    key = derive_key(_PURPOSE)
    return hmac.digest(key, text.encode(), "sha256").hex() if key else ""
