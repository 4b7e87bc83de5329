"""Gives a valid example of every form that a value can take, so that a new file can be read at once."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from generator.catalogue.dose import Dose, DoseKind
from generator.catalogue.unwritten import UNWRITTEN
from generator.catalogue.values import Catalogue
from generator.editing.yaml_text import Value
from generator.reading.forms import Same, SpanOf
from generator.reading.kinds import Choice, Flag, Id, Kind, Measure, Number, Parsed, Plain, Words
from generator.reading.table import Field, Group, ListOf, MapOf, Numbered, Table, Tagged

_SOME_ID = "some-id"
_SOME_DOSE = "2 x 8"


@dataclass(frozen=True)
class Examples:
    """What a new file says.

    ids: for each kind of thing one that exists, so that nothing refers to nowhere. given: values by the way
    to their key, such as ``phases.uses.use``, which come before all others.
    """

    ids: Mapping[str, str] = field(default_factory=dict)
    given: Mapping[str, Value] = field(default_factory=dict)

    def of(self, item: Field, path: str) -> Value:
        """Return an example of what stands under a key."""
        given: Any = self.given.get(path, item.example)
        return self._of_kind(item.kind, item.help, path) if given is None else given

    def entries(self, table: Table, path: str, full: bool = False) -> dict[str, Value]:
        """Return an example of a group of keys: those that must stand, or all of them."""
        return {
            item.key: self.of(item, f"{path}.{item.key}") for item in table.fields if item.required or full
        }

    def _of_kind(self, kind: Kind, help_: str, path: str) -> Value:
        if isinstance(kind, Words):
            return unwritten(help_)
        if isinstance(kind, Id):
            return self.ids.get(kind.target, _SOME_ID)
        if isinstance(kind, Group):
            return self.entries(kind.table, path)
        if isinstance(kind, Same):
            return "same"
        if isinstance(kind, ListOf | Numbered):
            return [self.item(kind, help_, path)] if kind.least else []
        if isinstance(kind, MapOf):
            return {_SOME_ID: self.entries(kind.group.table, path)}
        if isinstance(kind, Tagged):
            word, table = next(iter(kind.tables.items()))
            return {kind.key: word, **self.entries(table, path)}
        if isinstance(kind, SpanOf):
            return self._of_kind(kind.kind, help_, path)
        return _plain(kind)

    def item(self, kind: ListOf | Numbered, help_: str, path: str) -> Value:
        """Return an example of a list's item."""
        return self._of_kind(kind.item if isinstance(kind, ListOf) else kind.group, help_, path)


def unwritten(help_: str) -> str:
    """Return a text that asks to be written, and by which a check finds it."""
    return UNWRITTEN + help_[:1].lower() + help_[1:]


def _plain(kind: Kind) -> str:
    """Return an example of a single word or number."""
    if isinstance(kind, Choice):
        return str(next(iter(kind.options)).value)
    if isinstance(kind, Flag):
        return "no"
    if isinstance(kind, Number):
        return f"{kind.least:g}"
    if isinstance(kind, Measure):
        return kind.example
    if isinstance(kind, Parsed):
        return _SOME_DOSE
    if isinstance(kind, Plain) and re.fullmatch(kind.pattern, kind.wanted):
        return kind.wanted
    raise TypeError(f"no example of {kind.words()}: give its field one")


def ids_of(catalogue: Catalogue) -> dict[str, str]:
    """Return the first id of each kind of thing that there is; of exercises the one that needs least."""
    found = {
        "study": catalogue.studies,
        "muscle": catalogue.muscles,
        "equipment": catalogue.equipment,
        "strain": catalogue.strains,
        "daily-life-item": catalogue.daily_life,
    }
    ids = {target: next(iter(things)) for target, things in found.items() if things}
    easiest = min(
        catalogue.exercises.values(),
        key=lambda exercise: (
            bool(exercise.requires or exercise.requires_one_of),
            exercise.demand.rank,
            len(exercise.strains),
            exercise.id,
        ),
        default=None,
    )
    return {**ids, "exercise": easiest.id} if easiest else ids


def usual_step(dose: Dose) -> str:
    """Return an exercise's usual dose in the notation of a dose step."""
    sets, count = dose.sets.usual, dose.count.usual
    hold = dose.hold.usual if dose.hold else 1
    return {
        DoseKind.REPETITIONS: f"{sets} x {count}",
        DoseKind.HOLDS: f"{sets} x {count} holds of {hold} s" if sets > 1 else f"{count} holds of {hold} s",
        DoseKind.MINUTES: f"{count} min",
        DoseKind.HOURLY: f"{count} times an hour",
        DoseKind.STEPS: f"{count} steps",
    }[dose.kind]
