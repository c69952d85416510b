"""The user's own folders, for what is kept between one run and the next."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import platformdirs

from phonodrill.errors import PhonodrillError

NAME = "phonodrill"


def config_folder() -> Path:
    """Return the folder of what the user sets.

    Raises:
        PhonodrillError: if no home folder is known.
    """
    return _folder(platformdirs.user_config_path, "XDG_CONFIG_HOME")


def data_folder() -> Path:
    """Return the folder of what is kept for the user.

    Raises:
        PhonodrillError: if no home folder is known.
    """
    return _folder(platformdirs.user_data_path, "XDG_DATA_HOME")


def _folder(find: Callable[..., Path], variable: str) -> Path:
    try:
        folder = find(NAME, appauthor=False)
    except RuntimeError:
        folder = Path("~")
    # Some versions give ~ back as it is, which would become a folder of that name.
    if not folder.is_absolute():
        raise PhonodrillError("no home folder is known", f"set HOME, or {variable} to a whole path")
    return folder
