"""Puts the finished pages of a language on the shelf and takes them from there."""

from __future__ import annotations

import hashlib
import io
import json
import zipfile
from pathlib import Path
from typing import Any

from generator.shelf import Shelf

# The first day a ZIP file can state: no clock in any output.
_NO_DAY = (1980, 1, 1, 0, 0, 0)


def depends_on(config: Path, pages: Path) -> list[Any]:
    """Return all that decides how MkDocs builds a language: settings, written pages, the frame around them.

    config: as `website.config.write_config` wrote it. Where the folders lie decides nothing.
    """
    settings = json.loads(config.read_text(encoding="utf-8"))
    here = config.parent
    base, frame = here / settings.pop("INHERIT"), here / settings["theme"].pop("custom_dir")
    for folder in ("docs_dir", "site_dir"):
        del settings[folder]
    return [settings, _sum(base), _sums(frame), _sums(pages)]


def keep(shelf: Shelf, name: str, folder: Path) -> None:
    """Keep all files of a folder."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        for path in _files(folder):
            entry = zipfile.ZipInfo(path.relative_to(folder).as_posix(), _NO_DAY)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, path.read_bytes())
    shelf.put(name, packed.getvalue())


def taken(shelf: Shelf, name: str, folder: Path) -> bool:
    """Write the kept files into an empty folder; return whether there were any."""
    work = shelf.take(name)
    if work is None:
        return False
    with zipfile.ZipFile(io.BytesIO(work)) as archive:
        archive.extractall(folder)
    return True


def _files(folder: Path) -> list[Path]:
    return sorted(path for path in folder.rglob("*") if path.is_file())


def _sum(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _sums(folder: Path) -> dict[str, str]:
    return {path.relative_to(folder).as_posix(): _sum(path) for path in _files(folder)}
