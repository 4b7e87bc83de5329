"""What a clinician types about one patient is understood in the content's own words, or said back."""

from __future__ import annotations

from typing import Any

import pytest

from generator.catalogue.dose import DoseKind, DoseStep, Load
from generator.catalogue.one_patient import Limit, OperatedSide, Wishes
from generator.catalogue.restricted import Track
from generator.catalogue.terms import BandStrength, Joint, Movement, Position, Surface, WeightBearing
from generator.steps.wishes import Typed, read_wishes
from tests.content import FILES, catalogue_of

MORE = """\
elastic-band:
  name: Elastic band or loop
band-anchor:
  name: Fixed point for the band
firm-chair:
  name: Firm chair with armrests
"""
STRAINS = """\
prone:
  name: Trouble with lying on your front
  advice: Ask for an exercise on your back.
"""


def read(**typed: Any) -> tuple[Wishes, list[str]]:
    """Return what phase 2 of the small content makes of wishes, and what it says back."""
    files = {
        **FILES,
        "equipment.yml": FILES["equipment.yml"] + MORE,
        "precautions.yml": FILES["precautions.yml"] + STRAINS,
    }
    catalogue = catalogue_of(files)
    phase = catalogue.programmes["tendon-repair"].phase(2)
    wishes, problems = read_wishes(catalogue, phase, Typed(**typed))
    return wishes, [f"{one.code} {one.place}: {one.message}; {one.remedy}" for one in problems]


def understood(**typed: Any) -> Wishes:
    """Return wishes in which everything is understood."""
    wishes, said = read(**typed)
    assert said == []
    return wishes


def test_nothing_typed_wishes_nothing() -> None:
    """Without options the booklet is the programme's own."""
    assert understood() == Wishes()


def test_things_are_named_as_people_name_them() -> None:
    """By id, by name, or by a word that only one thing has."""
    assert understood(have="elastic band, chair").have == frozenset({"elastic-band", "firm-chair"})
    assert understood(have="A worktop or a heavy table").have == frozenset({"worktop"})
    assert understood(have="").have == frozenset()


def test_a_word_for_strain_and_position_means_both() -> None:
    """'prone' spares whoever cannot lie on the front, whether the content names the strain or the posture."""
    avoid = understood(avoid="prone, Floor, kneeling").avoid
    assert avoid.strains == {"prone"}
    assert avoid.surfaces == {Surface.FLOOR}
    assert avoid.positions == {Position.ON_FRONT, Position.KNEELING}


def test_limits_doses_and_weight() -> None:
    """Joint and movement by their words, doses as on paper, with or without blanks."""
    wishes = understood(
        limits=("ankle.plantarflexion=20", "lower-back.side-bending=10.5"),
        doses=("heel-raise=2x8 with light band", "ankle-pump = 5 times an hour"),
        weight_bearing="as-tolerated",
        side="left",
        delayed=True,
    )
    assert wishes.limits == (
        Limit(Joint.ANKLE, Movement.PLANTARFLEXION, 20),
        Limit(Joint.LOWER_BACK, Movement.SIDE_BENDING, 10.5),
    )
    assert wishes.doses == {
        "heel-raise": DoseStep(DoseKind.REPETITIONS, 2, 8, load=Load(band=BandStrength.LIGHT)),
        "ankle-pump": DoseStep(DoseKind.HOURLY, 1, 5),
    }
    assert wishes.weight_bearing is WeightBearing.AS_TOLERATED
    assert (wishes.side, wishes.track) == (OperatedSide.LEFT, Track.DELAYED)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({"side": "lef"}, "patient-unknown --side: there is no side 'lef'; did you mean 'left'?"),
        ({"side": "operated"}, "there are: both, left, right"),
        ({"without": "heel-rise"}, "did you mean 'heel-raise'?"),
        ({"only": " , "}, "patient-empty --only: no exercise is named"),
        ({"mastered": "ankle-pumps"}, "there is no exercise 'ankle-pumps'; did you mean 'ankle-pump'?"),
        ({"have": "worktopp"}, "--have: there is no thing 'worktopp'; did you mean 'worktop'?"),
        ({"have": "band"}, "there is no single thing 'band'; there are: band-anchor, elastic-band"),
        ({"avoid": "flor"}, "there is no strain, surface or position 'flor'; did you mean 'floor'?"),
        ({"limits": ("hip.flexion",)}, "--limit: 'hip.flexion' is not understood; write hip.flexion=70"),
        ({"limits": ("hip.flexion=-5",)}, "patient-notation --limit"),
        ({"limits": ("hipp.flexion=5",)}, "did you mean 'hip'?"),
        ({"limits": ("hip.flexing=5",)}, "did you mean 'flexion'?"),
        ({"limits": ("hip.flexion=70", "hip.flexion=80")}, "each movement once"),
        ({"doses": ("heel-raise",)}, "--dose: 'heel-raise' is not understood; write heel-slide=2x8"),
        ({"doses": ("heel-raise=2 by 8",)}, "a dose is a dose step, such as 3 x 10"),
        ({"doses": ("heel-raise=2x8", "heel-raise=2x9")}, "each exercise once"),
        ({"doses": ("heel-rise=2x8",)}, "did you mean 'heel-raise'?"),
        ({"weight_bearing": "tuoch"}, "there is no weight bearing 'tuoch'; did you mean 'touch'?"),
    ],
)  # fmt: skip
def test_what_is_not_understood_is_said_back(typed: dict[str, Any], says: str) -> None:
    """One finding, at the option, with what to type instead."""
    _, (said,) = read(**typed)
    assert says in said
