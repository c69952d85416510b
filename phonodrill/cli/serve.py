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
        typer.Option("--name", help="Names under which others reach it, parted by commas."),
    ] = "",
    https: Annotated[
        bool, typer.Option("--https", help="Others reach it over HTTPS, through a proxy.")
    ] = False,
    browser: Annotated[
        bool, typer.Option("--browser/--no-browser", help="Open it in the browser.")
    ] = True,
) -> None:
    """Open the page: pick a focus, see it, show it, print it. Ctrl-C stops it."""
    from phonodrill.render.extra import import_extra

    for package in ("fastapi", "jinja2", "python_multipart", "uvicorn"):
        import_extra(package, "the page", extra="web")
    from phonodrill.web.listen import listen
    from phonodrill.web.settings import is_loopback, settings_for

    names = tuple(part.strip().lower() for part in name.split(",") if part.strip())
    settings = settings_for(host, names, own_words_path(), https=https)
    with listen(host, port) as listener:
        if not is_loopback(host):
            report([f"{host} can be reached from other machines; anyone there can use the page"])
            if not names:
                report(["it answers to that address only; --name adds the names that others use"])
        if settings.words_file is None:
            report(["words and steps cannot be kept there, as many would share them"])
        from phonodrill.web.serve import serve as run

        run(
            listener,
            settings,
            tell=lambda address: typer.echo(f"phonodrill is at {address}   (Ctrl-C stops it)"),
            browser=browser,
        )
