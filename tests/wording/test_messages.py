"""Every text of the content reaches the translators once, under an identity that survives editing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from generator.catalogue.base import Text
from generator.wording.messages import translatable
from tests.content import FILES, catalogue_of, with_change

HEEL_RAISE = "exercises/heel-raise.yml"


def every_text(value: Any) -> Iterator[Text]:
    """Yield the texts anywhere inside a value, by looking everywhere."""
    if isinstance(value, Text):
        yield value
    elif isinstance(value, Mapping):
        for item in value.values():
            yield from every_text(item)
    elif isinstance(value, tuple):
        for item in value:
            yield from every_text(item)
    elif is_dataclass(value):
        for item in fields(value):
            yield from every_text(getattr(value, item.name))


def keys(files: Mapping[str, str] = FILES) -> set[tuple[str, str]]:
    """Return the identities of all messages."""
    return {message.key for message in translatable(catalogue_of(files))}


def test_no_text_is_left_out_and_none_comes_twice() -> None:
    """The walk that skips what cannot hold texts finds as many as the one that looks everywhere."""
    catalogue = catalogue_of()
    found = list(translatable(catalogue))
    assert {message.source for message in found} == {text.source for text in every_text(catalogue)}
    assert {place for message in found for place in message.places} == {
        text.place for text in every_text(catalogue)
    }
    assert len({message.key for message in found}) == len(found)


def test_a_context_is_the_way_to_the_field() -> None:
    """Ids stand in the context, list positions do not."""
    assert {
        ("exercise/heel-raise/name", "Heel raise with both legs"),
        ("exercise/heel-raise/steps", "Lower slowly."),
        ("exercise/heel-raise/cautions/hazard", "A table that moves"),
        ("exercise/heel-raise/variations/seated/name", "Heel raise sitting"),
        ("programme/tendon-repair/restrictions/no-jumping/words", "Do not jump or run."),
        ("programme/tendon-repair/phases/name", "Protect"),
        ("clinic/telephone/hours", "Monday to Friday, 8 to 16"),
        ("safety/signs/calf-swelling/act", "Call the emergency number now."),
        ("equipment/worktop/name", "A worktop or a heavy table"),
        ("term/tendon/term", "Tendon"),
    } <= keys()


def test_inserting_and_moving_steps_keeps_every_identity() -> None:
    """A translator's work on the other steps is not lost."""
    old = "  - Stay up for {hold}.\n  - Lower slowly.\n"
    new = "  - Lower slowly.\n  - Breathe out.\n  - Stay up for {hold}.\n"
    changed = keys(with_change(FILES, HEEL_RAISE, old, new))
    assert changed - keys() == {("exercise/heel-raise/steps", "Breathe out.")}
    assert keys() - changed == set()


def test_one_sentence_in_one_field_is_translated_once() -> None:
    """Both phases say when to go up in the same words: one message with two places."""
    going_up = [
        message
        for message in translatable(catalogue_of())
        if message.context == "programme/tendon-repair/phases/going_up"
    ]
    assert [len(message.places) for message in going_up] == [2]


def test_a_translator_is_told_what_a_phrase_will_say() -> None:
    """The field is named, and each phrase in braces explained as a whole phrase."""
    notes = {message.source: message.notes for message in translatable(catalogue_of())}["Stay up for {hold}."]
    assert notes[0] == "Field: steps"
    assert "{hold}" in notes[1]
    assert "5 seconds" in notes[1]
