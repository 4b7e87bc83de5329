"""Changes one value in the text of a content file and leaves every other character as it was.

Comments, layout, quotation marks and line ends stay. Each result is read back before it is returned: it must
say what was meant and, everywhere else, what it said before. Nothing here touches a file; `files` does.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from textwrap import wrap
from typing import Any, TypeAlias

from generator.editing.rules import NOT_SAYABLE, NOTHING_THERE
from generator.editing.yaml_text import Value, block_entry, block_item, flow, quoted, scalar
from generator.problems import Place, Problem
from generator.reading.nodes import decode, parse
from generator.reading.spans import Span, spans

Edited: TypeAlias = str | Problem
_WIDTH = 110
# The reader's limits for the longest file, the ledger of sign-offs; what it refused is not changed anyway.
MOST_BYTES, _MOST_VALUES = 20_000_000, 500_000


def with_scalar(text: str, place: Place, new: str) -> Edited:
    """Return `text` with the scalar at `place` saying `new`, in the style that it was written in."""

    def change(target: Span) -> tuple[int, int, str] | None:
        if target.kind != "scalar":
            return None
        return target.start, target.end, _in_style(text, target, new)

    return _edited(text, place, change, lambda _: new, "scalar")


def with_item(text: str, place: Place, value: Value) -> Edited:
    """Return `text` with one more item at the end of the list at `place`."""

    def change(target: Span) -> tuple[int, int, str] | None:
        if target.kind != "list":
            return None
        if target.style == "flow":
            return _into_brackets(target, flow(value))
        return _below(text, target, block_item(value))

    return _edited(text, place, change, lambda before: [*before, _as_read(value)], "list")


def with_lines(text: str, place: Place, values: Sequence[Value]) -> Edited:
    """Return `text` with more items at the end of the list at `place`, each on one line."""

    def change(target: Span) -> tuple[int, int, str] | None:
        if target.kind != "list":
            return None
        if target.style == "flow":
            return _into_brackets(target, ", ".join(flow(value) for value in values))
        return _below(text, target, [f"- {flow(value)}" for value in values])

    return _edited(text, place, change, lambda before: [*before, *map(_as_read, values)], "list")


def with_entry(text: str, place: Place, key: str, value: Value) -> Edited:
    """Return `text` with one more key at the end of the group at `place`; a key that is there is refused."""

    def change(target: Span) -> tuple[int, int, str] | None:
        if target.kind != "group" or key in {name.text for name, _ in target.entries}:
            return None
        if target.style == "flow":
            return _into_brackets(target, f"{scalar(key, True)}: {flow(value)}")
        return _below(text, target, block_entry(key, value))

    return _edited(text, place, change, lambda before: {**before, key: _as_read(value)}, "group")


def _edited(
    text: str,
    place: Place,
    change: Callable[[Span], tuple[int, int, str] | None],
    meant: Callable[[Any], Any],
    kind: str,
) -> Edited:
    """Splice, read the result back, and refuse what says anything else than was meant."""
    root = _root(place.path, text)
    target = _at(root, place, kind)
    splice = change(target) if target else None
    if root is None or target is None or splice is None:
        return NOTHING_THERE.at(place, "no value of this kind stands here")
    start, end, new = splice
    result = text[:start] + new + text[end:]
    if _tree(_root(place.path, result)) != _tree(root, target, meant):
        return NOT_SAYABLE.at(place, "the text cannot be written here so that it reads as it should")
    return result


def _root(path: str, text: str) -> Span | None:
    """Return the root of a text that the reader would accept."""
    decoded, problems = decode(path, text.encode("utf-8", "surrogatepass"), MOST_BYTES)
    if problems or decoded is None or parse(path, decoded, _MOST_VALUES)[1]:
        return None
    return spans(path, text)


def _at(root: Span | None, place: Place, kind: str) -> Span | None:
    """Return the value at a place; a group and its first value can only share one through different kinds."""
    found = root.all_values() if root else ()
    return next((value for value in found if value.place == place and value.kind == kind), None)


def _tree(span: Span | None, target: Span | None = None, meant: Callable[[Any], Any] | None = None) -> Any:
    """Return what a value says, as nested plain values, with `meant` applied to that of `target`."""
    if span is None:
        return None
    said: Any
    if span.kind == "scalar":
        said = span.text
    elif span.kind == "list":
        said = [_tree(child, target, meant) for child in span.children]
    else:
        said = {key.text: _tree(value, target, meant) for key, value in span.entries}
    return meant(said) if meant and span is target else said


def _as_read(value: Value) -> Any:
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return {key: _as_read(item) for key, item in value.items()}
    return [_as_read(item) for item in value]


def _in_style(text: str, target: Span, new: str) -> str:
    """Return the scalar in the style of the old one; what that style cannot say goes into quotation marks."""
    old = text[target.start : target.end]
    if target.style in ("|", ">"):
        return _in_block(text, target, new)
    if target.style == "'" and new.isprintable():
        return "'" + new.replace("'", "''") + "'"
    written = scalar(new, target.in_flow) if target.style == "" else quoted(new)
    # Nothing stood there: the colon or the dash wants a blank.
    before = text[target.start - 1 : target.start]
    return f" {written}" if not old and before in (":", "-") else written


def _in_block(text: str, target: Span, new: str) -> str:
    """Return a block scalar with its header as it was, or quotation marks where lines cannot say it."""
    old = text[target.start : target.end]
    end = line_end(text)
    header, _, body = old.partition(end)
    kept = header.partition("#")[0].strip()
    first = body.split(end)[0]
    indent = " " * (len(first) - len(first.lstrip(" ")))
    if new != " ".join(new.split()) or not new or not indent or "-" not in kept:
        comment = header[len(kept) :].rstrip()
        return quoted(new) + comment
    if target.style == "|":
        return header + end + indent + new
    width = max(_WIDTH - len(indent), 20)
    lines = wrap(new, width, break_long_words=False, break_on_hyphens=False)
    return header + "".join(f"{end}{indent}{line}" for line in lines)


def _into_brackets(target: Span, written: str) -> tuple[int, int, str]:
    last = target.children[-1].end if target.children else target.start + 1
    return last, last, f", {written}" if target.children else written


def _below(text: str, target: Span, lines: list[str]) -> tuple[int, int, str]:
    """Return where and how lines are added under the last line of a block, as far in as its first."""
    end = line_end(text)
    at = min((found for mark in "\r\n" if (found := text.find(mark, target.end)) >= 0), default=len(text))
    indent = " " * (target.place.column - 1)
    return at, at, "".join(f"{end}{indent}{line}" for line in lines)


def line_end(text: str) -> str:
    """Return how the lines of a text end: as its first one does, else with a line feed."""
    at = text.find("\n")
    if at > 0 and text[at - 1] == "\r":
        return "\r\n"
    return "\r" if at < 0 and "\r" in text else "\n"
