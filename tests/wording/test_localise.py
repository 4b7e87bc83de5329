"""One catalogue goes in and one language comes out, with phrases filled and gaps marked."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from generator.catalogue.base import Text, TextState
from generator.catalogue.dose import DoseKind, DoseStep
from generator.problems import Place, Problem
from generator.wording.isolation import CLOSE, OPEN, plain
from generator.wording.localise import NO_TRANSLATIONS, Translations, exercise_in_use, localise
from generator.wording.voice import voice
from tests.content import FILES, catalogue_of, with_change
from tests.wording.pseudo import pseudo, pseudo_translations
from tests.wording.samples import GERMAN, speaking
from tests.wording.test_messages import every_text

HEEL_RAISE = "exercises/heel-raise.yml"
SAFETY = "safety.yml"
STEPS = "exercise/heel-raise/steps"
STAY = (STEPS, "Stay up for {hold}.")


def problems(files: Mapping[str, str], translations: Translations = NO_TRANSLATIONS) -> list[str]:
    """Return the findings of a German run, as code and place."""
    found = localise(catalogue_of(files), speaking("de", GERMAN), translations)[1]
    return [f"{problem.code} {problem.place}" for problem in found]


def german_step(translations: Translations, position: int = 1) -> Text:
    """Return a step of the heel raise in German."""
    return (
        localise(catalogue_of(), speaking("de", GERMAN), translations)[0]
        .exercises["heel-raise"]
        .steps[position]
    )


def test_source_texts_are_spoken_as_typed_with_phrases_filled() -> None:
    """The hold stands once, in the dose; the sentence takes it from there, isolated."""
    catalogue, found = localise(catalogue_of(), voice("en"))
    step = catalogue.exercises["heel-raise"].steps[1]
    assert (step.words, step.language, step.state) == (
        f"Stay up for {OPEN}3{CLOSE} seconds.",
        "en",
        TextState.SOURCE,
    )
    assert found == ()


def test_a_translation_takes_the_phrase_in_its_own_language() -> None:
    """The whole phrase is German, its plural form too."""
    step = german_step(Translations({STAY: "{hold} oben bleiben."}))
    assert (step.words, step.language) == (f"{OPEN}3{CLOSE} Sekunden oben bleiben.", "de")
    assert step.state is TextState.TRANSLATED


def test_what_falls_back_is_wholly_in_the_source_language() -> None:
    """An English sentence never holds a German phrase, and says that it is English."""
    step = german_step(NO_TRANSLATIONS)
    assert plain(step.words) == "Stay up for 3 seconds."
    assert (step.language, step.state) == ("en", TextState.MISSING)


def test_an_outdated_translation_is_not_shown() -> None:
    """It may tell the patient what the clinic has since changed; the source sentence stands in, marked."""
    step = german_step(Translations(outdated={STAY: "5 Minuten oben bleiben."}))
    assert (plain(step.words), step.state) == ("Stay up for 3 seconds.", TextState.OUTDATED)


def test_every_text_of_the_catalogue_gets_words_in_the_language() -> None:
    """In a pretend language no text is left as it was, and nothing but words differs."""
    source = catalogue_of()
    pretended, found = localise(source, voice("de"), pseudo_translations(source))
    texts = list(every_text(pretended))
    assert found == ()
    assert [text.source for text in texts] == [text.source for text in every_text(source)]
    assert all(plain(text.words).startswith("⟦") and text.language == "de" for text in texts)
    assert not any("{" in text.words for text in texts)


def test_values_without_texts_are_shared() -> None:
    """Twenty languages hold the measurements, doses and leg work of one catalogue."""
    source = catalogue_of()
    spoken = localise(source, voice("en"))[0]
    before, after = source.exercises["heel-raise"], spoken.exercises["heel-raise"]
    assert after.dose is before.dose
    assert after.activity is before.activity
    assert spoken.studies is source.studies
    assert after.at("start") == before.at("start")


def test_localising_twice_changes_nothing() -> None:
    """A localised catalogue keeps its sources, so it can be localised again."""
    once = localise(catalogue_of(), voice("en"))[0]
    assert localise(once, voice("en"))[0] == once


def test_numbers_typed_in_a_text_are_isolated() -> None:
    """An editor's "8 to 16" keeps its order in any line."""
    hours = localise(catalogue_of(), voice("en"))[0].clinic.telephone.hours
    assert hours.words == f"Monday to Friday, {OPEN}8{CLOSE} to {OPEN}16{CLOSE}"


