"""``phonodrill serve``: the page for the teacher."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli.own_words import own_words_path
from phonodrill.cli.report import report

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def serve(
    host: Annotated[str, typer.Option("--host", help="Address to listen on.")] = "127.0.0.1",
    port: Annotated[
        int, typer.Option("--port", min=0, max=65535, help="Port; 0 for any that is free.")
    ] = 0,
    name: Annotated[
        str,
        typer.Option("--name", help="Names under which it is reached, parted by commas."),
    ] = "",
    browser: Annotated[
        bool, typer.Option("--browser/--no-browser", help="Open it in the browser.")
    ] = True,
) -> None:
    """Open the page: pick a focus, see it, show it, print it. Ctrl-C stops it."""
    from phonodrill.render.extra import import_extra

    for package in ("fastapi", "uvicorn", "jinja2"):
        import_extra(package, "the page")
    from phonodrill.web.serve import serve as run
    from phonodrill.web.settings import LOOPBACK_NAMES, Settings, is_loopback

    names = tuple(part.strip().lower() for part in name.split(",") if part.strip())
    if is_loopback(host):
        folder = own_words_path().parent
        settings = Settings(
            (*LOOPBACK_NAMES, *names), own_words_path(), taught_folder=folder / "taught"
        )
    else:
        report(
            [
                f"{host} can be reached from other machines; anyone there can use the page",
                "words and steps cannot be kept there, as many would share them",
            ]
        )
        settings = Settings((*LOOPBACK_NAMES, host.lower(), *names))
    run(
        host,
        port,
        settings,
        tell=lambda address: typer.echo(f"phonodrill is at {address}   (Ctrl-C stops it)"),
        browser=browser,
    )
