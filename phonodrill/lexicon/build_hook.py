"""Compile the lexicon while the package is being built (hatchling's build hook)."""

from __future__ import annotations

import gc
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class LexiconBuildHook(BuildHookInterface):  # type: ignore[type-arg]
    """Put ``lexicon.sqlite`` into the wheel; an editable install gets it in place."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002
        """Compile, unless the file there was made from the very same data."""
        root = Path(self.root)
        sys.path.insert(0, str(root))
        try:
            from phonodrill.lexicon.compile import compile_lexicon, fingerprint, stored_fingerprint
            from phonodrill.lexicon.schema import LEXICON_PATH

            wordlists = root / "wordlists"
            if stored_fingerprint(LEXICON_PATH) != fingerprint(wordlists):
                # Nearly all that is made stays to the end: looking for what is not costs a twelfth.
                gc.disable()
                compile_lexicon(wordlists)
        finally:
            gc.enable()
            sys.path.remove(str(root))
