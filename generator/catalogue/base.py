"""Carries what every catalogue value has in common: where it was written, and text that can be translated."""

from __future__ import annotations

import copyreg
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import Enum
from types import MappingProxyType
from typing import Any

from generator.problems import NOWHERE, Place

_NO_PLACES: Mapping[str, Place] = MappingProxyType({})


def read_only(values: dict[Any, Any]) -> Mapping[Any, Any]:
    """Return a view of `values` that nobody can change."""
    return MappingProxyType(values)


def _reduced(view: Mapping[Any, Any]) -> tuple[Callable[..., Any], tuple[dict[Any, Any]]]:
    return read_only, (dict(view),)


# Catalogues travel to worker processes; a read-only view is the one part of them that could not.
copyreg.pickle(MappingProxyType, _reduced)


@dataclass(frozen=True, kw_only=True)
class Record:
    """A value read from a file. Its places are left out of equality: moving a line changes no meaning.

    `places` maps a key as typed (``dose-steps``) or a key and a list position (``dose-steps.1``, from 0)
    to the place of the value.
    """

    place: Place = field(default=NOWHERE, compare=False, repr=False)
    places: Mapping[str, Place] = field(default_factory=lambda: _NO_PLACES, compare=False, repr=False)

    def at(self, key: str, position: int | None = None) -> Place:
        """Return the place of the value under `key` (item `position` of a list), else of the record."""
        if position is not None and f"{key}.{position}" in self.places:
            return self.places[f"{key}.{position}"]
        return self.places.get(key, self.place)


class TextState(Enum):
    """How the words of a text in one language stand to the editor's sentence."""

    SOURCE = "source"
    TRANSLATED = "translated"
    OUTDATED = "outdated"
    MISSING = "missing"


@dataclass(frozen=True)
class Text:
    """A sentence that people read.

    source: as the editor typed it, with whole phrases in braces (``{hold}``).
    words: the sentence in the language of this catalogue, phrases filled, each number isolated against
        reordering by U+2066 and U+2069; empty until `wording` has been over it.
    language: BCP 47 code of `words`; the source language's where no translation serves.
    state: how `words` stand to `source`.
    """

    source: str
    place: Place = field(default=NOWHERE, compare=False, repr=False)
    words: str = ""
    language: str = ""
    state: TextState = TextState.SOURCE

    def __str__(self) -> str:
        """Return the words, or the source while no language has been chosen."""
        return self.words or self.source


@dataclass(frozen=True, kw_only=True)
class Source(Record):
    """Where a rule or a number comes from.

    text: citation or plain statement; not translated.
    status: read in the source, recalled from memory, common practice without a source, or invented
        for the demonstration.
    """

    text: str
    status: SourceStatus


class SourceStatus(Enum):
    """How sure a source is."""

    READ = "read in source"
    RECALLED = "recalled"
    PRACTICE = "common practice"
    INVENTED = "invented"
    PATIENT = "instruction for this patient"
