"""Writes values as YAML that the reader takes back as they are, in the plainest form that does."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import TypeAlias

Value: TypeAlias = "str | Sequence[Value] | Mapping[str, Value]"

# Letters, digits and signs that mean nothing to YAML, also not at the end; a blank only between them.
_PLAIN = re.compile(r"[^\W_](?:[\w.,;()/'’+×–°%…!?-]| (?=[^\s]))*")


def scalar(text: str, in_flow: bool = False) -> str:
    """Return a text without quotation marks where it can stand so, else in double ones."""
    if _PLAIN.fullmatch(text) and not (in_flow and "," in text):
        return text
    return quoted(text)


def quoted(text: str) -> str:
    """Return a text in double quotation marks; JSON's escapes are YAML's too."""
    return json.dumps(text, ensure_ascii=False)


def flow(value: Value) -> str:
    """Return a value on one line, lists in ``[]`` and groups in ``{}``."""
    if isinstance(value, str):
        return scalar(value, in_flow=True)
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{scalar(key, True)}: {flow(item)}" for key, item in value.items()) + "}"
    return "[" + ", ".join(flow(item) for item in value) + "]"


def _fits_one_line(value: Value) -> bool:
    """Return whether a value is a few words or numbers; sentences stand one below the other."""
    items = list(value.values()) if isinstance(value, Mapping) else list(value)
    few = len(items) <= 3 or not isinstance(value, Mapping)
    return few and all(isinstance(item, str) and not item.endswith(".") and len(item) < 30 for item in items)


def block_item(value: Value) -> list[str]:
    """Return the lines of a list's item, without the list's indentation."""
    if isinstance(value, Mapping) and value:
        lines = [line for key, item in value.items() for line in block_entry(key, item)]
        return [f"- {lines[0]}", *(f"  {line}" for line in lines[1:])]
    return [f"- {scalar(value) if isinstance(value, str) else flow(value)}"]


def block_entry(key: str, value: Value) -> list[str]:
    """Return the lines of a group's entry, without the group's indentation."""
    head = f"{scalar(key)}:"
    if isinstance(value, str):
        return [f"{head} {scalar(value)}"]
    if not value or _fits_one_line(value):
        return [f"{head} {flow(value)}"]
    if isinstance(value, Mapping):
        inner = [line for name, item in value.items() for line in block_entry(name, item)]
        return [head, *(f"  {line}" for line in inner)]
    return [head, *(f"  {line}" for item in value for line in block_item(item))]
