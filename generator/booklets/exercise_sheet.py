"""Works out the words of one exercise sheet: dose, stop rule, way up and back, variations, days to tick."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.back_view import Back, back
from generator.booklets.columns import STEP_LETTERS, Halves, halves, lines
from generator.booklets.entry_view import Entry, after, entry
from generator.booklets.pictures import Series, series
from generator.booklets.safety_view import Warned, warned
from generator.booklets.values import BookletJob, Fit, Fits
from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.dose import DoseKind
from generator.catalogue.exercise import Exercise, HelperRole, Variation
from generator.catalogue.programme import Use
from generator.catalogue.terms import Change, Helper
from generator.wording.doses import DosePhrase, dose, told_apart
from generator.wording.phrases import frequency, list_of, number, pain, place_of
from generator.wording.terms import term
from generator.wording.voice import Voice

DAYS_IN_A_WEEK = 7


@dataclass(frozen=True)
class ExerciseSheet:
    """All that is printed about one exercise, in the language of the booklet.

    days: how many boxes to tick on each day of a week; 0 is a day of rest. doses: the dose steps as short
    as they can be told apart. helper_first: whether the first column has more room for the helper.
    fit: how it sits on paper. required: strings the audit must find.
    """

    key: str
    exercise: Exercise
    variation: Variation | None
    place: int
    eyebrow: str
    compared: str
    entry: Entry
    before: tuple[Text | str, ...]
    cautions: Halves[Warned]
    dose: DosePhrase
    often: str
    frequency: str
    stop: str
    doses: tuple[str, ...]
    figures: tuple[str, ...]
    back: Back
    going_up: Text
    easier: tuple[Variation, ...]
    harder: tuple[Variation, ...]
    mastered: str
    helper: HelperRole | None
    helper_first: bool
    days: tuple[int, ...]
    after: str
    note: Text | None
    pictures: Series | None
    fit: Fit

    @property
    def name(self) -> Text:
        """Return the name of the exercise."""
        return self.exercise.name

    @property
    def form(self) -> str:
        """Return what is done in this phase, as pictures name it: ``exercise`` or ``exercise/variation``."""
        return f"{self.exercise.id}/{self.variation.id}" if self.variation else self.exercise.id

    @property
    def first_dose_more(self) -> str:
        """Return what the first dose says below its large figures: a hold, a load, what is counted."""
        return self.doses[0].removeprefix(self.dose.big).strip()

    @property
    def required(self) -> tuple[str, ...]:
        """Return what the audit must find: name, doses, stop rule, every step and warning, the way back."""
        cautions = (text for one in self.cautions.all for text in one.texts)
        exercise = self.exercise
        told = (str(text) for text in (*exercise.steps, *exercise.limits, exercise.not_feel))
        instead = (row.instead for row in self.back.rows)
        spoken = (str(self.name), self.dose.big, self.dose.spoken, self.stop, *cautions, *told)
        return tuple(dict.fromkeys((*spoken, *self.figures, *instead, *self.back.notes)))


def exercise_sheets(job: BookletJob, fits: Fits) -> tuple[ExerciseSheet, ...]:
    """Return the sheets of a phase in the order of introduction."""
    places = job.order.of_phase(job.phase)
    uses = {use.use: use for use in job.stage.uses}
    before = (None, *places)
    return tuple(
        _sheet(_Setting(job, placed, uses[placed.exercise], earlier, len(places)), fits)
        for placed, earlier in zip(places, before, strict=False)
    )


def training_days(days_a_week: int, rest_days: int) -> tuple[bool, ...]:
    """Return for the seven days of a week which are for the exercise, spread evenly.

    At least `rest_days` whole days lie between two of them, also over the turn of the week; where that
    leaves no room for `days_a_week`, rest wins.
    """
    count = min(days_a_week, max(1, DAYS_IN_A_WEEK // (rest_days + 1)))
    chosen = {day * DAYS_IN_A_WEEK // count for day in range(count)}
    return tuple(day in chosen for day in range(DAYS_IN_A_WEEK))


def sheet_key(exercise: str) -> str:
    """Return the key of an exercise's section."""
    return f"exercise-{exercise}"


@dataclass(frozen=True)
class _Setting:
    """An exercise where it stands: its place, its use, and the exercise before it."""

    job: BookletJob
    placed: Placed
    use: Use
    earlier: Placed | None
    total: int

    @property
    def exercise(self) -> Exercise:
        return self.job.catalogue.exercises[self.use.use]

    @property
    def variation(self) -> Variation | None:
        return self.exercise.variations[self.use.variation] if self.use.variation else None

    @property
    def voice(self) -> Voice:
        return self.job.voice


