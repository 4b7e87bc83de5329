"""Marks the folder of kept work as ours, and refuses any other before something in it is used or removed."""

from __future__ import annotations

import json
import os
import shlex
import tempfile
from pathlib import Path

from generator.problems import Place, Problem
from generator.publish.refusals import CACHE_FOREIGN, CACHE_OTHER, Refused, from_system

MARKER = "phasebook-cache.json"
FORMAT = 1
"""Changes with the layout of the folder and of the files in it, not with what is kept."""

_PART = ".part"
_OURS = {"format": FORMAT}


def claim(folder: Path) -> Path:
    """Return `folder`, there and marked; Refused where it is another version's, or somebody else's.

    Absent and empty folders become ours; several builds may do this at the same time.
    """
    try:
        _claim(folder)
    except (FileExistsError, NotADirectoryError) as error:
        raise Refused(_foreign(folder, "it, or a folder above it, is a file")) from error
    except OSError as error:
        raise from_system(error, folder) from error
    return folder


def _claim(folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    marker = folder / MARKER
    if marker.exists():
        _refuse_other(folder, marker)
        return
    # A build that was killed while it wrote the marker leaves a part of it.
    present = sorted(entry.name for entry in folder.iterdir() if not entry.name.endswith(_PART))
    if present and not marker.exists():
        raise Refused(_foreign(folder, f"it holds '{present[0]}' and no {MARKER}"))
    handle, part = tempfile.mkstemp(suffix=_PART, dir=folder)
    with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as stream:
        stream.write(json.dumps(_OURS) + "\n")
    Path(part).replace(marker)


def _refuse_other(folder: Path, marker: Path) -> None:
    try:
        found = json.loads(marker.read_text(encoding="utf-8"))
    except ValueError:
        found = None
    if found == _OURS:
        return
    said = found.get("format") if isinstance(found, dict) else None
    kept = f"format {said}" if isinstance(said, int) else "no format that can be read"
    message = f"it was kept by another version of the program: {kept}, this one keeps format {FORMAT}"
    raise Refused(CACHE_OTHER.at(Place(str(folder)), message, _delete(folder)))


def _foreign(folder: Path, why: str) -> Problem:
    return CACHE_FOREIGN.at(Place(str(folder)), f"it was not made by this program: {why}")


def _delete(folder: Path) -> str:
    return f"delete it, all of it can be made again: rm -r {shlex.quote(str(folder))}"
