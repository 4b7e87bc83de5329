"""Reads a whole content folder into one catalogue, and reports everything that is wrong in one run."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import Any

from generator.catalogue.review import NO_LEDGER
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, did_you_mean, in_order
from generator.reading import (
    fields_clinic,
    fields_daily_life,
    fields_exercise,
    fields_programme,
    fields_review,
    rules,
)
from generator.reading.findings import BAD, Findings, check_id, shown
from generator.reading.nodes import MOST_BYTES, MOST_NODES, Entries, Node, decode, parse
from generator.reading.schema_comment import comment_problems
from generator.reading.table import Group, MapOf, Table

# One file each: its table, and whether it is a map of ids to records.
FILES: Mapping[str, tuple[Table, bool]] = {
    "clinic.yml": (fields_clinic.CLINIC, False),
    "safety.yml": (fields_clinic.SAFETY, False),
    "studies.yml": (fields_clinic.STUDY, True),
    "muscles.yml": (fields_clinic.MUSCLE, True),
    "equipment.yml": (fields_clinic.EQUIPMENT, True),
    "precautions.yml": (fields_clinic.STRAIN, True),
    "glossary.yml": (fields_clinic.TERM, True),
    "reviews.yml": (fields_review.LEDGER, False),
}
# Without them nothing was reviewed yet.
OPTIONAL_FILES = ("reviews.yml",)
# One file a record, named by its id.
FOLDERS: Mapping[str, Table] = {
    "exercises": fields_exercise.EXERCISE,
    "programmes": fields_programme.PROGRAMME,
    "daily-life": fields_daily_life.DAILY_LIFE,
}
# A clinic may have nothing to say about daily life; without exercises or programmes there is no catalogue.
NEEDED_FOLDERS = ("exercises", "programmes")
# How many bytes and values a file may have; the ledger grows by a line with each sign-off, for years.
_MOST = (MOST_BYTES, MOST_NODES)
_LONG = {"reviews.yml": (20_000_000, 500_000)}
# Read elsewhere, as the translations are.
OTHERS = ("editions.yml",)
Parser = Callable[[str, str, int], tuple[Node | None, tuple[Problem, ...]]]
_TARGETS = {
    "exercise": "exercises",
    "study": "studies.yml",
    "muscle": "muscles.yml",
    "equipment": "equipment.yml",
    "strain": "precautions.yml",
    "daily-life-item": "daily-life",
}


@dataclass(frozen=True)
class Reading:
    """What a content folder says.

    catalogue: all that could be read, or None where the clinic or the safety texts could not.
    problems: sorted by place. sources: lines of each file by path, to show beside a problem.
    """

    catalogue: Catalogue | None
    problems: tuple[Problem, ...]
    sources: Mapping[str, Sequence[str]]


def read_content(folder: Path) -> Reading:
    """Read the folder's files; paths in places begin with the folder as it was named.

    Files that cannot be opened are reported, never raised.
    """
    reader = _Reader(f"{folder}/")
    if not folder.is_dir():
        place = Place(str(folder))
        reader.findings.bad(rules.MISSING_FILE, place, "there is no such folder", "name a content folder")
        return Reading(None, in_order(reader.findings.problems), {})
    files: dict[str, bytes] = {}
    for path in sorted(folder.rglob("*")):
        # A name in another encoding could not be printed as it is.
        name = path.relative_to(folder).as_posix().encode("utf-8", "backslashreplace").decode("utf-8")
        plain_folder = path.is_dir() and path.suffix != ".yml" and not path.is_symlink()
        if name.startswith(".") or "/." in name or plain_folder:
            continue
        data = _bytes_of(path, Path(os.path.realpath(folder)))
        if isinstance(data, bytes):
            files[name] = data
        else:
            reader.unreadable(name, data)
    return reader.read_all(files)


def _bytes_of(path: Path, folder: Path) -> bytes | str:
    """Return what the file holds, or why it cannot be read.

    A pipe would keep the reader waiting for ever, and a link could print any file of the machine.
    """
    if not Path(os.path.realpath(path)).is_relative_to(folder):
        return "it is a link that leads out of the content folder"
    if path.is_dir():
        return "it is a folder"
    if path.exists() and not path.is_file():
        return "it is no ordinary file"
    try:
        with path.open("rb") as file:
            return file.read(max(most for most, _ in (_MOST, *_LONG.values())) + 1)
    except OSError as error:
        return f"it cannot be opened ({error.strerror})"


def read_files(files: Mapping[str, bytes], prefix: str = "", parser: Parser = parse) -> Reading:
    """Read file contents by name (``exercises/heel-slide.yml``); `prefix` goes before names in places.

    parser: turns text into nodes; who reads nearly the same files again and again gives one that remembers.
    """
    return _Reader(prefix, parser).read_all(files)


@dataclass
class _Reader:
    """Holds what one run has found so far; `known` gathers ids even of records that cannot be read."""

    prefix: str
    parser: Parser = parse
    findings: Findings = field(default_factory=Findings)
    sources: dict[str, Sequence[str]] = field(default_factory=dict)
    closed: set[str] = field(default_factory=set)
    parts: dict[str, Any] = field(default_factory=lambda: {folder: {} for folder in FOLDERS})
    known: dict[str, set[str]] = field(default_factory=lambda: {folder: set() for folder in FOLDERS})

    def unreadable(self, name: str, reason: str) -> None:
        """Report a file that cannot be opened; what refers to it is not accused as well."""
        self.findings.bad(rules.UNREADABLE_FILE, Place(self.prefix + name), reason)
        self.closed.add(name)
        folder, _, base = name.rpartition("/")
        if folder in FOLDERS:
            self.known[folder].add(base.removesuffix(".yml"))

    def read_all(self, files: Mapping[str, bytes]) -> Reading:
        """Read every file, then see whether every name belongs to something."""
        for name, data in sorted(files.items()):
            self._read(name, data)
        for name in FILES:
            if name not in (*files, *self.closed, *OPTIONAL_FILES):
                self.findings.bad(rules.MISSING_FILE, Place(self.prefix + name), "this file is missing")
        for folder in NEEDED_FOLDERS:
            if not self.known[folder]:
                place = Place(f"{self.prefix}{folder}/")
                self.findings.bad(rules.MISSING_FILE, place, "no file ending in .yml lies here")
        self._check_references()
        return Reading(_assemble(self.parts), in_order(self.findings.problems), self.sources)

    def _read(self, name: str, data: bytes) -> None:
        """Read one file where it belongs to a part of the content."""
        folder, _, base = name.rpartition("/")
        stem, dot, ending = base.rpartition(".")
        place = Place(self.prefix + name)
        if folder == "translations" or name in OTHERS:
            return
        if name in FILES:
            table, mapped = FILES[name]
            self._read_shared(name, table, mapped, data)
        elif folder in FOLDERS and dot and ending == "yml":
            if check_id(stem, place, self.findings) is BAD:
                return
            self.known[folder].add(stem)
            root = self._parse(name, data)
            record = Group(FOLDERS[folder]).read(root, self.findings, id=stem) if root else BAD
            if record is not BAD:
                self.parts[folder][stem] = record
        else:
            self.findings.bad(rules.UNEXPECTED_FILE, place, "this file belongs to no part of the content")

    def _read_shared(self, name: str, table: Table, mapped: bool, data: bytes) -> None:
        root = self._parse(name, data)
        if root is None:
            return
        if mapped:
            self.parts[name], _ = MapOf(Group(table)).read_all(root, self.findings)
            if isinstance(root, Entries):
                self.known[name] = {key.text for key, _ in root.entries}
            return
        record = Group(table).read(root, self.findings)
        if record is not BAD:
            self.parts[name] = record

    def _parse(self, name: str, data: bytes) -> Node | None:
        path = self.prefix + name
        most_bytes, most_values = _LONG.get(name, _MOST)
        text, problems = decode(path, data, most_bytes)
        self.findings.problems.extend(problems)
        if text is None:
            return None
        self.sources[path] = text.split("\n")
        self.findings.problems.extend(comment_problems(path, name, text))
        root, problems = self.parser(path, text, most_values)
        self.findings.problems.extend(problems)
        if root is None and not problems:
            remedy = "write its keys, or delete the file"
            self.findings.bad(rules.EMPTY_TEXT, Place(path), "the file is empty", remedy)
        return root

    def _check_references(self) -> None:
        """Report every name that belongs to nothing; a file that could not be read accuses nobody."""
        for reference in self.findings.references:
            ids = self.known.get(_TARGETS[reference.target])
            if ids is None or reference.id in ids:
                continue
            rule = rules.UNKNOWN[reference.target]
            message = f"there is no {reference.target} {shown(reference.id)}"
            self.findings.bad(rule, reference.place, message, did_you_mean(reference.id, ids))


def _assemble(parts: Mapping[str, Any]) -> Catalogue | None:
    if "clinic.yml" not in parts or "safety.yml" not in parts:
        return None
    empty: Mapping[str, Any] = MappingProxyType({})
    return Catalogue(
        clinic=parts["clinic.yml"],
        safety=parts["safety.yml"],
        exercises=MappingProxyType(dict(sorted(parts["exercises"].items()))),
        programmes=MappingProxyType(dict(sorted(parts["programmes"].items()))),
        studies=parts.get("studies.yml", empty),
        muscles=parts.get("muscles.yml", empty),
        equipment=parts.get("equipment.yml", empty),
        strains=parts.get("precautions.yml", empty),
        glossary=parts.get("glossary.yml", empty),
        daily_life=MappingProxyType(dict(sorted(parts["daily-life"].items()))),
        ledger=parts.get("reviews.yml", NO_LEDGER),
    )
