"""Lists every text of the content once, as translators get it, by walking the frozen values.

A message is known by its context and its source sentence. The context is the way to the field, with
the ids on the way but no list positions, so steps can be inserted, moved or renumbered and keep their
translations: ``exercise/bridge/steps``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any, get_args, get_type_hints

from generator.catalogue.base import Text
from generator.catalogue.values import Catalogue
from generator.problems import Place
from generator.wording.filling import PHRASE, meaning_of

_ONE_OF = {
    "exercises": "exercise",
    "programmes": "programme",
    "studies": "study",
    "muscles": "muscle",
    "strains": "strain",
    "glossary": "term",
}
# Kinds of content with texts that tell a patient what to do.
_GUARDING = ("safety", "exercise", "daily_life", "programme", "strain", "equipment")


@dataclass(frozen=True)
class Message:
    """One text for the translator.

    context, source: its identity. places: everywhere it stands. notes: what field it is, and what each
    phrase in braces will say.
    """

    context: str
    source: str
    places: tuple[Place, ...]
    notes: tuple[str, ...]

    @property
    def key(self) -> tuple[str, str]:
        """Return what translations are found by."""
        return (self.context, self.source)


def translatable(catalogue: Catalogue) -> Iterator[Message]:
    """Yield each text of the catalogue once, in the order of the content."""
    found: dict[tuple[str, str], list[Place]] = {}
    for context, text in texts_in(catalogue, ""):
        if text.source:
            found.setdefault((context, text.source), []).append(text.place)
    for (context, source), places in found.items():
        yield Message(context, source, tuple(sorted(set(places))), _notes(context, source))


def texts_in(value: Any, context: str) -> Iterator[tuple[str, Text]]:
    """Yield each text inside a value that stands at `context`, with its own context."""
    if isinstance(value, Text):
        yield context, value
    elif isinstance(value, Mapping):
        for key, item in value.items():
            yield from texts_in(item, f"{context}/{key}")
    elif isinstance(value, tuple):
        for item in value:
            yield from texts_in(item, item_context(context, item))
    elif is_dataclass(value):
        for name in text_fields(value):
            yield from texts_in(getattr(value, name), field_context(context, name))


def field_context(context: str, name: str) -> str:
    """Return the context of a field of the record at `context`."""
    return f"{context}/{name}" if context else _ONE_OF.get(name, name)


def item_context(context: str, item: Any) -> str:
    """Return the context of an item of a list: its id tells it apart, never its position."""
    name = getattr(item, "id", None)
    return f"{context}/{name}" if name else context


def text_fields(value: Any) -> tuple[str, ...]:
    """Return the fields of a record's class that hold a text at some depth, in order."""
    kind: Any = type(value)
    return _text_fields(kind)


@cache
def _text_fields(kind: Any) -> tuple[str, ...]:
    hints = get_type_hints(kind)
    return tuple(item.name for item in fields(kind) if item.compare and _holds_text(hints[item.name]))


def _holds_text(hint: Any) -> bool:
    if isinstance(hint, type) and is_dataclass(hint):
        return hint is Text or bool(_text_fields(hint))
    return any(_holds_text(part) for part in get_args(hint))


def guards_patients(context: str) -> bool:
    """Return whether texts of a context tell a patient what to do or what not to do.

    A lost "not" there can hurt somebody; names, and texts about clinics, studies and words, cannot.
    """
    parts = context.split("/")
    return parts[0] in _GUARDING and parts[-1] != "name"


def _notes(context: str, source: str) -> tuple[str, ...]:
    parts = context.split("/")
    notes = [f"Field: {parts[-1].replace('_', ' ')}"]
    for name in dict.fromkeys(PHRASE.findall(source)):
        meaning = meaning_of(name) or "a whole phrase"
        notes.append(f"{{{name}}} stands for {meaning}. Keep it as it is.")
    return tuple(notes)
