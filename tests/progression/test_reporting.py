"""The reporting checklists say of a programme what is true, and call open what is left out.

CERT: Slade et al. 2016, Br J Sports Med 50(23):1428-1437, doi 10.1136/bjsports-2016-096651 (Table 1, read).
PEMAT-P: AHRQ Publication 14-0002-EF, 2013 (24 items for print, read in two copies).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from generator.catalogue.base import Text
from generator.catalogue.programme import Phase
from generator.catalogue.reporting import Answer, Checklist, Item, ItemAnswer, Reading
from generator.catalogue.terms import Then
from generator.catalogue.values import Catalogue
from generator.progression.reporting import report_items
from generator.reading import read_content
from tests.content import FILES, catalogue_of, problems_of, with_change

CONTENT = Path(__file__).parents[2] / "content"
PROGRAMME = "programmes/tendon-repair.yml"
HEEL_RAISE = "exercises/heel-raise.yml"


@cache
def demo() -> Catalogue:
    """Return the demonstration."""
    found = read_content(CONTENT).catalogue
    assert found is not None
    return found


def answers(catalogue: Catalogue, programme: str = "tendon-repair") -> Mapping[Item, ItemAnswer]:
    """Return the answers of a programme by item, all of its texts easy to read."""
    found = report_items(catalogue, catalogue.programmes[programme], Reading(10, 0))
    return {one.item: one for one in found}


def numbers(checklist: Checklist) -> list[str]:
    """Return the numbers of a list's items."""
    return [item.number for item in Item if item.checklist is checklist]


def test_cert_has_16_items_and_19_answers() -> None:
    """Items 7, 14 and 16 are split in two (CERT, Table 1)."""
    found = numbers(Checklist.CERT)
    assert len(found) == 19
    assert list(dict.fromkeys(number.rstrip("ab") for number in found)) == [str(n) for n in range(1, 17)]
    assert [number for number in found if number[-1] in "ab"] == ["7a", "7b", "14a", "14b", "16a", "16b"]


def test_pemat_has_the_24_items_for_print() -> None:
    """Items 13 and 14 are for sound and film only."""
    assert numbers(Checklist.PEMAT) == [str(n) for n in range(1, 27) if n not in (13, 14)]


def test_every_item_is_answered_once_and_in_order() -> None:
    """No item is passed over in silence."""
    assert [one.item for one in report_items(demo(), demo().programmes["knee-replacement"])] == list(Item)


def test_an_answer_says_where_and_an_open_item_nowhere() -> None:
    """What is answered can be looked up; what is open or does not apply leads nowhere."""
    for name in demo().programmes:
        for one in answers(demo(), name).values():
            assert bool(one.shown) is (one.answer in (Answer.ANSWERED, Answer.PARTLY)), one.item


@pytest.mark.parametrize("name", ["hip-abductor-repair", "knee-replacement"])
def test_the_answers_of_the_demonstration_are_true(name: str) -> None:
    """Each fact is counted again from the content in another way."""
    programme, found = demo().programmes[name], answers(demo(), name)
    ids = {use.use for phase in programme.phases for use in phase.uses}
    exercises = [demo().exercises[id_] for id_ in sorted(ids)]
    milestones = [one.tester.value for phase in programme.phases for one in phase.milestones]
    counted = {
        Item.CERT_1: (sum(len(one.equipment) > 0 for one in exercises), len(ids)),
        Item.CERT_3: (sum(one.helper.value == "none" for one in exercises), len(ids)),
        Item.CERT_4: (milestones.count("clinician"), len(milestones)),
        Item.CERT_7A: (len(programme.phases), len(programme.phases)),
        Item.CERT_8: (sum(len(one.poses) > 0 for one in exercises), len(ids)),
        Item.CERT_10: (len({item for phase in programme.phases for item in phase.daily_life}), 0),
        Item.CERT_11: (len(demo().safety.signs), 0),
        Item.CERT_14B: (sum(len(one.variations) for one in exercises), len(programme.delay_reasons)),
        Item.PEMAT_4: (len(demo().glossary), 0),
        Item.PEMAT_12: (sum(len(one.cautions) for one in exercises), 0),
    }
    assert {item: (found[item].number, found[item].total) for item in counted} == counted
    assert all(found[item].answer is not Answer.OPEN for item in counted)
    assert found[Item.CERT_12].terms
    assert found[Item.CERT_2].names == ("physiotherapist (invented)",)


