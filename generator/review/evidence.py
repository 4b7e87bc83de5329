"""Lists evidence that was recalled and not read, and takes that mark away once a reviewer has read it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from types import MappingProxyType
from typing import Any, TypeVar

from generator.catalogue.base import Source, SourceStatus
from generator.catalogue.editorial import Scope
from generator.catalogue.exercise import Measurement
from generator.catalogue.values import Catalogue
from generator.problems import Place
from generator.review.items import SAFETY, Item, items_of
from generator.review.standing import Standing, Subject

# Which of a measurement's numbers can be marked as read.
READABLE = ("mean", "sd", "n")
Value = TypeVar("Value")


@dataclass(frozen=True)
class Recalled:
    """Something that rests on memory: the item it belongs to, its place, and what it is."""

    item: str
    place: Place
    words: str


def recalled(catalogue: Catalogue) -> tuple[Recalled, ...]:
    """Return what of the evidence was recalled and not read in its source, in the order of the content."""
    return tuple(found for item in items_of(catalogue).values() for found in _recalled_in(item))


def _recalled_in(item: Item) -> Iterator[Recalled]:
    for value in _values(item.evidence):
        if isinstance(value, Measurement):
            numbers = [
                name for name in READABLE if getattr(value, name) is not None and name not in value.read
            ]
            if numbers:
                words = ", ".join(f"{name} {getattr(value, name):g}" for name in numbers)
                yield Recalled(item.id, value.place, f"{value.muscle}, {value.study}: {words}")
        elif isinstance(value, Source) and value.status is SourceStatus.RECALLED:
            yield Recalled(item.id, value.place, value.text)


def _values(value: Any) -> Iterator[Any]:
    yield value
    if is_dataclass(value) and not isinstance(value, type):
        for one in fields(value):
            yield from _values(getattr(value, one.name)) if one.compare else ()
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from _values(inner)
    elif isinstance(value, list | tuple):
        for inner in value:
            yield from _values(inner)


def with_read_evidence(catalogue: Catalogue, found: Mapping[Subject, Standing]) -> Catalogue:
    """Return the catalogue in which evidence that a reviewer has signed counts as read in its source."""
    read = {one.item.id for one in found.values() if one.scope is Scope.EVIDENCE and one.valid}
    if not read:
        return catalogue
    exercises = _each("exercise", catalogue.exercises, read)
    studies = _each("study", catalogue.studies, read)
    programmes = {}
    for id_, programme in catalogue.programmes.items():
        own = _as_read(replace(programme, phases=())) if f"programme/{id_}" in read else programme
        phases = tuple(
            _as_read(one) if f"phase/{id_}/{one.number}" in read else one for one in programme.phases
        )
        programmes[id_] = replace(own, phases=phases)
    safety = _as_read(catalogue.safety) if SAFETY in read else catalogue.safety
    return replace(
        catalogue,
        exercises=exercises,
        studies=studies,
        programmes=MappingProxyType(programmes),
        safety=safety,
    )


def _each(kind: str, values: Mapping[str, Value], read: set[str]) -> Mapping[str, Value]:
    return MappingProxyType(
        {id_: _as_read(one) if f"{kind}/{id_}" in read else one for id_, one in values.items()}
    )


def _as_read(value: Value) -> Value:
    """Return a value with every recalled number and source in it marked as read."""
    return _walked(value)  # type: ignore[no-any-return]


def _walked(value: Any) -> Any:
    if isinstance(value, Measurement):
        return replace(value, read=tuple(name for name in READABLE if getattr(value, name) is not None))
    if isinstance(value, Source):
        recalled_ = value.status is SourceStatus.RECALLED
        return replace(value, status=SourceStatus.READ) if recalled_ else value
    if isinstance(value, tuple):
        return tuple(_walked(item) for item in value)
    if isinstance(value, Mapping):
        return MappingProxyType({key: _walked(item) for key, item in value.items()})
    if is_dataclass(value) and not isinstance(value, type):
        changed = {one.name: _walked(getattr(value, one.name)) for one in fields(value) if one.init}
        return replace(value, **changed)
    return value
