"""How groups and students stand in addresses: by digits that say nothing of them.

An address is kept by the browser and may be kept by a proxy; names and codes are not.
"""

from __future__ import annotations

import hmac
import secrets
from typing import Annotated, NamedTuple

from fastapi import Path

from phonodrill.errors import PhonodrillError
from phonodrill.records.passphrase import derive_key
from phonodrill.records.store import Store

DIGITS = 12
"""Digits only: letters drawn at random spell words now and then."""
KEY = rf"^\d{{{DIGITS}}}$"
CHECK_KEY = r"^\d{8}$"
GroupKey = Annotated[str, Path(pattern=KEY, description="Key of the group.")]
StudentKey = Annotated[str, Path(pattern=KEY, description="Key of the student.")]
CheckKey = Annotated[str, Path(pattern=CHECK_KEY, description="The digits of the check.")]
_HERE = secrets.token_bytes(32)


class Found(NamedTuple):
    """A student that a key stands for.

    Attributes:
        group: name of the group.
        student: code.
    """

    group: str
    student: str


class Keys:
    """Writes keys and finds what they stand for.

    Args:
        secret: without which nobody can tell what a key stands for.
    """

    def __init__(self, secret: bytes) -> None:
        self._secret = secret

    def of(self, group: str, student: str = "") -> str:
        """Return the key of a group or of a student in it."""
        text = "\0".join(("student", group, student) if student else ("group", group))
        digest = hmac.digest(self._secret, text.encode(), "sha256")
        return f"{int.from_bytes(digest) % 10**DIGITS:0{DIGITS}}"

    def group(self, store: Store, key: str) -> str:
        """Return the name of a group.

        Raises:
            PhonodrillError: if there is none of that key.
        """
        for one in store.list_groups():
            if self.of(one.name) == key:
                return one.name
        raise PhonodrillError("there is no such group any more", "the page Groups")

    def student(self, store: Store, group: str, key: str) -> str:
        """Return the code of a student.

        Args:
            store: the open store.
            group: name of the group.
            key: of the student.

        Raises:
            PhonodrillError: if there is none of that key.
        """
        for code in store.list_students(group):
            if self.of(group, code) == key:
                return code
        raise PhonodrillError("there is no such student in the group any more", "the page Groups")

    def find(self, store: Store, group: str, student: str) -> Found:
        """Return the group and the student that two keys stand for.

        Raises:
            PhonodrillError: if there is none.
        """
        name = self.group(store, group)
        return Found(name, self.student(store, name, student))


def keys_now() -> Keys:
    """Return the keys of today: every server with one passphrase has the same.

    Without a passphrase they hold until the page is stopped.
    """
    return Keys(derive_key("addresses") or _HERE)
