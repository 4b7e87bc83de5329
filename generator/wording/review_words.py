"""Says when and by which role a text was reviewed, or that it is a draft."""

from __future__ import annotations

import datetime

from babel.dates import format_skeleton

from generator.catalogue.review import Reviewed, ReviewState
from generator.wording.isolation import isolate_numbers
from generator.wording.phrases import list_of
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import date


def month(voice: Voice, day: datetime.date) -> str:
    """Return the month of a day: ``November 2028``."""
    return isolate_numbers(format_skeleton("yMMMM", day, locale=voice.locale))


def review_words(voice: Voice, state: ReviewState) -> str:
    """Return in sentences how a page or booklet was reviewed."""
    if state.content is None:
        if state.changed:
            return voice.gettext("Draft: changed since its last review.")
        return voice.gettext("Draft: nobody has reviewed this yet.")
    parts = [_read(voice, voice.gettext("Reviewed by: {roles}, {date}."), state.content)]
    if state.translation is not None:
        words = voice.gettext("Translation reviewed by: {roles}, {date}.")
        parts.append(_read(voice, words, state.translation))
    elif state.translated:
        parts.append(voice.gettext("Draft translation: nobody has reviewed it as it is now."))
    planned = [one.next_review for one in (state.content, state.translation) if one and one.next_review]
    if planned:
        words = voice.gettext("Next review: {month}.")
        parts.append(words.format(month=month(voice, min(planned))))
    told = " ".join(parts)
    if not state.invented:
        return told
    return voice.gettext("Invented for the demonstration: {words}").format(words=told)


def draft_mark(voice: Voice, state: ReviewState) -> str:
    """Return the mark that each sheet of a draft bears; empty for what was reviewed."""
    return voice.pgettext("state of a booklet", "Draft") if state.draft else ""


def _read(voice: Voice, words: str, reviewed: Reviewed) -> str:
    roles = list_of(voice, (term(voice, role) for role in reviewed.roles))
    return words.format(roles=roles, date=date(voice, reviewed.date))
