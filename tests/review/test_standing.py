"""What pages and sheets say about their review follows from every part of them."""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path

import pytest

from generator.catalogue.editorial import Scope
from generator.catalogue.review import Ledger, Reviewed, Reviewer, ReviewState, SignOff
from generator.catalogue.values import Catalogue
from generator.review.items import items_of
from generator.review.standing import State, standings
from generator.steps.languages import Spoken, speak_one
from generator.steps.reviewed import booklet_state, pages_reviewed
from generator.steps.reviewing import recalled_unsigned
from generator.wording.review_words import draft_mark, review_words
from generator.wording.voice import voice
from tests.content import catalogue_of

DAY = datetime.date(2026, 3, 2)
NEXT = datetime.date(2028, 11, 1)
CATALOGUE = catalogue_of()
PUMP = "exercise/ankle-pump"


def signed(*names: str, role: Reviewer = Reviewer.PHYSIOTHERAPIST, day: datetime.date = DAY) -> Catalogue:
    """Return the small catalogue in which the content of these items is signed."""
    items = items_of(CATALOGUE)
    given = tuple(
        SignOff(
            item=name,
            scope=Scope.CONTENT,
            role=role,
            fingerprint=items[name].fingerprint(Scope.CONTENT),
            date=day,
            next_review=NEXT,
        )
        for name in names
    )
    return replace(CATALOGUE, ledger=Ledger(signed=given, invented=True))


def spoken(catalogue: Catalogue) -> Spoken:
    """Return the catalogue in its own language."""
    return speak_one(catalogue, "en", Path("nowhere"), {})[0]


def test_every_part_of_a_page_must_be_read() -> None:
    """A phase is a draft as long as one of its uses is; an exercise stands for itself."""
    phase = ("phase/tendon-repair/1", "use/tendon-repair/1/ankle-pump", "programme/tendon-repair")
    pages = pages_reviewed(spoken(signed(*phase[:2], PUMP)))
    assert pages["exercises/ankle-pump.html"].startswith(
        "Invented for the demonstration: Reviewed by: physio"
    )
    assert pages["exercises/heel-raise.html"] == "Draft: nobody has reviewed this yet."
    assert pages["programmes/tendon-repair/phase-1.html"].startswith("Draft")
    pages = pages_reviewed(spoken(signed(*phase)))
    assert "Reviewed by: physiotherapist" in pages["programmes/tendon-repair/phase-1.html"]
    assert pages["programmes/tendon-repair/index.html"].startswith("Draft")
    assert pages["warning-signs.html"].startswith("Draft")


def test_a_booklet_is_reviewed_when_all_that_it_prints_is() -> None:
    """Each item that a sheet prints counts; taking any one away makes a draft of it."""
    programme = CATALOGUE.programmes["tendon-repair"]
    wanted = (
        "safety",
        "words",
        "programme/tendon-repair",
        "phase/tendon-repair/1",
        "use/tendon-repair/1/ankle-pump",
        PUMP,
    )
    assert not booklet_state(spoken(signed(*wanted)), programme, programme.phases[0]).draft
    for left_out in wanted:
        some = (name for name in wanted if name != left_out)
        assert booklet_state(spoken(signed(*some)), programme, programme.phases[0]).draft


def test_roles_that_read_everything_are_named() -> None:
    """A role that read only a part is not named beside one that read all."""
    phase = ("phase/tendon-repair/1", "use/tendon-repair/1/ankle-pump", "programme/tendon-repair")
    surgeon = signed("programme/tendon-repair", role=Reviewer.SURGEON).ledger.signed
    catalogue = signed(*phase)
    catalogue = replace(catalogue, ledger=Ledger(signed=(*catalogue.ledger.signed, *surgeon)))
    assert "surgeon" not in pages_reviewed(spoken(catalogue))["programmes/tendon-repair/phase-1.html"]


def test_a_change_makes_a_draft_that_says_so() -> None:
    """What was signed in another state is told apart from what was never read."""
    before = signed(PUMP)
    (sign_off,) = before.ledger.signed
    other = replace(sign_off, fingerprint="0" * 32)
    catalogue = replace(before, ledger=Ledger(signed=(other,)))
    assert standings(catalogue)[PUMP, Scope.CONTENT, ""].state is State.CHANGED
    pages = pages_reviewed(spoken(catalogue))
    assert pages["exercises/ankle-pump.html"] == "Draft: changed since its last review."


def test_recalled_evidence_counts_as_read_once_signed() -> None:
    """Pages for clinicians lose the mark "recalled" only where a reviewer has read the source."""
    raised = items_of(CATALOGUE)["exercise/heel-raise"]
    sign_off = SignOff(
        item=raised.id,
        scope=Scope.EVIDENCE,
        role=Reviewer.DOCTOR,
        fingerprint=raised.fingerprint(Scope.EVIDENCE),
        date=DAY,
    )
    measured = CATALOGUE.exercises["heel-raise"].activity[0]
    recalled = replace(measured, read=())
    exercises = {
        **CATALOGUE.exercises,
        "heel-raise": replace(CATALOGUE.exercises["heel-raise"], activity=(recalled,)),
    }
    unsigned = replace(CATALOGUE, exercises=exercises)
    assert [one.item for one in recalled_unsigned(unsigned)] == ["exercise/heel-raise"]
    print_ = items_of(unsigned)["exercise/heel-raise"].fingerprint(Scope.EVIDENCE)
    catalogue = replace(unsigned, ledger=Ledger(signed=(replace(sign_off, fingerprint=print_),)))
    assert recalled_unsigned(catalogue) == ()
    assert spoken(catalogue).catalogue.exercises["heel-raise"].activity[0].read == ("mean", "sd")
    assert spoken(unsigned).catalogue.exercises["heel-raise"].activity[0].read == ()


ROLES = (Reviewer.PHYSIOTHERAPIST, Reviewer.SURGEON)


@pytest.mark.parametrize(
    ("state", "page", "sheet"),
    [
        (ReviewState(None), "Draft: nobody has reviewed this yet.", "Draft"),
        (ReviewState(None, changed=True), "Draft: changed since its last review.", "Draft"),
        (
            ReviewState(Reviewed(ROLES, DAY, NEXT)),
            "Reviewed by: physiotherapist and surgeon, 2 March 2026. Next review: November 2028.",
            "",
        ),
        (
            ReviewState(Reviewed(ROLES[:1], DAY), translated=True),
            "Reviewed by: physiotherapist, 2 March 2026. "
            "Draft translation: nobody has reviewed it as it is now.",
            "Draft",
        ),
        (
            ReviewState(
                Reviewed(ROLES[:1], DAY), Reviewed((Reviewer.TRANSLATOR,), DAY, NEXT), translated=True
            ),
            "Reviewed by: physiotherapist, 2 March 2026. Translation reviewed by: translator, 2 March 2026. "
            "Next review: November 2028.",
            "",
        ),
        (
            ReviewState(Reviewed(ROLES[:1], DAY), invented=True),
            "Invented for the demonstration: Reviewed by: physiotherapist, 2 March 2026.",
            "",
        ),
    ],
)
def test_pages_and_sheets_say_how_they_were_reviewed(state: ReviewState, page: str, sheet: str) -> None:
    """By role and day, with the next review as a month; a sheet has room for the mark of a draft."""

    def bare(words: str) -> str:
        return words.replace("\u2066", "").replace("\u2068", "").replace("\u2069", "")

    english = voice("en")
    assert bare(review_words(english, state)) == page
    assert bare(draft_mark(english, state)) == sheet
