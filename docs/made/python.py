"""The page of the Python interface: every public name, from its docstring."""

from __future__ import annotations

import phonodrill

HEAD = """# From Python

What `import phonodrill` offers; all else may change. Each name is imported when it is first used,
so that `import phonodrill` by itself costs almost nothing. Everything is typed (`py.typed`). What
cannot be done raises `PhonodrillError`, whose `message` and `hint` are what the command line
prints.

```python
from phonodrill import TASKS, Lexicon, Position, Query, make_warmup

with Lexicon() as lexicon:
    warmup = make_warmup(lexicon, TASKS["delete"], Position.FIRST, Query(band=2), count=8, seed=1)
    for item in warmup.items:
        print(item.stimulus, item.answer)
```
"""


def make_page() -> str:
    """Write the page; mkdocstrings fills in what each name says."""
    names = sorted(phonodrill.__all__, key=str.lower)
    parts = [f"::: phonodrill.{name}\n" for name in names if name != "__version__"]
    return "\n".join([HEAD, *parts])
