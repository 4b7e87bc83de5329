"""Says from where to where each value of a file reaches in its text, for those who change one value only.

Places are those of `nodes`, because the same parser finds them; the text is the file's own, line ends too.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

import yaml

from generator.problems import Place


@dataclass(frozen=True)
class Span:
    """A value in a text.

    start, end: in characters; `end` is exclusive and stands before any trailing blanks or line ends.
    style: of a scalar ``""`` (plain), ``'``, ``"``, ``|`` or ``>``; of the others ``flow`` or ``block``.
    in_flow: whether it stands inside brackets. children: items, or keys and values in turn.
    """

    kind: Literal["scalar", "list", "group"]
    place: Place
    start: int
    end: int
    style: str
    in_flow: bool
    text: str = ""
    children: tuple[Span, ...] = ()

    @property
    def entries(self) -> tuple[tuple[Span, Span], ...]:
        """Return key and value of each entry of a group."""
        return tuple(zip(self.children[::2], self.children[1::2], strict=True))

    @property
    def values(self) -> tuple[Span, ...]:
        """Return the values inside, without keys."""
        return self.children[1::2] if self.kind == "group" else self.children

    def all_values(self) -> Iterator[Span]:
        """Yield this value and every value inside it; keys are none."""
        yield self
        for child in self.values:
            yield from child.all_values()


@dataclass
class _Open:
    """A collection whose end has not come yet."""

    event: yaml.CollectionStartEvent
    in_flow: bool
    children: list[Span] = field(default_factory=list)


def spans(path: str, text: str) -> Span | None:
    """Return the root value of a text, or None where it has none.

    `text` must be one that `nodes.decode` and `nodes.parse` find nothing wrong with.
    """
    stack: list[_Open] = []
    for event in yaml.parse(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader)):
        in_flow = bool(stack) and (stack[-1].in_flow or bool(stack[-1].event.flow_style))
        if isinstance(event, yaml.CollectionStartEvent):
            stack.append(_Open(event, in_flow))
            continue
        if isinstance(event, yaml.ScalarEvent):
            done = _scalar(path, text, event, in_flow)
        elif isinstance(event, yaml.CollectionEndEvent):
            done = _collection(path, stack.pop(), event)
        else:
            continue
        if not stack:
            return done
        stack[-1].children.append(done)
    return None


def _scalar(path: str, text: str, event: yaml.ScalarEvent, in_flow: bool) -> Span:
    place, start, end = _reach(path, event)
    end = start + len(text[start:end].rstrip())
    return Span("scalar", place, start, end, event.style or "", in_flow, event.value)


def _collection(path: str, opened: _Open, closing: yaml.Event) -> Span:
    event = opened.event
    place, start, _ = _reach(path, event)
    _, _, end = _reach(path, closing)
    if not event.flow_style:
        # The parser ends a block where the next begins; blank lines and comments between belong to nobody.
        end = max((child.end for child in opened.children), default=start)
    kind: Literal["list", "group"] = "group" if isinstance(event, yaml.MappingStartEvent) else "list"
    style = "flow" if event.flow_style else "block"
    return Span(kind, place, start, end, style, opened.in_flow, "", tuple(opened.children))


def _reach(path: str, event: yaml.Event) -> tuple[Place, int, int]:
    """Return the place of an event, and its first and last position in characters."""
    first, last = event.start_mark, event.end_mark
    if first is None or last is None:
        raise TypeError("an event of a parsed text has marks")
    return Place(path, first.line + 1, first.column + 1), first.index, last.index
