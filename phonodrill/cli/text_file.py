"""Read a text file that a teacher made."""

from __future__ import annotations

from pathlib import Path

from phonodrill.errors import PhonodrillError

HIGHEST_BYTES = 20_000_000


def read_text(path: Path) -> str:
    """Return the text of a file, without a byte order mark.

    Args:
        path: a UTF-8 text file of at most 20 MB.

    Raises:
        PhonodrillError: if it cannot be read, is too large or not UTF-8.
    """
    try:
        with path.open("rb") as file:
            content = file.read(HIGHEST_BYTES + 1)
    except OSError as error:
        raise PhonodrillError(f"cannot read {path}: {error.strerror}", "check the name") from error
    if len(content) > HIGHEST_BYTES:
        raise PhonodrillError(f"{path} is larger than 20 MB", "a part of it")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise PhonodrillError(f"{path} is not UTF-8 text", "save it as UTF-8 text") from error
