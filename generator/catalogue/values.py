"""Holds everything the content says, as one frozen value: the catalogue.

Start reading here: `Catalogue` names the kinds of thing there are. Each kind is described in
`exercise`, `programme`, `dose` and `clinic`; the trade's fixed words are in `terms`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from generator.catalogue.clinic import Clinic, Equipment, Muscle, Safety, Strain, Study, Term
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.review import NO_LEDGER, Ledger


@dataclass(frozen=True)
class Catalogue:
    """All content, each kind by id in the order of ids (studies, glossary ... in the order of the file)."""

    clinic: Clinic
    safety: Safety
    exercises: Mapping[str, Exercise]
    programmes: Mapping[str, Programme]
    studies: Mapping[str, Study]
    muscles: Mapping[str, Muscle]
    equipment: Mapping[str, Equipment]
    strains: Mapping[str, Strain]
    glossary: Mapping[str, Term]
    daily_life: Mapping[str, DailyLife] = field(default_factory=dict)
    ledger: Ledger = NO_LEDGER

    @property
    def source_language(self) -> str:
        """Return the language that the content is written in: the first of the clinic's languages."""
        return self.clinic.languages[0]

    def uses_of(self, exercise: str) -> Iterator[tuple[Programme, Phase, Use]]:
        """Yield every use of the exercise with its programme and phase, in order of phases."""
        for programme in self.programmes.values():
            for phase in programme.phases:
                for use in phase.uses:
                    if use.use == exercise:
                        yield programme, phase, use
