"""Works out ahead what each wish would do, so that a page can narrow a phase as the command does."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from generator.body.ranges import LARGEST, exists
from generator.catalogue.choices import NEVER, DoseChoice, PhaseChoices, UseChoice, limit_name
from generator.catalogue.dose import Dose, DoseStep, Load, not_permitted
from generator.catalogue.in_force import in_force
from generator.catalogue.one_patient import Limit, Wishes
from generator.catalogue.programme import (
    MovementRestriction,
    Phase,
    Programme,
    Restriction,
    Use,
    WeightRestriction,
)
from generator.catalogue.restricted import Work, breaches, work_of_use
from generator.catalogue.terms import How, Joint, Leg, Movement, Position, WeightBearing
from generator.catalogue.values import Catalogue
from generator.progression.one_patient.limits import added_restrictions, too_wide
from generator.progression.one_patient.narrowing import reached
from generator.progression.one_patient.selection import Selector, needed

# How many counts of a dose are offered below the largest, so that a list stays short enough to choose from.
_COUNTS = 4
_COARSE, _FINE = 10, 5
_LARGE = 45.0


def phase_choices(catalogue: Catalogue, programme: Programme, phase: Phase) -> PhaseChoices:
    """Return what a clinician may choose in a phase, and what each choice would do to each exercise."""
    selector = Selector(catalogue, programme, phase, Wishes(), ())
    limits, weights = tuple(_limits(selector)), tuple(_weights(selector))
    instead = {use.use: selector.alternative(use) for use in phase.uses}
    here = {use.use for use in phase.uses}
    # Where one may take the place of several, it comes as it does for the first of them.
    brought: dict[str, Use] = {}
    for one in instead.values():
        if one is not None and one.use not in here:
            brought.setdefault(one.use, one)
    uses = tuple(_use(selector, use, phase.number, limits, weights, instead[use.use]) for use in phase.uses)
    return PhaseChoices(
        uses=uses,
        brought=tuple(
            _use(selector, use, _phase_of(programme, phase, use.use), limits, weights, None)
            for use in brought.values()
        ),
        limits=limits,
        weights=weights,
        mastered=tuple(dict.fromkeys(id_ for one in uses for id_ in (*one.needs, *one.one_of))),
        things=tuple(dict.fromkeys(_things(catalogue, (*phase.uses, *brought.values())))),
    )


def _things(catalogue: Catalogue, uses: Iterable[Use]) -> Iterator[str]:
    """Yield what exercises and all their forms ask for; a booklet prints other forms too."""
    for use in uses:
        exercise = catalogue.exercises[use.use]
        yield from exercise.equipment
        for variation in exercise.variations.values():
            yield from variation.equipment


def _phase_of(programme: Programme, phase: Phase, exercise: str) -> int:
    """Return the latest earlier phase that has an exercise."""
    earlier = (one for one in reversed(programme.phases[: phase.number - 1]))
    return next(one.number for one in earlier if any(use.use == exercise for use in one.uses))


def _use(
    selector: Selector,
    use: Use,
    words: int,
    limits: tuple[Limit, ...],
    weights: tuple[WeightBearing, ...],
    instead: Use | None,
) -> UseChoice:
    exercise = selector.catalogue.exercises[use.use]
    work = work_of_use(exercise, use)
    both = selector.programme.both_sides
    lain_on = work.operated.lain_on or (both and work.other.lain_on)
    positions = {*work.positions, *((Position.ON_OPERATED_SIDE,) if lain_on else ())}
    needs, one_of = _needed(selector, use)
    return UseChoice(
        use=use,
        phase=words,
        needs=needs,
        one_of=one_of,
        things=needed(exercise, exercise.variations.get(use.variation or "")),
        strains=exercise.strains,
        positions=tuple(one for one in Position if one in positions),
        surfaces=exercise.surface,
        weights=tuple(one for one in weights if _stays(selector, work, Wishes(weight_bearing=one))),
        limits=dict(_least(selector, work, limits)),
        instead=instead.use if instead else None,
        doses=tuple(dose_choices(use, exercise.dose)),
    )


def _needed(selector: Selector, use: Use) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return what must be in the booklet or mastered; what earlier phases used counts as done."""
    exercise = selector.catalogue.exercises[use.use]
    before = {
        one.use for stage in selector.programme.phases[: selector.phase.number - 1] for one in stage.uses
    }
    if use.use in before:
        return (), ()
    done = before | {waiver.prerequisite for waiver in use.waives}
    needs = tuple(one for one in exercise.requires if one not in done)
    return needs, () if set(exercise.requires_one_of) & done else exercise.requires_one_of