def test_what_only_people_know_is_open() -> None:
    """Whether it was done as planned, and what readers think of it, no catalogue can say."""
    found = answers(demo(), "hip-abductor-repair")
    people = {Item.CERT_6, Item.CERT_16A, Item.CERT_16B, Item.PEMAT_2, Item.PEMAT_5, Item.PEMAT_16}
    assert {item for item, one in found.items() if one.answer is Answer.OPEN} == {*people, Item.PEMAT_21}


Change = Callable[[Catalogue], Catalogue]


def of_phases(**changes: Any) -> Change:
    """Return a change of every phase."""
    return lambda known: _with_programme(known, lambda phase: replace(phase, **changes))


def of_uses(**changes: Any) -> Change:
    """Return a change of every use."""
    return lambda known: _with_programme(
        known, lambda phase: replace(phase, uses=tuple(replace(use, **changes) for use in phase.uses))
    )


def of_exercises(**changes: Any) -> Change:
    """Return a change of every exercise."""
    return lambda known: replace(
        known, exercises={id_: replace(one, **changes) for id_, one in known.exercises.items()}
    )


def _with_programme(known: Catalogue, change: Callable[[Phase], Phase]) -> Catalogue:
    programme = known.programmes["tendon-repair"]
    changed = replace(programme, phases=tuple(change(phase) for phase in programme.phases))
    return replace(known, programmes={programme.id: changed})


def without_ways_to_fit(known: Catalogue) -> Catalogue:
    """Return a catalogue without variations and reasons for a delay."""
    programme = replace(known.programmes["tendon-repair"], delay_reasons=())
    return of_exercises(variations={})(replace(known, programmes={programme.id: programme}))


def one_step(known: Catalogue) -> Catalogue:
    """Return a catalogue whose uses never rise and end with their phase."""
    step = known.programmes["tendon-repair"].phases[1].uses[0].dose_steps[:1]
    return of_uses(dose_steps=step, then=Then.ENDS)(known)


NO_USES = of_phases(uses=())
OPENED: Mapping[Item, Change] = {
    Item.CERT_1: of_exercises(equipment=()),
    Item.CERT_3: NO_USES,
    Item.CERT_4: of_phases(milestones=()),
    Item.CERT_5: NO_USES,
    Item.CERT_7A: of_phases(milestones=()),
    Item.CERT_7B: one_step,
    Item.CERT_8: of_exercises(steps=()),
    Item.CERT_9: NO_USES,
    Item.CERT_11: lambda known: replace(known, safety=replace(known.safety, signs=())),
    Item.CERT_12: of_exercises(surface=()),
    Item.CERT_13: of_uses(dose_steps=()),
    Item.CERT_14A: NO_USES,
    Item.CERT_14B: without_ways_to_fit,
    Item.CERT_15: lambda known: replace(known, safety=replace(known.safety, start_only=Text(""))),
    Item.PEMAT_4: lambda known: replace(known, glossary={}),
    Item.PEMAT_6: NO_USES,
    Item.PEMAT_7: NO_USES,
    Item.PEMAT_9: NO_USES,
    Item.PEMAT_11: of_phases(goals=()),
    Item.PEMAT_12: of_exercises(cautions=()),
    Item.PEMAT_19: NO_USES,
    Item.PEMAT_20: of_exercises(steps=()),
    Item.PEMAT_22: of_exercises(steps=()),
    Item.PEMAT_23: NO_USES,
    Item.PEMAT_24: NO_USES,
}


@pytest.mark.parametrize("item", list(OPENED), ids=lambda item: item.value)
def test_an_item_opens_when_its_field_is_missing(item: Item) -> None:
    """What was answered or partly answered is open as soon as the content no longer says it."""
    before = catalogue_of()
    assert answers(before)[item].answer in (Answer.ANSWERED, Answer.PARTLY)
    assert answers(OPENED[item](before))[item].answer is Answer.OPEN


