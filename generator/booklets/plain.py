"""Prints finished HTML with the bare library, so that what this room adds can be measured."""

from __future__ import annotations

from pathlib import Path

import weasyprint

from generator.booklets.engine import OwnFiles
from generator.booklets.fonts import font_folders


def print_plainly(folder: Path) -> None:
    """Write a PDF beside every HTML file in the folder, in one pass each, with nothing examined."""
    fetcher = OwnFiles((*font_folders(), folder.resolve()))
    for path in sorted(folder.glob("*.html")):
        page = weasyprint.HTML(filename=str(path), url_fetcher=fetcher)
        page.write_pdf(str(path.with_suffix(".pdf")), pdf_variant="pdf/ua-1")
