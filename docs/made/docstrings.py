"""Docstrings as mkdocstrings is to show them: examples as code, no roles of other tools."""

from __future__ import annotations

import re
from typing import Any

from griffe import Extension, Object

_EXAMPLE = re.compile(r"(?:^>>>.*\n?(?:^(?!>>>)\S.*\n?)*)+", re.MULTILINE)
_ROLE = re.compile(r":\w+:`~?([^`]+)`")


class Docstrings(Extension):
    """Rewrites every docstring before it is parsed."""

    def on_instance(self, *, obj: Object, **_: Any) -> None:
        """Rewrite the docstring of a module, class, function or attribute."""
        if obj.docstring:
            obj.docstring.value = as_markdown(obj.docstring.value)


def as_markdown(text: str) -> str:
    r"""Fence examples, and write references to names as code.

    >>> as_markdown("Add one.\n\n>>> 1 + 1\n2")
    'Add one.\n\n```pycon\n>>> 1 + 1\n2\n```\n'
    >>> as_markdown("As :func:`select` does.")
    'As `select` does.'
    """
    fenced = _EXAMPLE.sub(lambda found: f"```pycon\n{found[0].rstrip()}\n```\n", text)
    return _ROLE.sub(r"`\1`", fenced.replace("``", "`") if "```" not in fenced else fenced)
