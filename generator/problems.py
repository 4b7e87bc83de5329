"""Says what is wrong with the input, where, and what to do: the one shape every finding takes.

A finding is a value. Only the command line prints; every other room returns `Problem` values.
A code exists once, as a `Rule`; a problem can only be made from its rule, so no code is ever
without the words that ``explain`` and the page of codes show.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from enum import Enum
from typing import Any


class Severity(Enum):
    """How much a finding weighs: an error stops publishing, a warning is shown, a note informs."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, order=True)
class Place:
    """A spot in a text file: path as the reader names it, line and column counted from 1 (0: whole file)."""

    path: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        """Return ``path:line:column``, or the path alone where the finding concerns the whole file."""
        return f"{self.path}:{self.line}:{self.column}" if self.line else self.path


NOWHERE = Place("")
_SHOWN = 100
# Controls, formats (direction marks among them), surrogates, line and paragraph separators.
_UNSEEN = frozenset({"Cc", "Cf", "Cs", "Zl", "Zp"})
# Some scripts spell words with them.
_JOINERS = "\u200c\u200d"
# Of two words or parts of a name, below which nobody would take one for the other (difflib's ratio).
_ALIKE = 0.6


@dataclass(frozen=True)
class Rule:
    """What a code means: what one sees, why it happens, what to do. `safety` codes cannot be lowered."""

    code: str
    symptom: str
    cause: str
    remedy: str
    severity: Severity = Severity.ERROR
    safety: bool = False

    def at(self, place: Place, message: str, remedy: str = "") -> Problem:
        """Return a finding of this rule at `place`; `remedy` defaults to the rule's own."""
        return Problem(self.code, self.severity, place, message, remedy or self.remedy, self.safety)


@dataclass(frozen=True)
class Problem:
    """One finding: stable code, severity, place, what is wrong, what to do about it."""

    code: str
    severity: Severity
    place: Place
    message: str
    remedy: str
    safety: bool = field(default=False, compare=False)

    @property
    def sort_key(self) -> tuple[Place, str, str]:
        """Return the key that sorts findings by place, then code, then message."""
        return (self.place, self.code, self.message)


def in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Return the findings sorted by place, each said once."""
    return tuple(sorted(set(problems), key=lambda problem: problem.sort_key))


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known name that was most likely meant, or None where none is like it.

    What two names share part for part says nothing (``exercise/`` stands before every exercise): the parts
    that differ must be alike. Else the only name is meant that holds the word or is held in it.
    """
    names = sorted(set(known))
    alike = [(_likeness(word, name), name) for name in names]
    likeness, found = max(alike, key=lambda one: one[0], default=(0.0, ""))
    if likeness >= _ALIKE:
        return found
    within = [name for name in names if min(len(word), len(name)) > 1 and (word in name or name in word)]
    return within[0] if len(within) == 1 else None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return ``did you mean 'x'?`` for the nearest known name, or an empty text."""
    found = nearest(word, known)
    return "" if found is None else f"did you mean '{found}'?"


def offered(word: str, known: Iterable[str]) -> str:
    """Return what to type instead of a word that is not known: the nearest, else all of them."""
    listed = sorted(set(known))
    return did_you_mean(word, listed) or f"there are: {', '.join(listed)}"


def _likeness(word: str, name: str) -> float:
    """Return how alike a typed word and a name are: 1 is the same, below `_ALIKE` is unlike."""
    typed, meant = word.casefold().split("/"), name.casefold().split("/")
    if len(typed) == 1:
        # The name of a thing may be typed without what stands before it.
        return _ratio(typed[0], meant[-1])
    if len(typed) != len(meant):
        return 0.0
    differ = [(one, other) for one, other in zip(typed, meant, strict=True) if one != other]
    if all(one.isdecimal() and other.isdecimal() for one, other in differ):
        return _ALIKE
    return min(_ratio(one, other) for one, other in differ)


def _ratio(typed: str, meant: str) -> float:
    matcher = SequenceMatcher(None, meant, typed)
    return matcher.ratio() if matcher.quick_ratio() >= _ALIKE else 0.0


def has_errors(problems: Iterable[Problem]) -> bool:
    """Return whether any finding stops publishing."""
    return any(problem.severity is Severity.ERROR for problem in problems)


def as_text(problem: Problem, sources: Mapping[str, Sequence[str]] | None = None) -> str:
    """Return ``place: code: message; remedy``, with the source line and a mark under it where known.

    `sources` gives the lines of each file by path. Tabs count one column and are shown as a blank, and
    letters that take two cells (UAX #11) move the mark by two, so that it stands under the right character.
    """
    weight = "" if problem.severity is Severity.ERROR else f" ({problem.severity.value})"
    said = f"{problem.code}{weight}: {problem.message}; {problem.remedy}"
    head = f"{_visible(str(problem.place))}: {_visible(said, kept=chr(10))}"
    lines = (sources or {}).get(problem.place.path, ())
    if not 0 < problem.place.line <= len(lines):
        return head
    shown = "".join(char if char.isprintable() else " " for char in lines[problem.place.line - 1])
    before = max(problem.place.column, 1) - 1
    start = before + 1 - _SHOWN // 2 if before >= _SHOWN - 20 else 0
    cut = shown[start : start + _SHOWN]
    gutter = f"  {problem.place.line} | "
    margin = " " * (len(gutter) - 2) + "| " + " " * _cells(cut[: before - start])
    return f"{head}\n{gutter}{cut}\n{margin}^"


def _visible(text: str, kept: str = "") -> str:
    """Return the text with what a terminal would obey, or nobody could see, written as an escape.

    A file name or a value may hold colours, line ends or marks that turn the line round.
    """
    return "".join(char if char in kept or _is_seen(char) else f"\\u{ord(char):04x}" for char in text)


def _is_seen(char: str) -> bool:
    return char in _JOINERS or unicodedata.category(char) not in _UNSEEN


def _cells(text: str) -> int:
    """Return how many cells of a terminal the text takes."""
    return sum(
        0 if unicodedata.combining(char) else 2 if unicodedata.east_asian_width(char) in "WF" else 1
        for char in text
    )


def as_json(problem: Problem) -> dict[str, Any]:
    """Return the pinned JSON form: code, severity, path, line, column, message, remedy."""
    return {
        "code": problem.code,
        "severity": problem.severity.value,
        "path": problem.place.path,
        "line": problem.place.line,
        "column": problem.place.column,
        "message": problem.message,
        "remedy": problem.remedy,
    }