def _sheet(here: _Setting, fits: Fits) -> ExerciseSheet:
    job, voice, exercise, use = here.job, here.voice, here.exercise, here.use
    key, doses = sheet_key(exercise.id), told_apart(here.voice, here.use.dose_steps, here.exercise.dose)
    fit = fits.get(key, Fit(split=exercise.id in job.two_sheets))
    hourly = use.dose_steps[0].kind is DoseKind.HOURLY
    phrases = [dose(voice, step, exercise.dose) for step in use.dose_steps]
    return ExerciseSheet(
        key=key,
        exercise=exercise,
        variation=here.variation,
        place=here.placed.place,
        eyebrow=place_of(voice, here.placed.place, here.total),
        compared=_compared(here),
        entry=entry(job, use),
        before=_before(here),
        cautions=_cautions(here),
        dose=phrases[0],
        often=frequency(voice, use.times_a_day, use.days_a_week, use.rest_days, hourly=hourly),
        frequency=frequency(voice, use.times_a_day, use.days_a_week, hourly=hourly),
        stop=stop_rule(job),
        doses=doses,
        figures=tuple(phrase.big for phrase in phrases),
        back=back(job, use, doses),
        going_up=job.stage.going_up,
        easier=_variations(here, Change.EASIER),
        harder=_variations(here, Change.HARDER),
        mastered=_mastered(here),
        helper=exercise.helper_role if exercise.helper is not Helper.NONE else None,
        helper_first=_told(exercise.feel, ()) <= _told(exercise.not_feel, exercise.mistakes),
        days=_days(use),
        after=after(job, use),
        note=use.note,
        pictures=_pictures(here, tight=fit.tight),
        fit=fit,
    )


def _pictures(here: _Setting, *, tight: bool) -> Series | None:
    """Return start and finish in the form used; a variation that looks the same has no drawing of its own."""
    exercise, variation = here.exercise, here.variation
    own = None
    if variation is not None:
        form = f"{exercise.id}/{variation.id}"
        own = series(here.job, form, exercise.start, variation.finish, tight=tight)
    return own or series(here.job, exercise.id, exercise.start, exercise.finish, tight=tight)


def _height(one: Warned) -> float:
    return lines((f"{one.word} {one.hazard} {one.consequence}", one.avoid), STEP_LETTERS) + 1.5


def _told(one: Text, others: tuple[Text, ...]) -> int:
    return lines((one, *others))


def _cautions(here: _Setting) -> Halves[Warned]:
    """Return the warnings: those that find room below the start position, and those above the steps."""
    exercise = here.exercise
    own = here.variation.cautions if here.variation else ()
    found = [warned(here.voice, one) for one in (*exercise.cautions, *own, *here.use.cautions)]
    before = _before(here)
    above = lines((*before, exercise.start)) + 0.5 * len(before) + 2
    limits = lines(exercise.limits) + 1.5 if exercise.limits else 0.0
    below = lines(exercise.steps, STEP_LETTERS) + 1.5 + limits
    return halves(found, _height, below, above)


def _mastered(here: _Setting) -> str:
    """Return what must be mastered first: all of these, and one of those."""
    voice, known = here.voice, here.job.catalogue.exercises
    choice = list_of(voice, (str(known[other].name) for other in here.exercise.requires_one_of), "or")
    every = [str(known[other].name) for other in here.exercise.requires]
    return list_of(voice, [*every, choice] if choice else every)


def _compared(here: _Setting) -> str:
    """Return how hard it is beside the exercise before it; empty where activity does not order them."""
    if here.earlier is None or here.placed.level is None or here.earlier.level is None:
        return ""
    alike = here.placed.level == here.earlier.level
    words = (
        here.voice.gettext("about as hard as exercise {place}")
        if alike
        else here.voice.gettext("harder than exercise {place}")
    )
    return words.format(place=number(here.voice, here.earlier.place))


def _before(here: _Setting) -> tuple[Text | str, ...]:
    """Return where it is done and what is needed; how to check a thing stands on the sheet of the phase."""
    exercise, voice = here.exercise, here.voice
    places = list_of(voice, (term(voice, surface) for surface in exercise.surface), "or")
    held = term(voice, exercise.support)
    words = voice.gettext("{place}, {support}.").format(place=voice.opening(places), support=held)
    own = here.variation.equipment if here.variation else ()
    return (words, *need(here.job, (*exercise.equipment, *own)), *exercise.set_up)


def need(job: BookletJob, things: tuple[str, ...]) -> tuple[str, ...]:
    """Return one line that names the things needed, none where nothing is."""
    # Names are whole phrases with commas of their own, so each ends with a full stop.
    names = ". ".join(str(job.catalogue.equipment[one].name) for one in dict.fromkeys(things))
    return (job.voice.gettext("You need: {thing}.").format(thing=names),) if names else ()


def stop_rule(job: BookletJob) -> str:
    """Return when to stop an exercise, with the pain limit of the phase."""
    limit = pain(job.voice, job.stage.pain.during)
    return job.voice.gettext("Stop if pain at the operated place goes above {limit}.").format(limit=limit)


def _variations(here: _Setting, change: Change) -> tuple[Variation, ...]:
    """Return the other forms of one kind; one that the phase forbids is not printed."""
    return tuple(
        variation
        for variation in here.exercise.variations.values()
        if variation.is_ is change
        and variation.id != here.use.variation
        and f"{here.exercise.id}/{variation.id}" not in here.job.withheld
    )


def _days(use: Use) -> tuple[int, ...]:
    return tuple(use.times_a_day if trains else 0 for trains in training_days(use.days_a_week, use.rest_days))
