"""``phonodrill serve``: the page for the teacher."""

from __future__ import annotations

from importlib.util import find_spec
from typing import Annotated, Optional

import typer

from phonodrill.cli.own_words import own_words_path
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.extra import import_extra, install_hint

RECORDS_NEED = ("alembic", "argon2", "sqlalchemy")
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def serve(
    host: Annotated[str, typer.Option("--host", help="Address to listen on.")] = "127.0.0.1",
    port: Annotated[
        int, typer.Option("--port", min=0, max=65535, help="Port; 0 for any that is free.")
    ] = 0,
    name: Annotated[
        str,
        typer.Option("--name", help="Names under which others reach it, parted by commas."),
    ] = "",
    https: Annotated[
        bool, typer.Option("--https", help="Others reach it over HTTPS, through a proxy.")
    ] = False,
    records: Annotated[
        Optional[bool],
        typer.Option(
            "--records/--no-records",
            help="With the pages Groups, Check, Progress and Next; usual on this machine only.",
        ),
    ] = None,
    browser: Annotated[
        bool, typer.Option("--browser/--no-browser", help="Open it in the browser.")
    ] = True,
) -> None:
    """Open the page: pick a focus, see it, show it, print it. Ctrl-C stops it."""
    for package in ("fastapi", "jinja2", "python_multipart", "uvicorn"):
        import_extra(package, "the page", extra="web")
    from phonodrill.web.listen import listen
    from phonodrill.web.settings import is_loopback, is_shared, settings_for

    names = tuple(part.strip().lower() for part in name.split(",") if part.strip())
    shared = is_shared(host, names)
    with_records = _with_records(records, shared=shared)
    settings = settings_for(host, names, own_words_path(), https=https, records=with_records)
    with listen(host, port) as listener:
        if not is_loopback(host):
            report([f"{host} can be reached from other machines; anyone there can use the page"])
            if not names:
                report(["it answers to that address only; --name adds the names that others use"])
        if settings.words_file is None:
            report(["words and steps cannot be kept there, as many would share them"])
        if with_records and shared and not https:
            report(["without --https the passphrase and the records can be read on their way"])
        from phonodrill.web.serve import serve as run

        run(
            listener,
            settings,
            tell=lambda address: typer.echo(f"phonodrill is at {address}   (Ctrl-C stops it)"),
            browser=browser,
        )


def _with_records(wanted: bool | None, *, shared: bool) -> bool:
    """Whether the page has records.

    Raises:
        PhonodrillError: if they are asked for, and a package or the passphrase that a
            shared page needs is missing.
    """
    if wanted is False or (wanted is None and shared):
        return False
    if not all(map(find_spec, RECORDS_NEED)):
        if wanted:
            raise PhonodrillError(
                "the pages with records need more packages", install_hint("records")
            )
        return False
    from phonodrill.records.passphrase import has_passphrase

    if shared and not has_passphrase():
        raise PhonodrillError(
            "records on a page that others can reach need a passphrase",
            "phonodrill records passphrase",
        )
    return True
