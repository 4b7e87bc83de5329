"""Pictures are described by sentences of the exercise itself, in the language of the page."""

from __future__ import annotations

from generator.wording.alt_texts import alt_texts
from generator.wording.isolation import plain
from generator.wording.localise import Translations, localise
from generator.wording.voice import voice
from tests.content import FILES, catalogue_of, with_change
from tests.wording.samples import GERMAN, speaking

RAISE = "exercises/heel-raise.yml"
START = "start: Stand with your feet as wide as your hips.\n"
DESCRIBED = with_change(FILES, RAISE, START, START + "finish: You stand on your toes.\n")


def test_start_and_finish_are_described_by_their_own_sentences() -> None:
    """The first picture is the start position, the last one what 'finish' says."""
    exercise = localise(catalogue_of(DESCRIBED), voice("en"))[0].exercises["heel-raise"]
    start, finish = alt_texts(exercise)
    assert (plain(start.words), plain(finish.words)) == (
        "Stand with your feet as wide as your hips.",
        "You stand on your toes.",
    )


def test_without_a_finish_the_first_step_speaks() -> None:
    """A picture is never without words: the first step says where the movement goes."""
    exercise = localise(catalogue_of(), voice("en"))[0].exercises["heel-raise"]
    assert alt_texts(exercise)[1] == exercise.steps[0]


def test_a_variation_is_described_by_what_changes() -> None:
    """A variation without a finish of its own says what is otherwise."""
    exercise = localise(catalogue_of(), voice("en"))[0].exercises["heel-raise"]
    seated = exercise.variations["seated"]
    assert alt_texts(exercise, seated)[1] == seated.change


def test_descriptions_are_translated_with_the_rest() -> None:
    """The finish is a text for translators like every other."""
    key = ("exercise/heel-raise/finish", "You stand on your toes.")
    german = localise(
        catalogue_of(DESCRIBED), speaking("de", GERMAN), Translations({key: "Sie stehen auf den Zehen."})
    )[0]
    assert alt_texts(german.exercises["heel-raise"])[1].words == "Sie stehen auf den Zehen."
