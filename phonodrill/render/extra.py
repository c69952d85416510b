"""Packages that only some formats need."""

from __future__ import annotations

from importlib import import_module
from typing import Any

from phonodrill.errors import PhonodrillError


def install_hint(extra: str = "print") -> str:
    """Say how to install the packages of an extra."""
    return f"python -m pip install 'phonodrill[{extra}]'"


def import_extra(module: str, what: str, package: str = "", *, extra: str = "print") -> Any:
    """Import a module of a package that is not always there.

    Args:
        module: its name.
        what: what needs it, as the user calls it.
        package: the name to install it by, where that is another.
        extra: the set of packages that it belongs to.

    Raises:
        PhonodrillError: if it is missing; says what to install.
    """
    try:
        return import_module(module)
    except ImportError as error:
        name = package or module.replace("_", "-")
        raise PhonodrillError(f"{what} needs the package {name}", install_hint(extra)) from error
