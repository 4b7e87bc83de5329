"""Says what forms a value can take: how each is read, checked, described in a schema and in words.

A kind turns a node into a value, or reports a problem and returns `BAD`. Reading goes on after a bad value,
so that one run reports everything.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any, Protocol

from generator.catalogue.base import Text
from generator.problems import did_you_mean
from generator.reading import rules
from generator.reading.findings import (
    ID_PATTERN,
    Findings,
    Reference,
    _Bad,
    check_id,
    name_of,
    scalar,
    sentence,
    shown,
)
from generator.reading.nodes import Node

_BRACES = re.compile(r"\{[a-z][a-z0-9.-]*\}")
MOST_LETTERS = 600
_LIKE = {"integer": ("7", "112", "2026", "123456"), "number": ("2.5", "10.25")}  # As programs see them.


class Kind(Protocol):
    """A form that a value can take."""

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the value of `node`, or `BAD` after reporting why not."""

    def schema(self) -> dict[str, Any]:
        """Return the JSON Schema (draft 2020-12) of this form."""

    def words(self) -> str:
        """Return how an editor writes it, for the field reference."""


@dataclass(frozen=True)
class Words:
    """A sentence that people read and translators translate."""

    def read(self, node: Node, findings: Findings) -> Text | _Bad:
        """Return the text, folded to one line."""
        typed = sentence(node, findings)
        if isinstance(typed, _Bad):
            return typed
        words = " ".join(typed.split())
        if "<" in words or ">" in words:
            return findings.bad(rules.MARKUP, node.place, "the text holds an angle bracket")
        if len(words) > MOST_LETTERS:
            return findings.bad(rules.TEXT_TOO_LONG, node.place, f"the text has {len(words)} characters")
        if {"{", "}"} & set(_BRACES.sub("", words)):
            return findings.bad(rules.BAD_PHRASE, node.place, "a brace that belongs to no phrase")
        return Text(words, node.place)

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"type": ["string", "number"], "pattern": r"^[^<>]*[^<>\s][^<>]*$", "maxLength": MOST_LETTERS}

    def words(self) -> str:
        """Return the form in words."""
        return "a text for people (translated)"


@dataclass(frozen=True)
class Plain:
    """A short text that is never translated, such as a journal; `pattern` must match it whole."""

    wanted: str = "a short text"
    pattern: str = ".{1,300}"

    def read(self, node: Node, findings: Findings) -> str | _Bad:
        """Return the text."""
        typed = scalar(node, findings, self.wanted)
        if isinstance(typed, _Bad):
            return typed
        words = " ".join(typed.split())
        if "<" in words or ">" in words:
            return findings.bad(rules.MARKUP, node.place, "the text holds an angle bracket")
        if not re.fullmatch(self.pattern, words):
            message = f"{name_of(node)} is not {self.wanted}"
            return findings.bad(rules.WRONG_KIND, node.place, message, f"write {self.wanted}")
        return words

    def schema(self) -> dict[str, Any]:
        """Return the schema; a plain scalar that looks like a number is one to a schema."""
        kinds = [kind for kind, like in _LIKE.items() if any(re.fullmatch(self.pattern, one) for one in like)]
        least = {"minimum": 0 if re.fullmatch(self.pattern, "7") else 10}
        bounds = {} if not kinds or re.fullmatch(self.pattern, "-1") else least
        return {"type": ["string", *kinds], "pattern": f"^(?!.*[<>])(?:{self.pattern})$", **bounds}

    def words(self) -> str:
        """Return the form in words."""
        return self.wanted


@dataclass(frozen=True)
class Number:
    """A number between `least` and `most`, both included; `whole` allows no decimals."""

    least: float
    most: float
    whole: bool = True

    def read(self, node: Node, findings: Findings) -> float | int | _Bad:
        """Return the number."""
        wanted = "a whole number in digits" if self.whole else "a number in digits"
        typed = scalar(node, findings, wanted)
        if isinstance(typed, _Bad):
            return typed
        pattern = r"-?(0|[1-9]\d{0,8})" if self.whole else r"-?(0|[1-9]\d{0,8})(\.\d{1,6})?"
        if not re.fullmatch(pattern, typed, re.ASCII):
            message = f"{name_of(node)} is not {wanted}"
            return findings.bad(rules.WRONG_KIND, node.place, message, "write it in digits, for example 3")
        number = int(typed) if self.whole else float(typed)
        if not self.least <= number <= self.most:
            message = f"{typed} is not between {self.least:g} and {self.most:g}"
            return findings.bad(rules.OUT_OF_RANGE, node.place, message)
        return number

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {
            "type": "integer" if self.whole else "number",
            "minimum": self.least,
            "maximum": self.most,
        }

    def words(self) -> str:
        """Return the form in words."""
        kind = "a whole number" if self.whole else "a number"
        return f"{kind} from {self.least:g} to {self.most:g}"


