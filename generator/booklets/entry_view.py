"""Says of each exercise of a phase when it is done: now, when one is told, until another takes its place."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.values import BookletJob
from generator.catalogue.base import Text
from generator.catalogue.programme import Use
from generator.catalogue.terms import Then
from generator.wording.phrases import list_of
from generator.wording.weeks import not_before_week, week


@dataclass(frozen=True)
class Entry:
    """When an exercise begins and ends within its phase, in words; what does not apply is empty.

    later: whether it is not for the first day. tag: said large on its own sheet. weeks: before when it may
    not begin, on both tracks. when: what must be reached besides. makes_way: for whom it is left out within
    the phase. takes_over: what is left out once it begins.
    """

    later: bool
    tag: str
    weeks: str
    when: Text | None
    makes_way: str
    takes_over: str

    @property
    def notes(self) -> tuple[Text | str, ...]:
        """Return all that is said of it in a list of exercises."""
        return tuple(note for note in (self.weeks, self.when, self.makes_way, self.takes_over) if note)


def entry(job: BookletJob, use: Use) -> Entry:
    """Return when an exercise begins and ends in the phase of the job."""
    voice, later = job.voice, starts_later(job, use)
    weeks = _weeks(job, use) if later else ""
    tag = voice.gettext("Add only when you are told: {weeks}") if later else ""
    makes_way = voice.gettext("When “{exercise}” begins, stop this one.")
    takes_over = voice.gettext("Then leave out: {exercise}.")
    heir, before = replaced_by(job, use), tuple(str(_name(job, one)) for one in replaces(job, use))
    return Entry(
        later=later,
        tag=tag.format(weeks=weeks),
        weeks=voice.opening(weeks) + "." if weeks else "",
        when=use.when,
        makes_way=makes_way.format(exercise=_name(job, heir)) if heir else "",
        takes_over=takes_over.format(exercise=list_of(voice, before)) if before else "",
    )


def starts_later(job: BookletJob, use: Use) -> bool:
    """Return whether an exercise waits beyond the first day of its phase, on either track or for a goal."""
    stage = job.stage
    late = use.week is not None and use.week > stage.week
    delayed = use.delayed_week is not None and use.delayed_week > stage.delayed_week
    return late or delayed or use.when is not None


def replaced_by(job: BookletJob, use: Use) -> str | None:
    """Return the exercise of the same phase that takes its place; None where that comes with a later one."""
    here = {one.use for one in job.stage.uses}
    return use.replaced_by if use.replaced_by in here else None


def replaces(job: BookletJob, use: Use) -> tuple[str, ...]:
    """Return the exercises of the same phase whose place it takes."""
    return tuple(one.use for one in job.stage.uses if one.replaced_by == use.use and one.use != use.use)


def after(job: BookletJob, use: Use) -> str:
    """Return what becomes of an exercise when the phase is over; empty where it has made way by then."""
    voice = job.voice
    if replaced_by(job, use):
        return ""
    if use.then is Then.GOES_ON:
        return voice.gettext("It goes on in the next phase.")
    if use.then is Then.ENDS or use.replaced_by is None:
        return voice.gettext("It ends with this phase.")
    words = voice.gettext("After this phase it is replaced by: {exercise}.")
    return words.format(exercise=_name(job, use.replaced_by))


def _weeks(job: BookletJob, use: Use) -> str:
    voice = job.voice
    week_number = job.stage.week if use.week is None else use.week
    delayed = job.stage.delayed_week if use.delayed_week is None else use.delayed_week
    if delayed == week_number:
        return not_before_week(voice, week_number)
    words = voice.gettext("{weeks} (delayed start: {delayed})")
    return words.format(weeks=not_before_week(voice, week_number), delayed=week(voice, delayed))


def _name(job: BookletJob, exercise: str) -> Text:
    return job.catalogue.exercises[exercise].name
