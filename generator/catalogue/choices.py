"""Says what a clinician may choose for one patient in a phase; a page offers that and nothing wider."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from generator.catalogue.dose import DoseStep
from generator.catalogue.one_patient import Limit
from generator.catalogue.programme import Use
from generator.catalogue.terms import Position, Surface, WeightBearing

NEVER = 1000.0
"""Degrees that no joint reaches: the limit of a movement that no offered limit leaves in."""


@dataclass(frozen=True)
class DoseChoice:
    """A dose to begin with; onwards: position, from 0, of the phase's dose step that comes after it."""

    step: DoseStep
    onwards: int


@dataclass(frozen=True)
class UseChoice:
    """What decides whether one patient keeps an exercise.

    use: as in the phase; of an alternative from an earlier phase, as it would stand in this one. phase: whose
    words it has. needs, one_of: exercises (ids) that must go well first and that no earlier phase has.
    things: what it asks for (ids). strains, positions, surfaces: what it meets. weights: with which
    weight-bearing it can be done. limits: by movement (``hip.flexion``), the least limit in degrees that
    leaves it in; a movement that is not named sets none. instead: exercise that takes its place, or None.
    doses: to begin with.
    """

    use: Use
    phase: int
    needs: tuple[str, ...]
    one_of: tuple[str, ...]
    things: tuple[str, ...]
    strains: tuple[str, ...]
    positions: tuple[Position, ...]
    surfaces: tuple[Surface, ...]
    weights: tuple[WeightBearing, ...]
    limits: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    instead: str | None = None
    doses: tuple[DoseChoice, ...] = ()


@dataclass(frozen=True)
class PhaseChoices:
    """What can be chosen in a phase: all of it narrows.

    uses: of the phase, in its order. brought: alternatives from earlier phases. limits: each tighter than
    what the phase allows. weights: tighter than the phase allows. mastered: exercises (ids) that others need.
    things: what any form of them asks for (ids), so that a list of things at hand leaves none out unasked.
    """

    uses: tuple[UseChoice, ...]
    brought: tuple[UseChoice, ...]
    limits: tuple[Limit, ...]
    weights: tuple[WeightBearing, ...]
    mastered: tuple[str, ...]
    things: tuple[str, ...]


def limit_name(limit: Limit) -> str:
    """Return a limit's movement as the command line writes it: ``hip.flexion``."""
    return f"{limit.joint.value}.{limit.movement.value}".replace(" ", "-")