def test_every_phrase_of_an_exercise_and_of_the_clinic() -> None:
    """Rest, pace and telephone numbers are said where they are stated once."""
    typed = "Lift in {tempo.lift}, lower in {tempo.lower}, rest {rest}, call {telephone.clinic}."
    files = with_change(FILES, HEEL_RAISE, "  - Lower slowly.", f"  - {typed}")
    step = localise(catalogue_of(files), voice("en"))[0].exercises["heel-raise"].steps[2]
    call = "call 0555\u00a0010\u00a0200."
    assert plain(step.words) == f"Lift in 2 seconds, lower in 3 seconds, rest 1 minute, {call}"


def test_a_phase_says_its_own_pain_limits() -> None:
    """The limit stands once, with its source; the sentence of each phase takes its own."""
    path = "programmes/tendon-repair.yml"
    files = with_change(FILES, path, "summary: The tendon heals.", "summary: At most {pain.during}.")
    phase = localise(catalogue_of(files), voice("en"))[0].programmes["tendon-repair"].phase(1)
    assert plain(phase.summary.words) == "At most 2 of 10."


def test_in_use_the_texts_speak_of_the_dose_step() -> None:
    """A sheet never says three seconds in the steps and ten in the dose."""
    catalogue = localise(catalogue_of(), voice("en"))[0]
    step = DoseStep(DoseKind.REPETITIONS, 2, 8, hold=10)
    used = exercise_in_use(catalogue.exercises["heel-raise"], step, catalogue, voice("en"))
    assert plain(used.steps[1].words) == "Stay up for 10 seconds."
    german = exercise_in_use(
        catalogue.exercises["heel-raise"],
        step,
        catalogue,
        speaking("de", GERMAN),
        Translations({STAY: "{hold} oben bleiben."}),
    )
    assert plain(german.steps[1].words) == "10 Sekunden oben bleiben."


FAR = with_change(FILES, HEEL_RAISE, "  - Lower slowly.", "  - Stop at {ankle.plantarflexion}.")
FACTS = {"heel-raise": {"ankle.plantarflexion": 30.0}}


def test_an_angle_of_the_picture_is_said_as_a_whole_phrase() -> None:
    """The angle stands once, in the poses; texts take it from there, in every language and in use."""
    catalogue, found = localise(catalogue_of(FAR), voice("en"), facts=FACTS)
    assert (plain(catalogue.exercises["heel-raise"].steps[2].words), found) == ("Stop at 30°.", ())
    step = DoseStep(DoseKind.REPETITIONS, 2, 8)
    used = exercise_in_use(
        catalogue.exercises["heel-raise"],
        step,
        catalogue,
        speaking("de", GERMAN),
        Translations({(STEPS, "Stop at {ankle.plantarflexion}."): "Bei {ankle.plantarflexion} anhalten."}),
        FACTS,
    )
    assert used.steps[2].words == f"Bei {OPEN}30°{CLOSE} anhalten."


@pytest.mark.parametrize("facts", [{}, {"heel-raise": {"other.ankle.plantarflexion": 30.0}}])
def test_an_angle_that_no_pose_shows_is_a_finding(facts: Mapping[str, Mapping[str, float]]) -> None:
    """A text cannot say how far a joint goes where no pose of that side shows it."""
    found = localise(catalogue_of(FAR), voice("en"), facts=facts)[1]
    assert [problem.code for problem in found] == ["phrase-without-value"]
    assert "no pose shows it" in found[0].message


def test_a_joint_that_nobody_has_is_no_phrase() -> None:
    """A misspelt joint is named as unknown, with the nearest angle that the poses show."""
    files = {**FAR, HEEL_RAISE: FAR[HEEL_RAISE].replace("{ankle.plantar", "{ancle.plantar")}
    found = localise(catalogue_of(files), voice("en"), facts=FACTS)[1]
    assert [problem.code for problem in found] == ["unknown-phrase"]
    assert "did you mean {ankle.plantarflexion}?" in found[0].remedy


