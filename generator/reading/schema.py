"""Offers the field table to others: JSON Schemas for editors' programs, and the field reference in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.reading import fields_editions
from generator.reading.content import FILES, FOLDERS
from generator.reading.editions import FILE
from generator.reading.forms import Same
from generator.reading.kinds import Kind
from generator.reading.table import Group, ListOf, MapOf, Numbered, Table, Tagged

# The ledger of editions is read apart, because it grows for ever; its keys are described like the others.
_EVERY_FILE: Mapping[str, tuple[Table, bool]] = {**FILES, FILE: (fields_editions.LEDGER, False)}

DIALECT = "https://json-schema.org/draft/2020-12/schema"


@dataclass(frozen=True)
class FieldWords:
    """One key in the field reference: its name, whether it must stand, its form, what it means."""

    key: str
    required: bool
    form: str
    help: str


@dataclass(frozen=True)
class TableWords:
    """One group of keys in the field reference."""

    name: str
    help: str
    fields: tuple[FieldWords, ...]


def schemas() -> Mapping[str, dict[str, Any]]:
    """Return a JSON Schema (draft 2020-12) for each file, by its name, or the folder of its kind."""
    found: dict[str, dict[str, Any]] = {}
    for name, (table, mapped) in _EVERY_FILE.items():
        group = Group(table)
        found[name] = _titled(table, MapOf(group).schema() if mapped else group.schema())
    for folder, table in FOLDERS.items():
        found[folder] = _titled(table, Group(table).schema())
    return found


def reference() -> tuple[tuple[str, TableWords], ...]:
    """Return every group of keys with the file it first occurs in, each group once, in reading order."""
    roots = [*((f"{folder}/*.yml", table) for folder, table in FOLDERS.items())]
    roots += [(name, table) for name, (table, _) in _EVERY_FILE.items()]
    found: dict[str, tuple[str, TableWords]] = {}
    for name, root in roots:
        for table in _tables(root):
            found.setdefault(table.name, (name, _words(table)))
    return tuple(found.values())


def _titled(table: Table, schema: dict[str, Any]) -> dict[str, Any]:
    return {"$schema": DIALECT, "title": table.name, "description": table.help, **schema}


def _words(table: Table) -> TableWords:
    fields = tuple(FieldWords(item.key, item.required, item.kind.words(), item.help) for item in table.fields)
    return TableWords(table.name, table.help, fields)


def _tables(table: Table) -> Iterator[Table]:
    """Yield a table and all tables that its fields lead to."""
    yield table
    for item in table.fields:
        yield from _tables_of(item.kind)


def _tables_of(kind: Kind) -> Iterator[Table]:
    if isinstance(kind, Group):
        yield from _tables(kind.table)
    elif isinstance(kind, ListOf):
        yield from _tables_of(kind.item)
    elif isinstance(kind, Numbered | MapOf | Same):
        yield from _tables(kind.group.table)
    elif isinstance(kind, Tagged):
        for table in kind.tables.values():
            yield from _tables(table)
