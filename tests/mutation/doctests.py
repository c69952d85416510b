"""The examples of the docstrings as tests, for `run.py`."""

from __future__ import annotations

import doctest

import pytest

from tests.mutation.plugin import read_examples


@pytest.mark.parametrize("example", read_examples(), ids=lambda example: example.name)
def test_example(example: doctest.DocTest) -> None:
    assert doctest.DocTestRunner().run(example, clear_globs=False).failed == 0
