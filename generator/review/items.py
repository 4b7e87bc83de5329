"""Divides the content into items that are read and signed one by one; every text belongs to one of them.

``exercise/ID``, ``use/PROGRAMME/PHASE/EXERCISE``, ``phase/PROGRAMME/PHASE``, ``programme/ID``,
``daily-life/ID``, ``study/ID``, ``safety`` (with precautions and telephone lines) and ``words`` (the clinic's
name, glossary, things, muscles).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from types import MappingProxyType
from typing import Any

from generator.catalogue.base import Text
from generator.catalogue.editorial import Scope
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.values import Catalogue
from generator.problems import Place
from generator.review.meaning import digest, meaning
from generator.wording.messages import texts_in

SAFETY = "safety"
WORDS = "words"
Key = tuple[str, str]


@dataclass(frozen=True)
class Item:
    """One thing that is read as a whole.

    held: its content, or None where only evidence is read. parts: what people read of it, with contexts.
    evidence: measurements, judgements, sources and what rests on them; None where it has none.
    """

    id: str
    place: Place
    held: Any = None
    parts: tuple[tuple[str, Any], ...] = ()
    evidence: Any = None

    @cached_property
    def texts(self) -> Mapping[Key, Text]:
        """Return what translators translate of it, by context and source."""
        found = (pair for context, value in self.parts for pair in texts_in(value, context))
        return MappingProxyType({(context, text.source): text for context, text in found if text.source})

    def has(self, scope: Scope) -> bool:
        """Return whether there is anything to sign in this scope."""
        if scope is Scope.LANGUAGE:
            return bool(self.texts)
        return (self.held if scope is Scope.CONTENT else self.evidence) is not None

    def fingerprint(self, scope: Scope, language: str = "", words: Mapping[Key, str] | None = None) -> str:
        """Return the fingerprint of a scope; `words` are the translations into `language`."""
        if scope is Scope.LANGUAGE:
            known = words or {}
            pairs = sorted((*key, known.get(key, "")) for key in self.texts)
            return digest(language, pairs)
        return digest(meaning(self.held, sources=False) if scope is Scope.CONTENT else self.evidence)


def items_of(catalogue: Catalogue) -> Mapping[str, Item]:
    """Return all items by id, in the order of the content."""
    found = (*_singles(catalogue), *_programmes(catalogue), *_exercises(catalogue), *_others(catalogue))
    return MappingProxyType({item.id: item for item in found})


def _singles(catalogue: Catalogue) -> Iterator[Item]:
    safety, clinic = catalogue.safety, catalogue.clinic
    lines = clinic.telephone
    yield Item(
        SAFETY,
        safety.place,
        (safety, catalogue.strains, lines),
        (("safety", safety), ("strain", catalogue.strains), ("clinic/telephone", lines)),
        safety.signs,
    )
    words = (catalogue.glossary, catalogue.equipment, catalogue.muscles)
    parts = (
        ("clinic/name", clinic.name),
        ("clinic/about", clinic.about),
        ("term", catalogue.glossary),
        ("equipment", catalogue.equipment),
        ("muscle", catalogue.muscles),
    )
    yield Item(WORDS, clinic.place, (clinic.name, clinic.about, *words), parts)


def _programmes(catalogue: Catalogue) -> Iterator[Item]:
    for programme in catalogue.programmes.values():
        own = replace(programme, phases=())
        context = f"programme/{programme.id}"
        rules = programme.restrictions or None
        yield Item(f"programme/{programme.id}", programme.place, own, ((context, own),), rules)
        for phase in programme.phases:
            yield from _phase(programme, phase, f"{context}/phases")


def _phase(programme: Programme, phase: Phase, context: str) -> Iterator[Item]:
    own = replace(phase, uses=())
    name = f"{programme.id}/{phase.number}"
    # Which exercises a phase has is read with the phase, how much of each with its use.
    held = (own, sorted(use.use for use in phase.uses))
    evidence = (phase.week, phase.delayed_week, phase.week_source, phase.pain)
    yield Item(f"phase/{name}", phase.place, held, ((context, own),), evidence)
    for use in phase.uses:
        yield Item(f"use/{name}/{use.use}", use.place, use, ((f"{context}/uses", use),))


def _exercises(catalogue: Catalogue) -> Iterator[Item]:
    for exercise in catalogue.exercises.values():
        content = _without_evidence(exercise)
        forms: dict[str, Exercise | Variation] = {"": exercise, **exercise.variations}
        evidence = {
            name: (one.activity, one.judged) for name, one in forms.items() if one.activity or one.judged
        }
        parts = ((f"exercise/{exercise.id}", content),)
        yield Item(f"exercise/{exercise.id}", exercise.place, content, parts, evidence or None)


def _without_evidence(exercise: Exercise) -> Exercise:
    forms = {key: replace(one, activity=(), judged=()) for key, one in exercise.variations.items()}
    return replace(exercise, activity=(), judged=(), variations=forms)


def _others(catalogue: Catalogue) -> Iterator[Item]:
    for item in catalogue.daily_life.values():
        yield Item(f"daily-life/{item.id}", item.place, item, ((f"daily_life/{item.id}", item),))
    for study in catalogue.studies.values():
        yield Item(f"study/{study.id}", study.place, evidence=study)
