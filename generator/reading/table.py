"""Builds records from groups of keys by the field table: the one place that says which keys there are.

The same fields give the reader, the JSON Schemas and the field reference, so the three cannot disagree.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from generator.problems import Place, did_you_mean
from generator.reading import rules
from generator.reading.findings import BAD, Findings, _Bad, check_id, name_of, shown
from generator.reading.kinds import Kind
from generator.reading.nodes import Entries, Items, Node, Scalar


@dataclass(frozen=True)
class Field:
    """A key: its name as typed, its form, what it means, whether it must stand.

    example: what a new file says here (text, list or group), where the form alone gives no good one.
    """

    key: str
    kind: Kind
    help: str
    required: bool = True
    example: Any = None

    @property
    def attribute(self) -> str:
        """Return the name of the attribute that takes the value."""
        return {"is": "is_"}.get(self.key, self.key.replace("-", "_"))


@dataclass(frozen=True)
class Table:
    """The keys of one kind of record, and what is made of them."""

    name: str
    target: Callable[..., Any]
    help: str
    fields: tuple[Field, ...]


@dataclass(frozen=True)
class ListOf:
    """A list of `least` to `most` values of one kind; `distinct`: records, each with an id of its own."""

    item: Kind
    least: int = 0
    most: int = 200
    distinct: bool = False

    def read(self, node: Node, findings: Findings) -> Any:
        """Return a tuple of the items; a bad item spoils the list but the rest is still read."""
        if not isinstance(node, Items):
            return findings.bad(
                rules.WRONG_KIND,
                node.place,
                f"{name_of(node)} stands where a list is wanted",
                "put each entry on a line of its own that begins with a dash and a blank",
            )
        if not self.least <= len(node.items) <= self.most:
            message = f"the list has {len(node.items)} entries, wanted are {self.least} to {self.most}"
            return findings.bad(rules.OUT_OF_RANGE, node.place, message, "add or remove entries")
        values = tuple(self.item.read(item, findings) for item in node.items)
        if self.distinct:
            _report_twins(values, findings)
        return BAD if any(value is BAD for value in values) else values

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        bounds = {"minItems": self.least, "maxItems": self.most}
        return {"type": "array", "items": self.item.schema(), **bounds}

    def words(self) -> str:
        """Return the form in words."""
        return f"a list, each entry {self.item.words()}"


def _report_twins(records: tuple[Any, ...], findings: Findings) -> None:
    seen: dict[str, Place] = {}
    for record in (item for item in records if item is not BAD):
        place = record.at("id")
        if record.id in seen:
            message = f"the id '{record.id}' stands twice (first in line {seen[record.id].line})"
            findings.bad(rules.DUPLICATE_ID, place, message)
        seen.setdefault(record.id, place)


@dataclass(frozen=True)
class Group:
    """A group of keys by a table; `given` holds what the surroundings know (an id, a number)."""

    table: Table

    def read(self, node: Node, findings: Findings, **given: Any) -> Any:
        """Return the record."""
        if not isinstance(node, Entries):
            return findings.bad(
                rules.WRONG_KIND,
                node.place,
                f"{name_of(node)} stands where the keys of {self.table.name} are wanted",
                f"write its keys: {', '.join(item.key for item in self.table.fields[:4])} ...",
            )
        known = {item.key: item for item in self.table.fields}
        values: dict[str, Any] = dict(given)
        places: dict[str, Place] = {}
        spoilt = False
        for key, value in node.entries:
            if key.text not in known:
                remedy = did_you_mean(key.text, known) or f"known keys are: {', '.join(sorted(known))}"
                message = f"the key {shown(key.text)} is not known in {self.table.name}"
                findings.bad(rules.UNKNOWN_KEY, key.place, message, remedy)
                continue
            places[key.text] = value.place
            for position, entry in enumerate(value.items if isinstance(value, Items) else ()):
                places[f"{key.text}.{position}"] = entry.place
            read = known[key.text].kind.read(value, findings)
            spoilt = spoilt or read is BAD
            values[known[key.text].attribute] = read
        missing = [item for item in self.table.fields if item.required and item.key not in places]
        for item in missing:
            message = f"{self.table.name} does not state '{item.key}'"
            findings.bad(rules.MISSING_KEY, node.place, message, f"add {item.key}: {_to_add(item)}")
        if spoilt or missing:
            return BAD
        return self.table.target(**values, place=node.place, places=MappingProxyType(places))

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {
            "type": "object",
            "properties": {
                item.key: {"description": item.help, **item.kind.schema()} for item in self.table.fields
            },
            "required": [item.key for item in self.table.fields if item.required],
            "additionalProperties": False,
        }

    def words(self) -> str:
        """Return the form in words."""
        return f"the keys of {self.table.name}"


def _to_add(field: Field) -> str:
    """Return what to type after a key: ``{text: ..., status: ...}`` where it has keys of its own."""
    if isinstance(field.kind, Group):
        needed = (item.key for item in field.kind.table.fields if item.required)
        return "{" + ", ".join(f"{key}: ..." for key in needed) + "}"
    return field.kind.words()


@dataclass(frozen=True)
class Numbered:
    """A list of groups, each told its number from 1."""

    group: Group
    least: int = 1

    def read(self, node: Node, findings: Findings) -> Any:
        """Return a tuple of records."""
        if not isinstance(node, Items) or len(node.items) < self.least:
            return ListOf(self.group, self.least).read(node, findings)
        values = tuple(
            self.group.read(item, findings, number=number) for number, item in enumerate(node.items, 1)
        )
        return BAD if any(value is BAD for value in values) else values

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"type": "array", "items": self.group.schema(), "minItems": self.least}

    def words(self) -> str:
        """Return the form in words."""
        return f"a list, each entry {self.group.words()}"


@dataclass(frozen=True)
class MapOf:
    """Ids, each with a group of keys; the record is told its id."""

    group: Group

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the records by id; unreadable ones are left out and the map is spoilt."""
        records, spoilt = self.read_all(node, findings)
        return BAD if spoilt else records

    def read_all(self, node: Node, findings: Findings) -> tuple[Mapping[str, Any], bool]:
        """Return the records that could be read, and whether any could not."""
        if not isinstance(node, Entries):
            findings.bad(
                rules.WRONG_KIND,
                node.place,
                f"{name_of(node)} stands where ids with their keys are wanted",
                "write an id and a colon, and under it, two blanks further in, its keys",
            )
            return MappingProxyType({}), True
        records: dict[str, Any] = {}
        spoilt = False
        for key, value in node.entries:
            id_ = check_id(key.text, key.place, findings)
            record = self.group.read(value, findings, id=key.text)
            if record is BAD or isinstance(id_, _Bad):
                spoilt = True
            else:
                records[id_] = record
        return MappingProxyType(records), spoilt

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"type": "object", "additionalProperties": self.group.schema()}

    def words(self) -> str:
        """Return the form in words."""
        return f"ids, each with {self.group.words()}"


