"""What gravity asks of a muscle is modelled only for a free leg, and never changes an order."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.catalogue.arranged import (
    BandPosition,
    Order,
    Placed,
    Reason,
    ReasonKind,
)
from generator.catalogue.moments import Contradiction, Moment, NoModel
from generator.catalogue.terms import Joint, Movement
from generator.progression import contradictions, gravity_moments
from generator.reading import read_content
from tests.content import FILES, catalogue_of, with_change

PUMP = "exercises/ankle-pump.yml"
CALF = "  plain: the muscle at the back of your lower leg\n"
ACTION = CALF + "  action: {joint: hip, movement: abduction}\n"
LIFT = """\
poses:
  start:
    other: {hip: {flexion: 45}, knee: {flexion: 80}}
    operated: {hip: {flexion: 0}, knee: {flexion: 0}}
  finish:
    like: start
    operated: {hip: {abduction: 30}}
"""


def lift(extra: str = "", how: str = "active") -> dict[str, str]:
    """Return the small content with a leg lift on the side, for a muscle that moves the leg out."""
    files = with_change(FILES, "muscles.yml", CALF, ACTION)
    files = with_change(files, PUMP, "name: Ankle pump\n", "name: Ankle pump\n" + LIFT + extra)
    files = with_change(files, PUMP, "how: active", f"how: {how}")
    return with_change(files, PUMP, "posture: lying on the back", "posture: lying on the side")


def moment_of(files: dict[str, str]) -> float | None:
    """Return the moment of the leg lift, in N·m."""
    catalogue = catalogue_of(files)
    return gravity_moments(catalogue, catalogue.programmes["tendon-repair"])["ankle-pump"].newton_metres


def reason_of(files: dict[str, str]) -> NoModel | None:
    """Return why there is no moment of the leg lift."""
    catalogue = catalogue_of(files)
    return gravity_moments(catalogue, catalogue.programmes["tendon-repair"])["ankle-pump"].without


def test_a_level_leg_weighs_what_winter_says() -> None:
    """A straight leg held level: 0.161 of 70 kg at 0.447 of 0.491 of 1.70 m, 41.25 N·m.

    Source: Winter 2009, Biomechanics and Motor Control of Human Movement, table 4.1.
    """
    assert moment_of(lift()) == pytest.approx(0.161 * 70 * 9.81 * 0.447 * 0.491 * 1.70, abs=0.5)


@pytest.mark.parametrize(
    ("extra", "how"),
    [
        ("figure:\n  with: [{band: {at: ankles}}]\n", "active"),
        ("figure:\n  with: [{ankle-weight: operated}]\n", "active"),
        ("figure:\n  with: [{helper-hands: operated}]\n", "active"),
        ("", "assisted"),
        ("", "resisted"),
    ],
)
def test_a_leg_that_is_loaded_or_helped_has_no_model(extra: str, how: str) -> None:
    """Better no number than a wrong one."""
    assert moment_of(lift(extra, how)) is None


def test_it_is_said_why_there_is_no_model() -> None:
    """A clinician reads the reason beside the exercise, never an empty cell."""
    assert reason_of(lift("figure:\n  with: [{band: {at: ankles}}]\n")) is NoModel.LOADED
    assert reason_of(lift(how="assisted")) is NoModel.HELPED
    assert reason_of(with_change(FILES, "muscles.yml", CALF, ACTION)) is NoModel.NO_POSES
    ankle = ACTION.replace("joint: hip, movement: abduction", "joint: ankle, movement: plantarflexion")
    assert reason_of(with_change(lift(), "muscles.yml", ACTION, ankle)) is NoModel.OTHER_JOINT


def test_a_leg_that_rests_has_no_model() -> None:
    """What lies on the bed is carried by the bed."""
    resting = "rests-on: [pelvis, head on pillow, other upper arm, other shin, operated foot]"
    files = lift()
    files[PUMP] = files[PUMP].replace("  start:\n", f"  start:\n    {resting}\n")
    assert moment_of(files) is None


def test_without_an_action_there_is_nothing_to_model() -> None:
    """Only a muscle whose action is stated can be compared with gravity."""
    catalogue = catalogue_of(with_change(lift(), "muscles.yml", ACTION, CALF))
    assert gravity_moments(catalogue, catalogue.programmes["tendon-repair"]) == {}


def placed(name: str, place: int, kind: ReasonKind = ReasonKind.ACTIVITY) -> Placed:
    """Return a place in phase 1."""
    return Placed(name, 1, place, place, None, None, BandPosition.INSIDE, 0.0, (Reason(kind),))


def moment(name: str, value: float | None) -> Moment:
    """Return a moment against abduction."""
    return Moment(name, Joint.HIP, Movement.ABDUCTION, value)


@pytest.mark.parametrize(
    ("first", "second", "kind", "told"),
    [
        (40.0, 15.0, ReasonKind.ACTIVITY, True),
        (40.0, 25.0, ReasonKind.ACTIVITY, False),
        (15.0, 40.0, ReasonKind.ACTIVITY, False),
        (4.0, 1.0, ReasonKind.ACTIVITY, False),
        (40.0, None, ReasonKind.ACTIVITY, False),
        (40.0, 15.0, ReasonKind.ROLE, False),
    ],
)
def test_far_more_weight_on_the_easier_one_is_told(
    first: float, second: float | None, kind: ReasonKind, told: bool
) -> None:
    """At least twice the moment, in neighbours that activity ordered: a note, and the order stays."""
    order = Order("x", (), (placed("one", 1, kind), placed("two", 2, kind)))
    moments = {"one": moment("one", first), "two": moment("two", second)}
    wanted = [Contradiction(1, "one", "two", first, second)] if told and second is not None else []
    assert list(contradictions(order, moments)) == wanted


def test_a_variation_in_use_is_compared_by_its_own_moment() -> None:
    """What stands in the phase is the form, so its moment counts and not that of the exercise."""
    order = Order("x", (), (placed("one", 1), placed("two", 2)))
    moments = {"one": moment("one", 40.0), "one/bent": moment("one/bent", 12.0), "two": moment("two", 15.0)}
    assert not list(contradictions(order, moments, {(1, "one"): "one/bent"}))
    assert list(contradictions(order, moments)) == [Contradiction(1, "one", "two", 40.0, 15.0)]


def test_a_level_leg_of_the_demo_is_told_as_winter_says() -> None:
    """Lying on the side, the repaired muscle carries the level leg: at most 41.25 N·m, at 30° 35.7 N·m.

    Source: Winter 2009, table 4.1 and figure 4.1: 0.161 x 70 x 9.81 x 0.447 x 0.491 x 1.70 = 41.25.
    """
    catalogue = read_content(Path("content")).catalogue
    assert catalogue is not None
    moments = gravity_moments(catalogue, catalogue.programmes["hip-abductor-repair"])
    found = moments["side-lying-abduction"]
    assert (found.joint, found.movement, found.without) == (Joint.HIP, Movement.ABDUCTION, None)
    assert found.newton_metres == pytest.approx(41.25, rel=0.05)
    assert moments["side-lying-abduction/ankle-weight"].without is NoModel.LOADED
    assert moments["single-leg-stand"].newton_metres is None


def test_a_foot_that_rolls_onto_its_toes_still_carries() -> None:
    """Between sole and toes no support is shared, and the leg is not free for that."""
    catalogue = read_content(Path("content")).catalogue
    assert catalogue is not None
    moments = gravity_moments(catalogue, catalogue.programmes["hip-abductor-repair"])
    assert moments["calf-raise"].without is NoModel.RESTS