@dataclass(frozen=True)
class Measure:
    """A number with its unit, such as ``3 s`` or ``30 deg``; `units` gives the factor of each unit.

    whole: whether fractions are refused.
    """

    units: Mapping[str, float]
    least: float
    most: float
    example: str
    whole: bool = False

    def read(self, node: Node, findings: Findings) -> float | int | _Bad:
        """Return the number in the first unit; whole numbers stay whole."""
        wanted = f"a {'whole ' if self.whole else ''}number and its unit, for example {self.example}"
        typed = scalar(node, findings, wanted)
        if isinstance(typed, _Bad):
            return typed
        match = re.fullmatch(rf"({self._digits}) ?([a-z]+)", typed, re.ASCII)
        if not match or match.group(2) not in self.units:
            message = f"{name_of(node)} is not {wanted}"
            return findings.bad(rules.WRONG_KIND, node.place, message, f"write {wanted}")
        number = float(match.group(1)) * self.units[match.group(2)]
        if not self.least <= number <= self.most:
            unit = next(iter(self.units))
            message = f"{typed} is not between {self.least:g} and {self.most:g} {unit}"
            return findings.bad(rules.OUT_OF_RANGE, node.place, message)
        return int(number) if number == int(number) else number

    @property
    def _digits(self) -> str:
        return r"-?\d{1,6}" if self.whole else r"-?\d{1,6}(?:\.\d{1,3})?"

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"type": "string", "pattern": f"^{self._digits} ?({'|'.join(self.units)})$"}

    def words(self) -> str:
        """Return the form in words."""
        return f"a {'whole ' if self.whole else ''}number with its unit, such as {self.example}"


@dataclass(frozen=True)
class Choice:
    """One of the words of an enumeration; `but` are members that only the program gives."""

    options: type[Enum]
    but: tuple[Enum, ...] = ()

    @property
    def known(self) -> list[str]:
        """Return the words that may be typed."""
        return [member.value for member in self.options if member not in self.but]

    def read(self, node: Node, findings: Findings) -> Enum | _Bad:
        """Return the member."""
        known = self.known
        typed = scalar(node, findings, "one of the words " + ", ".join(known))
        if isinstance(typed, _Bad):
            return typed
        if typed in known:
            return self.options(typed)
        remedy = did_you_mean(typed, known) or f"take one of: {', '.join(known)}"
        return findings.bad(rules.UNKNOWN_CHOICE, node.place, f"{shown(typed)} is not known here", remedy)

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"enum": self.known}

    def words(self) -> str:
        """Return the form in words."""
        return "one of: " + ", ".join(self.known)


@dataclass(frozen=True)
class Flag:
    """Yes or no."""

    def read(self, node: Node, findings: Findings) -> bool | _Bad:
        """Return the truth value; ``yes``, ``no``, ``true`` and ``false`` are understood."""
        typed = scalar(node, findings, "yes or no")
        if isinstance(typed, _Bad):
            return typed
        values = {"yes": True, "true": True, "no": False, "false": False}
        if typed not in values:
            message = f"{shown(typed)} is neither yes nor no"
            return findings.bad(rules.WRONG_KIND, node.place, message, "write yes or no")
        return values[typed]

    def schema(self) -> dict[str, Any]:
        """Return the schema; editors differ in how they read ``yes``."""
        return {"enum": [True, False, "yes", "no"]}

    def words(self) -> str:
        """Return the form in words."""
        return "yes or no"


@dataclass(frozen=True)
class Id:
    """A name for addresses; with `target`, the name of a thing that must exist."""

    target: str = ""

    def read(self, node: Node, findings: Findings) -> str | _Bad:
        """Return the id and remember what it must refer to."""
        typed = scalar(node, findings, self._wanted if self.target else "an id")
        if isinstance(typed, _Bad):
            return typed
        if self.target:
            findings.references.append(Reference(self.target, typed, node.place))
            return typed
        return check_id(typed, node.place, findings)

    def schema(self) -> dict[str, Any]:
        """Return the schema; an id of digits is a number to a schema."""
        return {"type": ["string", "integer"], "pattern": f"^{ID_PATTERN}$", "minimum": 10}

    def words(self) -> str:
        """Return the form in words."""
        return self._wanted if self.target else "an id: small letters, digits, hyphens"

    @property
    def _wanted(self) -> str:
        return f"the id of {'an' if self.target[0] in 'aeiou' else 'a'} {self.target}"


@dataclass(frozen=True)
class Parsed:
    """A short notation of our own, such as ``3 x 10``; `parse` returns None where it does not fit."""

    parse: Callable[[str], Any]
    pattern: str
    wanted: str

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the parsed value."""
        typed = scalar(node, findings, self.wanted)
        if isinstance(typed, _Bad):
            return typed
        value = self.parse(" ".join(typed.split()))
        if value is None:
            message = f"{name_of(node)} is not {self.wanted}"
            return findings.bad(rules.WRONG_KIND, node.place, message, f"write {self.wanted}")
        return value

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {"type": "string", "pattern": f"^(?:{self.pattern})$"}

    def words(self) -> str:
        """Return the form in words."""
        return self.wanted
