"""A restriction is said in the clinician's words, with its limit and the leg it holds for."""

from __future__ import annotations

from typing import Any

import pytest

from generator.catalogue.base import Source, SourceStatus, Text
from generator.catalogue.programme import (
    End,
    ImpactRestriction,
    LoadRestriction,
    MovementRestriction,
    PositionRestriction,
    Restriction,
    WeightRestriction,
)
from generator.catalogue.terms import (
    Against,
    How,
    Joint,
    Leg,
    Movement,
    OutsideLoad,
    Position,
    WeightBearing,
)
from generator.wording.isolation import plain
from generator.wording.restrictions import allowed, concerned
from generator.wording.voice import voice

ENGLISH = voice("en")
COMMON: dict[str, Any] = {
    "id": "rule",
    "leg": Leg.OPERATED,
    "words": Text("Do not."),
    "why": Text("Because."),
    "until": End(week=6, delayed_week=8),
    "source": Source(text="Invented for tests", status=SourceStatus.INVENTED),
}
ABDUCTION: dict[str, Any] = {
    "joint": Joint.HIP,
    "movement": Movement.ABDUCTION,
    "how": (How.ACTIVE, How.RESISTED),
}
BAND = (OutsideLoad.BAND,)

CASES: tuple[tuple[Restriction, str, str], ...] = (
    (MovementRestriction(**COMMON, **ABDUCTION), "hip abduction: active or resisted", ""),
    (
        MovementRestriction(**COMMON, **ABDUCTION, against=Against.GRAVITY, limit=30),
        "hip abduction against gravity: active or resisted",
        "only up to 30°",
    ),
    (WeightRestriction(**COMMON, allows=WeightBearing.NONE), "weight on the leg", ""),
    (
        WeightRestriction(**COMMON, allows=WeightBearing.PARTIAL, percent=50),
        "weight on the leg",
        "partial weight-bearing, 50%",
    ),
    (
        WeightRestriction(**COMMON, allows=WeightBearing.TOUCH, kilograms=9),
        "weight on the leg",
        "touch weight-bearing, 9\u00a0kg",
    ),
    (PositionRestriction(**COMMON, position=Position.KNEELING), "kneeling", ""),
    (LoadRestriction(**COMMON, loads=BAND), "elastic band", ""),
    (LoadRestriction(**COMMON, loads=BAND, kilograms=2), "elastic band", "only up to 2\u00a0kg"),
    (
        ImpactRestriction(**{**COMMON, "leg": Leg.BOTH}),
        "impact: running, jumping, hopping (both legs)",
        "",
    ),
)


@pytest.mark.parametrize(("rule", "about", "left"), CASES)
def test_every_kind_of_restriction_is_said(rule: Restriction, about: str, left: str) -> None:
    """What it concerns and what it leaves stand apart; nothing is left where it forbids the whole."""
    assert (plain(concerned(ENGLISH, rule)), plain(allowed(ENGLISH, rule))) == (about, left)
