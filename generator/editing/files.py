"""Writes content files, each whole or not at all, and only when they are still as they were read."""

from __future__ import annotations

import os
import secrets
from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import TypeAlias

from generator.editing.rules import FILE_CHANGED, FILE_EXISTS, NOT_WRITABLE
from generator.editing.splice import MOST_BYTES, Edited, with_entry, with_item, with_scalar
from generator.editing.yaml_text import Value
from generator.problems import Place, Problem
from generator.reading.findings import Findings, check_id
from generator.reading.nodes import decode

_BOM = "\ufeff"
Edit: TypeAlias = Callable[[str], Edited]


@dataclass(frozen=True)
class Draft:
    """The new text of a file, and the hash of the bytes that it was made from."""

    text: str
    expected_hash: str


def hash_of(data: bytes) -> str:
    """Return what a file's bytes are recognised by."""
    return sha256(data).hexdigest()


def replace_scalar(path: Path, place: Place, new_text: str, expected_hash: str) -> tuple[Problem, ...]:
    """Let the value at `place` say `new_text`; return why not, or nothing when it is done."""
    return change_files({path: lambda text: with_scalar(text, place, new_text)}, {path: expected_hash})


def insert_item(path: Path, place: Place, value: Value, expected_hash: str) -> tuple[Problem, ...]:
    """Append an item to the list at `place`; return why not, or nothing when it is done."""
    return change_files({path: lambda text: with_item(text, place, value)}, {path: expected_hash})


def append_entry(path: Path, place: Place, key: str, value: Value, expected_hash: str) -> tuple[Problem, ...]:
    """Append a key to the group of keys at `place`; return why not, or nothing when it is done."""
    return change_files({path: lambda text: with_entry(text, place, key, value)}, {path: expected_hash})


def replace_files(drafts: Mapping[Path, Draft]) -> tuple[Problem, ...]:
    """Replace files; where one has changed or cannot be written none is replaced.

    All new texts lie beside their files before the first is moved into place.
    """
    staged: dict[Path, Path] = {}
    try:
        for path, draft in drafts.items():
            target = path.resolve()
            staged[target] = _staged(target, draft.text.encode("utf-8"))
        for path, draft in drafts.items():
            if hash_of(path.read_bytes()) != draft.expected_hash:
                return (FILE_CHANGED.at(Place(str(path)), "the file is not as it was read"),)
        for target, fresh in staged.items():
            fresh.replace(target)
    except OSError as error:
        return (NOT_WRITABLE.at(Place(str(error.filename or "")), f"not written ({error.strerror})"),)
    finally:
        for fresh in staged.values():
            with suppress(OSError):
                fresh.unlink(missing_ok=True)
    return ()


def hashes_as_read(
    paths: Iterable[Path], sources: Mapping[str, Sequence[str]]
) -> tuple[dict[Path, str], tuple[Problem, ...]]:
    """Return the hash of each file while all still say what was read; `sources` are the reader's."""
    found: dict[Path, str] = {}
    for path in paths:
        data = path.read_bytes() if path.is_file() else b""
        text, _ = decode(str(path), data, MOST_BYTES)
        if text is None or text.split("\n") != list(sources[str(path)]):
            return {}, (FILE_CHANGED.at(Place(str(path)), "the file is not as it was read"),)
        found[path] = hash_of(data)
    return found, ()


def refused_id(id_: str, path: Path) -> Problem | None:
    """Return why a file of this id cannot be made: it cannot serve as an id, or it is there already."""
    findings = Findings()
    check_id(id_, Place(str(path)), findings)
    taken = FILE_EXISTS.at(Place(str(path)), f"'{id_}' is there already") if path.exists() else None
    return next(iter(findings.problems), taken)


def create_file(path: Path, text: str) -> tuple[Problem, ...]:
    """Write a new file; one that is there already is never touched."""
    taken = FILE_EXISTS.at(Place(str(path)), "this file is there already")
    if path.exists() or path.is_symlink():
        return (taken,)
    fresh: Path | None = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        fresh = _staged(path, text.encode("utf-8"))
        # A link, unlike a move, fails where a file has appeared meanwhile.
        os.link(fresh, path)
    except FileExistsError:
        return (taken,)
    except OSError as error:
        return (NOT_WRITABLE.at(Place(str(path)), f"not written ({error.strerror})"),)
    finally:
        if fresh is not None:
            with suppress(OSError):
                fresh.unlink(missing_ok=True)
    return ()


def write_text(path: Path, text: str) -> tuple[Problem, ...]:
    """Write a file that is made as a whole, such as an export; return why not, or nothing when it is done.

    One that is there is replaced in one step.
    """
    if not path.exists():
        return create_file(path, text)
    try:
        return replace_files({path: Draft(text, hash_of(path.read_bytes()))})
    except OSError as error:
        return (NOT_WRITABLE.at(Place(str(path)), f"not written ({error.strerror})"),)


def change_files(edits: Mapping[Path, Edit], expected: Mapping[Path, str]) -> tuple[Problem, ...]:
    """Change several files, all or none; `expected` holds the hash of each as it was read."""
    drafts: dict[Path, Draft] = {}
    problems: list[Problem] = []
    for path, edit in edits.items():
        place = Place(str(path))
        try:
            data = path.read_bytes()
        except OSError as error:
            problems.append(NOT_WRITABLE.at(place, f"the file cannot be opened ({error.strerror})"))
            continue
        if hash_of(data) != expected[path]:
            problems.append(FILE_CHANGED.at(place, "the file is not as it was read"))
            continue
        text = data.decode("utf-8", "surrogateescape")
        mark = _BOM if text.startswith(_BOM) else ""
        edited = edit(text.removeprefix(_BOM))
        if isinstance(edited, Problem):
            problems.append(edited)
        else:
            drafts[path] = Draft(mark + edited, expected[path])
    return tuple(problems) or replace_files(drafts)


def _staged(path: Path, data: bytes) -> Path:
    """Write the bytes beside `path` under a name that the reader passes over, with the same permissions."""
    fresh = path.with_name(f".{path.name}.{secrets.token_hex(8)}")
    mode = path.stat().st_mode & 0o777 if path.exists() else 0o666
    handle = os.open(fresh, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if path.exists():
            fresh.chmod(mode)
    except OSError:
        fresh.unlink(missing_ok=True)
        raise
    return fresh
