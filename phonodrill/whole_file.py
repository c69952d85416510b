"""Write a file whole or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

from phonodrill.errors import PhonodrillError


def write_whole(path: Path, content: bytes, *, mode: int | None = None) -> None:
    """Replace a file only when its new content is complete.

    Args:
        path: the file.
        content: all of it.
        mode: who may read a file that is new; by default whoever the system lets.

    Raises:
        PhonodrillError: if it cannot be written.
    """
    with whole_file(path, mode=mode) as file:
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
def whole_file(path: Path, *, mode: int | None = None) -> Iterator[BinaryIO]:
    """Open a file for writing that takes its name only when all of it is written.

    A link stays one: the file that it names is written. So does a device or a pipe, which
    has no content to keep and is written directly.

    Args:
        path: the file.
        mode: who may read a file that is new; by default whoever the system lets.

    Raises:
        PhonodrillError: if it cannot be written; what was there stays.
    """
    target = Path(os.path.realpath(path))
    try:
        is_there = target.exists()
        if is_there and not os.access(target, os.W_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
        if is_there and not target.is_file():
            with target.open("wb") as file:
                yield file
        else:
            with _replacing(target, mode) as file:
                yield file
    except OSError as error:
        raise PhonodrillError(
            f"cannot write {path}: {error.strerror}", "another folder or name for --out"
        ) from error


@contextlib.contextmanager
def _replacing(target: Path, new_mode: int | None) -> Iterator[BinaryIO]:
    import tempfile

    # A name of its own: with the target's in it, it could be too long.
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=".phonodrill-")
    partial = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        mode = 0o666 & ~_umask() if new_mode is None else new_mode
        if target.exists():
            mode = target.stat().st_mode
        with contextlib.suppress(OSError):  # not every memory stick has modes
            partial.chmod(mode)
        partial.replace(target)
    finally:
        with contextlib.suppress(OSError):
            partial.unlink()


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
