"""Narrows a catalogue to one phase of one patient, or says why not; no wish ever widens anything."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from generator.catalogue.base import Text, read_only
from generator.catalogue.dose import DoseStep, is_harder, not_permitted
from generator.catalogue.edition_values import step_text
from generator.catalogue.exercise import Exercise
from generator.catalogue.one_patient import (
    PATIENT_WEIGHT,
    ForOnePatient,
    LeftOut,
    LeftOutKind,
    OperatedSide,
    PatientDates,
    Wishes,
)
from generator.catalogue.programme import Phase, Programme, Use, Waiver
from generator.catalogue.restricted import Track, work_of, work_of_daily_life
from generator.catalogue.values import Catalogue
from generator.problems import Problem, in_order
from generator.progression.dates import calendar
from generator.progression.one_patient import rules
from generator.progression.one_patient.limits import added_restrictions, too_wide, with_added
from generator.progression.one_patient.selection import Selector, chosen_uses

_OPTIONS = MappingProxyType(
    {
        LeftOutKind.ASKED: "without",
        LeftOutKind.NOT_CHOSEN: "only",
        LeftOutKind.THING: "have",
        LeftOutKind.STRAIN: "avoid",
        LeftOutKind.SURFACE: "avoid",
        LeftOutKind.POSITION: "avoid",
    }
)
_NO_WORDS: Mapping[str, Text] = MappingProxyType({})
Strained = tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True)
class Narrowed:
    """What came of the wishes.

    catalogue: as it was, with the phase narrowed; unchanged where there are problems. told: what the booklet
    tells beside it. withheld: variations (``exercise/variation``) that this patient's wishes exclude.
    """

    catalogue: Catalogue
    told: ForOnePatient = field(default_factory=ForOnePatient)
    withheld: frozenset[str] = frozenset()
    problems: tuple[Problem, ...] = ()


def narrow(
    catalogue: Catalogue, programme: str, phase: int, wishes: Wishes, words: Mapping[str, Text] = _NO_WORDS
) -> Narrowed:
    """Return a catalogue without errors as it is for one patient in one phase (from 1) of a programme.

    words: those of the restrictions added, by their id. Raises KeyError for an unknown programme.
    """
    stages = catalogue.programmes[programme]
    stage = stages.phase(phase)
    problems = (*_refused(stages, stage, wishes), *too_wide(stages, stage, wishes))
    if problems:
        return Narrowed(catalogue, problems=in_order(problems))
    added = added_restrictions(stages, stage, wishes, words)
    selector = Selector(catalogue, with_added(stages, added), stage, wishes, added)
    uses, left_out = chosen_uses(selector)
    life, life_out, strained = _daily_life(selector)
    missing = _not_kept(catalogue, stages, stage, wishes, uses, left_out)
    if problems := (*missing, *_doses(catalogue, wishes, uses)):
        return Narrowed(catalogue, problems=in_order(problems))
    uses, dosed = _begun_lower(catalogue, uses, wishes)
    weight = words.get(PATIENT_WEIGHT) if wishes.weight_bearing is not None else None
    smaller = replace(stage, uses=uses, daily_life=life, weight_bearing=weight or stage.weight_bearing)
    own = replace(selector.programme, phases=_with_phase(stages, smaller))
    return Narrowed(
        catalogue=replace(
            catalogue,
            programmes=read_only({**catalogue.programmes, programme: own}),
            exercises=read_only({**catalogue.exercises, **dict(_surfaces(catalogue, uses, wishes))}),
        ),
        told=ForOnePatient(
            side=wishes.side,
            dates=_dates(own, smaller, wishes),
            left_out=(*left_out, *life_out),
            added=tuple(rule.id for rule in added),
            mastered=tuple(sorted(wishes.mastered)),
            strained=strained,
            dosed=dosed,
        ),
        withheld=frozenset(_withheld(selector, uses)),
    )


def _refused(programme: Programme, phase: Phase, wishes: Wishes) -> Iterator[Problem]:
    here = {use.use for use in phase.uses}
    for name, ids in (("only", wishes.only or ()), ("without", wishes.without)):
        for id_ in sorted(set(ids) - here):
            message = f"'{id_}' is not used in phase {phase.number} of '{programme.id}'"
            yield rules.UNKNOWN.at(rules.option(name), message)
    if wishes.side is OperatedSide.BOTH and not programme.both_sides:
        message = f"'{programme.id}' is for one operated side only"
        yield rules.BOTH_SIDES.at(rules.option("side"), message)


def _not_kept(
    catalogue: Catalogue,
    programme: Programme,
    phase: Phase,
    wishes: Wishes,
    uses: tuple[Use, ...],
    left_out: tuple[LeftOut, ...],
) -> Iterator[Problem]:
    """Yield a finding where nothing is left, and for each prerequisite that is missing.

    What an earlier phase used counts as done then, as it does in the programme.
    """
    if not uses:
        message = f"no exercise of phase {phase.number} is left"
        yield rules.EMPTY.at(rules.option(_emptying(wishes, left_out)), message)
    before = {use.use for one in programme.phases[: phase.number - 1] for use in one.uses}
    at_hand = before | {use.use for use in uses} | wishes.mastered
    for use in uses:
        exercise = catalogue.exercises[use.use]
        waived = {waiver.prerequisite for waiver in use.waives}
        if use.use in before:
            continue
        for needed in exercise.requires:
            if needed not in at_hand | waived:
                message = f"'{use.use}' stays and needs '{needed}' first, which is left out"
                yield rules.NEEDED.at(rules.option("mastered"), message)
        choice = set(exercise.requires_one_of)
        if choice and not choice & (at_hand | waived):
            listed = ", ".join(f"'{one}'" for one in exercise.requires_one_of)
            message = f"'{use.use}' stays and needs one of {listed} first; all are left out"
            yield rules.NEEDED.at(rules.option("mastered"), message)


def _emptying(wishes: Wishes, left_out: tuple[LeftOut, ...]) -> str:
    """Return the option that leaves out most exercises; limits are said by two options."""
    kinds = Counter(one.kind for one in left_out)
    limit = "limit" if wishes.limits else "weight-bearing"
    return {**_OPTIONS, LeftOutKind.LIMIT: limit}[max(kinds, key=lambda kind: kinds[kind])]


def _doses(catalogue: Catalogue, wishes: Wishes, uses: tuple[Use, ...]) -> Iterator[Problem]:
    kept = {use.use: use for use in uses}
    for id_, dose in wishes.doses.items():
        if id_ not in kept:
            message = f"'{id_}' is not in this booklet, so it has no dose"
            yield rules.DOSE.at(rules.option("dose"), message, f"in it are: {', '.join(sorted(kept))}")
            continue
        reasons = list(not_permitted(dose, catalogue.exercises[id_].dose))
        if not reasons and reached(dose, kept[id_]) is None:
            reasons = ["it is harder than each dose step of this phase"]
        steps = ", ".join(step_text(step) for step in kept[id_].dose_steps)
        remedy = f"choose a dose at or below one of the phase's dose steps: {steps}"
        for reason in reasons:
            yield rules.DOSE.at(rules.option("dose"), f"'{id_}': {reason}", remedy)


def reached(dose: DoseStep, use: Use) -> int | None:
    """Return the first dose step (from 0) that is in no respect easier than the dose; None where none is."""
    steps = enumerate(use.dose_steps)
    return next(
        (place for place, step in steps if step.kind is dose.kind and not is_harder(dose, step)), None
    )


def _begun_lower(
    catalogue: Catalogue, uses: tuple[Use, ...], wishes: Wishes
) -> tuple[tuple[Use, ...], tuple[tuple[str, DoseStep, DoseStep], ...]]:
    """Return the uses with the doses wished, and those that begin otherwise: id, dose, the phase's own."""
    dosed = tuple(_with_dose(use, wishes) for use in uses)
    firsts = ((old.use, new.dose_steps[0], old.dose_steps[0]) for old, new in zip(uses, dosed, strict=True))
    waived = tuple(_with_waivers(use, catalogue.exercises[use.use], wishes) for use in dosed)
    return waived, tuple(first for first in firsts if first[1] != first[2])