def test_every_answer_that_content_can_lose_is_in_the_table() -> None:
    """No item counts as answered whatever the content says, but for those named here with their reason."""
    always = {
        # Weight-bearing, walking aid and pain limit belong to every phase and are no exercise.
        Item.CERT_10,
        # No phase without a role that set its pain limit, no programme without a summary: see below.
        Item.CERT_2,
        Item.PEMAT_1,
        # By the measures handed over; by length; by the weeks, which are checked.
        Item.PEMAT_3,
        Item.PEMAT_8,
        Item.PEMAT_10,
        # Pictures: see below.
        Item.PEMAT_15,
        Item.PEMAT_17,
        Item.PEMAT_18,
        Item.PEMAT_26,
    }
    said = {
        item
        for name in demo().programmes
        for item, one in answers(demo(), name).items()
        if one.answer in (Answer.ANSWERED, Answer.PARTLY)
    }
    assert said == {*OPENED, *always}


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (PROGRAMME, "summary: An invented programme in two phases.\n"),
        (PROGRAMME, "      set-by: surgeon\n"),
        (PROGRAMME, "aim: protects\n"),
        (HEEL_RAISE, "helper: none\n"),
        (HEEL_RAISE, "surface: [standing]\n"),
    ],
)
def test_what_a_checklist_needs_cannot_be_left_out(path: str, line: str) -> None:
    """Fields behind an answer that every content has are refused by the reader when they are missing."""
    assert any(
        problem.startswith("missing-key") for problem in problems_of(with_change(FILES, path, line, ""))
    )


def test_without_pictures_nothing_is_said_to_be_shown() -> None:
    """The small content has no poses: pictures are open, and a description without one is partly told."""
    found = answers(catalogue_of())
    pictures = (Item.PEMAT_15, Item.PEMAT_17, Item.PEMAT_18, Item.PEMAT_26)
    assert [found[item].answer for item in pictures] == [Answer.OPEN] * 4
    assert (found[Item.CERT_8].answer, found[Item.CERT_8].number) == (Answer.PARTLY, 0)


def test_some_pictures_answer_in_part() -> None:
    """Half the pictures are half an answer."""
    posed = demo().exercises["ankle-pumps"].poses
    known = catalogue_of()
    half = replace(known.exercises["ankle-pump"], poses=posed)
    one = answers(replace(known, exercises={**known.exercises, half.id: half}))[Item.PEMAT_15]
    assert (one.answer, one.number, one.total) == (Answer.PARTLY, 1, 2)


def test_without_daily_life_the_rest_of_the_care_is_told_in_part() -> None:
    """Weight, aid and brace are said in every phase; the small content says nothing of stairs or car."""
    assert answers(catalogue_of())[Item.CERT_10].answer is Answer.PARTLY
    assert answers(demo(), "knee-replacement")[Item.CERT_10].answer is Answer.ANSWERED


@pytest.mark.parametrize(
    ("reading", "answer"),
    [
        (None, Answer.OPEN),
        (Reading(12, 0), Answer.ANSWERED),
        (Reading(12, 3), Answer.PARTLY),
        (Reading(12, 12), Answer.OPEN),
    ],
)
def test_everyday_words_follow_what_was_measured(reading: Reading | None, answer: Answer) -> None:
    """Texts above the target of readability are no everyday words; unmeasured texts are not called easy."""
    known = catalogue_of()
    found = {one.item: one for one in report_items(known, known.programmes["tendon-repair"], reading)}
    assert found[Item.PEMAT_3].answer is answer


def test_a_long_paragraph_is_no_small_piece() -> None:
    """One text that is too long makes the answer partial, and the count says how many are short."""
    long = replace(catalogue_of().exercises["heel-raise"], start=Text("Stand at the worktop. " * 20))
    known = replace(catalogue_of(), exercises={**catalogue_of().exercises, "heel-raise": long})
    one = answers(known)[Item.PEMAT_8]
    assert (one.answer, one.total - one.number) == (Answer.PARTLY, 1)
