"""Packages that only some commands and formats need."""

from __future__ import annotations

from importlib import import_module
from typing import Any

from phonodrill.errors import PhonodrillError


def install_hint(extra: str = "print") -> str:
    """Say how to install the packages of an extra.

    From the folder, as the documentation says: a registry may hold something else of this
    name. In double quotes, which every shell takes, those of Windows, too.
    """
    return f'in the folder of phonodrill: python -m pip install ".[{extra}]"'


def import_extra(module: str, what: str, package: str = "", *, extra: str = "print") -> Any:
    """Import a module of a package that is not always there.

    Args:
        module: its name.
        what: what needs it, as the user calls it.
        package: the name to install it by, where that is another.
        extra: the extra of phonodrill that installs it.

    Raises:
        PhonodrillError: if it is missing; says what to install.
    """
    try:
        return import_module(module)
    except ImportError as error:
        name = package or module.replace("_", "-")
        raise PhonodrillError(f"{what} needs the package {name}", install_hint(extra)) from error
