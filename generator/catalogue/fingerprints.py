"""Gives every state of a text, dose or page a short code, so that paper can be told from newer paper.

A fingerprint covers meaning, not layout: places, comments and the order of keys leave it unchanged.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

# Crockford's base 32 alphabet (https://www.crockford.com/base32.html): no I, L, O, U to misread.
_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


def plain(value: Any) -> Any:
    """Return `value` as JSON types, without what takes no part in equality (places)."""
    if is_dataclass(value) and not isinstance(value, type):
        return {item.name: plain(getattr(value, item.name)) for item in fields(value) if item.compare}
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Mapping):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [plain(item) for item in value]
    if isinstance(value, str | int | float | bool) or value is None:
        return value
    raise TypeError(f"no fingerprint for {type(value).__name__}")


def fingerprint(*values: Any) -> str:
    """Return the SHA-256 of the meaning of `values` as 64 hexadecimal digits."""
    text = json.dumps([plain(value) for value in values], sort_keys=True, ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def edition_code(digest: str) -> str:
    """Return a digest as a code that can be read out by telephone: ``7KQ2-M0XD``.

    Seven characters carry 35 bits of the digest, the eighth is a check character: the sum of the values
    weighted 1 to 7, modulo 31, so one wrong character or one swap of neighbours is always noticed.
    """
    number = int(digest[:16], 16)
    values = [(number >> (5 * place)) % 31 for place in range(7)]
    values.append(sum((place + 1) * value for place, value in enumerate(values)) % 31)
    text = "".join(_ALPHABET[value] for value in values)
    return f"{text[:4]}-{text[4:]}"
