"""Writes a finished site for a stick: a folder that opens without a server, and the same as one file."""

from __future__ import annotations

import shutil
import zipfile
from dataclasses import dataclass
from pathlib import Path

from generator.problems import Problem
from generator.publish.manifest import NAME, describe, to_text, verify
from generator.website.stick import stick_files

# The first day a ZIP file can state: no clock in any output.
_NO_DAY = (1980, 1, 1, 0, 0, 0)
_READABLE = 0o644 << 16


@dataclass(frozen=True)
class Stick:
    """What was written; problems: why nothing was. size: of all files together, in bytes."""

    problems: tuple[Problem, ...] = ()
    files: int = 0
    size: int = 0


def why_not(site: Path, output: Path) -> str:
    """Return why no stick can be made, or an empty text; nothing is written."""
    archive = archive_of(output)
    if not (site / "index.html").is_file():
        return f"there is no finished site in '{site}'; build it first, or name its folder"
    if not output.parent.is_dir():
        return f"there is no folder '{output.parent}'; make it first, or choose another"
    if output.resolve() == site.resolve() or site.resolve() in output.resolve().parents:
        return f"'{output}' lies in the site itself; choose another folder"
    if output.resolve() in site.resolve().parents:
        return f"'{output}' holds the site itself; choose another folder"
    if output.exists() and not (output / NAME).is_file():
        return f"'{output}' is there and was not made by this command; choose another name"
    if archive.exists() and not archive.is_file():
        return f"'{archive}' is there and is no file; choose another name"
    return ""


def archive_of(output: Path) -> Path:
    """Return the file that holds the same as the folder."""
    return output.with_name(f"{output.name}.zip")


def write_stick(site: Path, output: Path, assets: Path) -> Stick:
    """Write folder and file from a site that is whole; what was there before stays until both are done."""
    if problems := verify(site):
        return Stick(problems)
    fresh, packed = (output.with_name(f".{output.name}{end}") for end in ("-new", "-new.zip"))
    shutil.rmtree(fresh, ignore_errors=True)
    try:
        for name, content in stick_files(site, assets):
            (fresh / name).parent.mkdir(parents=True, exist_ok=True)
            (fresh / name).write_bytes(content)
        (fresh / NAME).write_text(to_text(describe(fresh)), encoding="utf-8", newline="\n")
        count, size = _pack(fresh, packed, output.name)
        shutil.rmtree(output, ignore_errors=True)
        fresh.rename(output)
        packed.replace(archive_of(output))
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
        packed.unlink(missing_ok=True)
    return Stick(files=count, size=size)


def _pack(folder: Path, archive: Path, name: str) -> tuple[int, int]:
    """Write all files into one, the same bytes each time; return how many they are and their size."""
    files = sorted(one for one in folder.rglob("*") if one.is_file())
    size = 0
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as packed:
        for file in files:
            entry = zipfile.ZipInfo(f"{name}/{file.relative_to(folder).as_posix()}", _NO_DAY)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.create_system = 3
            entry.external_attr = _READABLE
            content = file.read_bytes()
            size += len(content)
            packed.writestr(entry, content)
    return len(files), size
