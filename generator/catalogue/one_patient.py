"""Says what a clinician asks of a booklet for one patient, and what came of it; it names nobody.

Wishes only narrow what the programme allows. What falls out is kept, so that the last sheet tells it.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum

from generator.catalogue.dose import DoseStep
from generator.catalogue.restricted import Track
from generator.catalogue.terms import Joint, Movement, Position, Surface, WeightBearing


class OperatedSide(Enum):
    """Which side was operated."""

    LEFT = "left"
    RIGHT = "right"
    BOTH = "both"


@dataclass(frozen=True)
class Limit:
    """The largest angle that the operated joint may reach, in degrees, neutral-zero convention."""

    joint: Joint
    movement: Movement
    degrees: float

    @property
    def id(self) -> str:
        """Return the id of the restriction that this limit becomes."""
        return f"patient-{self.joint.value}-{self.movement.value}".replace(" ", "-")


@dataclass(frozen=True)
class Avoided:
    """What the patient must not meet: strains by id, surfaces and positions."""

    strains: frozenset[str] = frozenset()
    surfaces: frozenset[Surface] = frozenset()
    positions: frozenset[Position] = frozenset()


@dataclass(frozen=True, kw_only=True)
class Wishes:
    """What is known of one patient.

    side: operated side; None where it is not said. surgery: day 0. track: which weeks count.
    only: exercises (ids) to keep, None for all. without: those to leave out. mastered: exercises that the
    patient can do already, so that what builds on them may stand without them.
    have: things (ids) at hand, None where it is not said. limits, weight_bearing: tighter than the programme.
    doses: the dose to begin with, by exercise.
    """

    side: OperatedSide | None = None
    surgery: datetime.date | None = None
    track: Track = Track.USUAL
    only: frozenset[str] | None = None
    without: frozenset[str] = frozenset()
    mastered: frozenset[str] = frozenset()
    have: frozenset[str] | None = None
    avoid: Avoided = Avoided()
    limits: tuple[Limit, ...] = ()
    weight_bearing: WeightBearing | None = None
    doses: Mapping[str, DoseStep] = field(default_factory=dict)


PATIENT_WEIGHT = "patient-weight-bearing"
"""Id of the restriction that a tighter weight-bearing becomes."""


class LeftOutKind(Enum):
    """Why something is not in the booklet."""

    ASKED = "left out on request"
    NOT_CHOSEN = "not among those chosen"
    THING = "a thing is not at hand"
    STRAIN = "strains what is to be spared"
    SURFACE = "done where it is to be avoided"
    POSITION = "takes a position to be avoided"
    LIMIT = "goes beyond a limit set for this patient"


@dataclass(frozen=True)
class LeftOut:
    """Something of the phase that is not in the booklet.

    item: id of an exercise, or of a thing of daily life. what: ids of the things, strains or restrictions, or
    the words of surfaces and positions, that are the reason. replaced_by: exercise that takes its place.
    """

    item: str
    kind: LeftOutKind
    what: tuple[str, ...] = ()
    replaced_by: str | None = None
    daily_life: bool = False


@dataclass(frozen=True)
class PatientDates:
    """Days before which nothing may begin, on the track chosen; the date alone moves nobody on.

    phase: of this phase. following: of the next one, None after the last. exercises: of those that enter
    later.
    """

    surgery: datetime.date
    track: Track
    phase: datetime.date
    following: datetime.date | None
    exercises: Mapping[str, datetime.date] = field(default_factory=dict)


@dataclass(frozen=True)
class ForOnePatient:
    """What a booklet for one patient tells beside the programme.

    added: ids of the restrictions set for this patient. mastered: exercises that need not stand in it.
    strained: things of daily life (ids) that stay, since nobody can leave them out, with the strains in them.
    dosed: exercises that begin with another dose: id, that dose, and the one with which the phase begins.
    """

    side: OperatedSide | None = None
    dates: PatientDates | None = None
    left_out: tuple[LeftOut, ...] = ()
    added: tuple[str, ...] = ()
    mastered: tuple[str, ...] = ()
    strained: tuple[tuple[str, tuple[str, ...]], ...] = ()
    dosed: tuple[tuple[str, DoseStep, DoseStep], ...] = ()
