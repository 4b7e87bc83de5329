"""Works out how hard each muscle works in each exercise and variation, with an interval that admits doubt.

The number is the random-effects mean of alike measurements (see `alike` and `pooling`). Three or more studies
give their own interval after Hartung and Knapp. One or two cannot show how far studies disagree, so their
interval adds the median between-study variance of the muscle's other pools. Where nobody measured, a
clinician's judgement counts; where nobody judged either, there is no estimate: it is never 0.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Set
from dataclasses import dataclass, replace
from statistics import median
from types import MappingProxyType

from generator.catalogue.estimates import Aside, Basis, Caveat, CaveatKind, Estimate, SetAside
from generator.catalogue.exercise import Exercise, Measurement, Variation
from generator.catalogue.judgement import Judgement
from generator.catalogue.terms import Change, OutsideLoad
from generator.catalogue.values import Catalogue
from generator.progression.alike import Value, by_whole_muscle, chosen, set_aside, spread_of, value_of
from generator.progression.judged import judged_estimates
from generator.progression.pooling import Pool, hartung_knapp, pool, prediction, widened

Key = tuple[str, str]
_LEAST_FOR_OWN_INTERVAL = 3


@dataclass(frozen=True)
class Activity:
    """What is known of every form, an id such as ``exercise`` or ``exercise/variation``, for every muscle.

    estimates: by form and whole muscle. set_aside: what was set aside, by form and whole muscle, also where
    no estimate came of it. added: with a load added from outside. spread: median coefficient of variation by
    muscle. between: median between-study variance by muscle.
    """

    estimates: Mapping[Key, Estimate]
    set_aside: Mapping[Key, tuple[SetAside, ...]]
    added: Mapping[tuple[str, str, OutsideLoad], Estimate]
    spread: Mapping[str, float]
    between: Mapping[str, float]

    def of(self, form: str, muscle: str) -> Estimate | None:
        """Return the estimate of a form's own, or None where it was neither measured nor judged."""
        return self.estimates.get((form, muscle))

    def in_form(self, exercise: Exercise, variation: Variation | None, muscle: str) -> Estimate | None:
        """Return the estimate that holds for an exercise or one of its variations.

        A harder form counts as no easier than its exercise, whatever other people and electrodes gave.
        """
        plain = self.of(exercise.id, muscle)
        if variation is None:
            return plain
        own = self.of(form_id(exercise, variation), muscle)
        if variation.is_ is Change.EASIER:
            return own
        return max((item for item in (own, plain) if item), key=lambda item: item.mean, default=None)


def form_id(exercise: Exercise, variation: Variation | None) -> str:
    """Return ``exercise`` or ``exercise/variation``."""
    return f"{exercise.id}/{variation.id}" if variation else exercise.id


def forms(catalogue: Catalogue) -> Iterator[tuple[str, tuple[Measurement, ...], tuple[Judgement, ...]]]:
    """Yield each exercise and each variation with what was measured and judged of it."""
    for exercise in catalogue.exercises.values():
        yield exercise.id, exercise.activity, exercise.judged
        for variation in exercise.variations.values():
            yield form_id(exercise, variation), variation.activity, variation.judged


def activity_of(catalogue: Catalogue, without: Set[str] = frozenset()) -> Activity:
    """Return what is known of every form; the studies `without` are left out as if never published."""
    whole = {muscle.id: muscle.part_of for muscle in catalogue.muscles.values() if muscle.part_of}
    measured = [
        ((form, muscle), items)
        for form, activity, _ in forms(catalogue)
        for muscle, items in by_whole_muscle(activity, whole).items()
    ]
    spread = _spreads(catalogue, measured, without)
    pools: dict[Key, tuple[Value, ...]] = {}
    asides: dict[Key, tuple[SetAside, ...]] = {}
    for key, items in measured:
        values, unfit = _sorted_out(catalogue, key[1], items, spread.get(key[1]), without)
        pools[key], others = chosen(values)
        asides[key] = tuple(sorted((*unfit, *others), key=lambda one: (one.study, one.muscle, one.mean)))
    results = {key: pool([value.effect for value in values]) for key, values in pools.items() if values}
    between = _between(results)
    estimates = {
        key: _estimate(key[1], pools[key], found, asides[key], between) for key, found in results.items()
    }
    added = _added(catalogue, measured, spread, between, without)
    judgements = {form: judged for form, _, judged in forms(catalogue) if judged}
    estimates.update(judged_estimates(judgements, estimates, asides))
    return Activity(
        MappingProxyType(estimates),
        MappingProxyType(asides),
        MappingProxyType(added),
        MappingProxyType(spread),
        MappingProxyType(between),
    )


