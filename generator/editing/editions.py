"""Adds recorded editions to their ledger, and keeps their files byte for byte in an archive."""

from __future__ import annotations

import os
import secrets
from collections.abc import Mapping, Sequence
from contextlib import suppress
from hashlib import sha256
from pathlib import Path

from generator.catalogue.edition_values import Plain, edition_value
from generator.catalogue.editions import Edition, EditionLedger
from generator.editing.files import Draft, create_file, hash_of, replace_files
from generator.editing.rules import ARCHIVE_DAMAGED, ARCHIVE_LACKS, NOT_SAYABLE, NOT_WRITABLE
from generator.editing.yaml_text import flow, scalar
from generator.problems import Place, Problem
from generator.reading.editions import FILE, ReadLedger, parse_editions

_HEAD = """\
# yaml-language-server: $schema=.schemas/editions.schema.json
# Every edition of a booklet that was recorded, the latest last. Written by: editions record.
# Do not change it by hand: codes on paper point here, and each entry is checked against its fingerprint.
editions:
"""


def add_editions(content: Path, read: ReadLedger, fresh: Sequence[Edition]) -> tuple[Problem, ...]:
    """Append editions to the ledger as it was read; return why not, or nothing when it is done."""
    path = content / FILE
    before = read.data.decode("utf-8") or _HEAD
    known = read.ledger or EditionLedger()
    if not known.editions:
        before = _HEAD
    entries = "".join(f"{line}\n" for one in fresh for line in _lines(one))
    text = before.rstrip("\n") + "\n" + entries
    # What cannot be read back as it was meant is never written.
    back = parse_editions(str(path), text.encode("utf-8")).ledger
    if back is None or back.editions != (*known.editions, *fresh):
        return (
            NOT_SAYABLE.at(Place(str(path)), "the editions cannot be written so that they read the same"),
        )
    if not read.data and not path.exists():
        return create_file(path, text)
    return replace_files({path: Draft(text, hash_of(read.data))})


def _lines(edition: Edition) -> list[str]:
    """Return the lines of an entry: one for each fact, so that a ledger of many years stays readable."""
    lines = _group(edition_value(edition))
    return [f"  - {lines[0]}", *(f"    {line}" for line in lines[1:])]


def _group(values: Mapping[str, Plain]) -> list[str]:
    lines: list[str] = []
    for key, value in values.items():
        if isinstance(value, dict):
            lines += [f"{key}:", *(f"  {line}" for line in _group(value))]
        elif isinstance(value, list) and any(isinstance(item, dict) for item in value):
            lines += [f"{key}:", *(f"  - {flow(item)}" for item in value)]
        else:
            lines.append(f"{key}: {scalar(value) if isinstance(value, str) else flow(value)}")
    return lines


def archived(archive: Path, digest: str) -> Path:
    """Return where a file of this SHA-256 is kept."""
    return archive / digest[:2] / f"{digest}.pdf"


def keep_file(archive: Path, data: bytes) -> str | Problem:
    """Keep the bytes in the archive and return their SHA-256; what is there already stays untouched."""
    digest = sha256(data).hexdigest()
    target = archived(archive, digest)
    fresh = target.with_name(f".{digest}.{secrets.token_hex(4)}")
    try:
        if target.is_file() and target.read_bytes() == data:
            return digest
        target.parent.mkdir(parents=True, exist_ok=True)
        with fresh.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        fresh.replace(target)
    except OSError as error:
        return NOT_WRITABLE.at(Place(str(target)), f"not kept ({error.strerror})")
    finally:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)
    return digest


def kept_file(archive: Path, digest: str) -> bytes | Problem:
    """Return the bytes that were kept, only when they are still those that were recorded."""
    path = archived(archive, digest)
    try:
        data = path.read_bytes()
    except OSError as error:
        return ARCHIVE_LACKS.at(Place(str(path)), f"the kept file cannot be opened ({error.strerror})")
    if sha256(data).hexdigest() != digest:
        return ARCHIVE_DAMAGED.at(Place(str(path)), "the kept file is not as it was recorded")
    return data


def write_bytes(path: Path, data: bytes) -> tuple[Problem, ...]:
    """Write a file that was kept to where it is wanted, in one step; return why not."""
    fresh = path.with_name(f".{path.name}.{secrets.token_hex(4)}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        fresh.write_bytes(data)
        fresh.replace(path)
    except OSError as error:
        return (NOT_WRITABLE.at(Place(str(path)), f"not written ({error.strerror})"),)
    finally:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)
    return ()
