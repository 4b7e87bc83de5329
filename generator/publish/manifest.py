"""Lists every published file with its checksum, so that anyone can tell later whether the site is whole.

``manifest.json`` holds ``{"format": 1, "files": {path: sha256}}``: sorted keys, LF, no clock, without itself.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from generator.problems import Place, Problem, Rule, in_order

NAME = "manifest.json"
FORMAT = 1

UNREADABLE = Rule(
    "manifest-unreadable",
    "The list of published files (manifest.json) is missing or cannot be read.",
    "It was deleted or edited by hand, or the folder was not written by this program.",
    "build again into this folder if it is ours, or into a new one",
)
CHANGED = Rule(
    "file-changed",
    "A published file is not the one that was built.",
    "Somebody or something changed it after the build, or the copy to the server was cut short.",
    "do not hand this file out; build or copy the site again",
    safety=True,
)
MISSING = Rule(
    "file-missing",
    "A file that was built is no longer there.",
    "It was deleted or renamed after the build, or the copy to the server was cut short.",
    "build or copy the site again",
    safety=True,
)
EXTRA = Rule(
    "file-extra",
    "The site holds a file that was not built.",
    "Somebody put it there, or an older copy was not removed before the new one was copied.",
    "remove the file, or build into an empty folder and copy that",
)
CLIMBS_OUT = Rule(
    "manifest-climbs-out",
    "The list of published files names a path outside the site.",
    "manifest.json was edited by hand or made by another program; such a path is never opened.",
    "do not trust this folder; build the site again",
)
RULES = (UNREADABLE, CHANGED, MISSING, EXTRA, CLIMBS_OUT)

_SHA256 = re.compile(r"[0-9a-f]{64}")
_NOT_PORTABLE = re.compile(r"[\x00-\x1f\x7f\\:\ud800-\udfff]")


@dataclass(frozen=True)
class Manifest:
    """The published files: path within the site (with ``/``) to SHA-256 in lower-case hexadecimal.

    kept: those among them that belong to the edition before this one.
    """

    files: Mapping[str, str]
    kept: tuple[str, ...] = ()


def stays_inside(path: str) -> bool:
    """Return whether `path` is relative, portable and free of steps that leave the site."""
    if not path or _NOT_PORTABLE.search(path):
        return False
    return all(part not in ("", ".", "..") for part in path.split("/"))


def to_text(manifest: Manifest) -> str:
    """Return the manifest as JSON text with sorted keys, one entry a line, ending in LF."""
    document: dict[str, Any] = {"format": FORMAT, "files": dict(manifest.files)}
    if manifest.kept:
        document["kept"] = sorted(manifest.kept)
    return json.dumps(document, indent=2, sort_keys=True, ensure_ascii=False) + "\n"


def from_text(text: str) -> Manifest | Problem:
    """Return the manifest written by `to_text`, or the problem that makes it unusable."""
    place = Place(NAME)
    try:
        document = json.loads(text, object_pairs_hook=_once)
    except (ValueError, RecursionError) as error:
        return UNREADABLE.at(place, f"not readable as JSON: {error}")
    if not isinstance(document, dict) or type(document.get("format")) is not int:
        return UNREADABLE.at(place, "there is no number under 'format'")
    if document["format"] != FORMAT:
        return UNREADABLE.at(place, f"format {document['format']} is not the format {FORMAT} known here")
    files = document.get("files")
    if not isinstance(files, dict):
        return UNREADABLE.at(place, "there is no list under 'files'")
    for path, checksum in files.items():
        if not stays_inside(path):
            return CLIMBS_OUT.at(place, f"the path {path!r} does not stay inside the site")
        if not isinstance(checksum, str) or not _SHA256.fullmatch(checksum):
            return UNREADABLE.at(place, f"the checksum of {path!r} is not a SHA-256")
    kept = document.get("kept", [])
    if not isinstance(kept, list) or any(not isinstance(path, str) or path not in files for path in kept):
        return UNREADABLE.at(place, "'kept' names something that is not listed under 'files'")
    return Manifest(files, tuple(kept))


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Return the pairs as a mapping; a key given twice is an error, because the last would win in silence."""
    result = dict(pairs)
    if len(result) != len(pairs):
        raise ValueError("a name is listed twice")
    return result


def entries(root: Path) -> Iterator[tuple[str, os.DirEntry[str]]]:
    """Yield everything below `root` that is not a folder, links unfollowed, as (path within root, entry)."""
    waiting = [(root, "")]
    while waiting:
        folder, prefix = waiting.pop()
        with os.scandir(folder) as listing:
            for entry in listing:
                if entry.is_dir(follow_symlinks=False):
                    waiting.append((Path(entry.path), f"{prefix}{entry.name}/"))
                else:
                    yield f"{prefix}{entry.name}", entry


def describe(root: Path) -> Manifest:
    """Return the manifest of the plain files below `root`, without itself; OSError if one is unreadable."""
    found = {
        path: checksum(Path(entry.path))
        for path, entry in entries(root)
        if path != NAME and entry.is_file(follow_symlinks=False)
    }
    return Manifest(found)


def read(site: Path) -> Manifest | Problem:
    """Return the manifest of a published site, or the problem that makes it unusable."""
    try:
        text = (site / NAME).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        reason = error.strerror if isinstance(error, OSError) else "it is not UTF-8 text"
        return UNREADABLE.at(Place(NAME), f"cannot be read: {reason}")
    return from_text(text)


def verify(site: Path) -> tuple[Problem, ...]:
    """Return what differs between the site and its manifest: changed, missing and extra files, by name."""
    manifest = read(site)
    if isinstance(manifest, Problem):
        return (manifest,)
    problems: list[Problem] = []
    seen: set[str] = set()
    for path, entry in entries(site):
        if path == NAME:
            continue
        shown = Place(path.encode("utf-8", "replace").decode("utf-8"))
        if path not in manifest.files:
            problems.append(EXTRA.at(shown, "this file was not built"))
            continue
        seen.add(path)
        if not entry.is_file(follow_symlinks=False):
            problems.append(CHANGED.at(shown, "this was built as a file and is now something else"))
        else:
            problems.extend(_differs(Path(entry.path), shown, manifest.files[path]))
    for path in manifest.files.keys() - seen:
        problems.append(MISSING.at(Place(path), "this file was built and is not there"))
    return in_order(problems)


def _differs(file: Path, place: Place, expected: str) -> Iterator[Problem]:
    """Yield the problem of a file that cannot be read or whose checksum is not the expected one."""
    try:
        actual = checksum(file)
    except OSError as error:
        yield CHANGED.at(place, f"this file cannot be read: {error.strerror}")
        return
    if actual != expected:
        yield CHANGED.at(place, "the content of this file is not what was built")


def checksum(file: Path) -> str:
    """Return the SHA-256 of a file."""
    with file.open("rb") as stream:
        return hashlib.file_digest(stream, "sha256").hexdigest()
