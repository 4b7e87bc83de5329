"""Reduces a value to what it means, so that a fingerprint changes with the meaning and with nothing else.

Comments, order of keys, places and what the program works out itself take no part. Values that a field has
when nothing is typed take none either: a key that a newer version of the program knows ends no sign-off.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from enum import Enum
from typing import Any

from generator.catalogue.base import Source, Text

# Worked out from poses, which take part themselves.
_DERIVED = ("shown",)
_LETTERS = 32


def digest(*values: Any) -> str:
    """Return 32 hexadecimal digits of the SHA-256 of what the values mean."""
    text = json.dumps([meaning(value) for value in values], sort_keys=True, ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8")).hexdigest()[:_LETTERS]


def meaning(value: Any, *, sources: bool = True) -> Any:
    """Return a value as JSON types; without `sources`, no source takes part."""
    if isinstance(value, Text):
        return value.source
    if is_dataclass(value) and not isinstance(value, type):
        said = {
            item.name: meaning(getattr(value, item.name), sources=sources)
            for item in fields(value)
            if _counts(item, getattr(value, item.name), sources)
        }
        return {"": type(value).__name__, **said}
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Mapping):
        return {str(key): meaning(item, sources=sources) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [meaning(item, sources=sources) for item in value]
    if isinstance(value, str | int | float | bool) or value is None:
        return value
    raise TypeError(f"no meaning for {type(value).__name__}")


def _counts(item: Field[Any], value: Any, sources: bool) -> bool:
    if not item.compare or item.name in _DERIVED or (isinstance(value, Source) and not sources):
        return False
    default = item.default if item.default_factory is MISSING else item.default_factory()
    return default is MISSING or bool(value != default) or type(value) is not type(default)
