"""Collects what reading finds, and says it in an editor's words: what stands there, what is nearest to it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from generator.problems import Place, Problem, Rule
from generator.reading import rules
from generator.reading.nodes import Entries, Items, Node, Scalar


class _Bad:
    """Stands for a value that could not be read."""

    def __repr__(self) -> str:
        return "BAD"


BAD: Final = _Bad()
ID_PATTERN = r"[a-z0-9](?:[a-z0-9-]{0,46}[a-z0-9])"
_ID = re.compile(ID_PATTERN)
MOST_SHOWN = 60


@dataclass(frozen=True)
class Reference:
    """A name that must belong to a thing of kind `target` (``exercise``, ``study`` ...)."""

    target: str
    id: str
    place: Place


@dataclass
class Findings:
    """Collects, while files are read, what is wrong and which names must exist."""

    problems: list[Problem] = field(default_factory=list)
    references: list[Reference] = field(default_factory=list)

    def bad(self, rule: Rule, place: Place, message: str, remedy: str = "") -> _Bad:
        """Report a problem and return the bad value."""
        self.problems.append(rule.at(place, message, remedy))
        return BAD


def shown(typed: str) -> str:
    """Return what was typed in quotation marks, on one line and no longer than a message can bear."""
    words = " ".join(typed.split())
    return f"'{words}'" if len(words) <= MOST_SHOWN else f"'{words[: MOST_SHOWN - 1]}…'"


def name_of(node: Node) -> str:
    """Return what a node is, in an editor's words."""
    if isinstance(node, Items):
        return "a list"
    if isinstance(node, Entries):
        return "a group of keys"
    if isinstance(node, Scalar):
        return shown(node.text) if node.text.strip() else "nothing"
    raise TypeError(type(node).__name__)


def scalar(node: Node, findings: Findings, wanted: str) -> str | _Bad:
    """Return the text of a scalar, or report that `wanted` was expected."""
    if isinstance(node, Scalar) and (node.text or node.quoted):
        return node.text
    return findings.bad(
        rules.WRONG_KIND, node.place, f"{name_of(node)} stands where {wanted} is wanted", f"write {wanted}"
    )


def sentence(node: Node, findings: Findings) -> str | _Bad:
    """Return a text that people read, or report that there is none; say where a remark cuts it short."""
    if isinstance(node, Scalar) and not node.text.strip():
        return findings.bad(rules.EMPTY_TEXT, node.place, "the text is empty")
    if isinstance(node, Scalar) and node.remarked:
        findings.bad(rules.CUT_SHORT, node.place, f"the text ends before '#': {shown(node.text)}")
    return scalar(node, findings, "a text")


def check_id(typed: str, place: Place, findings: Findings) -> str | _Bad:
    """Return `typed` where it can stand in an address, else report it."""
    if _ID.fullmatch(typed):
        return typed
    return findings.bad(rules.BAD_ID, place, f"{shown(typed)} cannot serve as an id")
