"""Works out the words of one exercise sheet: dose, steps up, stop rule, variations, days to tick."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from generator.booklets.columns import DOSE_LETTERS, FIXED_DOSE_LINES, STEPS_LETTERS, block, lines
from generator.booklets.values import BookletJob, Fits
from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.dose import DoseKind
from generator.catalogue.exercise import Caution, Exercise, HelperRole, Variation
from generator.catalogue.in_force import withheld_variations
from generator.catalogue.programme import Use
from generator.catalogue.terms import Change, Helper, Then
from generator.wording.doses import DosePhrase, dose, hold_seconds
from generator.wording.phrases import duration, frequency, list_of, load, number, pain, place_of
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import from_week, not_before_week

DAYS_IN_A_WEEK = 7

# Figures such as 3 × 10 speak for themselves; 10 alone needs what it counts.
_IN_SETS = (DoseKind.REPETITIONS, DoseKind.HOLDS)


@dataclass(frozen=True)
class Warned:
    """A caution as it is printed: kind for the look, signal word, hazard, consequence, what to do."""

    kind: str
    word: str
    hazard: Text
    consequence: Text
    avoid: Text


@dataclass(frozen=True)
class ExerciseSheet:
    """All that is printed about one exercise, in the language of the booklet.

    days: how many boxes to tick on each day of a week; 0 is a day of rest. when: said where the exercise
    is not for now. before_short: `before` without the checks of things, which the phase sheet says too.
    entry: the same in the table of all exercises. required: strings the audit must find.
    """

    key: str
    exercise: Exercise
    variation: Variation | None
    place: int
    eyebrow: str
    compared: str
    when: str
    entry: str
    before: tuple[Text | str, ...]
    before_short: tuple[Text | str, ...]
    cautions: tuple[Warned, ...]
    dose: DosePhrase
    often: str
    frequency: str
    stop: str
    ladder: tuple[str, ...]
    figures: tuple[str, ...]
    going_up: Text
    easier: tuple[Variation, ...]
    harder: tuple[Variation, ...]
    mastered: str
    helper: HelperRole | None
    days: tuple[int, ...]
    after: str
    note: Text | None
    split: bool

    @property
    def name(self) -> Text:
        """Return the name of the exercise."""
        return self.exercise.name

    @property
    def light(self) -> bool:
        """Return whether the column of steps is short, so that it takes what one should feel as well."""
        return not (self.cautions or self.exercise.limits or self.exercise.mistakes)

    @property
    def room_beside(self) -> bool:
        """Return whether the column of the dose has room for one more block, by an estimate of lines."""
        exercise, helper = self.exercise, self.helper
        warned = [text for one in self.cautions for text in (f"{one.hazard} {one.consequence}", one.avoid)]
        helped = (helper.does, helper.must_not) if helper else ()
        parts = ((exercise.start,), warned, exercise.steps, exercise.limits, helped)
        doing = sum(block(part, STEPS_LETTERS) for part in parts)
        said = (self.dose.spoken, *self.dose.lines, self.often, self.stop)
        amount = FIXED_DOSE_LINES + lines(said, DOSE_LETTERS) + block((exercise.not_feel,), DOSE_LETTERS)
        return amount <= doing

    @property
    def required(self) -> tuple[str, ...]:
        """Return what the audit must find: name, doses, stop rule, every step and warning."""
        warned = (str(text) for one in self.cautions for text in (one.hazard, one.consequence, one.avoid))
        steps = (str(step) for step in self.exercise.steps)
        spoken = (str(self.name), self.dose.big, self.dose.spoken, self.stop, *warned, *steps, *self.figures)
        return tuple(dict.fromkeys(spoken))


def exercise_sheets(job: BookletJob, fits: Fits) -> tuple[ExerciseSheet, ...]:
    """Return the sheets of a phase in the order of introduction."""
    places = job.order.of_phase(job.phase)
    uses = {use.use: use for use in job.stage.uses}
    before = (None, *places)
    withheld = withheld_variations(job.catalogue.exercises, job.stages, job.stage)
    return tuple(
        _sheet(_Setting(job, placed, uses[placed.exercise], earlier, len(places), withheld), fits)
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
    withheld: frozenset[str]

    @property
    def exercise(self) -> Exercise:
        return self.job.catalogue.exercises[self.use.use]

    @property
    def voice(self) -> Voice:
        return self.job.voice


def _sheet(here: _Setting, fits: Fits) -> ExerciseSheet:
    job, voice, exercise, use = here.job, here.voice, here.exercise, here.use
    key = sheet_key(exercise.id)
    hourly = use.dose_steps[0].kind is DoseKind.HOURLY
    known = job.catalogue.exercises
    phrases = [dose(voice, step, exercise.dose) for step in use.dose_steps]
    return ExerciseSheet(
        key=key,
        exercise=exercise,
        variation=exercise.variations[use.variation] if use.variation else None,
        place=here.placed.place,
        eyebrow=place_of(voice, here.placed.place, here.total),
        compared=_compared(here),
        when=_when(here),
        entry=_entry(here),
        before=_before(here, checks=True),
        before_short=_before(here, checks=False),
        cautions=tuple(_warned(voice, caution) for caution in (*exercise.cautions, *use.cautions)),
        dose=phrases[0],
        often=frequency(voice, use.times_a_day, use.days_a_week, use.rest_days, hourly=hourly),
        frequency=frequency(voice, use.times_a_day, use.days_a_week, hourly=hourly),
        stop=_stop(here),
        ladder=_ladder(here),
        figures=tuple(phrase.big for phrase in phrases),
        going_up=job.stage.going_up,
        easier=_variations(here, Change.EASIER),
        harder=_variations(here, Change.HARDER),
        mastered=list_of(voice, (str(known[other].name) for other in exercise.requires)),
        helper=exercise.helper_role if exercise.helper is not Helper.NONE else None,
        days=_days(use),
        after=_after(here),
        note=use.note,
        split=fits[key].split if key in fits else exercise.id in job.two_sheets,
    )


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


def _starts_later(here: _Setting) -> bool:
    return here.use.week is not None and here.use.week > here.job.stage.week


def _when(here: _Setting) -> str:
    """Return when to add an exercise that is not for the first day of the phase; empty for one that is."""
    if not _starts_later(here):
        return ""
    words = here.voice.gettext("Add this exercise only when you are told: {weeks}")
    return words.format(weeks=_entry_weeks(here, not_before_week))


def _entry(here: _Setting) -> str:
    if not _starts_later(here):
        return here.voice.gettext("now")
    return here.voice.gettext("{weeks}, when you are told").format(weeks=_entry_weeks(here, from_week))


def _entry_weeks(here: _Setting, phrase: Callable[[Voice, int], str]) -> str:
    week = here.use.week or here.job.stage.week
    delayed = here.use.delayed_week
    if delayed is None or delayed == week:
        return phrase(here.voice, week)
    words = here.voice.gettext("{weeks}; if your start was delayed: {delayed}")
    return words.format(weeks=phrase(here.voice, week), delayed=phrase(here.voice, delayed))


def _before(here: _Setting, *, checks: bool) -> tuple[Text | str, ...]:
    """Return where it is done and what is needed, with or without what to look at before use."""
    exercise, voice = here.exercise, here.voice
    places = list_of(voice, (term(voice, surface) for surface in exercise.surface), "or")
    held = term(voice, exercise.support)
    words = voice.gettext("{place}, {support}.").format(place=voice.opening(places), support=held)
    return (words, *(_needed(here, thing, checks) for thing in exercise.equipment), *exercise.set_up)


def _needed(here: _Setting, thing: str, checks: bool) -> str:
    equipment = here.job.catalogue.equipment[thing]
    if equipment.check is None or not checks:
        return here.voice.gettext("You need: {thing}.").format(thing=equipment.name)
    words = here.voice.gettext("You need: {thing}. {check}")
    return words.format(thing=equipment.name, check=equipment.check)


def _warned(voice: Voice, caution: Caution) -> Warned:
    kind = caution.signal.value
    return Warned(kind, term(voice, caution.signal), caution.hazard, caution.consequence, caution.avoid)


def _stop(here: _Setting) -> str:
    limit = pain(here.voice, here.job.stage.pain.during)
    return here.voice.gettext("Stop if pain at the operated place goes above {limit}.").format(limit=limit)


def _ladder(here: _Setting) -> tuple[str, ...]:
    """Return the dose steps as short as they can be told apart: with load, and with hold where it changes."""
    voice, steps, permitted = here.voice, here.use.dose_steps, here.exercise.dose
    holds = [hold_seconds(step, permitted) for step in steps]
    said = []
    for step, hold in zip(steps, holds, strict=True):
        phrase = dose(voice, step, permitted)
        parts = [phrase.big] if step.kind in _IN_SETS else [phrase.big, phrase.unit]
        if hold and len(set(holds)) > 1:
            parts.append(voice.gettext("for {duration}").format(duration=duration(voice, hold)))
        said.append(" ".join([*parts, load(voice, step.load)]).strip())
    return tuple(said)


def _variations(here: _Setting, change: Change) -> tuple[Variation, ...]:
    """Return the other forms of one kind; one that the phase forbids is not printed."""
    return tuple(
        variation
        for variation in here.exercise.variations.values()
        if variation.is_ is change
        and variation.id != here.use.variation
        and f"{here.exercise.id}/{variation.id}" not in here.withheld
    )


def _days(use: Use) -> tuple[int, ...]:
    return tuple(use.times_a_day if trains else 0 for trains in training_days(use.days_a_week, use.rest_days))


def _after(here: _Setting) -> str:
    """Return what becomes of the exercise when the phase is over."""
    use, voice = here.use, here.voice
    if use.then is Then.GOES_ON:
        return voice.gettext("It goes on in the next phase.")
    if use.then is Then.ENDS or use.replaced_by is None:
        return voice.gettext("It ends with this phase.")
    words = voice.gettext("After this phase it is replaced by: {exercise}.")
    return words.format(exercise=here.job.catalogue.exercises[use.replaced_by].name)