def _with_dose(use: Use, wishes: Wishes) -> Use:
    """Return the use beginning with the dose wished, going on with the phase's own steps above it."""
    dose = wishes.doses.get(use.use)
    place = None if dose is None else reached(dose, use)
    if dose is None or place is None:
        return use
    onwards = use.dose_steps[place:]
    return replace(use, dose_steps=onwards if onwards[0] == dose else (dose, *onwards))


def _with_waivers(use: Use, exercise: Exercise, wishes: Wishes) -> Use:
    needs = (*exercise.requires, *exercise.requires_one_of)
    waived = {waiver.prerequisite for waiver in use.waives}
    new = tuple(
        Waiver(prerequisite=one, role="clinician", reason=Text("mastered by this patient"))
        for one in needs
        if one in wishes.mastered and one not in waived
    )
    return replace(use, waives=(*use.waives, *new))


def _daily_life(selector: Selector) -> tuple[tuple[str, ...], tuple[LeftOut, ...], Strained]:
    """Return what stays of daily life, what goes beyond this patient's limits, and what strains but stays.

    Nobody can do without getting up or walking, so a strain alone leaves the advice in, and is told.
    """
    kept: list[str] = []
    left_out: list[LeftOut] = []
    strained: list[tuple[str, tuple[str, ...]]] = []
    for id_ in selector.phase.daily_life:
        item = selector.catalogue.daily_life[id_]
        reason = selector.why_not(work_of_daily_life(item))
        if reason is not None:
            left_out.append(LeftOut(id_, *reason, daily_life=True))
            continue
        kept.append(id_)
        if found := tuple(one for one in item.strains if one in selector.wishes.avoid.strains):
            strained.append((id_, found))
    return tuple(kept), tuple(left_out), tuple(strained)


def _surfaces(catalogue: Catalogue, uses: tuple[Use, ...], wishes: Wishes) -> Iterator[tuple[str, Exercise]]:
    for use in uses:
        exercise = catalogue.exercises[use.use]
        kept = tuple(one for one in exercise.surface if one not in wishes.avoid.surfaces)
        if kept != exercise.surface:
            yield use.use, replace(exercise, surface=kept)


def _withheld(selector: Selector, uses: tuple[Use, ...]) -> Iterator[str]:
    for use in uses:
        exercise = selector.catalogue.exercises[use.use]
        for variation in exercise.variations.values():
            if variation.id != use.variation and (
                selector.lacking(exercise, variation) or selector.why_not(work_of(exercise, variation))
            ):
                yield f"{use.use}/{variation.id}"


def _with_phase(programme: Programme, phase: Phase) -> tuple[Phase, ...]:
    return tuple(phase if one.number == phase.number else one for one in programme.phases)


def _dates(programme: Programme, phase: Phase, wishes: Wishes) -> PatientDates | None:
    if wishes.surgery is None:
        return None
    found = {
        (item.phase, item.exercise): item.delayed if wishes.track is Track.DELAYED else item.usual
        for item in calendar(programme, wishes.surgery)
    }
    return PatientDates(
        surgery=wishes.surgery,
        track=wishes.track,
        phase=found[phase.number, None],
        following=found.get((phase.number + 1, None)),
        exercises={name: day for (number, name), day in found.items() if number == phase.number and name},
    )
