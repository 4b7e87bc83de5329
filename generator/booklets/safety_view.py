"""Words the safety part of a booklet: pain limit, warning signs with numbers, what to do if it got worse."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.values import BookletJob
from generator.catalogue.base import Text
from generator.catalogue.clinic import Sign
from generator.catalogue.exercise import Caution
from generator.catalogue.terms import Level
from generator.wording.isolation import isolate
from generator.wording.phrases import number, pain
from generator.wording.terms import term
from generator.wording.voice import Voice

WORST_PAIN = 10


@dataclass(frozen=True)
class Warned:
    """A caution as it is printed: kind for the look, signal word, hazard, consequence, what to do."""

    kind: str
    word: str
    hazard: Text
    consequence: Text
    avoid: Text

    @property
    def texts(self) -> tuple[str, ...]:
        """Return its sentences, each of which the audit must find."""
        return (str(self.hazard), str(self.consequence), str(self.avoid))


@dataclass(frozen=True)
class PainStep:
    """One field of the drawn scale: its number, and ``may`` or ``stop``."""

    number: str
    kind: str


@dataclass(frozen=True)
class Pain:
    """The phase's pain limit: the scale, whole sentences, and short forms for the heads of a table."""

    steps: tuple[PainStep, ...]
    sentences: tuple[str, ...]
    during: str
    after: str
    next_morning: str


@dataclass(frozen=True)
class SignGroup:
    """Warning signs that need help equally fast, with whom to call.

    kind: the look, named as a signal word. call: number in large type. hours: when the line is staffed.
    """

    kind: str
    heading: str
    call: str
    hours: tuple[Text | str, ...]
    signs: tuple[Sign, ...]


@dataclass(frozen=True)
class WorseLevel:
    """What to do at one level when it got worse."""

    kind: str
    heading: str
    acts: tuple[Text, ...]
    call: str


def warned(voice: Voice, caution: Caution) -> Warned:
    """Return a caution with its signal word in the language of the booklet."""
    kind = caution.signal.value
    return Warned(kind, term(voice, caution.signal), caution.hazard, caution.consequence, caution.avoid)


def pain_view(job: BookletJob) -> Pain:
    """Return the pain limit of the phase in words; the scale shows the limit that holds while exercising."""
    voice, limit = job.voice, job.stage.pain
    steps = tuple(
        PainStep(number(voice, level), "may" if level <= limit.during else "stop")
        for level in range(WORST_PAIN + 1)
    )
    at_most = voice.gettext("at most {level}")
    sentences = (
        voice.gettext("During the exercises: at most {level}.").format(level=pain(voice, limit.during)),
        voice.gettext("Afterwards: at most {level}.").format(level=pain(voice, limit.after)),
        voice.gettext("The next morning: at most {level}.").format(level=pain(voice, limit.next_morning)),
    )
    shown = (limit.during, limit.after, limit.next_morning)
    return Pain(steps, sentences, *(at_most.format(level=number(voice, level)) for level in shown))


def sign_groups(job: BookletJob) -> tuple[SignGroup, ...]:
    """Return the warning signs, the most urgent first; a level without signs is left out."""
    voice, telephone = job.voice, job.catalogue.clinic.telephone
    after_hours = voice.gettext("At other times: {telephone}").format(
        telephone=isolate(telephone.out_of_hours)
    )
    emergency = voice.gettext("Call {telephone}").format(telephone=isolate(telephone.emergency))
    clinic = voice.gettext("Call {telephone}").format(telephone=isolate(telephone.clinic))
    groups = (
        (Level.EMERGENCY, "danger", voice.gettext("Emergency: call now, day or night"), emergency, ()),
        (
            Level.CLINIC,
            "warning",
            voice.gettext("Call the clinic within a day"),
            clinic,
            (telephone.hours, after_hours),
        ),
        (Level.TODAY, "notice", voice.gettext("Rest today"), "", ()),
    )
    signs = job.catalogue.safety.signs
    found = (
        SignGroup(kind, heading, call, hours, tuple(sign for sign in signs if sign.level is level))
        for level, kind, heading, call, hours in groups
    )
    return tuple(group for group in found if group.signs)


def worse_levels(job: BookletJob) -> tuple[WorseLevel, ...]:
    """Return the three levels of what to do when it got worse, the mildest first, with whom to call."""
    voice, worse, telephone = job.voice, job.catalogue.safety.worse, job.catalogue.clinic.telephone
    clinic = voice.gettext("Call {telephone}").format(telephone=isolate(telephone.clinic))
    emergency = voice.gettext("Call {telephone}").format(telephone=isolate(telephone.emergency))
    return (
        WorseLevel("notice", voice.gettext("Today"), worse.today, ""),
        WorseLevel("warning", voice.gettext("Call the clinic within a day"), worse.clinic, clinic),
        WorseLevel("danger", voice.gettext("Emergency: call now, day or night"), worse.emergency, emergency),
    )
