"""Turns the text of a content file into nodes that know their place, and refuses what no content needs.

YAML's own guesses (a tempo read as a number of seconds, ``no`` read as false) never happen: every scalar
stays the text that was typed, and the field table decides what it means. Counters stop bombs; the parser
is driven by events, so that depth is counted before anything recurses.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

import yaml

from generator.problems import Place, Problem
from generator.reading import rules
from generator.reading.syntax import syntax_problem

MOST_BYTES = 1_000_000
MOST_NODES = 50_000
MOST_DEPTH = 24
MOST_NAME = 60
MOST_ALIKE = 20

# C0 and C1 controls but line feed and tab; line ends that only YAML counts (NEL, U+2028, U+2029), which would
# shift every place after them; embedding, override and isolate marks; non-characters.
_HIDDEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]")
_LEADING_TAB = re.compile(r"^ *\t", re.MULTILINE)


@dataclass(frozen=True)
class Node:
    """A value as typed, with its place."""

    place: Place


@dataclass(frozen=True)
class Scalar(Node):
    """One piece of text. quoted: whether it stood in quotation marks or a text block.

    remarked: whether a number sign follows it, with a remark that is no part of it.
    """

    text: str
    quoted: bool
    remarked: bool = False


@dataclass(frozen=True)
class Items(Node):
    """A list."""

    items: tuple[Node, ...]


@dataclass(frozen=True)
class Entries(Node):
    """Keys with values, in the order of the file; each key once."""

    entries: tuple[tuple[Scalar, Node], ...]


@dataclass
class _Open:
    """A list or mapping that is not closed yet."""

    place: Place
    mapping: bool
    children: list[Node]


def decode(path: str, data: bytes, most: int = MOST_BYTES) -> tuple[str | None, tuple[Problem, ...]]:
    """Return the text of a file and what hinders reading it; the text is None where reading must stop."""
    if len(data) > most:
        message = f"the file has more than {most // 1_000_000} MB"
        return None, (rules.FILE_TOO_LARGE.at(Place(path), message),)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line = before.count(b"\n") + 1
        column = len(before[before.rfind(b"\n") + 1 :].decode("utf-8", "replace")) + 1
        return None, (rules.NOT_UTF8.at(Place(path, line, column), "this character is not UTF-8"),)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    hidden = tuple(
        rules.CONTROL_CHARACTER.at(_place(path, text, match.start()), _invisible(match))
        for match in islice(_HIDDEN.finditer(text), MOST_ALIKE)
    )
    if hidden:
        return None, hidden
    tabs = tuple(
        rules.TAB.at(_place(path, text, match.end() - 1), "the line begins with a tab")
        for match in islice(_LEADING_TAB.finditer(text), MOST_ALIKE)
    )
    return (None if tabs else text), tabs


def parse(path: str, text: str, most: int = MOST_NODES) -> tuple[Node | None, tuple[Problem, ...]]:
    """Return the root node of a document and what is wrong with it; None where nothing can be read."""
    try:
        return _build(path, text, most)
    except yaml.MarkedYAMLError as error:
        return None, (syntax_problem(path, error),)


def _invisible(match: re.Match[str]) -> str:
    return f"invisible character U+{ord(match.group()):04X}"


def _place(path: str, text: str, position: int) -> Place:
    start = text.rfind("\n", 0, position) + 1
    return Place(path, text.count("\n", 0, position) + 1, position - start + 1)


def _build(path: str, text: str, most: int) -> tuple[Node | None, tuple[Problem, ...]]:
    """Follow the parser's events with a stack of open lists and mappings."""
    problems: list[Problem] = []
    stack: list[_Open] = []
    root: Node | None = None
    count = documents = 0
    lines = text.split("\n")
    for event in yaml.parse(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader)):
        mark = event.start_mark
        place = Place(path, mark.line + 1, mark.column + 1) if mark else Place(path)
        done: Node | None = None
        if isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents > 1:
                problems.append(rules.SEVERAL_DOCUMENTS.at(place, "a second document starts here"))
                return root, tuple(problems)
        elif isinstance(event, yaml.AliasEvent):
            message = f"a reference to another value (*{(event.anchor or '')[:MOST_NAME]})"
            problems.append(rules.ALIAS.at(place, message))
            return None, tuple(problems)
        elif isinstance(event, yaml.CollectionStartEvent | yaml.ScalarEvent):
            count += 1
            if count > most or len(stack) > MOST_DEPTH:
                problems.append(rules.TOO_MUCH.at(place, "too many or too deeply nested values"))
                return None, tuple(problems)
            problems += _unwanted(event, place)
        if isinstance(event, yaml.ScalarEvent):
            # The C parser says a plain scalar with an empty text, the other with None.
            done = Scalar(place, event.value, event.style not in (None, ""), _is_remarked(lines, event))
        elif isinstance(event, yaml.CollectionStartEvent):
            stack.append(_Open(place, isinstance(event, yaml.MappingStartEvent), []))
        elif isinstance(event, yaml.CollectionEndEvent):
            done = _close(stack.pop(), problems)
        if done is not None and stack:
            stack[-1].children.append(done)
        elif done is not None:
            root = done
    return root, tuple(problems)


def _is_remarked(lines: list[str], event: yaml.ScalarEvent) -> bool:
    """Return whether a value without quotation marks is followed by a remark in its last line."""
    mark = event.end_mark
    if event.style not in (None, "") or mark is None or mark.line >= len(lines):
        return False
    return lines[mark.line][mark.column :].lstrip().startswith("#")


def _unwanted(event: yaml.CollectionStartEvent | yaml.ScalarEvent, place: Place) -> Iterator[Problem]:
    """Yield what a value must not carry: a tag, or an escape that hides what the file's text did not show."""
    if event.tag is not None and event.tag != "!":
        yield rules.TAG.at(place, f"the tag {event.tag[:MOST_NAME]}")
    if isinstance(event, yaml.ScalarEvent) and (match := _HIDDEN.search(event.value)):
        yield rules.CONTROL_CHARACTER.at(place, _invisible(match))


def _close(opened: _Open, problems: list[Problem]) -> Node:
    if not opened.mapping:
        return Items(opened.place, tuple(opened.children))
    entries: dict[str, tuple[Scalar, Node]] = {}
    for key, value in zip(opened.children[::2], opened.children[1::2], strict=True):
        if not isinstance(key, Scalar):
            problems.append(rules.YAML_SYNTAX.at(key.place, "a list or mapping stands where a key belongs"))
        elif key.text in entries:
            first = entries[key.text][0].place.line
            message = f"the key '{key.text[:MOST_NAME]}' stands twice (first in line {first})"
            problems.append(rules.DUPLICATE_KEY.at(key.place, message))
        else:
            entries[key.text] = (key, value)
    return Entries(opened.place, tuple(entries.values()))