def _stays(selector: Selector, work: Work, wishes: Wishes) -> bool:
    both = selector.programme.both_sides
    added = added_restrictions(selector.programme, selector.phase, wishes, {})
    return not any(True for rule in added for _ in breaches(work, rule, both_sides=both))


def _least(selector: Selector, work: Work, limits: tuple[Limit, ...]) -> Iterator[tuple[str, float]]:
    """Yield each movement with the least offered limit that leaves the work in, where not all of them do."""
    for name in dict.fromkeys(limit_name(one) for one in limits):
        offered = [one for one in limits if limit_name(one) == name]
        fitting = [one.degrees for one in offered if _stays(selector, work, Wishes(limits=(one,)))]
        if len(fitting) < len(offered):
            yield name, min(fitting, default=NEVER)


def _limits(selector: Selector) -> Iterator[Limit]:
    """Yield limits below what the phase allows, for each movement that its exercises ask of the leg."""
    held = in_force(selector.programme, selector.phase)
    asked: dict[tuple[Joint, Movement], None] = {}
    for use in selector.phase.uses:
        leg = work_of_use(selector.catalogue.exercises[use.use], use).operated
        asked |= {(one.joint, one.movement): None for one in (*leg.moves, *leg.holds)}
    for joint, movement in asked:
        if exists(joint, movement) and not _closed(held, joint, movement):
            step = _COARSE if LARGEST[joint, movement] > _LARGE else _FINE
            for degrees in range(0, int(LARGEST[joint, movement]) + 1, step):
                limit = Limit(joint, movement, float(degrees))
                if _narrows(selector, Wishes(limits=(limit,))) and not _same(held, limit):
                    yield limit


def _closed(held: tuple[Restriction, ...], joint: Joint, movement: Movement) -> bool:
    """Return whether the phase forbids a movement wholly, so that no limit could be tighter."""
    return any(
        isinstance(rule, MovementRestriction)
        and (rule.joint, rule.movement, rule.limit) == (joint, movement, None)
        and rule.leg is not Leg.OTHER
        and How.PASSIVE in rule.how
        for rule in held
    )


def _same(held: tuple[Restriction, ...], limit: Limit) -> bool:
    return any(
        isinstance(rule, MovementRestriction)
        and (rule.joint, rule.movement, rule.limit) == (limit.joint, limit.movement, limit.degrees)
        and rule.leg is not Leg.OTHER
        for rule in held
    )


def _narrows(selector: Selector, wishes: Wishes) -> bool:
    return not any(True for _ in too_wide(selector.programme, selector.phase, wishes))


def _weights(selector: Selector) -> Iterator[WeightBearing]:
    held = in_force(selector.programme, selector.phase)
    now = {rule.allows for rule in held if isinstance(rule, WeightRestriction) and rule.leg is not Leg.OTHER}
    for one in WeightBearing:
        if one not in now and _narrows(selector, Wishes(weight_bearing=one)):
            yield one


def dose_choices(use: Use, permitted: Dose) -> Iterator[DoseChoice]:
    """Yield the doses that a patient may begin with: the phase's steps, and what is permitted below them.

    What lies below has no load. All hold as long as the first step does, because the words of the exercise
    say how long.
    """
    first = use.dose_steps[0]
    steps = [one for one in use.dose_steps if one.hold == first.hold]
    found = dict.fromkeys(steps)
    for step in steps:
        found |= dict.fromkeys(_below(step, permitted))
    for step in sorted(
        found, key=lambda one: (steps.index(one) if one in steps else -1, one.sets, one.count)
    ):
        place = reached(step, use)
        if place is not None:
            yield DoseChoice(step, place + (use.dose_steps[place] == step))


def _below(step: DoseStep, permitted: Dose) -> Iterator[DoseStep]:
    least = permitted.count.least
    stride = max(1, -(-(step.count - least) // _COUNTS))
    for sets in range(permitted.sets.least, step.sets + 1):
        for count in range(least, step.count + 1, stride):
            made = replace(step, sets=sets, count=count, load=Load())
            if not any(True for _ in not_permitted(made, permitted)):
                yield made
