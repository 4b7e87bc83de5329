"""Decides which exercises of a phase one patient keeps, and what takes the place of the others."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.one_patient import LeftOut, LeftOutKind, Wishes
from generator.catalogue.programme import Phase, Programme, Restriction, Use
from generator.catalogue.restricted import Work, breaches, in_force_at_entry, is_forbidden, work_of_use
from generator.catalogue.terms import Carries, MuscleAim, Position, Then
from generator.catalogue.values import Catalogue
from generator.progression.activity import Activity, activity_of
from generator.progression.bands import Leave, leave
from generator.progression.worked import hardest_step, worked

Reason = tuple[LeftOutKind, tuple[str, ...]]


@dataclass(frozen=True)
class Selector:
    """What a choice rests on: the programme with the restrictions `added`, the phase as written."""

    catalogue: Catalogue
    programme: Programme
    phase: Phase
    wishes: Wishes
    added: tuple[Restriction, ...]

    @cached_property
    def activity(self) -> Activity:
        """Return what is known of every muscle; worked out only when an alternative asks for it."""
        return activity_of(self.catalogue)

    def why_out(self, use: Use) -> Reason | None:
        """Return why a use of this phase falls out, or None."""
        wishes = self.wishes
        if use.use in wishes.without:
            return LeftOutKind.ASKED, ()
        if wishes.only is not None and use.use not in wishes.only:
            return LeftOutKind.NOT_CHOSEN, ()
        exercise = self.catalogue.exercises[use.use]
        chosen = exercise.variations.get(use.variation or "")
        if lacking := self.lacking(exercise, chosen):
            return LeftOutKind.THING, lacking
        if spared := tuple(one for one in exercise.strains if one in wishes.avoid.strains):
            return LeftOutKind.STRAIN, spared
        if wishes.avoid.surfaces.issuperset(exercise.surface):
            return LeftOutKind.SURFACE, tuple(one.value for one in exercise.surface)
        return self.why_not(work_of_use(exercise, use))

    def lacking(self, exercise: Exercise, variation: Variation | None) -> tuple[str, ...]:
        """Return the things that a form needs and that are not at hand."""
        have = self.wishes.have
        return () if have is None else tuple(one for one in needed(exercise, variation) if one not in have)

    def why_not(self, work: Work) -> Reason | None:
        """Return the position or the limit of this patient that forbids the work, or None."""
        positions = set(work.positions)
        legs = (work.operated, work.other) if self.programme.both_sides else (work.operated,)
        if any(leg.lain_on for leg in legs):
            positions.add(Position.ON_OPERATED_SIDE)
        if met := sorted(one.value for one in positions & self.wishes.avoid.positions):
            return LeftOutKind.POSITION, tuple(met)
        both = self.programme.both_sides
        broken = tuple(
            rule.id for rule in self.added if any(True for _ in breaches(work, rule, both_sides=both))
        )
        return (LeftOutKind.LIMIT, broken) if broken else None

    def alternative(self, use: Use) -> Use | None:
        """Return the use that takes the place of one that falls out; None where nothing named passes.

        It is a use of this phase, or the latest one of an earlier phase, whose doses the patient has reached.
        The patient has begun that one already, so it waits for nothing but its own condition.
        """
        name = self.catalogue.exercises[use.use].alternative
        here = next((one for one in self.phase.uses if one.use == name), None)
        if here is not None:
            return here if self.why_out(here) is None else None
        earlier = [
            one
            for phase in self.programme.phases[: self.phase.number - 1]
            for one in phase.uses
            if one.use == name
        ]
        if not earlier:
            return None
        found = replace(
            earlier[-1], week=None, delayed_week=None, place=use.place, places=use.places,
            then=use.then, replaced_by=use.replaced_by, accepts=None,
        )  # fmt: skip
        return found if self.why_out(found) is None and self._fits(found) else None

    def _fits(self, use: Use) -> bool:
        """Return whether demand, restrictions and band of this phase allow a use of another phase."""
        exercise = self.catalogue.exercises[use.use]
        work = work_of_use(exercise, use)
        both = self.programme.both_sides
        if work.demand.rank > self.phase.demand.rank or (both and work.other.carries is Carries.ONE_LEG):
            return False
        if is_forbidden(work, in_force_at_entry(self.programme, self.phase, use), both_sides=both):
            return False
        if self.programme.aim is not MuscleAim.PROTECTS:
            return True
        hardest, _ = hardest_step(self.activity, worked(self.activity, self.programme, exercise, use))
        mean = hardest.mean if hardest else None
        return leave(mean, self.phase.band, self.programme.margin, None) is not Leave.REFUSED


def needed(exercise: Exercise, variation: Variation | None) -> tuple[str, ...]:
    """Return the things (ids) that a form of an exercise asks for."""
    return tuple(dict.fromkeys((*exercise.equipment, *(variation.equipment if variation else ()))))


def chosen_uses(selector: Selector) -> tuple[tuple[Use, ...], tuple[LeftOut, ...]]:
    """Return the uses that this patient keeps, alternatives included, and what falls out."""
    kept: list[Use] = []
    left_out: list[LeftOut] = []
    for use in selector.phase.uses:
        reason = selector.why_out(use)
        if reason is None:
            kept.append(use)
            continue
        kind, what = reason
        asked = kind in (LeftOutKind.ASKED, LeftOutKind.NOT_CHOSEN)
        instead = None if asked else selector.alternative(use)
        already = {one.use for one in (*kept, *selector.phase.uses)}
        if instead is not None and instead.use not in already:
            kept.append(instead)
        left_out.append(LeftOut(use.use, kind, what, instead.use if instead else None))
    heirs = _Heirs({use.use: use for use in selector.phase.uses}, {use.use for use in kept})
    return tuple(heirs.linked(use) for use in kept), tuple(left_out)


@dataclass(frozen=True)
class _Heirs:
    """Says what becomes of a use when what was to take its place has fallen out.

    An alternative takes no other exercise's place: it is easier than what it replaces, and begins before.
    phase: all uses of the phase as written. kept: ids that stay.
    """

    phase: Mapping[str, Use]
    kept: set[str]

    def linked(self, use: Use) -> Use:
        """Return the use with the exercise that really takes its place, in this phase or in the next one.

        An alternative was not written for this place, so what the next phase has is not said to follow it.
        """
        own = use.use in self.phase
        if use.then is not Then.REPLACED:
            return use if own or use.then is Then.ENDS else replace(use, then=Then.ENDS)
        heir = next(self._heirs(use), None)
        if heir is None or not (own or heir in self.kept):
            return replace(use, then=Then.ENDS, replaced_by=None)
        return replace(use, replaced_by=heir)

    def _heirs(self, use: Use) -> Iterator[str]:
        seen = {use.use}
        heir = use.replaced_by
        while heir is not None and heir not in seen:
            if heir not in self.phase or heir in self.kept:
                yield heir
                return
            seen.add(heir)
            fallen = self.phase[heir]
            heir = fallen.replaced_by if fallen.then is Then.REPLACED else None
