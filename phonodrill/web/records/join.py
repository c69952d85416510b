"""Put the pages with records into the application."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter, Depends, FastAPI

from phonodrill.web.records import check, entering, groups, next_focus, progress, sign_in
from phonodrill.web.records.api import api as records_api
from phonodrill.web.records.session import Tries
from phonodrill.web.records.sign_in import need_own_origin, need_sign_in

MODULES = (groups, check, entering, progress, next_focus)
MENU = tuple(module.PAGE for module in (groups, check, progress, next_focus))
UNKNOWN: dict[int | str, dict[str, Any]] = {
    401: {"description": "One must sign in first."},
    403: {"description": "It was sent by a page of another site, or not as JSON."},
}


def join_records(app: FastAPI, api: APIRouter) -> None:
    """Add the pages, all of them behind the passphrase.

    Args:
        app: the application.
        api: its API.
    """
    app.state.tries = Tries()
    app.include_router(sign_in.page, include_in_schema=False)
    for module in MODULES:
        app.include_router(
            module.page, include_in_schema=False, dependencies=[Depends(need_sign_in)]
        )
    behind = [Depends(need_own_origin), Depends(need_sign_in)]
    api.include_router(records_api, dependencies=behind, responses=UNKNOWN)
