"""Says a restriction in the clinician's words: what it concerns, and what it still allows."""

from __future__ import annotations

from generator.catalogue.programme import (
    LoadRestriction,
    MovementRestriction,
    PositionRestriction,
    Restriction,
    WeightRestriction,
)
from generator.catalogue.terms import Leg, WeightBearing
from generator.wording.phrases import angle, kilograms, list_of, percent, row_of
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice


def concerned(voice: Voice, rule: Restriction) -> str:
    """Return what a restriction is about: ``hip abduction against gravity: active or resisted``."""
    words = _about(voice, rule)
    if rule.leg is Leg.OPERATED:
        return words
    return voice.gettext("{what} ({leg})").format(what=words, leg=term(voice, rule.leg))


def allowed(voice: Voice, rule: Restriction) -> str:
    """Return what a restriction leaves: ``only up to 90°``; empty where it forbids the whole."""
    only = voice.gettext("only up to {limit}")
    if isinstance(rule, MovementRestriction) and rule.limit is not None:
        return only.format(limit=angle(voice, rule.limit))
    if isinstance(rule, LoadRestriction) and rule.kilograms:
        return only.format(limit=kilograms(voice, rule.kilograms))
    if isinstance(rule, WeightRestriction) and rule.allows is not WeightBearing.NONE:
        amounts = [clinical_term(voice, rule.allows)]
        amounts += [kilograms(voice, rule.kilograms)] if rule.kilograms is not None else []
        amounts += [percent(voice, rule.percent)] if rule.percent is not None else []
        return row_of(voice, amounts)
    return ""


def _about(voice: Voice, rule: Restriction) -> str:
    if isinstance(rule, MovementRestriction):
        return _movement(voice, rule)
    if isinstance(rule, WeightRestriction):
        return voice.gettext("weight on the leg")
    if isinstance(rule, PositionRestriction):
        return clinical_term(voice, rule.position)
    if isinstance(rule, LoadRestriction):
        return list_of(voice, (clinical_term(voice, load) for load in rule.loads), "or")
    return voice.gettext("impact: running, jumping, hopping")


def _movement(voice: Voice, rule: MovementRestriction) -> str:
    parts = {
        "joint": clinical_term(voice, rule.joint),
        "movement": clinical_term(voice, rule.movement),
        "kinds": list_of(voice, (clinical_term(voice, how) for how in rule.how), "or"),
    }
    if rule.against is None:
        return voice.gettext("{joint} {movement}: {kinds}").format(**parts)
    against = clinical_term(voice, rule.against)
    return voice.gettext("{joint} {movement} {against}: {kinds}").format(against=against, **parts)
