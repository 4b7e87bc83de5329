"""A text's level speaks of what a patient reads: sentences and words, not numbers, marks or headings."""

from __future__ import annotations

import pytest

from generator.wording.counting import count, sentences, words_of
from generator.wording.isolation import isolate_numbers
from generator.wording.localise import localise
from generator.wording.readability import HARDEST, Level, known_words, levels, measure_of
from generator.wording.voice import voice
from tests.content import FILES, catalogue_of, with_change

RAISE = "exercises/heel-raise.yml"


def level_of(kind: str, id_: str, files: dict[str, str] | None = None, language: str = "en") -> Level:
    """Return one level of the small content."""
    found = levels(catalogue_of(files or FILES), language)
    return next(level for level in found if (level.kind, level.id) == (kind, id_))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Lower slowly", ("Lower slowly",)),
        ("Stop. Rest for a day!", ("Stop.", "Rest for a day!")),
        ("Use a prop, e.g. a pillow. Rest.", ("Use a prop, e.g. a pillow.", "Rest.")),
        ("Zum Beispiel, z. B. Treppen, üben.", ("Zum Beispiel, z. B. Treppen, üben.",)),
        ("Hold for 2.5 seconds. Rest.", ("Hold for 2.5 seconds.", "Rest.")),
        ("He said “Stop.” Then rest.", ("He said “Stop.”", "Then rest.")),
        ("هل تشعر بألم؟ توقف.", ("هل تشعر بألم؟", "توقف.")),
    ],
)
def test_sentences(text: str, expected: tuple[str, ...]) -> None:
    """A sentence ends at its mark, not at an abbreviation or a decimal point; none is needed at the end."""
    assert sentences(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Call 0555 010 200 now.", ["Call", "0", "now"]),
        ("Do 3 × 10, then rest.", ["Do", "0", "then", "rest"]),
        ("Hold for {hold}.", ["Hold", "for", "0"]),
        ("Bend to 90° – no more!", ["Bend", "to", "0", "no", "more"]),
        ("Don't use your wall-bar/table.", ["Don't", "use", "your", "wall-bar", "table"]),
        ("कूल्हे को उठाएँ।", ["कूल्हे", "को", "उठाएँ"]),
    ],
)
def test_words(text: str, expected: list[str]) -> None:
    """A telephone number, a dose, a phrase in braces is one word; vowel signs split no word."""
    assert list(words_of(text)) == expected


def test_isolates_change_nothing() -> None:
    """A sentence counts the same with and without the marks that keep its numbers in order."""
    text = "Call 0555 010 200 after 3 × 10 lifts of 2 kg."
    assert count(isolate_numbers(text), "en") == count(text, "en")


def test_a_word_that_was_explained_counts_as_easy() -> None:
    """A glossary word counts two syllables at most and is neither hard nor long, in the plural too."""
    text = "Repetitions help."
    unknown, known = count(text, "en"), count(text, "en", frozenset({"repetition"}))
    assert (unknown.syllables, unknown.polysyllables, unknown.long_words) == (5, 1, 1)
    assert (known.syllables, known.polysyllables, known.long_words) == (3, 0, 0)


@pytest.mark.parametrize(
    ("language", "base", "form", "known"),
    [
        ("pl", "operacja", "operacją", True),
        ("pl", "fizjoterapeuta", "fizjoterapeutami", True),
        ("de", "wiederholung", "wiederholungen", True),
        ("es", "repetición", "repeticiones", True),
        ("pl", "operacja", "operetka", False),
        ("de", "sehne", "sehnsucht", False),
        ("de", "operation", "operationsnarbe", False),
        ("en", "operation", "operational", False),
    ],
)
def test_a_known_word_is_known_with_other_endings(language: str, base: str, form: str, known: bool) -> None:
    """Languages bend the ends of words; a longer compound or another word of like beginning stays unknown."""
    told = count(form, language, frozenset({base}))
    assert (told.long_words == 0) is known


