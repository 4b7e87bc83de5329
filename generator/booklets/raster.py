"""Turns pictures into PNG files, for who looks at them or sends them by mail; sheets print the SVG itself."""

from __future__ import annotations

import base64
import re
from collections.abc import Sequence
from io import BytesIO

import pypdfium2
import weasyprint

_SIZE = re.compile(r'<svg[^>]* width="([\d.]+)" height="([\d.]+)"')
_PX_IN_POINTS = 0.75


def svg_pngs(pictures: Sequence[str], width: int) -> tuple[bytes, ...]:
    """Return SVG documents as PNG files of `width` pixels; each must state its width and height.

    Raises ValueError for a document that does not.
    """
    if not pictures:
        return ()
    pages, rules = [], []
    sizes = [_size(svg) for svg in pictures]
    for number, (svg, (across, down)) in enumerate(zip(pictures, sizes, strict=True)):
        rules.append(f"@page p{number} {{ size: {across}px {down}px; margin: 0 }}")
        data = base64.b64encode(svg.encode("utf-8")).decode("ascii")
        style = f"page: p{number}; display: block; width: {across}px; height: {down}px"
        pages.append(f'<img alt="" style="{style}" src="data:image/svg+xml;base64,{data}">')
    html = f"<style>{''.join(rules)} body {{ margin: 0 }}</style>{''.join(pages)}"
    pdf = weasyprint.HTML(string=html).write_pdf()
    return tuple(
        _png(page, width / (across * _PX_IN_POINTS))
        for page, (across, _) in zip(pypdfium2.PdfDocument(pdf), sizes, strict=True)
    )


def html_pngs(html: str, base: str) -> tuple[bytes, ...]:
    """Return the pages of an HTML document as PNG files; addresses in it are seen from `base`."""
    pdf = weasyprint.HTML(string=html, base_url=base).write_pdf()
    return tuple(_png(page, 1.6) for page in pypdfium2.PdfDocument(pdf))


def _size(svg: str) -> tuple[float, float]:
    found = _SIZE.match(svg)
    if found is None:
        raise ValueError("the picture does not state its width and height")
    return float(found.group(1)), float(found.group(2))


def _png(page: pypdfium2.PdfPage, scale: float) -> bytes:
    held = BytesIO()
    page.render(scale=scale).to_pil().save(held, "PNG")
    return held.getvalue()
