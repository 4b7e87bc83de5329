"""Every fixed word of the trade has words for patients."""

from __future__ import annotations

import importlib
import pkgutil
from collections import Counter
from enum import Enum

from generator import catalogue
from generator.catalogue.terms import Movement, Signal
from generator.wording.terms import clinical_term, term
from generator.wording.terms_clinical import CLINICAL
from generator.wording.terms_everyday import EVERYDAY
from generator.wording.voice import voice
from tests.wording.samples import GERMAN, speaking


def members() -> list[Enum]:
    """Return the members of every enumeration in the catalogue, but those with no words of their own.

    Nobody reads the words of pictures, and only editors those of `editorial`; what holds for one patient, and
    what changed between editions, is said in whole sentences, not terms.
    """
    modules = [
        importlib.import_module(f"{catalogue.__name__}.{module.name}")
        for module in pkgutil.iter_modules(catalogue.__path__)
        if module.name not in ("pose", "one_patient", "editorial", "editions")
    ]
    kinds = {
        value
        for module in modules
        for value in vars(module).values()
        if isinstance(value, type) and issubclass(value, Enum) and value.__module__ == module.__name__
    }
    return [member for kind in kinds for member in kind]


def test_every_member_of_every_enumeration_has_words() -> None:
    """A word added to the catalogue without words for patients fails here, and none is left behind."""
    assert set(members()) == set(EVERYDAY)
    assert set(CLINICAL) <= set(EVERYDAY)


def test_no_two_members_of_one_enumeration_sound_alike() -> None:
    """What differs in the content differs for its reader."""
    for table in (EVERYDAY, CLINICAL):
        said = Counter((type(member), words) for member, (_, words) in table.items())
        assert [words for words, count in said.items() if count > 1] == []


def test_a_clinician_gets_the_trades_word_and_a_patient_an_everyday_one() -> None:
    """Where no clinician's word is given, both get the same."""
    english = voice("en")
    assert term(english, Movement.ABDUCTION) == "moving out to the side"
    assert clinical_term(english, Movement.ABDUCTION) == "abduction"
    assert clinical_term(english, Signal.WARNING) == term(english, Signal.WARNING) == "Warning"


def test_words_are_looked_up_with_their_context() -> None:
    """A signal word is translated as a signal word (German signal word as in ISO 3864 practice)."""
    assert term(speaking("de", GERMAN), Signal.WARNING) == "Warnung"
