"""Every answer to a reporting checklist has a sentence, and every number that it counts is said."""

from __future__ import annotations

import pytest

from generator.catalogue.reporting import Answer, Item, ItemAnswer
from generator.catalogue.terms import Surface
from generator.wording.isolation import plain
from generator.wording.reporting import answer_words
from generator.wording.voice import voice

ENGLISH = voice("en")
NEVER_ANSWERED = {
    Item.CERT_6,
    Item.CERT_16A,
    Item.CERT_16B,
    Item.PEMAT_2,
    Item.PEMAT_5,
    Item.PEMAT_16,
    Item.PEMAT_21,
}


@pytest.mark.parametrize(
    "item", [one for one in Item if one not in NEVER_ANSWERED], ids=lambda one: one.value
)
def test_every_item_that_can_be_answered_has_a_sentence(item: Item) -> None:
    """The sentence is filled, ends as a sentence does, and differs from what is said of an open item."""
    said = plain(answer_words(ENGLISH, ItemAnswer(item, Answer.ANSWERED, (), 17, 29)))
    assert said.endswith(".")
    assert "{" not in said
    assert said != plain(answer_words(ENGLISH, ItemAnswer(item, Answer.OPEN)))


@pytest.mark.parametrize("item", list(Item), ids=lambda one: one.value)
def test_an_open_item_says_why(item: Item) -> None:
    """Nobody has to guess whether a thing is missing, cannot be known here, or needs a person."""
    assert plain(answer_words(ENGLISH, ItemAnswer(item, Answer.OPEN))).endswith(".")


def test_counts_and_lists_are_said() -> None:
    """A sentence says its numbers and lists its words as the language does."""
    counted = ItemAnswer(Item.CERT_4, Answer.ANSWERED, (), 8, 12)
    assert plain(answer_words(ENGLISH, counted)).endswith("Milestones that a clinician tests: 8 of 12.")
    listed = ItemAnswer(Item.CERT_12, Answer.ANSWERED, terms=(Surface.BED, Surface.CHAIR))
    assert plain(answer_words(ENGLISH, listed)) == "At home: on the bed and on a chair."
    named = ItemAnswer(Item.CERT_2, Answer.PARTLY, names=("surgeon", "physiotherapist"))
    assert "Limits are set by: surgeon and physiotherapist." in plain(answer_words(ENGLISH, named))
