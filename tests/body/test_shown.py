"""What limits and texts hear of a movement is what its picture shows, start pose and both legs included."""

from __future__ import annotations

import pytest

from generator.body.shown import facts_of, with_angles
from generator.catalogue.terms import Joint, Movement
from tests.content import FILES, catalogue_of, with_change

PUMP = "exercises/ankle-pump.yml"
RAISE = "exercises/heel-raise.yml"
SQUAT = """\
poses:
  start: {posture: standing}
  finish:
    like: start
    operated: {knee: {flexion: 45}, hip: {flexion: 42}}
    other: {knee: {flexion: 45}, hip: {flexion: 42}}
"""
SEATED = "    demand: lying or sitting\n"
DEEPER = """\
    poses:
      start: {posture: standing}
      finish:
        like: start
        operated: {knee: {flexion: 60}, hip: {flexion: 60}}
        other: {knee: {flexion: 60}, hip: {flexion: 60}}
"""
DRAWN = with_change(FILES, RAISE, "purpose: Makes", SQUAT + "purpose: Makes")


def test_the_leg_that_nobody_typed_is_seen_too() -> None:
    """Feet stay flat in a squat, so the ankles bend, though only hips and knees were typed."""
    leg = with_angles(catalogue_of(DRAWN)).exercises["heel-raise"].other_leg
    ankle = leg.shown_angle(Joint.ANKLE, Movement.DORSIFLEXION)
    assert ankle is not None
    assert not ankle.typed
    assert ankle.degrees > 5
    assert ankle.travel > 2


def test_a_typed_angle_comes_out_as_typed() -> None:
    """What was typed is said as typed, not as the settled body rounds it."""
    leg = with_angles(catalogue_of(DRAWN)).exercises["heel-raise"].operated_leg
    knee = leg.shown_angle(Joint.KNEE, Movement.FLEXION)
    assert knee is not None
    assert (knee.degrees, knee.typed) == (45, True)


def test_done_twice_it_changes_nothing_more() -> None:
    """The angles may be worked out wherever a catalogue comes from a file."""
    once = with_angles(catalogue_of(DRAWN))
    assert with_angles(once) == once


def test_without_poses_nothing_is_shown() -> None:
    """No poses, no statement: what is typed under 'to' counts there."""
    catalogue = with_angles(catalogue_of())
    assert catalogue == catalogue_of()
    assert catalogue.exercises["heel-raise"].operated_leg.shown is None


@pytest.mark.parametrize(("poses", "knee"), [("", None), (DEEPER, 60)])
def test_a_variation_shows_its_own_poses(poses: str, knee: float | None) -> None:
    """A variation with poses has legs of its own to judge; one without shares those of its exercise."""
    files = with_change(DRAWN, RAISE, SEATED, SEATED + poses)
    seated = with_angles(catalogue_of(files)).exercises["heel-raise"].variations["seated"]
    leg = seated.operated_leg
    shown = leg.shown_angle(Joint.KNEE, Movement.FLEXION) if leg else None
    assert (shown.degrees if shown else None) == knee


def test_facts_have_the_names_that_texts_use() -> None:
    """The operated side without a prefix, the other one with it, joints and movements with hyphens."""
    facts = facts_of(catalogue_of(DRAWN))
    assert set(facts) == {"heel-raise"}
    said = facts["heel-raise"]
    assert (said["knee.flexion"], said["other.knee.flexion"], said["hip.flexion"]) == (45, 45, 42)
    assert "knee.extension" not in said


def test_facts_are_of_the_poses_and_not_of_the_way_between() -> None:
    """A text says what a picture shows; limits look between the pictures as well."""
    files = with_change(
        FILES,
        PUMP,
        "name: Ankle pump\n",
        "name: Ankle pump\nposes:\n  start:\n    operated: {ankle: {plantarflexion: 12}}\n"
        "  finish:\n    like: start\n    operated: {ankle: {dorsiflexion: 10}}\n",
    )
    said = facts_of(catalogue_of(files))["ankle-pump"]
    assert (said["ankle.plantarflexion"], said["ankle.dorsiflexion"]) == (12, 10)
