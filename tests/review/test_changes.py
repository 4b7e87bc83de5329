"""What is different between two editions is found, and how soon somebody must be told."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.dose import DoseKind, DoseStep, Load
from generator.catalogue.edition_values import step_text
from generator.catalogue.editions import Change, ChangeKind, Facts, RuleFact, Urgency, most_urgent
from generator.catalogue.terms import BandStrength
from generator.reading.doses import parse_step
from generator.review.changes import differences
from tests.content import FILES, with_change
from tests.review.paper import FILE, changed, facts_of_files

HEEL_RAISE = "exercises/heel-raise.yml"
STEPS = "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]"
FACTS = facts_of_files()

doses = st.one_of(
    st.builds(
        DoseStep,
        st.just(DoseKind.REPETITIONS),
        st.integers(1, 9),
        st.integers(1, 30),
        st.none(),
        st.one_of(
            st.builds(Load),
            st.builds(Load, band=st.sampled_from(BandStrength)),
            st.builds(Load, kilograms=st.integers(1, 40).map(lambda quarters: quarters / 4)),
        ),
    ),
    st.builds(DoseStep, st.just(DoseKind.HOLDS), st.integers(1, 9), st.integers(1, 9), st.integers(1, 60)),
    st.builds(DoseStep, st.just(DoseKind.MINUTES), st.just(1), st.integers(1, 60)),
    st.builds(DoseStep, st.just(DoseKind.HOURLY), st.just(1), st.integers(1, 20)),
    st.builds(DoseStep, st.just(DoseKind.STEPS), st.just(1), st.integers(1, 9999)),
)


def kinds(found: tuple[Change, ...]) -> list[ChangeKind]:
    """Return the kinds of changes in their order."""
    return [one.kind for one in found]


def with_exercise(**values: Any) -> Facts:
    """Return the facts with other values of their one exercise."""
    return replace(FACTS, exercises=(replace(FACTS.exercises[0], **values),))


@pytest.mark.parametrize(
    ("path", "old", "new", "kind"),
    [
        (FILE, STEPS, "[2 x 8, 3 x 8, 3 x 10]", ChangeKind.LESS),
        (FILE, STEPS, "[2 x 8, 3 x 8, 3 x 12, 3 x 12 with light band]", ChangeKind.DOSE),
        (FILE, "days-a-week: 3", "days-a-week: 2", ChangeKind.LESS),
        (FILE, "rest-days: 1", "rest-days: 2", ChangeKind.LESS),
        (HEEL_RAISE, "rest: 60 s", "rest: 90 s", ChangeKind.LESS),
        (FILE, "words: Do not jump or run.", "words: Do not jump, hop or run.", ChangeKind.RULE_WORDS),
        (FILE, "week: 16, delayed-week: 20", "week: 18, delayed-week: 20", ChangeKind.CHANGED_RULE),
        (FILE, "release: your surgeon", "release: your physiotherapist", ChangeKind.CHANGED_RULE),
        (HEEL_RAISE, "- Lower slowly.", "- Lower very slowly.", ChangeKind.WORDS),
        (HEEL_RAISE, "A sharp pain at your heel.", "A dull pain at your heel.", ChangeKind.SAFETY),
        (HEEL_RAISE, "Hold something that is fixed.", "Hold a fixed thing.", ChangeKind.SAFETY),
        (FILE, "during: 3\n      after: 3", "during: 2\n      after: 3", ChangeKind.PAIN_LOWER),
        (FILE, "during: 3\n      after: 3", "during: 4\n      after: 3", ChangeKind.PAIN_HIGHER),
        (FILE, "Give up one crutch when", "Give up both crutches when", ChangeKind.SUPPORT),
        (FILE, "avoid: [Jumping.]", "avoid: [Jumping and running.]", ChangeKind.AVOID),
        ("safety.yml", "Call the clinic today.", "Call the clinic now.", ChangeKind.HELP),
        ("clinic.yml", "0555 010 200", "0555 010 201", ChangeKind.TELEPHONE),
        (FILE, "passed: Ten times without pain.", "passed: Twelve times without pain.", ChangeKind.PHASE),
        ("glossary.yml", "The cord that ties", "The band that ties", ChangeKind.REST),
    ],
)
def test_a_change_is_named(path: str, old: str, new: str, kind: ChangeKind) -> None:
    """What an editor changed in one place is found as what it is, and nothing else is."""
    assert kinds(changed(path, old, new)) == [kind]


def test_an_exercise_that_went_must_no_longer_be_done() -> None:
    """An exercise that is not in the newer booklet is urgent; one that is new can wait."""
    none = replace(FACTS, exercises=())
    (gone,) = differences(FACTS, none, "en")
    assert (gone.kind, gone.item, gone.name) == (
        ChangeKind.REMOVED,
        "heel-raise",
        "Heel raise with both legs",
    )
    assert gone.urgency is Urgency.NOW
    (come,) = differences(none, FACTS, "en")
    assert (come.kind, come.urgency) == (ChangeKind.ADDED, Urgency.NEXT_VISIT)


def test_a_form_that_went_must_no_longer_be_done() -> None:
    """An easier or harder form that is not offered any more is urgent too."""
    (gone,) = differences(FACTS, with_exercise(forms=()), "en")
    assert (gone.kind, gone.form, gone.urgency) == (ChangeKind.FORM_REMOVED, "seated", Urgency.NOW)


def test_order_alone_needs_no_call() -> None:
    """The same exercises in another order are reported and nobody has to be told."""
    two = (FACTS.exercises[0], replace(FACTS.exercises[0], id="toe-raise", position=2))
    (order,) = differences(
        replace(FACTS, exercises=two), replace(FACTS, exercises=tuple(reversed(two))), "en"
    )
    assert (order.kind, order.urgency) == (ChangeKind.ORDER, Urgency.NO_NEED)


def test_what_keeps_people_safe_stands_first() -> None:
    """Of several changes the urgent ones come first, whatever the order in the files."""
    files = with_change(FILES, HEEL_RAISE, "- Lower slowly.", "- Lower very slowly.")
    files = with_change(files, FILE, "id: no-jumping", "id: no-hopping")
    files = with_change(files, FILE, STEPS, "[2 x 8]")
    found = differences(FACTS, facts_of_files(files), "en")
    ranks = [one.urgency.rank for one in found]
    assert ranks == sorted(ranks)
    assert most_urgent(found) is Urgency.NOW
    assert kinds(found)[:2] == [ChangeKind.NEW_RULE, ChangeKind.LESS]


@pytest.mark.parametrize(
    ("path", "old", "new"),
    [
        ("studies.yml", "year: 2001", "year: 2002"),
        (HEEL_RAISE, "    sd: 11\n", "    sd: 12\n"),
        (FILE, "why: The repaired tendon is not strong yet.", "why: The tendon is not strong yet."),
        (HEEL_RAISE, "name: Heel raise with both legs\n", "# A comment.\nname: Heel raise with both legs\n"),
    ],
)
def test_what_no_patient_reads_changes_no_booklet(path: str, old: str, new: str) -> None:
    """Evidence, reasons and comments are not what a patient does; they call no paper back."""
    assert changed(path, old, new) == ()


@given(doses)
def test_a_dose_is_kept_as_an_editor_types_it(step: DoseStep) -> None:
    """Every dose step is read back from the ledger as it was recorded."""
    assert parse_step(step_text(step)) == step


@given(
    st.lists(doses, min_size=1, max_size=4).map(tuple),
    st.tuples(st.integers(1, 6), st.integers(1, 7), st.integers(0, 3)),
    st.tuples(*[st.integers(0, 90)] * 4),
)
def test_any_change_of_dose_is_reported(
    dose: tuple[DoseStep, ...], often: tuple[int, ...], pace: tuple[int, ...]
) -> None:
    """Whatever is different about a dose, exactly one change of dose says so, and it is never left unsaid."""
    now = with_exercise(dose=dose, often=often, pace=pace)
    expected = now != FACTS
    found = differences(FACTS, now, "en")
    assert len(found) == expected
    assert all(one.kind in (ChangeKind.LESS, ChangeKind.DOSE) for one in found)


@given(st.integers(1, 9), st.integers(1, 30), st.integers(1, 9), st.integers(1, 30))
def test_a_lower_dose_is_urgent_and_only_a_wholly_higher_one_can_wait(
    sets: int, count: int, new_sets: int, new_count: int
) -> None:
    """Who has the old paper and would do more than the new one says in any respect is called back."""
    kind = DoseKind.REPETITIONS
    old = with_exercise(dose=(DoseStep(kind, sets, count),))
    new = with_exercise(dose=(DoseStep(kind, new_sets, new_count),))
    less = new_sets < sets or new_count < count
    for found in differences(old, new, "en"):
        assert found.urgency is (Urgency.NOW if less else Urgency.NEXT_VISIT)


rules = st.builds(
    RuleFact,
    id=st.sampled_from(["no-jumping", "no-stretch", "no-load"]),
    words=st.sampled_from(["Do not jump or run.", "Do not stretch."]),
    weeks=st.tuples(st.integers(0, 30), st.integers(0, 30)),
    limit=st.sampled_from(["a" * 12, "b" * 12]),
)


@given(st.lists(rules, max_size=3, unique_by=lambda rule: rule.id).map(tuple))
def test_any_change_of_a_restriction_is_reported(now: tuple[RuleFact, ...]) -> None:
    """Each restriction that came, went or changed is reported once; only one that went can wait."""
    found = differences(FACTS, replace(FACTS, rules=now), "en")
    before, after = ({rule.id: rule for rule in some} for some in (FACTS.rules, now))
    different = {id_ for id_ in {*before, *after} if before.get(id_) != after.get(id_)}
    assert {one.item for one in found} == different
    assert len(found) == len(different)
    for one in found:
        assert (one.urgency is Urgency.NEXT_VISIT) == (one.item not in after)