def test_known_words_come_from_glossary_and_muscles() -> None:
    """The words of a term are known and those of its meaning are not; a muscle is known by its plain name."""
    known = known_words(catalogue_of())
    assert {"tendon", "muscle", "calf"} <= known
    assert not {"cord", "gastrocnemius"} & known


def test_explaining_a_word_lowers_the_grade() -> None:
    """A hard word that enters the glossary makes the exercise easier; the value without it is still told."""
    files = with_change(FILES, RAISE, "Lower slowly.", "Lower deliberately.")
    term = "deliberate:\n  term: Deliberately\n  meaning: Slowly and with care.\n"
    told = {**files, "glossary.yml": files["glossary.yml"] + term}
    before, after = level_of("exercise", "heel-raise", files), level_of("exercise", "heel-raise", told)
    assert after.value < before.value
    assert after.unexplained == before.unexplained


def test_a_name_is_no_sentence() -> None:
    """A heading changes no level."""
    name = "name: Heel raise with both legs"
    files = with_change(FILES, RAISE, name, "name: Bilateral plantarflexion exercise")
    assert level_of("exercise", "heel-raise", files) == level_of("exercise", "heel-raise")


def test_the_hardest_sentences_come_with_their_place() -> None:
    """Three sentences are named, hardest first, where the editor finds them."""
    hard = "Elevation necessitates considerable concentration."
    files = with_change(FILES, RAISE, "Lower slowly.", hard)
    level = level_of("exercise", "heel-raise", files)
    assert len(level.hardest) == HARDEST
    assert level.hardest[0].words == hard
    line = files[RAISE].split("\n").index(f"  - {hard}") + 1
    assert str(level.hardest[0].place) == f"{RAISE}:{line}:5"
    assert [item.value for item in level.hardest] == sorted(
        (item.value for item in level.hardest), reverse=True
    )


def test_a_booklet_is_its_phase_and_its_exercises() -> None:
    """What is measured for a booklet is what a patient finds in it."""
    booklet = level_of("booklet", "tendon-repair/2")
    parts = (level_of("phase", "tendon-repair/2"), level_of("exercise", "heel-raise"))
    assert booklet.counts == parts[0].counts + parts[1].counts


def test_hardest_first() -> None:
    """The list begins with what is farthest from the target, in measures that fall as in those that rise."""
    rising = [level.value for level in levels(catalogue_of(), "en")]
    falling = [level.value for level in levels(catalogue_of(), "es")]
    assert rising == sorted(rising, reverse=True)
    assert falling == sorted(falling)


@pytest.mark.parametrize(
    ("language", "name"),
    [
        ("en", "Flesch-Kincaid grade"),
        ("en-US", "Flesch-Kincaid grade"),
        ("de", "Wiener Sachtextformel 1"),
        ("es", "Szigriszt-Pazos"),
        ("pl", "FOG"),
        ("tr", "Ateşman"),
        ("ar", "LIX"),
        ("fr", "LIX"),
    ],
)
def test_each_language_has_its_own_measure(language: str, name: str) -> None:
    """A formula serves the language it was made for, LIX all others."""
    measure = measure_of(language)
    assert measure is not None
    assert measure.name == name


def test_no_level_without_spaces_between_words() -> None:
    """Where a language writes no spaces nothing is counted, rather than something wrong."""
    assert measure_of("zh-Hans") is None
    assert levels(catalogue_of(), "zh-Hans") == ()


def test_words_of_another_language_are_not_measured() -> None:
    """A text shown in its source language for want of a translation says nothing about the translation."""
    german, _ = localise(catalogue_of(), voice("de"))
    assert levels(german, "de") == ()


def test_target_is_what_is_shown() -> None:
    """A value that is printed as 6.0 meets a target of 6; the Spanish scale asks for more, not less."""
    english, spanish = measure_of("en"), measure_of("es")
    assert english is not None
    assert spanish is not None
    assert [english.too_hard(value) for value in (5.9, 6.04, 6.06)] == [False, False, True]
    assert [spanish.too_hard(value) for value in (54.0, 55.0, 90.0)] == [True, False, False]
