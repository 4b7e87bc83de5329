"""Gives exercises that nobody measured the number that a judgement comes to, never one of its own.

"Like X" is X's number and interval; "between X and Y" the middle of both numbers with an interval that spans
both; "no load" is 0. A judgement may refer to an exercise that is itself judged, but never in a circle.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from generator.catalogue.estimates import Basis, Estimate, SetAside
from generator.catalogue.judgement import JudgedAs, Judgement
from generator.progression.order import find_cycle

Key = tuple[str, str]
_BASIS = {
    JudgedAs.LIKE: Basis.JUDGED_LIKE,
    JudgedAs.BETWEEN: Basis.JUDGED_BETWEEN,
    JudgedAs.NO_LOAD: Basis.JUDGED_NO_LOAD,
}


def judged_estimates(
    judgements: Mapping[str, Sequence[Judgement]],
    measured: Mapping[Key, Estimate],
    set_aside: Mapping[Key, tuple[SetAside, ...]],
) -> dict[Key, Estimate]:
    """Return an estimate for each judged form and muscle that has none by measurement.

    What refers to nothing that is known, or goes round in a circle, stays without an estimate.
    """
    waiting = {key: judgement for key, judgement in _by_key(judgements) if key not in measured}
    known: dict[Key, Estimate] = dict(measured)
    found: dict[Key, Estimate] = {}
    # Every round resolves what refers to known estimates; a circle never becomes known.
    ready = list(waiting)
    while ready:
        solved = [key for key in ready if all((other, key[1]) in known for other in waiting[key].others)]
        for key in solved:
            others = [known[other, key[1]] for other in waiting[key].others]
            known[key] = found[key] = _estimate(key[1], waiting[key], others, set_aside.get(key, ()))
        if not solved:
            break
        done = set(solved)
        ready = [key for key in ready if key not in done]
    return found


def _by_key(judgements: Mapping[str, Sequence[Judgement]]) -> Iterator[tuple[Key, Judgement]]:
    for form, judged in judgements.items():
        for judgement in reversed(judged):
            for muscle in judgement.muscles:
                yield (form, muscle), judgement


def _estimate(
    muscle: str, judgement: Judgement, others: Sequence[Estimate], aside: tuple[SetAside, ...]
) -> Estimate:
    lows = [other.mean if other.low is None else other.low for other in others]
    highs = [other.mean if other.high is None else other.high for other in others]
    return Estimate(
        muscle=muscle,
        mean=sum(other.mean for other in others) / len(others) if others else 0.0,
        k=0,
        n=0,
        basis=_BASIS[judgement.kind],
        studies=(),
        set_aside=aside,
        low=min(lows, default=0.0),
        high=max(highs, default=0.0),
        judgement=judgement,
    )


def circles(judgements: Mapping[str, Sequence[Judgement]]) -> Iterator[tuple[str, list[str]]]:
    """Yield each circle of judgements as its muscle and its forms in order, the first again at the end."""
    needs = {key: [(other, key[1]) for other in judgement.others] for key, judgement in _by_key(judgements)}
    while (cycle := find_cycle(needs)) is not None:
        yield cycle[0][1], [form for form, _ in cycle]
        needs = {key: others for key, others in needs.items() if key not in cycle}
