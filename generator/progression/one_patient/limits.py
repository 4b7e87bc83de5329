"""Turns tighter limits for one patient into restrictions that hold through the whole phase."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from generator.body.ranges import LARGEST, exists
from generator.catalogue.base import Source, SourceStatus, Text
from generator.catalogue.in_force import in_force
from generator.catalogue.one_patient import PATIENT_WEIGHT, Limit, Wishes
from generator.catalogue.programme import (
    End,
    MovementRestriction,
    Phase,
    Programme,
    Restriction,
    WeightRestriction,
)
from generator.catalogue.terms import How, Leg, WeightBearing
from generator.problems import Problem
from generator.progression.one_patient import rules

WHY, RELEASE, ORDERED = "why", "release", "source"
"""Keys of the words beside the restrictions' own ids: why it holds, who lifts it, where it comes from."""

_RISING = tuple(WeightBearing)


def too_wide(programme: Programme, phase: Phase, wishes: Wishes) -> Iterator[Problem]:
    """Yield a finding for each limit that does not narrow, or that no joint has."""
    held = in_force(programme, phase)
    for limit in wishes.limits:
        if reason := _why_wider(limit, held):
            yield rules.WIDER.at(rules.option("limit"), reason)
    allowed = [
        rule.allows for rule in held if isinstance(rule, WeightRestriction) and rule.leg is not Leg.OTHER
    ]
    wish = wishes.weight_bearing
    if wish is not None and any(_RISING.index(wish) > _RISING.index(most) for most in allowed):
        strictest = min(allowed, key=_RISING.index)
        message = (
            f"'{wish.value}' is more than the programme allows in phase {phase.number}: {strictest.value}"
        )
        yield rules.WIDER.at(rules.option("weight-bearing"), message)


def _why_wider(limit: Limit, held: tuple[Restriction, ...]) -> str:
    name = f"{limit.joint.value} {limit.movement.value}"
    if not exists(limit.joint, limit.movement):
        return f"there is no {name}"
    if not 0 <= limit.degrees <= LARGEST[limit.joint, limit.movement]:
        most = LARGEST[limit.joint, limit.movement]
        return f"{name} to {limit.degrees:g} degrees is not between 0 and {most:g}, the largest normal angle"
    for rule in held:
        allowed = _largest(rule, limit)
        if allowed is not None and limit.degrees > allowed:
            wanted = f"{name} to {limit.degrees:g} degrees"
            return f"{wanted} is more than '{rule.id}' of the programme allows: {allowed:g}"
    return ""


def _largest(rule: Restriction, limit: Limit) -> float | None:
    """Return the angle up to which a restriction allows the movement of a limit; None where it sets none."""
    if not isinstance(rule, MovementRestriction) or rule.leg is Leg.OTHER:
        return None
    return rule.limit if (rule.joint, rule.movement) == (limit.joint, limit.movement) else None


def added_restrictions(
    programme: Programme, phase: Phase, wishes: Wishes, words: Mapping[str, Text]
) -> tuple[Restriction, ...]:
    """Return the restrictions for this patient, with words by their id; without words the id stands."""
    following = programme.phases[phase.number : phase.number + 1]
    end = following[0] if following else phase
    # Only a person ends it: no date and no phase does.
    until = End(
        week=end.week,
        delayed_week=end.delayed_week,
        phase=end.number if following else None,
        release=_said(words, RELEASE),
    )
    source = Source(text=str(_said(words, ORDERED)), status=SourceStatus.PATIENT)
    leg, why = Leg.OPERATED, _said(words, WHY)
    found: list[Restriction] = [
        MovementRestriction(
            id=one.id, words=_said(words, one.id), leg=leg, why=why, until=until, source=source,
            joint=one.joint, movement=one.movement, how=tuple(How), limit=one.degrees,
        )
        for one in wishes.limits
    ]  # fmt: skip
    if wishes.weight_bearing is not None:
        percent, kilograms = _amount(programme, phase, wishes.weight_bearing)
        found.append(
            WeightRestriction(
                id=PATIENT_WEIGHT, words=_said(words, PATIENT_WEIGHT), leg=leg, why=why, until=until,
                source=source, allows=wishes.weight_bearing, percent=percent, kilograms=kilograms,
            )
        )  # fmt: skip
    return tuple(found)


def _said(words: Mapping[str, Text], key: str) -> Text:
    return words.get(key, Text(key))


def _amount(programme: Programme, phase: Phase, allows: WeightBearing) -> tuple[float | None, float | None]:
    """Return percent and kilograms where the programme says how much is allowed in this phase."""
    for rule in in_force(programme, phase):
        if isinstance(rule, WeightRestriction) and rule.allows is allows:
            return rule.percent, rule.kilograms
    return None, None


def with_added(programme: Programme, added: tuple[Restriction, ...]) -> Programme:
    """Return the programme with the restrictions added, without those that they make superfluous.

    Side by side two limits on the same thing would confuse; what stays forbids all that both forbade.
    """
    kept = (rule for rule in programme.restrictions if not any(_covers(one, rule) for one in added))
    return replace(programme, restrictions=(*kept, *added))


def _covers(added: Restriction, rule: Restriction) -> bool:
    if rule.leg is not Leg.OPERATED:
        return False
    if isinstance(added, WeightRestriction) and isinstance(rule, WeightRestriction):
        if added.allows is rule.allows:
            return (added.percent, added.kilograms) == (rule.percent, rule.kilograms)
        return _RISING.index(added.allows) < _RISING.index(rule.allows)
    if isinstance(added, MovementRestriction) and isinstance(rule, MovementRestriction):
        same = (added.joint, added.movement) == (rule.joint, rule.movement)
        return same and rule.limit is not None and added.limit is not None and added.limit <= rule.limit
    return False