def _spreads(
    catalogue: Catalogue, measured: Iterable[tuple[Key, tuple[Measurement, ...]]], without: Set[str]
) -> dict[str, float]:
    by_muscle: dict[str, list[Measurement]] = {}
    for (_, muscle), items in measured:
        whole = (item for item in items if item.muscle == muscle and item.study not in without)
        by_muscle.setdefault(muscle, []).extend(item for item in whole if item.study in catalogue.studies)
    found = {
        muscle: spread_of((item, catalogue.studies[item.study]) for item in items)
        for muscle, items in by_muscle.items()
    }
    return {muscle: spread for muscle, spread in found.items() if spread is not None}


def _sorted_out(
    catalogue: Catalogue,
    muscle: str,
    items: Iterable[Measurement],
    spread: float | None,
    without: Set[str],
) -> tuple[list[Value], list[SetAside]]:
    """Return what can be pooled, and what can never be, with the reason."""
    values: list[Value] = []
    unfit: list[SetAside] = []
    for item in items:
        study = catalogue.studies.get(item.study)
        found: Value | Aside
        if study is None:
            found = Aside.NO_STUDY
        elif item.study in without:
            found = Aside.LEFT_OUT
        elif item.muscle != muscle:
            found = Aside.SEGMENT
        else:
            found = value_of(item, study, spread)
        if isinstance(found, Aside):
            unfit.append(set_aside(item, found))
        else:
            values.append(found)
    return values, unfit


def _between(results: Mapping[Key, Pool]) -> dict[str, float]:
    """Return the median between-study variance by muscle, and under the empty id that of all muscles."""
    found: dict[str, list[float]] = {}
    for (_, muscle), result in results.items():
        if result.k > 1:
            found.setdefault(muscle, []).append(result.tau_squared)
            found.setdefault("", []).append(result.tau_squared)
    return {muscle: median(values) for muscle, values in found.items()}


def _estimate(
    muscle: str,
    values: tuple[Value, ...],
    result: Pool,
    aside: tuple[SetAside, ...],
    between: Mapping[str, float],
) -> Estimate:
    caveats = [caveat for value in values for caveat in value.caveats]
    borrowed: float | None = None
    if result.k >= _LEAST_FOR_OWN_INTERVAL:
        low, high = hartung_knapp([value.effect for value in values], result)
    else:
        borrowed = between.get(muscle, between.get(""))
        if borrowed is None:
            caveats.append(Caveat(CaveatKind.NO_BETWEEN))
        elif muscle not in between:
            caveats.append(Caveat(CaveatKind.BORROWED_ELSEWHERE))
        low, high = widened(result, borrowed or 0.0)
    recalled = any(value.recalled for value in values)
    return Estimate(
        muscle=muscle,
        mean=result.mean,
        k=result.k,
        n=sum(value.people for value in values),
        basis=Basis.PARTLY_RECALLED if recalled else Basis.MEASURED,
        studies=tuple(value.item.study for value in values),
        set_aside=aside,
        se=result.se,
        low=low,
        high=high,
        prediction=prediction(result) if result.k >= _LEAST_FOR_OWN_INTERVAL else None,
        q=result.q,
        i_squared=result.i_squared,
        tau_squared=result.tau_squared,
        borrowed=borrowed,
        condition=values[0].condition,
        caveats=tuple(caveats),
    )


def _added(
    catalogue: Catalogue,
    measured: Iterable[tuple[Key, tuple[Measurement, ...]]],
    spread: Mapping[str, float],
    between: Mapping[str, float],
    without: Set[str],
) -> dict[tuple[str, str, OutsideLoad], Estimate]:
    """Return what exercises ask with a load added, from their own measurements and their variations'."""
    found: dict[tuple[str, str, OutsideLoad], list[Measurement]] = {}
    for (form, muscle), items in measured:
        for item in items:
            if item.added_load is not None:
                found.setdefault((form.split("/")[0], muscle, item.added_load), []).append(item)
    estimates = {}
    for key, loaded in found.items():
        values, _ = chosen(_sorted_out(catalogue, key[1], loaded, spread.get(key[1]), without)[0])
        if values:
            result = pool([value.effect for value in values])
            estimates[key] = _estimate(key[1], values, result, (), between)
    return estimates


def most_active(estimates: Iterable[Estimate | None]) -> tuple[Estimate, ...]:
    """Return the estimates there are, the most active muscle first; equals by the muscle's id."""
    return tuple(sorted((item for item in estimates if item), key=lambda item: (-item.mean, item.muscle)))


def with_step(estimate: Estimate | None, added: Estimate | None) -> Estimate | None:
    """Return what holds for a dose step with an added load: never less than without it."""
    if added is None or (estimate is not None and estimate.mean >= added.mean):
        return estimate
    return replace(added, set_aside=estimate.set_aside) if estimate else added
