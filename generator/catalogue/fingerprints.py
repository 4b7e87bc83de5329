"""Gives every state of a text, dose or page a short code, so that paper can be told from newer paper.

A fingerprint covers meaning, not layout: places, comments and the order of keys leave it unchanged.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

# Crockford's base 32 alphabet (https://www.crockford.com/base32.html): no I, L, O, U to misread.
_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_READ_AS = str.maketrans("OIL", "011")
_MODULUS = 31


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
    if isinstance(value, frozenset):
        return sorted(plain(item) for item in value)
    if isinstance(value, str | int | float | bool) or value is None:
        return value
    raise TypeError(f"no fingerprint for {type(value).__name__}")


def fingerprint(*values: Any) -> str:
    """Return the SHA-256 of the meaning of `values` as 64 hexadecimal digits."""
    text = json.dumps([plain(value) for value in values], sort_keys=True, ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def edition_code(digest: str) -> str:
    """Return a digest as a code that can be read out by telephone: ``7KQ2-M0XP``.

    Seven characters of 31 values each carry about 34 bits of the digest, the eighth is a check character: the
    sum of the values weighted 1 to 7, modulo 31 (a prime, so one wrong character or one swap of neighbours is
    always noticed). The letter Z stands in no code.
    """
    number = int(digest[:16], 16)
    values = [(number >> (5 * place)) % _MODULUS for place in range(7)]
    text = "".join(_ALPHABET[value] for value in (*values, _check(values)))
    return f"{text[:4]}-{text[4:]}"


def is_edition_code(text: str) -> bool:
    """Return whether `text` can be an edition code: small letters, blanks and a missing hyphen are forgiven.

    As in Crockford's base 32 the letter O is read as 0, I and L as 1.
    """
    values = [_ALPHABET.find(char) for char in as_printed(text).replace("-", "")]
    if len(values) != 8 or not all(0 <= value < _MODULUS for value in values):
        return False
    return _check(values[:7]) == values[7]


def as_printed(text: str) -> str:
    """Return a typed code as it stands on paper, whether or not it can be one: ``7kq2 moxp`` is 7KQ2-M0XP."""
    typed = re.sub(r"[\s-]", "", text).upper().translate(_READ_AS)
    return f"{typed[:4]}-{typed[4:]}"


def _check(values: Sequence[int]) -> int:
    return sum(weight * value for weight, value in enumerate(values, 1)) % _MODULUS
