"""The order of introduction from measurements: smallest by difficulty, needs first, ties told apart."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.arranged import Placed, ReasonKind
from generator.catalogue.values import Catalogue
from generator.progression import activity_of, arrange, hanging, variation_effects, withheld_variations
from generator.progression.arrange import key_of
from generator.progression.worked import worked
from tests.content import catalogue_of, with_change
from tests.progression.measured import REPAIR, Row, content

FIRST, SECOND, THIRD = Row("study-a", 30, sd=12, n=30), Row("study-b", 50, sd=15), Row("study-c", 44, sd=9)


def phase_2(files: dict[str, str]) -> tuple[Placed, ...]:
    """Return the places of the second phase."""
    return arrange(catalogue_of(files))["tendon-repair"].of_phase(2)


def needs_met(catalogue: Catalogue, order: list[str]) -> bool:
    """Return whether nothing stands before its needs."""
    return all(
        order.index(need) < place
        for place, id_ in enumerate(order)
        for need in catalogue.exercises[id_].requires
        if need in order
    )


@given(
    st.lists(st.integers(5, 48), min_size=2, max_size=7),
    st.sets(st.tuples(st.integers(0, 6), st.integers(0, 6)), max_size=6),
)
def test_no_allowed_swap_of_neighbours_lowers_the_order(
    means: list[int], pairs: set[tuple[int, int]]
) -> None:
    """Every need stands first, and where two neighbours could change places the first is the easier one."""
    files = content({f"ex-{place}": [Row(f"study-{place}", mean)] for place, mean in enumerate(means)})
    for place in range(len(means)):
        needs = ", ".join(f"ex-{before}" for before, after in sorted(pairs) if before < after == place)
        files = with_change(
            files, f"exercises/ex-{place}.yml", "requires: [ankle-pump]", f"requires: [{needs}]"
        )
    catalogue = catalogue_of(files)
    order = [placed.exercise for placed in phase_2(files)]
    assert needs_met(catalogue, order)
    programme, activity = catalogue.programmes["tendon-repair"], activity_of(catalogue)
    phase = programme.phase(2)
    keys = {
        use.use: key_of(phase, worked(activity, programme, catalogue.exercises[use.use], use))
        for use in phase.uses
    }
    for first, second in pairwise(order):
        swapped = order[:]
        spot = order.index(first)
        swapped[spot : spot + 2] = [second, first]
        assert keys[first] < keys[second] or not needs_met(catalogue, swapped)


def test_equal_numbers_are_told_apart_by_the_second_muscle() -> None:
    """Then by the name; a second muscle that nobody measured comes later."""
    both = [FIRST, FIRST.but(muscle="shin", mean=25)]
    low = [FIRST, FIRST.but(muscle="shin", mean=10)]
    files = content({"aa": [FIRST], "bb": both, "cc": low, "dd": low})
    files["muscles.yml"] += "shin:\n  name: Shin\n  plain: the front of your lower leg\n"
    files = with_change(files, REPAIR, "muscles: [calf]", "muscles: [calf, shin]")
    places = phase_2(files)
    assert [placed.exercise for placed in places] == ["cc", "dd", "bb", "aa"]
    tie = next(reason for reason in places[2].reasons if reason.kind is ReasonKind.TIE)
    assert (tie.other, tie.number, tie.muscle) == ("dd", 25, "shin")
    assert [one.mean for one in places[0].others] == [10]
    assert places[3].not_measured == ("shin",)


def test_a_use_of_a_variation_is_ordered_by_the_variation() -> None:
    """What is done counts, not what the file is named after."""
    files = content({"raise": [SECOND], "raise/seated": [Row("study-d", 12)], "other": [FIRST]})
    files = with_change(files, REPAIR, "use: raise\n", "use: raise\n        variation: seated\n")
    places = phase_2(files)
    assert [placed.exercise for placed in places] == ["raise", "other"]
    assert places[0].estimate is not None
    assert places[0].estimate.mean == 12


def test_an_accepted_use_carries_role_and_reason() -> None:
    """The place says who allows it above the band, and up to which number."""
    files = content({"raise": [Row("study-a", 58)]})
    files = with_change(
        files,
        REPAIR,
        "use: raise\n",
        "use: raise\n        accepts: {up-to: 60, role: surgeon, reason: Invented.}\n",
    )
    (placed,) = phase_2(files)
    assert placed.accepted is not None
    assert (placed.accepted.role, placed.accepted.up_to, placed.late) == ("surgeon", 60, False)
    assert ReasonKind.ACCEPTED in {reason.kind for reason in placed.reasons}


def test_within_the_margin_is_late_and_inside_with_doubt_is_said() -> None:
    """Above 50 by 2: late. 45 with an interval to 63.7 (1.96 · 30 / √10): the upper limit is named."""
    (late,) = phase_2(content({"raise": [Row("study-a", 52)]}))
    assert late.late
    assert [(one.kind, one.number) for one in late.reasons][-1] == (ReasonKind.LATE, 2.0)
    (doubt,) = phase_2(content({"raise": [Row("study-a", 45, sd=30, n=10)]}))
    assert doubt.reasons[-1].kind is ReasonKind.UPPER_LIMIT
    assert round(doubt.reasons[-1].number or 0, 1) == 63.6


def test_a_place_that_hangs_on_one_study_is_found() -> None:
    """Two studies at 30 and 60: without the lower one the exercise is above the band by 10."""
    catalogue = catalogue_of(content({"raise": [Row("study-a", 30), Row("study-b", 60)], "sure": [THIRD]}))
    found = hanging(catalogue, catalogue.programmes["tendon-repair"])
    assert [(one.study, one.exercise, one.phase, one.above_by) for one in found] == [
        ("study-c", "sure", 2, 0.0),
        ("study-a", "raise", 2, 10.0),
    ]
    assert [one.mean for one in found] == [None, 60]


def test_points_of_a_variation_come_from_the_same_people() -> None:
    """Study a did both: 6 points fewer; the two pools, 40 and 24, would have said 16."""
    files = content({"raise": [FIRST, SECOND], "raise/seated": [FIRST.but(mean=24)]})
    (effect,) = variation_effects(catalogue_of(files))["raise"]
    assert (effect.variation, effect.muscle) == ("raise/seated", "calf")
    assert (effect.points, effect.within) == (-6, ("study-a",))


def test_points_of_a_variation_measured_elsewhere() -> None:
    """Two pools got alike are compared; with other electrodes they are not."""
    files = content({"raise": [FIRST], "raise/seated": [THIRD]})
    (effect,) = variation_effects(catalogue_of(files))["raise"]
    assert (effect.points, effect.within) == (14, ())
    files = content({"raise": [FIRST], "raise/seated": [THIRD.but(electrode="fine wire")]})
    (effect,) = variation_effects(catalogue_of(files))["raise"]
    assert effect.points is None
    assert effect.estimate is not None


def test_a_variation_above_the_band_is_withheld_and_told_with_the_order() -> None:
    """The order names, by phase, what its phase forbids."""
    files = content({"raise": [FIRST], "raise/seated": [Row("study-d", 51)]})
    catalogue = catalogue_of(files)
    order = arrange(catalogue)["tendon-repair"]
    assert order.withheld[2] == {"raise/seated"}
    assert order.withheld == withheld_variations(catalogue, catalogue.programmes["tendon-repair"])
