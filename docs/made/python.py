"""The page of the Python interface: every public name, from its docstring."""

from __future__ import annotations

import phonodrill

HEAD = """# From Python

What `import phonodrill` offers; all else may change. Each name is imported when it is first used.
"""


def make_page() -> str:
    """Write the page; mkdocstrings fills in what each name says."""
    names = sorted(phonodrill.__all__, key=str.lower)
    parts = [f"::: phonodrill.{name}\n" for name in names if name != "VERSION"]
    return "\n".join([HEAD, *parts])
