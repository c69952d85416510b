"""What the checker looks at: items as they are drawn, or built again from a lesson."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol


class Sounding(Protocol):
    """Sounds, one code a phoneme, and one stress digit a vowel."""

    @property
    def sounds(self) -> str: ...
    @property
    def stress(self) -> str: ...


class PartShape(Sounding, Protocol):
    """A part of a word, which may be a word itself."""

    @property
    def word(self) -> str: ...


class ChoiceShape(Protocol):
    """A word to compare."""

    @property
    def word(self) -> str: ...
    @property
    def said(self) -> Sounding: ...


class ItemShape(Protocol):
    """A question and its answer."""

    @property
    def task(self) -> str: ...
    @property
    def at(self) -> str: ...
    @property
    def stimulus(self) -> str: ...
    @property
    def stimulus_said(self) -> Sounding: ...
    @property
    def sound(self) -> PartShape: ...
    @property
    def answer(self) -> str: ...
    @property
    def answer_said(self) -> Sounding: ...
    @property
    def also(self) -> Sequence[str]: ...
    @property
    def made_up(self) -> bool: ...
    @property
    def new(self) -> PartShape: ...
    @property
    def parts(self) -> Sequence[PartShape]: ...
    @property
    def choices(self) -> Sequence[ChoiceShape]: ...
    @property
    def foil(self) -> ChoiceShape | None: ...
