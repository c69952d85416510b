"""Write a file whole or not at all."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

from phonodrill.errors import PhonodrillError


def write_whole(path: Path, content: bytes) -> None:
    """Replace a file only when its new content is complete.

    Raises:
        PhonodrillError: if it cannot be written.
    """
    with whole_file(path) as file:
        file.write(content)


def with_folder(path: Path) -> Path:
    """Make the folder of a file, and return the file.

    Raises:
        PhonodrillError: if it cannot be made.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise PhonodrillError(
            f"cannot make the folder {path.parent}: {error.strerror}", "check its permissions"
        ) from error
    return path


@contextlib.contextmanager
def whole_file(path: Path) -> Iterator[BinaryIO]:
    """Open a file for writing that takes its name only when all of it is written.

    Raises:
        PhonodrillError: if it cannot be written; what was there stays.
    """
    import tempfile

    partial: Path | None = None
    try:
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        partial = Path(name)
        with os.fdopen(handle, "wb") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        mode = path.stat().st_mode if path.exists() else 0o666 & ~_umask()
        partial.chmod(mode)
        partial.replace(path)
    except OSError as error:
        raise PhonodrillError(
            f"cannot write {path}: {error.strerror}", "another folder or name for --out"
        ) from error
    finally:
        if partial:
            with contextlib.suppress(OSError):
                partial.unlink()


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
