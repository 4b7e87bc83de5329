"""Cuts a catalogue down to one programme in few languages, for runs that build it a hundred times."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from generator.catalogue.exercise import Exercise
from generator.catalogue.judgement import Judgement
from generator.catalogue.programme import Programme
from generator.catalogue.values import Catalogue

_LANGUAGES = re.compile(rb"^languages: \[.*\]$", re.MULTILINE)


def content_files(content: Path) -> dict[str, bytes]:
    """Return the files of a content folder by name; what begins with a dot is no content."""
    named = ((path.relative_to(content), path) for path in sorted(content.rglob("*")) if path.is_file())
    return {
        name.as_posix(): path.read_bytes()
        for name, path in named
        if not any(part.startswith(".") for part in name.parts)
    }


def excerpt(
    files: Mapping[str, bytes], catalogue: Catalogue, languages: Sequence[str] = ()
) -> dict[str, bytes]:
    """Return the files of the shortest programme and of all that it names.

    languages: beside that of the content. Sign-offs of what was cut away would be findings of their own, so
    the ledgers are left out too.
    """
    programme = min(catalogue.programmes.values(), key=lambda one: (len(one.phases), len(_uses(one)), one.id))
    kept = {f"programmes/{programme.id}.yml"}
    kept |= {f"exercises/{id_}.yml" for id_ in _exercises(catalogue, programme)}
    kept |= {f"daily-life/{id_}.yml" for phase in programme.phases for id_ in phase.daily_life}
    kept |= {f"translations/{language}.po" for language in languages}
    found = {
        name: data
        for name, data in files.items()
        if name in kept or ("/" not in name and name not in ("reviews.yml", "editions.yml"))
    }
    line = f"languages: [{', '.join((catalogue.source_language, *languages))}]".encode()
    return {**found, "clinic.yml": _LANGUAGES.sub(line, found["clinic.yml"])}


def write_files(files: Mapping[str, bytes], folder: Path) -> Path:
    """Write files by name below a folder, and return it."""
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    return folder


def _exercises(catalogue: Catalogue, programme: Programme) -> frozenset[str]:
    """Return the exercises of a programme with all that they name in turn."""
    found: set[str] = set()
    waiting = _uses(programme)
    while waiting:
        id_ = waiting.pop()
        if id_ not in found and id_ in catalogue.exercises:
            found.add(id_)
            waiting += _named(catalogue.exercises[id_])
    return frozenset(found)


def _uses(programme: Programme) -> list[str]:
    return [use.use for phase in programme.phases for use in phase.uses]


def _named(exercise: Exercise) -> Iterator[str]:
    yield from exercise.requires
    yield from exercise.requires_one_of
    if exercise.alternative is not None:
        yield exercise.alternative
    yield from (other.partition("/")[0] for one in _judged(exercise) for other in one.others)


def _judged(exercise: Exercise) -> Iterator[Judgement]:
    yield from exercise.judged
    for variation in exercise.variations.values():
        yield from variation.judged
