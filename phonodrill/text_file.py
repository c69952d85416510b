"""Read a text file that a teacher made."""

from __future__ import annotations

from pathlib import Path

from phonodrill.errors import PhonodrillError

HIGHEST_BYTES = 20_000_000
_HINT = "save it as UTF-8 text"
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def read_text(path: Path) -> str:
    """Return the text of a file, without a byte order mark.

    Args:
        path: a UTF-8 text file of at most 20 MB.

    Raises:
        PhonodrillError: if it cannot be read, is too large, not UTF-8 or no text.
    """
    try:
        return without_mark(read_content(path).decode())
    except UnicodeDecodeError as error:
        raise PhonodrillError(f"{path} is not UTF-8 text", _HINT) from error


def without_mark(text: str) -> str:
    """Return a text without byte order marks; a program that adds one may add a second."""
    return text.lstrip("\ufeff")


def read_content(path: Path) -> bytes:
    """Return what a text file holds.

    Args:
        path: a file of at most 20 MB.

    Raises:
        PhonodrillError: if it cannot be read, is too large, or is UTF-16 or no text at
            all; caused by a ``FileNotFoundError`` or a ``NotADirectoryError`` if it is
            not there.
    """
    try:
        with path.open("rb") as file:
            content = file.read(HIGHEST_BYTES + 1)
    except OSError as error:
        raise PhonodrillError(f"cannot read {path}: {error.strerror}", "check the name") from error
    if len(content) > HIGHEST_BYTES:
        raise PhonodrillError(f"{path} is larger than 20 MB", "a part of it")
    if content.startswith(_UTF_16):
        raise PhonodrillError(f"{path} is not UTF-8 text", _HINT)
    if b"\0" in content:
        raise PhonodrillError(f"{path} is no plain text", _HINT)
    return content
