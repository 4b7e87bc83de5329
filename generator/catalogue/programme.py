"""Describes what follows one operation: phases, restrictions, milestones, and the use of each exercise."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Record, Source, Text
from generator.catalogue.dose import DoseStep
from generator.catalogue.exercise import Caution
from generator.catalogue.terms import (
    Against,
    Demand,
    How,
    Joint,
    Leg,
    Movement,
    MuscleAim,
    OutsideLoad,
    Position,
    Tester,
    Then,
    WeightBearing,
)


@dataclass(frozen=True, kw_only=True)
class End(Record):
    """When a restriction ends: only when the week AND the phase, or the named release, are reached.

    week, delayed_week: full weeks after the operation on the usual and the delayed track.
    phase: phase number that must have been entered. release: who lifts it, in words.
    """

    week: int
    delayed_week: int
    phase: int | None = None
    release: Text | None = None


@dataclass(frozen=True, kw_only=True)
class Restriction(Record):
    """What a surgeon forbids for a time; its subclasses are its kinds.

    id: unique in the programme. words: as said to the patient. why: one plain sentence.
    """

    id: str
    leg: Leg
    words: Text
    why: Text
    until: End
    source: Source


@dataclass(frozen=True, kw_only=True)
class MovementRestriction(Restriction):
    """Forbids a joint's movement in the listed ways, beyond `limit` degrees, or wholly where it is None."""

    joint: Joint
    movement: Movement
    how: tuple[How, ...]
    limit: float | None = None
    against: Against | None = None


@dataclass(frozen=True, kw_only=True)
class WeightRestriction(Restriction):
    """Limits the weight on the leg; `kilograms` or `percent` of body weight give the amount where known."""

    allows: WeightBearing
    kilograms: float | None = None
    percent: float | None = None


@dataclass(frozen=True, kw_only=True)
class PositionRestriction(Restriction):
    """Forbids a position of the body."""

    position: Position


@dataclass(frozen=True, kw_only=True)
class ImpactRestriction(Restriction):
    """Forbids jumping, hopping and running."""


@dataclass(frozen=True, kw_only=True)
class LoadRestriction(Restriction):
    """Forbids outside loads of the listed kinds; `kilograms` gives the most that is allowed."""

    loads: tuple[OutsideLoad, ...]
    kilograms: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Band(Record):
    """Activity band in %MVIC: above `above`, up to and including `up_to`."""

    above: float
    up_to: float


@dataclass(frozen=True, kw_only=True)
class PainLimit(Record):
    """Highest pain at the operated site, 0 to 10, during, after, and the next morning.

    set_by: role of the person who set it. There is no default.
    """

    during: int
    after: int
    next_morning: int
    set_by: str
    source: Source


@dataclass(frozen=True, kw_only=True)
class Milestone(Record):
    """What must be reached before the next phase: goal, how to test it, pass mark, who tests."""

    goal: Text
    test: Text
    passed: Text
    tester: Tester


@dataclass(frozen=True, kw_only=True)
class Waiver(Record):
    """A rule set aside for one use by a clinician, with role and reason, which are shown."""

    prerequisite: str
    role: str
    reason: Text


@dataclass(frozen=True, kw_only=True)
class Acceptance(Record):
    """A clinician's leave for one use above its band, with role and reason, which are shown.

    up_to: highest %MVIC that is accepted; an estimate that rises above it is an error again.
    reason: for clinicians, in the language of the content.
    """

    up_to: float
    role: str
    reason: str


@dataclass(frozen=True, kw_only=True)
class Use(Record):
    """An exercise in one phase of one programme.

    week, delayed_week: entry later than the phase's own start, in full weeks; None: with the phase.
    when: what must be reached besides, in words, where a milestone and not a date lets it begin.
    dose_steps: from the first to the last. times_a_day, days_a_week: how often.
    rest_days: least whole days of rest between two days with this exercise.
    then: whether it goes on after the phase; replaced_by: the exercise that takes its place.
    accepts: leave to stand above the phase's band.
    """

    use: str
    variation: str | None = None
    week: int | None = None
    delayed_week: int | None = None
    when: Text | None = None
    dose_steps: tuple[DoseStep, ...]
    times_a_day: int
    days_a_week: int
    rest_days: int = 0
    then: Then
    replaced_by: str | None = None
    note: Text | None = None
    cautions: tuple[Caution, ...] = ()
    waives: tuple[Waiver, ...] = ()
    accepts: Acceptance | None = None


@dataclass(frozen=True, kw_only=True)
class Phase(Record):
    """A stage of recovery.

    number: from 1, by place in the file. week, delayed_week: start on both tracks, in full weeks.
    band: activity of the programme's muscles. demand: the highest that its exercises may ask.
    weight_bearing, walking_aid, brace: real life in this phase, in words for the patient.
    going_up: when to take the next dose step. daily_life: ids of daily-life items that this phase speaks of.
    """

    number: int
    name: Text
    summary: Text
    week: int
    delayed_week: int
    week_source: Source
    goals: tuple[Text, ...]
    avoid: tuple[Text, ...]
    band: Band
    demand: Demand
    weight_bearing: Text
    walking_aid: Text
    brace: Text | None = None
    pain: PainLimit
    going_up: Text
    milestones: tuple[Milestone, ...]
    daily_life: tuple[str, ...] = ()
    uses: tuple[Use, ...]


@dataclass(frozen=True, kw_only=True)
class Programme(Record):
    """What follows one operation.

    id: the file's name. operation: what was done, in everyday words. joint: the operated joint.
    aim, muscles: whether the muscles (ids) are protected or trained. margin: %MVIC above a band that may
    still stand late in the phase. level_span: widest level in %MVIC points. delay_reasons: listed reasons.
    """

    id: str
    name: Text
    operation: Text
    summary: Text
    joint: Joint
    aim: MuscleAim
    muscles: tuple[str, ...]
    margin: float = 5.0
    level_span: float = 10.0
    both_sides: bool = False
    delay_reasons: tuple[Text, ...]
    restrictions: tuple[Restriction, ...]
    phases: tuple[Phase, ...]

    def phase(self, number: int) -> Phase:
        """Return the phase with this number, from 1."""
        return self.phases[number - 1]
