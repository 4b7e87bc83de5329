"""Says how much of an exercise: permitted ranges, dose steps, load and pace."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from generator.catalogue.base import Record
from generator.catalogue.terms import BandStrength


class DoseKind(Enum):
    """The ways in which the trade counts work."""

    REPETITIONS = "sets and repetitions"
    HOLDS = "holds"
    MINUTES = "minutes"
    HOURLY = "times an hour"
    STEPS = "steps walked"


@dataclass(frozen=True)
class Span:
    """A usual whole number and the range a clinician may choose from, both ends included."""

    usual: int
    least: int
    most: int

    def holds(self, number: int) -> bool:
        """Return whether `number` lies within the permitted range."""
        return self.least <= number <= self.most


@dataclass(frozen=True)
class Load:
    """An outside load: a band by strength in words, or a weight in kilograms; neither means body weight."""

    band: BandStrength | None = None
    kilograms: float | None = None


@dataclass(frozen=True)
class DoseStep:
    """One dose that a patient does, e.g. three sets of ten repetitions.

    sets: number of sets (repetitions, holds), else 1.
    count: repetitions in a set, holds in a set, minutes, times an hour, or steps walked.
    hold: seconds each hold lasts; None where the kind has none or the exercise states it.
    load: outside load.
    """

    kind: DoseKind
    sets: int
    count: int
    hold: int | None = None
    load: Load = Load()


@dataclass(frozen=True, kw_only=True)
class Tempo(Record):
    """Seconds that the lifting and the lowering of one repetition take."""

    lift: int = 2
    lower: int = 2


@dataclass(frozen=True, kw_only=True)
class Dose(Record):
    """What an exercise permits; a use in a phase chooses steps within it.

    sets, count: permitted numbers (`count` as in DoseStep).
    hold: seconds each repetition or hold is kept, or None.
    tempo, rest: pace; rest in seconds between sets.
    bands, kilograms: outside loads that may be added, rising; the most kilograms.
    """

    kind: DoseKind
    sets: Span
    count: Span
    hold: Span | None = None
    tempo: Tempo = Tempo()
    rest: int = 0
    bands: tuple[BandStrength, ...] = ()
    kilograms: float = 0.0


def not_permitted(step: DoseStep, dose: Dose) -> Iterator[str]:
    """Yield each reason, as an English clause, for which an exercise does not permit the step."""
    if step.kind is not dose.kind:
        yield f"the step counts {step.kind.value}, the exercise {dose.kind.value}"
        return
    if not dose.sets.holds(step.sets):
        yield f"{step.sets} sets are not within {dose.sets.least} to {dose.sets.most}"
    if not dose.count.holds(step.count):
        yield f"{step.count} is not within {dose.count.least} to {dose.count.most}"
    if step.hold is not None and dose.hold is not None and not dose.hold.holds(step.hold):
        yield f"a hold of {step.hold} s is not within {dose.hold.least} to {dose.hold.most} s"
    if step.load.band is not None and step.load.band not in dose.bands:
        yield f"a {step.load.band.value} band is not among the bands the exercise permits"
    if step.load.kilograms is not None and step.load.kilograms > dose.kilograms:
        yield f"{step.load.kilograms:g} kg is more than the {dose.kilograms:g} kg the exercise permits"


def is_harder(step: DoseStep, before: DoseStep) -> bool:
    """Return whether the step is more in at least one of sets, count, hold, band and weight."""
    return any(now > then for now, then in zip(_respects(step), _respects(before), strict=True))


def _respects(step: DoseStep) -> tuple[float, ...]:
    band = (None, *BandStrength).index(step.load.band)
    return (step.sets, step.count, step.hold or 0, band, step.load.kilograms or 0.0)
