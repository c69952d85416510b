"""The API answers whatever its own description allows, and much that it does not."""

from __future__ import annotations

from typing import Any

import hypothesis
import pytest
import schemathesis
from schemathesis.core.result import Ok
from schemathesis.generation import GenerationMode
from schemathesis.specs.openapi.checks import (
    negative_data_rejection,
    positive_data_acceptance,
)

EXAMPLES = 4
NOT_SAID: list[Any] = [positive_data_acceptance, negative_data_rejection]
"""No schema says that an empty field has its usual value, or which sounds there are."""
TOO_LONG = 431
"""The guard's answer to any address of more than 64 KB, as the generator writes them."""


@pytest.mark.parametrize("mode", list(GenerationMode))
def test_no_request_is_too_odd(server: str, mode: GenerationMode) -> None:
    """No answer is a fault of ours, and each is as described."""
    described = schemathesis.openapi.from_url(f"{server}/api/openapi.json")
    asked = 0
    for found in described.get_all_operations():
        assert isinstance(found, Ok)
        operation = found.ok()

        @hypothesis.seed(1)
        @hypothesis.settings(
            max_examples=EXAMPLES,
            deadline=None,
            database=None,
            suppress_health_check=list(hypothesis.HealthCheck),
        )
        @hypothesis.given(case=operation.as_strategy(generation_mode=mode))
        def ask(case: schemathesis.Case[Any]) -> None:
            answer = case.call(timeout=60)
            if answer.status_code == TOO_LONG:
                return
            case.validate_response(answer, excluded_checks=NOT_SAID)

        ask()
        asked += 1
    assert asked
