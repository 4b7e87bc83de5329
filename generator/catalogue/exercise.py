"""Describes what is done: an exercise, what each leg does in it, its variations and its measurements."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.catalogue.base import Record, Text
from generator.catalogue.dose import Dose
from generator.catalogue.judgement import Judgement
from generator.catalogue.pose import FigureSpec, PoseSpec
from generator.catalogue.terms import (
    Against,
    Carries,
    Change,
    Demand,
    Electrode,
    Harm,
    Helper,
    How,
    Joint,
    Landmark,
    Movement,
    Normalisation,
    OutsideLoad,
    Part,
    Position,
    Posture,
    Role,
    Sides,
    Signal,
    Statistic,
    Support,
    Surface,
)


@dataclass(frozen=True, kw_only=True)
class JointWork(Record):
    """A joint that moves or is held in one direction.

    to: largest angle reached in degrees, neutral-zero convention; None where it is not stated.
    """

    joint: Joint
    movement: Movement
    how: How
    against: Against
    to: float | None = None


@dataclass(frozen=True)
class ShownAngle:
    """The largest angle that one movement of a joint reaches over all poses and between them.

    degrees: rounded to whole ones. travel: how far the joint turns about this axis in all, degrees.
    typed: whether the angle is one that an editor typed; the others follow from what rests on what.
    """

    joint: Joint
    movement: Movement
    degrees: float
    travel: float
    typed: bool


@dataclass(frozen=True, kw_only=True)
class LegWork(Record):
    """What one leg does: moves, holds, carries, and whether it is lain on.

    shown: what the poses show of it, start pose included; None where no poses are typed. No key of the
    content: `body.shown` works it out.
    """

    moves: tuple[JointWork, ...]
    holds: tuple[JointWork, ...]
    carries: Carries
    lain_on: bool
    shown: tuple[ShownAngle, ...] | None = None

    def shown_angle(self, joint: Joint, movement: Movement) -> ShownAngle | None:
        """Return what the poses show of a movement; None where they show nothing of it."""
        return next((one for one in self.shown or () if (one.joint, one.movement) == (joint, movement)), None)


@dataclass(frozen=True, kw_only=True)
class Caution(Record):
    """A warning where the hazard is: signal word, hazard, consequence, what to do."""

    signal: Signal
    harm: Harm
    hazard: Text
    consequence: Text
    avoid: Text


@dataclass(frozen=True, kw_only=True)
class Measurement(Record):
    """One published muscle-activity value.

    muscle: id in muscles.yml (a segment has an id of its own).
    mean: mean or median, in percent of the study's normalisation contraction.
    sd: standard deviation in the same unit; iqr: width of the interquartile range; n: people measured.
    study: id in studies.yml. at_place: table or page in it.
    electrode, normalisation, part: None where the study's own entry holds.
    load: condition of load, a short English phrase; the same words mean the same condition.
    added_load: kind of load added from outside beyond what the exercise itself asks for.
    read: which of mean, sd, n were read in the source; the others are recalled.
    """

    muscle: str
    mean: float
    sd: float | None = None
    iqr: float | None = None
    n: int | None = None
    study: str
    at_place: str
    load: str
    added_load: OutsideLoad | None = None
    statistic: Statistic = Statistic.MEAN
    electrode: Electrode | None = None
    normalisation: Normalisation | None = None
    part: Part | None = None
    read: tuple[str, ...] = ()
    remark: str = ""


@dataclass(frozen=True, kw_only=True)
class Variation(Record):
    """An easier or harder form; what it does not state is as in its exercise.

    poses, figure: empty and None where it looks like its exercise; `finish` goes with the poses.
    operated_leg, other_leg: None where the file says ``same``. judged: as in an exercise.
    """

    id: str
    is_: Change
    name: Text
    change: Text
    operated_leg: LegWork | None
    other_leg: LegWork | None
    demand: Demand | None = None
    positions: tuple[Position, ...] = ()
    equipment: tuple[str, ...] = ()
    activity: tuple[Measurement, ...] = ()
    judged: tuple[Judgement, ...] = ()
    cautions: tuple[Caution, ...] = ()
    finish: Text | None = None
    poses: tuple[PoseSpec, ...] = ()
    figure: FigureSpec | None = None


@dataclass(frozen=True, kw_only=True)
class HelperRole(Record):
    """What a second person does, and must not do."""

    does: Text
    must_not: Text


@dataclass(frozen=True, kw_only=True)
class Exercise(Record):
    """What is done, shared by all programmes.

    id: the file's name. purpose: why, in everyday words. strains: ids in precautions.yml.
    positions: positions that a surgeon may forbid, beside lying on a side, which the legs state.
    requires: exercises to be mastered first, all of them; requires_one_of: at least one of these.
    alternative: exercise that takes its place for a person who must avoid one of its strains.
    sides: whether the dose is done once (by the operated side, or by both at once) or by each side in turn.
    set_up, start, steps, limits: in the order in which the patient reads them.
    finish: what the last pose looks like, for those who cannot see the picture.
    poses, figure: from which the pictures are drawn; empty where there are none yet.
    feel, not_feel: what it should and should not feel like. anchor: height of a band's anchor.
    judged: how hard muscles work that nobody measured; a measurement counts before it.
    """

    id: str
    name: Text
    purpose: Text
    role: Role
    demand: Demand
    posture: Posture
    surface: tuple[Surface, ...]
    helper: Helper
    helper_role: HelperRole | None = None
    support: Support
    equipment: tuple[str, ...] = ()
    anchor: Landmark | None = None
    strains: tuple[str, ...] = ()
    positions: tuple[Position, ...] = ()
    requires: tuple[str, ...] = ()
    requires_one_of: tuple[str, ...] = ()
    alternative: str | None = None
    sides: Sides = Sides.ONE
    operated_leg: LegWork
    other_leg: LegWork
    set_up: tuple[Text, ...] = ()
    start: Text
    finish: Text | None = None
    steps: tuple[Text, ...]
    limits: tuple[Text, ...] = ()
    feel: Text
    not_feel: Text
    mistakes: tuple[Text, ...] = ()
    cautions: tuple[Caution, ...] = ()
    dose: Dose
    variations: Mapping[str, Variation] = field(default_factory=dict)
    poses: tuple[PoseSpec, ...] = ()
    figure: FigureSpec | None = None
    activity: tuple[Measurement, ...] = ()
    judged: tuple[Judgement, ...] = ()
