"""What holds for one patient alone is said in whole sentences, in the language of the booklet."""

from __future__ import annotations

import datetime
from typing import Any

from generator.catalogue.dose import DoseKind, DoseStep
from generator.catalogue.one_patient import Avoided, Limit, OperatedSide, Wishes
from generator.catalogue.restricted import Track
from generator.catalogue.terms import Joint, Movement, Surface, WeightBearing
from generator.progression.one_patient import narrow
from generator.wording.isolation import plain
from generator.wording.localise import localise
from generator.wording.one_patient import PatientWords, patient_words, restriction_words
from generator.wording.voice import voice
from tests.content import ANKLE_PUMP, FILES, catalogue_of, with_change

ENGLISH = voice("en")
PROGRAMME = "programmes/tendon-repair.yml"


def said(phase: int = 2, files: dict[str, str] | None = None, **wishes: Any) -> PatientWords:
    """Return what the small content's booklet says for one patient."""
    catalogue, _ = localise(catalogue_of(files or FILES), ENGLISH)
    made = Wishes(**wishes)
    found = narrow(catalogue, "tendon-repair", phase, made, restriction_words(ENGLISH, made))
    assert found.problems == ()
    return patient_words(ENGLISH, found.catalogue, found.catalogue.programmes["tendon-repair"], found.told)


def rows(found: PatientWords) -> list[tuple[str, str, str]]:
    """Return the rows of what is left out, names joined."""
    return [
        (" + ".join(str(name) for name in row.names), plain(row.why), plain(row.instead))
        for row in found.left_out
    ]


def test_nothing_said_says_nothing() -> None:
    """Without a wish every part is empty."""
    found = said()
    assert found == PatientWords("", "", "", "", "", (), (), (), "", (), (), pictured=False)


def test_days_are_before_which_nothing_begins() -> None:
    """No day says that something starts."""
    found = said(phase=1, surgery=datetime.date(2024, 2, 29), track=Track.DELAYED)
    assert plain(found.surgery) == "29 February 2024"
    assert plain(found.phase) == "This phase: not before 29 February 2024."
    assert plain(found.following) == "The next phase: not before 25 April 2024."
    assert plain(found.diary) == (
        "If you are told to start on 29 February 2024, the second week begins on 7 March 2024."
    )


def test_reasons_in_words() -> None:
    """Things, strains and limits are named as the content names them."""
    assert rows(said(have=frozenset())) == [
        ("Heel raise with both legs", "Not at hand: A worktop or a heavy table.", "Instead: Ankle pump.")
    ]
    assert rows(said(avoid=Avoided(strains=frozenset({"knee"})))) == [
        ("Heel raise with both legs", "To be spared: Knee.", "Instead: Ankle pump.")
    ]
    limit = Limit(Joint.ANKLE, Movement.PLANTARFLEXION, 20)
    assert rows(said(limits=(limit,)))[0][1] == (
        "Goes beyond this patient's limit (ankle plantarflexion: only up to 20°)."
    )
    assert rows(said(weight_bearing=WeightBearing.NONE))[0][1] == (
        "Goes beyond this patient's limit (weight on the leg: none)."
    )


def test_what_nothing_replaces_is_the_clinicians_to_decide() -> None:
    """Where it was asked for, nothing need be decided; names with one reason share a row."""
    standing = ANKLE_PUMP.replace("[bed, floor]", "[standing]")
    uses = "".join(
        f"      - {{use: {name}, dose-steps: [9 times an hour], times-a-day: 1, days-a-week: 7,"
        " then: ends}\n"
        for name in ("toe-curl", "foot-turn")
    )
    files = with_change(FILES, PROGRAMME, "      - use: heel-raise\n", uses + "      - use: heel-raise\n")
    files |= {
        "exercises/toe-curl.yml": standing.replace("Ankle pump", "Toe curl"),
        "exercises/foot-turn.yml": standing.replace("Ankle pump", "Foot turn"),
    }
    found = rows(said(files=files, avoid=Avoided(surfaces=frozenset({Surface.STANDING}))))
    first = ("Toe curl + Foot turn", "To be avoided: standing.", "No alternative passed. Please decide.")
    assert found == [first, ("Heel raise with both legs", "To be avoided: standing.", "Instead: Ankle pump.")]
    found = rows(said(files=files, only=frozenset({"heel-raise"})))
    assert found == [
        ("Toe curl + Foot turn", "Not among the exercises chosen.", "Nothing was put in its place.")
    ]
    found = rows(said(files=files, without=frozenset({"toe-curl"})))
    assert found == [("Toe curl", "Left out on request.", "Nothing was put in its place.")]


def test_side_and_what_is_mastered() -> None:
    """The pictures show one side, so two operated sides are not pictured as such."""
    found = said(side=OperatedSide.LEFT, mastered=frozenset({"ankle-pump"}))
    assert (found.side, found.pictured, found.mastered) == ("left", True, "Ankle pump")
    files = with_change(FILES, PROGRAMME, "aim: protects\n", "aim: protects\nboth-sides: yes\n")
    both = said(files=files, side=OperatedSide.BOTH)
    assert (both.side, both.pictured) == ("left and right", False)


def test_another_dose_is_told_beside_the_usual_one() -> None:
    """The clinician who hands the booklet out sees where it begins with less than the phase does."""
    usual, less = DoseStep(DoseKind.REPETITIONS, 2, 8), DoseStep(DoseKind.REPETITIONS, 1, 8)
    assert said(doses={"heel-raise": usual}).doses == ()
    found = said(doses={"heel-raise": less})
    assert [plain(words).replace("\xa0", " ") for words in found.doses] == [
        "Heel raise with both legs: begins with 1 × 8; the phase begins with 2 × 8."
    ]
    assert set(found.doses) <= set(found.required)


def test_limits_are_instructions_for_the_patient() -> None:
    """Each is a sentence that says what may be done and no more."""
    wishes = Wishes(limits=(Limit(Joint.HIP, Movement.FLEXION, 70),))
    assert plain(str(restriction_words(ENGLISH, wishes)["patient-hip-flexion"])) == (
        "Hip, bending: no further than 70°."
    )
    for allows in WeightBearing:
        words = str(restriction_words(ENGLISH, Wishes(weight_bearing=allows))["patient-weight-bearing"])
        assert words.endswith(".")
        assert "weight" in words or "lean" in words
