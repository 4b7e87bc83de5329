"""Lays all pictures beside their names and words on one sheet, so that fresh eyes can compare them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from pathlib import Path

from generator.body.from_catalogue import Posed, posed_items
from generator.body.shown import facts_of
from generator.booklets.raster import html_pngs, svg_pngs
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise
from generator.catalogue.values import Catalogue
from generator.figures.pictures import Gallery
from generator.steps.figures import draw_all, file_name, palette_of, write_gallery
from generator.wording.isolation import plain
from generator.wording.localise import localise
from generator.wording.voice import voice

NO_PICTURE = "no picture yet"
_PIXELS = 1200
_STYLE = """
@page { size: A4 landscape; margin: 9mm 10mm;
  @bottom-right { content: counter(page); font: 8pt sans-serif } }
body { font: 7.8pt/1.25 sans-serif; color: #1e2b31; margin: 0 }
@media screen { body { display: grid; grid-template-columns: repeat(auto-fill, minmax(150mm, 1fr));
  gap: 2mm 6mm; margin: 6mm; font-size: 10pt } }
@media print { body { columns: 2; column-gap: 6mm; column-fill: auto } }
figure { display: table; table-layout: fixed; width: 100%; margin: 0 0 2mm; border: 0.2mm solid #b9c0bc;
  break-inside: avoid }
figure > * { display: table-cell; vertical-align: middle; padding: 1.5mm }
figure > div { width: 74mm; text-align: center; color: #445258 }
img { max-width: 73mm; max-height: 40mm }
figcaption { border-left: 0.2mm solid #d9dcd6 }
b { font-size: 9pt; display: block }
small { color: #445258; font-size: 7pt }
"""


@dataclass(frozen=True)
class How:
    """How to draw. left: the operated side is the left one. moving: movements are made too."""

    left: bool = False
    moving: bool = False
    workers: int = 1


@dataclass(frozen=True)
class Drawn:
    """What came of it: how many have pictures, the ids of those that have none, the sheet's file."""

    drawn: int
    without: tuple[str, ...]
    sheet: Path


def known_items(catalogue: Catalogue) -> tuple[str, ...]:
    """Return everything that can have a picture, by id."""
    return tuple(item.id for item in posed_items(catalogue))


def draw_figures(catalogue: Catalogue, ids: Sequence[str], folder: Path, root: Path, how: How) -> Drawn:
    """Write SVG and PNG of each item into `folder`, and the contact sheet; exercises bring variations."""
    # Words as a reader meets them, their phrases filled.
    spoken, _ = localise(catalogue, voice(catalogue.source_language), facts=facts_of(catalogue))
    items = [
        item for item in posed_items(spoken) if not ids or item.id in ids or item.id.partition("/")[0] in ids
    ]
    palette = palette_of((root / "site_assets" / "tokens.css").read_text(encoding="utf-8"))
    names = [item.id for item in items]
    gallery = draw_all(
        catalogue, palette, ids=names, lefts=(how.left,), with_moving=how.moving, workers=how.workers
    )
    strips = write_gallery(gallery, folder, left=how.left)
    pngs = svg_pngs([path.read_text(encoding="utf-8") for path in strips.values()], _PIXELS)
    for path, png in zip(strips.values(), pngs, strict=True):
        path.with_suffix(".png").write_bytes(png)
    sheet = folder / "contact-sheet.html"
    html = contact_sheet(items, gallery)
    sheet.write_text(html, encoding="utf-8", newline="\n")
    for number, png in enumerate(html_pngs(html, str(folder)), 1):
        (folder / f"contact-sheet-{number}.png").write_bytes(png)
    return Drawn(len(strips), gallery.without, sheet)


def contact_sheet(items: Sequence[Posed], gallery: Gallery) -> str:
    """Return the sheet as HTML; the pictures lie beside it as PNG files.

    A variation that looks like its exercise has no place of its own.
    """
    drawn = {shown.item for shown in gallery.pictures}
    wanted = [item for item in items if item.id in drawn or item.id in gallery.without]
    cells = "".join(_cell(item, item.id in drawn) for item in wanted)
    return f"<!DOCTYPE html><meta charset='utf-8'><title>Figures</title><style>{_STYLE}</style>{cells}\n"


def _cell(item: Posed, drawn: bool) -> str:
    picture = f'<img alt="" src="{file_name(item.id)}.png">' if drawn else f"({NO_PICTURE})"
    name = escape(plain(str(item.owner.name)))
    words = escape(plain(" ".join(_words(item))))
    caption = f"<b>{name}</b><small>{escape(item.id)}</small><br>{words}"
    return f"<figure><div>{picture}</div><figcaption>{caption}</figcaption></figure>"


def _words(item: Posed) -> list[str]:
    owner = item.owner
    if isinstance(owner, Exercise):
        return [str(text) for text in (owner.start, *owner.steps, *owner.limits)]
    return [str(text) for text in (owner.steps if isinstance(owner, DailyLife) else (owner.change,))]
