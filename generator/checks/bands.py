"""Holds that activity fits the phase: doubt never widens permission.

Above the band by at most the programme's margin: late in the phase, marked. Further above: an error where
the programme protects its muscles, unless a clinician accepts it up to a number, with role and reason. The
form that is used counts, and the hardest of its dose steps.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.estimates import Estimate
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.terms import MuscleAim
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule, Severity
from generator.progression.activity import Activity, activity_of
from generator.progression.bands import Leave, leave
from generator.progression.worked import Worked, hardest_step, worked

UPSIDE_DOWN = Rule(
    "band-upside-down",
    "An activity band ends below its start.",
    "The two numbers were swapped.",
    "put the lower number under 'above' and the higher under 'up-to'",
    safety=True,
)
ABOVE = Rule(
    "above-band",
    "An exercise works a protected muscle harder than the phase allows.",
    "Its activity is above the band by more than the programme's margin.",
    "use the exercise in a later phase, use an easier one, or let a clinician accept it under the use with "
    "'accepts': up to which number, role and reason",
    safety=True,
)
LATE = Rule(
    "late-in-phase",
    "An exercise works a protected muscle slightly harder than the phase's band.",
    "Its activity is above the band, within the programme's margin.",
    "nothing need be done: it stands late in the phase and is marked",
    severity=Severity.NOTE,
)
ACCEPTED = Rule(
    "above-band-accepted",
    "An exercise works a protected muscle harder than the phase allows, and a clinician accepts it.",
    "The use says so under 'accepts', with role and reason.",
    "nothing need be done: role and reason are shown to clinicians",
    severity=Severity.NOTE,
)
DOUBT = Rule(
    "upper-limit-above-band",
    "An exercise lies within its phase's band, but the upper limit of its interval lies above.",
    "The studies disagree, or there are few of them.",
    "nothing need be done: the doubt is shown to clinicians",
    severity=Severity.NOTE,
)
NEEDLESS = Rule(
    "acceptance-without-need",
    "A clinician's leave to stand above the band is not needed.",
    "The activity is within the band and its margin now, or the use was moved to another phase.",
    "delete 'accepts' under the use",
    severity=Severity.WARNING,
)
RULES = (UPSIDE_DOWN, ABOVE, LATE, ACCEPTED, DOUBT, NEEDLESS)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each band upside down, each use above its band, and each that may be in doubt."""
    activity = activity_of(catalogue)
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            if phase.band.up_to <= phase.band.above:
                message = f"the band of phase {phase.number} ends at or below its start"
                yield UPSIDE_DOWN.at(phase.band.place, message)
                continue
            for use in phase.uses:
                exercise = catalogue.exercises.get(use.use)
                if exercise is not None and programme.aim is MuscleAim.PROTECTS:
                    yield from _of_use(activity, programme, phase, worked(activity, programme, exercise, use))


def _of_use(activity: Activity, programme: Programme, phase: Phase, item: Worked) -> Iterator[Problem]:
    use = item.use
    found, step = hardest_step(activity, item)
    mean = found.mean if found else None
    held = leave(mean, phase.band, programme.margin, use.accepts)
    if use.accepts is not None and held in (Leave.WITHIN, Leave.LATE):
        message = f"'{use.use}' needs no leave in phase {phase.number}: {_how_hard(found)}"
        yield NEEDLESS.at(use.at("accepts"), message)
    if found is None:
        return
    place = use.at("use") if step is None else use.at("dose-steps", step)
    if held is not Leave.WITHIN:
        rule = {Leave.LATE: LATE, Leave.ACCEPTED: ACCEPTED, Leave.REFUSED: ABOVE}[held]
        yield _above(rule, place, phase, item, found)
    elif found.high is not None and found.high > phase.band.up_to:
        message = (
            f"'{use.use}' has {_how_hard(found)}, but its interval reaches {found.high:.1f}, "
            f"above the band of phase {phase.number} ({phase.band.up_to:g})"
        )
        yield DOUBT.at(place, message)


def _above(rule: Rule, place: Place, phase: Phase, item: Worked, found: Estimate) -> Problem:
    use = item.use
    message = (
        f"'{use.use}' has {_how_hard(found)}, "
        f"{found.mean - phase.band.up_to:.1f} above the band of phase {phase.number}"
    )
    if rule is ABOVE and use.accepts is not None:
        message += f", and accepted is only up to {use.accepts.up_to:g}"
    if rule is ACCEPTED and use.accepts is not None:
        message += f"; accepted by: {use.accepts.role}, because: {use.accepts.reason}"
    return rule.at(place, message)


def _how_hard(found: Estimate | None) -> str:
    if found is None:
        return "its activity is not known"
    judged = ", judged" if found.judgement is not None else ""
    return f"{found.mean:.1f} %MVIC in {found.muscle}{judged}"
