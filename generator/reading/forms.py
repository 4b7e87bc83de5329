"""Lets an editor write less: one number for a whole range, the word ``same`` for a group of keys."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from generator.reading import rules
from generator.reading.findings import BAD, Findings
from generator.reading.kinds import Kind
from generator.reading.nodes import Entries, Node, Scalar
from generator.reading.table import Field, Group, Table


@dataclass(frozen=True)
class Same:
    """A group of keys, or the word ``same`` for: as in the exercise."""

    group: Group

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the record, or None for ``same``."""
        if isinstance(node, Scalar) and node.text == "same":
            return None
        return self.group.read(node, findings)

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"oneOf": [{"const": "same"}, self.group.schema()]}

    def words(self) -> str:
        """Return the form in words."""
        return f"same, or {self.group.words()}"


@dataclass(frozen=True)
class SpanOf:
    """A usual number with the range that is permitted, or the number alone where nothing else is."""

    kind: Kind
    target: Callable[[int, int, int], Any]

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the span; the usual number must lie in the range."""
        if not isinstance(node, Entries):
            number = self.kind.read(node, findings)
            return BAD if number is BAD else self.target(number, number, number)
        keys = tuple(Field(key, self.kind, "") for key in ("usual", "from", "to"))
        table = Table("a range", dict, "", keys)
        read = Group(table).read(node, findings)
        if read is BAD:
            return BAD
        if not read["from"] <= read["usual"] <= read["to"]:
            message = f"usual {read['usual']} is not between from {read['from']} and to {read['to']}"
            return findings.bad(rules.OUT_OF_RANGE, node.place, message)
        return self.target(read["usual"], read["from"], read["to"])

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        keys = ["usual", "from", "to"]
        group = {
            "type": "object",
            "properties": {key: self.kind.schema() for key in keys},
            "required": keys,
            "additionalProperties": False,
        }
        return {"oneOf": [self.kind.schema(), group]}

    def words(self) -> str:
        """Return the form in words."""
        return f"{self.kind.words()}, or {{usual: ..., from: ..., to: ...}}"