@pytest.mark.parametrize(
    ("facts", "says"),
    [
        (FACTS, "Raise both heels up to 30°."),
        ({**FACTS, "heel-raise/seated": {"ankle.plantarflexion": 12.0}}, "Raise both heels up to 12°."),
    ],
)
def test_a_variation_says_its_own_angles(facts: Mapping[str, Mapping[str, float]], says: str) -> None:
    """A variation with poses of its own says their angles; one without looks like its exercise."""
    files = with_change(
        FAR,
        HEEL_RAISE,
        "Sit on a chair and raise both heels.",
        "Raise both heels up to {ankle.plantarflexion}.",
    )
    catalogue = localise(catalogue_of(files), voice("en"), facts=facts)[0]
    assert plain(catalogue.exercises["heel-raise"].variations["seated"].change.words) == says


def test_a_variation_does_not_borrow_an_angle_that_its_own_poses_lack() -> None:
    """Where a variation is drawn, an angle of its exercise's picture would be a lie."""
    files = with_change(
        FAR,
        HEEL_RAISE,
        "Sit on a chair and raise both heels.",
        "Raise both heels up to {ankle.plantarflexion}.",
    )
    facts = {**FACTS, "heel-raise/seated": {"knee.flexion": 90.0}}
    found = localise(catalogue_of(files), voice("en"), facts=facts)[1]
    assert [problem.code for problem in found] == ["phrase-without-value"]


def test_a_misspelt_phrase_is_named_with_the_nearest_one() -> None:
    """The finding stands where the editor typed it and says which phrase was meant."""
    files = with_change(FILES, HEEL_RAISE, "{hold}", "{holt}")
    found = localise(catalogue_of(files), voice("en"))[1]
    assert [problem.code for problem in found] == ["unknown-phrase"]
    assert found[0].place == catalogue_of(files).exercises["heel-raise"].steps[1].place
    assert "did you mean {hold}?" in found[0].remedy


def test_a_phrase_outside_its_kind_of_text_is_unknown() -> None:
    """A safety text belongs to no exercise, so it cannot speak of a hold."""
    files = with_change(FILES, SAFETY, "fall:\n  - Stay where", "fall:\n  - Wait {hold}. Stay where")
    assert problems(files)[0].startswith("unknown-phrase safety.yml:")


def test_a_phrase_whose_value_is_missing_is_a_finding() -> None:
    """A sentence that speaks of a hold needs one in the dose."""
    files = with_change(FILES, HEEL_RAISE, "  hold: 3 s\n", "")
    assert [item.split()[0] for item in problems(files)] == ["phrase-without-value"]


@pytest.mark.parametrize(
    ("translation", "code"),
    [
        ("Kurz oben bleiben.", "phrases-differ"),
        ("{hold} und {hold} oben bleiben.", "phrases-differ"),
        ("{halten} oben bleiben.", "phrases-differ"),
        ("{hold oben bleiben.", "stray-brace"),
        ("{hold} oben} bleiben.", "stray-brace"),
        ("{ hold } oben bleiben.", "stray-brace"),
    ],
)
def test_a_translation_with_other_phrases_is_refused(translation: str, code: str) -> None:
    """A dose that a translator loses or doubles is an error at its line, and the source stands in."""
    place = Place("content/translations/de.po", 40, 1)
    translations = Translations({STAY: translation}, places={STAY: place})
    found = localise(catalogue_of(), voice("de"), translations)[1]
    assert code in {problem.code for problem in found}
    assert {problem.place for problem in found} == {place}
    assert german_step(translations).state is TextState.MISSING


def test_findings_do_not_depend_on_the_language() -> None:
    """Twenty languages report an editor's mistake once."""
    catalogue = catalogue_of(with_change(FILES, HEEL_RAISE, "{hold}", "{holt}"))
    seen: set[Problem] = set()
    for language in ("en", "de", "ar"):
        seen.update(localise(catalogue, voice(language))[1])
    assert len(seen) == 1


def test_the_pretend_language_keeps_what_is_filled() -> None:
    """Phrases stay, and a sentence grows by a third at least, as translations do."""
    assert "{hold}" in pseudo("Stay up for {hold}.")
    assert "%(name)s" in pseudo("<b>%(name)s</b>")
    assert len(pseudo("Lower slowly.")) >= len("Lower slowly.") * 4 / 3
