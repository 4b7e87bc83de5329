"""Booklets in a pretend language: every word went through the translator, and longer words still fit."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from generator.body.shown import facts_of
from generator.booklets.make import make_booklet
from generator.booklets.protocol import make_protocol
from generator.booklets.reading_back import read_back
from generator.booklets.values import BookletResult
from generator.progression import arrange
from generator.steps.languages import Spoken, speak
from generator.steps.paper import booklet_jobs
from generator.steps.protocols import protocol_jobs
from generator.steps.worked import work_out
from generator.wording.localise import localise
from tests.content import FILES, catalogue_of
from tests.wording.pseudo import PRINTED, pseudo_translations, pseudo_voice

pytestmark = pytest.mark.slow

ASSETS = Path(__file__).parents[2] / "site_assets"
# Roles of reviewers and citations stay as they were typed.
TYPED = {"surgeon", "physiotherapist", "Invented", "for", "tests", "Nobody", "Noone", "Journal", "Numbers"}
# CLDR joins the items of a list in the language whose voice the pretend one borrows.
JOINED = {"und", "oder"}


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> tuple[BookletResult, ...]:
    """Return every booklet and protocol of the small content in the pretend language."""
    folder = tmp_path_factory.mktemp("pretend")
    catalogue = catalogue_of(FILES)
    (source,), _ = speak(catalogue, folder)
    voice, translations = pseudo_voice("de", PRINTED), pseudo_translations(catalogue, PRINTED)
    facts = facts_of(catalogue)
    words, _ = localise(catalogue, voice, translations, facts)
    one: Spoken = replace(source, voice=voice, catalogue=words, translations=translations, facts=facts)
    worked = work_out(catalogue, arrange(catalogue))
    booklets = [make_booklet(job) for _, _, job in booklet_jobs((one,), worked, folder, ASSETS)]
    return (*booklets, *(make_protocol(job) for _, _, job in protocol_jobs((one,), worked, folder, ASSETS)))


def test_nothing_overflows_when_words_are_a_third_longer(printed: tuple[BookletResult, ...]) -> None:
    """Nothing leaves its box or its sheet, and everything that must stand on a sheet is read back."""
    assert {result.path.stem for result in printed} >= {"tendon-repair-phase-1", "tendon-repair-protocol"}
    found = [(r.path.stem, p.message) for r in printed for p in r.problems if p.severity.value == "error"]
    assert found == []


def test_no_word_of_a_booklet_escapes_the_translator(printed: tuple[BookletResult, ...]) -> None:
    """Every word has accents but for names, units, codes and what is cited as it was typed."""
    escaped: dict[str, set[str]] = {}
    for result in printed:
        text = " ".join(page.text for page in read_back(result.path.read_bytes()).pages)
        words = {word for word in text.split() if word.isascii() and word.isalpha() and len(word) > 2}
        escaped[result.path.stem] = words - TYPED - JOINED
    assert escaped == {name: set() for name in escaped}
