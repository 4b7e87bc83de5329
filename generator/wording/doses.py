"""Says a dose twice: large, as figures that every reader and every language shares, and in words.

The large form holds digits and ``×`` only, so that a clinician who cannot read the patient's language
can point at it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.catalogue.dose import Dose, DoseKind, DoseStep, Tempo
from generator.wording.isolation import isolate
from generator.wording.phrases import bare_number, duration, load, number, times
from generator.wording.voice import Voice

# Figures such as 3 × 10 speak for themselves; 10 alone needs what it counts.
_IN_SETS = (DoseKind.REPETITIONS, DoseKind.HOLDS)


@dataclass(frozen=True)
class DosePhrase:
    """One dose step in one language; parts that do not apply are empty.

    big: ``3 × 10``, ``5``. unit: what the figures count, ``sets × repetitions``, ``minutes``.
    spoken: the dose in words, ``3 sets of 10 repetitions``. load: ``with a light band``.
    hold, tempo, rest: whole sentences without a full stop.
    """

    big: str
    unit: str
    spoken: str
    load: str = ""
    hold: str = ""
    tempo: str = ""
    rest: str = ""

    @property
    def lines(self) -> tuple[str, ...]:
        """Return what stands under the large figures, in the order of reading."""
        return tuple(line for line in (self.load, self.hold, self.tempo, self.rest) if line)


def dose(voice: Voice, step: DoseStep, exercise_dose: Dose) -> DosePhrase:
    """Return a dose step; hold, pace and rest come from the exercise where the step does not state them."""
    held = hold_seconds(step, exercise_dose)
    counts_holds = step.kind is DoseKind.HOLDS
    in_sets = step.kind in _IN_SETS
    figures = times(voice, step.sets, step.count) if in_sets else isolate(bare_number(voice, step.count))
    return DosePhrase(
        big=figures,
        unit=_unit(voice, step),
        spoken=_spoken(voice, step),
        load=voice.opening(load(voice, step.load)),
        hold=_hold(voice, held) if held and in_sets else "",
        tempo=tempo(voice, exercise_dose.tempo) if in_sets and not counts_holds else "",
        rest=_rest(voice, exercise_dose.rest) if step.sets > 1 and exercise_dose.rest else "",
    )


def told_apart(
    voice: Voice, steps: Sequence[DoseStep], exercise_dose: Dose, *, in_words: bool = False
) -> tuple[str, ...]:
    """Return dose steps as short as they can be told apart: with load, and with hold where it changes.

    in_words: as ``3 sets of 10 repetitions``, for a list in which the figures alone say too little.
    """
    holds = [hold_seconds(step, exercise_dose) for step in steps]
    said = []
    for step, hold in zip(steps, holds, strict=True):
        phrase = dose(voice, step, exercise_dose)
        short = [phrase.big] if step.kind in _IN_SETS else [phrase.big, phrase.unit]
        parts = [phrase.spoken] if in_words else short
        words = " ".join([*parts, load(voice, step.load)]).strip()
        said.append(each_held(voice, words, hold) if hold and len(set(holds)) > 1 else words)
    return tuple(said)


def each_held(voice: Voice, words: str, seconds: int) -> str:
    """Return ``1 × 8 (hold each for 5 seconds)``; "for" alone would read as the time for all eight."""
    held = voice.gettext("{dose} (hold each for {duration})")
    return held.format(dose=words, duration=duration(voice, seconds))


def hold_seconds(step: DoseStep | None, exercise_dose: Dose) -> int | None:
    """Return how long each repetition is held, in seconds: the step's own, else the exercise's usual."""
    if step is not None and step.hold is not None:
        return step.hold
    return exercise_dose.hold.usual if exercise_dose.hold else None


def tempo(voice: Voice, pace: Tempo) -> str:
    """Return ``Take 2 seconds to lift and 2 seconds to lower``."""
    words = voice.gettext("Take {lift} to lift and {lower} to lower")
    return words.format(lift=lift_time(voice, pace), lower=lower_time(voice, pace))


def lift_time(voice: Voice, pace: Tempo) -> str:
    """Return how long lifting takes, to stand where ``{lift}`` or ``{tempo.lift}`` stands."""
    words = voice.npgettext("time taken to lift", "{number} second", "{number} seconds", pace.lift)
    return words.format(number=number(voice, pace.lift))


def lower_time(voice: Voice, pace: Tempo) -> str:
    """Return how long lowering takes, to stand where ``{lower}`` or ``{tempo.lower}`` stands."""
    words = voice.npgettext("time taken to lower", "{number} second", "{number} seconds", pace.lower)
    return words.format(number=number(voice, pace.lower))


def _hold(voice: Voice, seconds: int) -> str:
    return voice.gettext("Hold each one for {duration}").format(duration=duration(voice, seconds))


def _rest(voice: Voice, seconds: int) -> str:
    return voice.gettext("Rest for {duration} between sets").format(duration=duration(voice, seconds))


def _unit(voice: Voice, step: DoseStep) -> str:
    count = step.count
    if step.kind is DoseKind.REPETITIONS:
        return voice.pgettext("under the dose 3 × 10", "sets × repetitions")
    if step.kind is DoseKind.HOLDS:
        return voice.pgettext("under the dose 3 × 5", "sets × holds")
    if step.kind is DoseKind.MINUTES:
        return voice.npgettext("under the dose", "minute", "minutes", count)
    if step.kind is DoseKind.HOURLY:
        return voice.npgettext("under the dose", "time an hour", "times an hour", count)
    return voice.npgettext("under the dose", "step", "steps", count)


def _spoken(voice: Voice, step: DoseStep) -> str:
    count = step.count
    if step.kind is DoseKind.REPETITIONS:
        words = voice.npgettext("after sets of", "{number} repetition", "{number} repetitions", count)
        return _sets_of(voice, step.sets, words.format(number=number(voice, count)))
    if step.kind is DoseKind.HOLDS:
        words = voice.npgettext("after sets of", "{number} hold", "{number} holds", count)
        return _sets_of(voice, step.sets, words.format(number=number(voice, count)))
    if step.kind is DoseKind.MINUTES:
        words = voice.ngettext("{number} minute", "{number} minutes", count)
    elif step.kind is DoseKind.HOURLY:
        words = voice.ngettext(
            "{number} time every hour while you are awake",
            "{number} times every hour while you are awake",
            count,
        )
    else:
        words = voice.npgettext("walked", "{number} step", "{number} steps", count)
    return words.format(number=number(voice, count))


def _sets_of(voice: Voice, sets: int, each: str) -> str:
    words = voice.npgettext("before of this many repetitions", "{number} set", "{number} sets", sets)
    frame = voice.pgettext("dose in words", "{sets} of {repetitions}")
    return frame.format(sets=words.format(number=number(voice, sets)), repetitions=each)
