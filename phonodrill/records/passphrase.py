"""The passphrase that opens the pages with records: only its argon2 hash is kept."""

from __future__ import annotations

import hmac
from pathlib import Path
from typing import Any

from phonodrill.errors import PhonodrillError
from phonodrill.extra import import_extra
from phonodrill.records.place import FILE_MODE, data_folder, make_folder, make_private
from phonodrill.whole_file import write_whole

SHORTEST = 10
"""Signs of a passphrase; a few words are easier to keep than one odd word."""
_SET = "phonodrill records passphrase"


def passphrase_path() -> Path:
    """Return the file that the hash is kept in; it is not part of the records."""
    return data_folder() / "passphrase"


def has_passphrase() -> bool:
    """Whether one was set."""
    return passphrase_path().is_file()


def keep_passphrase(text: str) -> None:
    """Keep the hash of a passphrase in the place of the one before.

    Raises:
        PhonodrillError: if it is too short, the package is missing, or the file cannot
            be written.
    """
    if len(text) < SHORTEST:
        raise PhonodrillError(
            f"a passphrase has at least {SHORTEST} signs", "three or four words in a row"
        )
    path = passphrase_path()
    made = _hasher().hash(text)
    make_folder(path.parent)
    if path.exists():
        make_private(path)
    write_whole(path, made.encode("ascii"), mode=FILE_MODE)


def derive_key(purpose: str) -> bytes | None:
    """Return a key that only who can read the hash can know; a new passphrase gives another.

    Args:
        purpose: what it is for; each purpose has its own key.

    Returns:
        32 bytes, or None if no passphrase was set or its file is empty.
    """
    try:
        kept = passphrase_path().read_bytes()
    except OSError:
        return None
    # An empty file is a passphrase for nobody: all could work its key out.
    return hmac.digest(kept, purpose.encode(), "sha256") if kept else None


def is_passphrase(text: str) -> bool:
    """Whether this is the passphrase; takes about a twentieth of a second, right or wrong.

    Raises:
        PhonodrillError: if none was set, it cannot be read, or the package is missing.
    """
    argon2 = import_extra("argon2", "a passphrase", "argon2-cffi", extra="records")
    path = passphrase_path()
    try:
        kept = path.read_text("ascii")
    except FileNotFoundError:
        raise PhonodrillError("no passphrase was set", _SET) from None
    except (OSError, UnicodeDecodeError):
        raise PhonodrillError(f"{path} cannot be read", _SET) from None
    try:
        return bool(_hasher().verify(kept, text))
    except argon2.exceptions.VerifyMismatchError:
        return False
    except (argon2.exceptions.InvalidHashError, argon2.exceptions.VerificationError):
        raise PhonodrillError(f"{path} holds no passphrase", _SET) from None


def _hasher() -> Any:
    argon2 = import_extra("argon2", "a passphrase", "argon2-cffi", extra="records")
    # The second choice of RFC 9106: for machines that cannot give 2 GB to a sign-in.
    return argon2.PasswordHasher.from_parameters(argon2.profiles.RFC_9106_LOW_MEMORY)
