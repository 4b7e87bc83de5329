"""The demonstration's evidence: nothing published goes missing, and the numbers agree with printed ones."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.catalogue.arranged import BandPosition
from generator.catalogue.programme import Band
from generator.catalogue.values import Catalogue
from generator.progression import Activity, activity_of
from generator.progression.activity import forms
from generator.progression.bands import position
from generator.progression.compare import same_people
from generator.reading import read_content

CONTENT = Path(__file__).parents[2] / "content"


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    """Return the demonstration's catalogue."""
    found = read_content(CONTENT).catalogue
    assert found is not None
    return found


@pytest.fixture(scope="module")
def activity(catalogue: Catalogue) -> Activity:
    """Return what is known of every form in it."""
    return activity_of(catalogue)


def mean_of(activity: Activity, form: str, muscle: str = "gluteus-medius") -> float:
    """Return a pooled number."""
    found = activity.of(form, muscle)
    assert found is not None
    return found.mean


def test_every_value_is_pooled_or_set_aside_with_a_reason(catalogue: Catalogue, activity: Activity) -> None:
    """Once each, also those that no exercise carries."""
    for form, measured, _ in forms(catalogue):
        for item in measured:
            whole = catalogue.muscles[item.muscle].part_of or item.muscle
            estimate = activity.of(form, whole)
            aside = [
                one
                for one in activity.set_aside[form, whole]
                if (one.study, one.mean, one.muscle) == (item.study, item.mean, item.muscle)
            ]
            pooled = estimate is not None and item.study in estimate.studies and item.muscle == whole
            assert len(aside) == 1 or (pooled and not aside), (form, item)
            assert all(one.reason for one in aside)
    assert all(one.reason for study in catalogue.studies.values() for one in study.not_used)


def test_the_number_of_values_is_that_of_the_studies(catalogue: Catalogue) -> None:
    """147 values were collected from the studies: 97 belong to an exercise, 50 are listed as not used."""
    measured = sum(len(items) for _, items, _ in forms(catalogue))
    not_used = sum(len(study.not_used) for study in catalogue.studies.values())
    assert (measured, not_used) == (97, 50)


def test_squat_on_one_leg_is_above_the_early_band(activity: Activity) -> None:
    """DiStefano 2009: 64 %MVIC (two texts agree); percent of another reference must not pull it below 50."""
    assert mean_of(activity, "single-leg-squat") > 50
    where, _ = position(mean_of(activity, "single-leg-squat"), Band(above=20, up_to=50))
    assert where is BandPosition.ABOVE


# Ranges of gluteus medius over studies, IJSPT 2014;9(2):157, Table 2 (PMC4004121), read there.
RANGES = {
    "side-lying-abduction": (42, 81),
    "clam": (38, 67),
    "bridge-both-legs": (28, 28),
    "bridge-one-leg": (47, 55),
    "standing-hip-abduction": (33, 33),
    "lateral-step-up": (43, 59),
}


@pytest.mark.parametrize("form", RANGES)
def test_pooled_numbers_lie_within_a_published_range(activity: Activity, form: str) -> None:
    """A review's smallest and largest study embrace the pooled number."""
    low, high = RANGES[form]
    assert low <= round(mean_of(activity, form)) <= high


# Four bands for whole numbers: low 0 to 20, moderate 21 to 40, high 41 to 60, very high above 60 (Ebert 2017,
# J Sport Rehabil 26(5):418, read there). Between two whole numbers ours are half-open.
BANDS = {"low": (0, 20), "moderate": (20, 40), "high": (40, 60), "very high": (60, 300)}


@pytest.mark.parametrize(
    ("form", "band"),
    [
        ("bridge-both-legs", "moderate"),
        ("clam", "moderate"),
        ("standing-hip-abduction", "moderate"),
        ("bridge-one-leg", "high"),
        ("lateral-step-up", "high"),
        ("pelvic-drop", "high"),
        ("single-leg-squat", "very high"),
    ],
)
def test_published_bands(activity: Activity, form: str, band: str) -> None:
    """Bands of Ebert 2017; Moore 2020 (IJSPT 15(6):856) has pelvic drop, bridge, step-up "at least high"."""
    low, high = BANDS[band]
    where, _ = position(mean_of(activity, form), Band(above=low, up_to=high))
    assert where is BandPosition.INSIDE


def test_boudreaus_order_holds_in_the_same_people(catalogue: Catalogue) -> None:
    """Boudreau 2009 (read in the abstract): the lunge asks less of both muscles than the squat on one leg."""
    lunge, squat = (catalogue.exercises[id_].activity for id_ in ("forward-lunge", "single-leg-squat"))
    for muscle in ("gluteus-medius", "gluteus-maximus"):
        points = same_people(lunge, squat, {muscle}, catalogue.studies)
        assert points["boudreau-2009"] > 0


# Means of tensor fasciae latae, recalled; Selkowitz 2013 prints the index itself in the abstract (read).
TENSOR = {
    "clam/band-above-knees": (11.4, 115),
    "side-step-band": (13.1, 64),
    "bridge-one-leg": (18.1, 59),
    "hands-and-knees-leg-back/leg-straight": (15.6, 50),
    "hands-and-knees-leg-back": (18.7, 50),
    "forward-lunge": (21.6, 18),
}


@pytest.mark.parametrize("form", TENSOR)
def test_recalled_values_reproduce_the_printed_index(catalogue: Catalogue, form: str) -> None:
    """The gluteal-to-TFL index: mean of medius² / TFL and upper maximus² / TFL.

    The printed index is a whole number, worked out from means with more decimals than the recalled ones.
    """
    measured = next(items for one, items, _ in forms(catalogue) if one == form)
    means = {item.muscle: item.mean for item in measured if item.study == "selkowitz-2013"}
    tensor, printed = TENSOR[form]
    index = (means["gluteus-medius"] ** 2 + means["gluteus-maximus-superior"] ** 2) / (2 * tensor)
    assert index == pytest.approx(printed, abs=0.6)
