"""Put the page together: pages, API, files, guards, and what is said when something fails."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import ExitStack, asynccontextmanager, closing
from typing import Any

from fastapi import APIRouter, FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import FileResponse, JSONResponse, Response
from fastapi.staticfiles import StaticFiles
from starlette.exceptions import HTTPException

from phonodrill.errors import PhonodrillError
from phonodrill.extra import import_extra
from phonodrill.version import VERSION
from phonodrill.web.answers import ANSWERS, describe_answers
from phonodrill.web.csrf import ForgedError
from phonodrill.web.desk import Desk
from phonodrill.web.forms import Form, Refusal
from phonodrill.web.guard import Guard, headers_for
from phonodrill.web.page import FOLDER, Page, Problem, problem_from, show
from phonodrill.web.pages import MENU, PAGES, interface
from phonodrill.web.records.answers import RECORDS_ANSWERS
from phonodrill.web.settings import Records, Settings
from phonodrill.web.turns import BusyError

API = "/api"
FONT = "/static/ABeeZee-Regular.ttf"
_REFUSALS: dict[int | str, dict[str, Any]] = {
    400: {"model": Refusal, "description": "What was asked for cannot be done."},
    422: {"model": Refusal, "description": "A field has no value that it may have."},
    503: {"model": Refusal, "description": "Too many ask at once."},
}
_PROBLEM_PAGE = Page("", "Not possible", "")
_STATUS_WORDS = {
    404: Problem("there is no such page", "one of the pages above", 404),
    405: Problem("that cannot be done here", "one of the pages above", 405),
}


class _Described(FastAPI):
    """The application, its schema with what is answered."""

    def openapi(self) -> dict[str, Any]:
        """Return the OpenAPI schema."""
        return describe_answers(super().openapi(), API, {**ANSWERS, **RECORDS_ANSWERS})


def make_app(settings: Settings | None = None) -> FastAPI:
    """Make the application, ready to be served.

    Args:
        settings: how it is served; by default on this machine only, nothing kept.
    """
    chosen = settings or Settings()
    has_records = chosen.records is not Records.OFF

    @asynccontextmanager
    async def lifespan(app: FastAPI) -> AsyncIterator[None]:
        with ExitStack() as stack:
            app.state.desk = stack.enter_context(closing(Desk(chosen)))
            if has_records:
                from phonodrill.web.records.desk import RecordsDesk

                app.state.records = stack.enter_context(closing(RecordsDesk()))
            yield

    app = _Described(
        title="phonodrill",
        version=VERSION,
        summary="Word-study drills in which every word, sound and answer was checked.",
        license_info={"name": "MIT; data CC BY-SA 4.0"},
        openapi_url=f"{API}/openapi.json",
        # The usual pages fetch scripts from elsewhere; pages/interface.py shows the schema.
        docs_url=None,
        redoc_url=None,
        # A redirect to the address with or without a slash would name http behind a proxy.
        redirect_slashes=False,
        lifespan=lifespan,
    )
    app.state.settings = chosen
    app.state.menu = MENU
    api = APIRouter(prefix=API, responses=_REFUSALS)
    for module in PAGES:
        app.include_router(module.page, include_in_schema=False)
        api.include_router(module.api)
    if has_records:
        _join_records(app, api)
    app.include_router(api)
    app.include_router(interface.page, include_in_schema=False)
    app.get(FONT, include_in_schema=False)(_font)
    app.mount("/static", StaticFiles(directory=FOLDER / "static"), name="static")
    app.add_exception_handler(PhonodrillError, _tell_error)
    app.add_exception_handler(RequestValidationError, _tell_invalid)
    app.add_exception_handler(HTTPException, _tell_status)
    app.add_exception_handler(BusyError, _tell_busy)
    app.add_exception_handler(ForgedError, _tell_forged)
    app.add_exception_handler(Exception, _tell_failed)
    app.add_middleware(Guard, settings=chosen)
    return app


def _join_records(app: FastAPI, api: APIRouter) -> None:
    """Add the pages with records, whose packages are not always there."""
    from phonodrill.web.records.errors import RecordsError, SignInError
    from phonodrill.web.records.join import MENU as RECORDS_MENU
    from phonodrill.web.records.join import join_records

    join_records(app, api)
    app.state.menu = (*MENU[:-1], *RECORDS_MENU, MENU[-1])
    app.add_exception_handler(RecordsError, _tell_records)
    app.add_exception_handler(SignInError, _tell_sign_in)


def _font() -> FileResponse:
    """Send the type for words, from its own package."""
    files = import_extra("fontpkg_abeezee", "the page", extra="web").ROOT / "files"
    return FileResponse(
        files / "ABeeZee-Regular.ttf",
        media_type="font/ttf",
        headers={"cache-control": "public, max-age=604800, immutable"},
    )


def _tell(request: Request, problem: Problem) -> Response:
    if request.url.path.startswith(f"{API}/"):
        return JSONResponse({"error": problem.message, "try": problem.hint}, problem.status)
    return show(request, "problem.html", _PROBLEM_PAGE, form=Form(), problem=problem)


def _tell_error(request: Request, error: Exception) -> Response:
    assert isinstance(error, PhonodrillError)  # noqa: S101  # registered for it
    return _tell(request, problem_from(error))


def _tell_invalid(request: Request, error: Exception) -> Response:
    assert isinstance(error, RequestValidationError)  # noqa: S101  # registered for it
    first = error.errors()[0]
    field = str(first["loc"][-1])
    return _tell(request, Problem(f"{field}: {first['msg'].lower()}", f"another {field}", 422))


def _tell_status(request: Request, error: Exception) -> Response:
    assert isinstance(error, HTTPException)  # noqa: S101  # registered for it
    other = Problem(str(error.detail), status=error.status_code)
    return _tell(request, _STATUS_WORDS.get(error.status_code, other))


def _tell_records(request: Request, error: Exception) -> Response:
    problem: Problem = error.problem  # type: ignore[attr-defined]  # registered for it
    return _tell(request, problem)


def _tell_sign_in(request: Request, _: Exception) -> Response:
    if request.url.path.startswith(f"{API}/"):
        return _tell(request, Problem("one must sign in first", "the page /sign-in", 401))
    from phonodrill.web.records.sign_in import ask_to_sign_in

    return ask_to_sign_in(request)


def _tell_busy(request: Request, _: Exception) -> Response:
    return _tell(request, Problem("too many are asking at once", "again in a minute", 503))


def _tell_forged(request: Request, _: Exception) -> Response:
    return _tell(request, Problem("that form is too old", "load the page again, then send it", 403))


def _tell_failed(request: Request, _: Exception) -> Response:
    """Answer for a fault of ours, which the server writes to its log."""
    answer = _tell(request, Problem("something went wrong here", "something else", 500))
    # This handler stands outside the guard, which gives every other answer its headers.
    answer.headers.update(headers_for(request.url.path))
    return answer
