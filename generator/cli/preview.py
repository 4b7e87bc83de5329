"""``preview``: shows the pages of one language in the browser and makes them again when content changes."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, ROOT, content_option
from generator.pipeline import Request, preview_site
from generator.steps.offers import PreviewServer, Shown
from generator.steps.previewing import Preview


@click.command()
@content_option
@click.option("--language", help="Language to show; the content's own by default.")
@click.option("--port", type=click.IntRange(1024, 65535), default=8000, show_default=True)
def preview(content: Path, language: str | None, port: int) -> int:
    """Show the pages while you type; a mistake shows in the page and ends nothing."""
    folder = ROOT / ".phasebook" / "preview"
    request = Request(content, folder / "site", ROOT, folder)

    shown = Preview(request.output)

    def rebuild() -> Shown:
        outcome = preview_site(request, language, shown)
        remarks = shown.remarks(outcome.problems, outcome.sources)
        for remark in remarks:
            click.echo(remark.lines)
        click.echo("Shown." if outcome.published else "Not shown; the page is as it was.")
        return Shown(remarks, outcome.published)

    click.echo("Making the pages for the first time; this takes a while ...")
    try:
        server = PreviewServer(rebuild, shown.make, request.output, port)
        server.watch(str(content))
        click.echo(f"Open http://127.0.0.1:{port}/ in your browser. Stop with Ctrl-C.")
        server.run()
    except OSError as error:
        click.echo(
            f"The preview could not start on port {port}: {error.strerror}; try --port {port + 1}.", err=True
        )
        return NOT_STARTED
    except KeyboardInterrupt:
        server.shutdown()
        click.echo("Preview ended.")
    return DONE