@dataclass(frozen=True)
class Tagged:
    """A group of keys whose table is chosen by the word under `key`."""

    key: str
    tables: Mapping[str, Table] = field(default_factory=dict)

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the record of the table that the key names."""
        if not isinstance(node, Entries):
            any_table = next(iter(self.tables.values()))
            return Group(any_table).read(node, findings)
        for key, value in node.entries:
            if key.text != self.key:
                continue
            word = value.text if isinstance(value, Scalar) else ""
            if word in self.tables:
                rest = tuple(entry for entry in node.entries if entry[0].text != self.key)
                return Group(self.tables[word]).read(Entries(node.place, rest), findings)
            remedy = did_you_mean(word, self.tables) or f"take one of: {', '.join(self.tables)}"
            return findings.bad(
                rules.UNKNOWN_CHOICE, value.place, f"{name_of(value)} is not known here", remedy
            )
        remedy = f"add {self.key}: one of {', '.join(self.tables)}"
        return findings.bad(rules.MISSING_KEY, node.place, f"'{self.key}' is not stated", remedy)

    def schema(self) -> dict[str, Any]:
        """Return the schema: one of the tables, told apart by the constant word."""
        options = []
        for word, table in self.tables.items():
            schema = Group(table).schema()
            schema["properties"] = {self.key: {"const": word}, **schema["properties"]}
            schema["required"] = [self.key, *schema["required"]]
            options.append(schema)
        return {"oneOf": options}

    def words(self) -> str:
        """Return the form in words."""
        return f"keys after its '{self.key}': {', '.join(self.tables)}"
