"""Says at the foot of every sheet whom to call, which edition it is of, and whether it is a draft."""

from __future__ import annotations

from generator.booklets.values import BookletJob
from generator.wording.isolation import isolate
from generator.wording.voice import Voice
from generator.wording.weeks import date


def clinic_line(voice: Voice, number: str) -> str:
    """Return the clinic's line with its number."""
    return voice.gettext("Clinic line: {telephone}").format(telephone=isolate(number))


def edition_line(voice: Voice, code: str, draft: str) -> str:
    """Return the edition's code, followed by the mark of a draft."""
    edition = voice.gettext("Edition {code}").format(code=isolate(code))
    return f"{edition} · {draft}" if draft else edition


def recorded_line(job: BookletJob) -> str:
    """Return on which day the edition was recorded; empty where it was not."""
    if job.recorded is None:
        return ""
    return job.voice.gettext("Recorded on {date}").format(date=date(job.voice, job.recorded))
