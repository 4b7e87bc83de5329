"""Says on every sheet which edition it is of, since when that is recorded, and whether it was reviewed."""

from __future__ import annotations

from generator.booklets.values import BookletJob
from generator.wording.isolation import isolate
from generator.wording.voice import Voice
from generator.wording.weeks import date


def edition_line(voice: Voice, code: str, reviewed: str) -> str:
    """Return the edition's code, followed by what the sheet says about its review."""
    edition = voice.gettext("Edition {code}").format(code=isolate(code))
    return f"{edition} · {reviewed}" if reviewed else edition


def recorded_line(job: BookletJob) -> str:
    """Return on which day the edition was recorded; empty where it was not."""
    if job.recorded is None:
        return ""
    return job.voice.gettext("Recorded on {date}").format(date=date(job.voice, job.recorded))
