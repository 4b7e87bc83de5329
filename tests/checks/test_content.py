"""Mistakes in what the content means: each rule of the trade, broken as an editor would break it."""

from __future__ import annotations

import pytest

from generator.problems import Severity
from tests.cases import Case
from tests.content import FILES, findings_of, problems_of, with_change

PUMP = "exercises/ankle-pump.yml"
RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"

USE_PUMP = """\
      - use: ankle-pump
        dose-steps: [5 times an hour, 10 times an hour]
        times-a-day: 1
        days-a-week: 7
        then: ends
"""
USE_RAISE = """\
      - use: heel-raise
        dose-steps: [2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]
        times-a-day: 1
        days-a-week: 3
        rest-days: 1
        then: goes on
"""
PHASE_2 = "    week: 6\n    delayed-week: 8\n    week-source"
WAIVES = """\
        waives:
          - prerequisite: {}
            role: surgeon
            reason: The patient cannot lie down.
"""
ACCEPTED = "        then: goes on\n        accepts: {up-to: 60, role: surgeon, reason: Invented for tests.}\n"
SEATED = "    other-leg: same\n    demand: lying or sitting\n"


def judged(kind: str, others: str = "") -> str:
    """Return a judgement of the calf as an editor would write it under an exercise."""
    return f"judged:\n  - {{as: {kind}, {others}muscles: [calf], role: surgeon, reason: Invented.}}\n"


CASES = (
    Case(
        "a band ends above its start",
        REPAIR,
        "{above: 20, up-to: 50}",
        "{above: 50, up-to: 20}",
        "band-upside-down",
        "{above: 50",
        ("phase 2",),
    ),
    Case(
        "an exercise far above the band of a protected muscle is an error",
        RAISE,
        "mean: 34.5",
        "mean: 55.1",
        "above-band",
        "heel-raise\n",
        ("'heel-raise'", "55.1 %MVIC in calf", "5.1 above the band of phase 2", "later phase"),
        at_path=REPAIR,
    ),
    Case(
        "an exercise slightly above the band is a note",
        RAISE,
        "mean: 34.5",
        "mean: 54.9",
        "late-in-phase",
        "heel-raise\n",
        ("4.9 above the band of phase 2", "late in the phase"),
        at_path=REPAIR,
    ),
    Case(
        "an acceptance that is not needed",
        REPAIR,
        "        then: goes on\n",
        "        then: goes on\n        accepts: {up-to: 60, role: surgeon, reason: Invented for tests.}\n",
        "acceptance-without-need",
        "{up-to: 60",
        ("'heel-raise' needs no leave in phase 2: 34.5 %MVIC",),
    ),
    Case(
        "an exercise further above the band than the clinician accepted",
        RAISE,
        "mean: 34.5",
        "mean: 60.1",
        "above-band",
        "heel-raise\n",
        ("10.1 above the band of phase 2", "accepted is only up to 60"),
        at_path=REPAIR,
        before=((REPAIR, "        then: goes on\n", ACCEPTED),),
    ),
    Case(
        "an exercise above the band that a clinician accepts is shown with role and reason",
        RAISE,
        "mean: 34.5",
        "mean: 59.9",
        "above-band-accepted",
        "heel-raise\n",
        ("9.9 above the band", "accepted by: surgeon, because: Invented for tests."),
        at_path=REPAIR,
        before=((REPAIR, "        then: goes on\n", ACCEPTED),),
    ),
    Case(
        "an exercise whose interval reaches above the band is a note",
        RAISE,
        "mean: 34.5",
        "mean: 49.9",
        "upper-limit-above-band",
        "heel-raise\n",
        # 49.9 + 1.96 * 11 / sqrt(12), worked out by hand.
        ("its interval reaches 56.1, above the band of phase 2 (50)",),
        at_path=REPAIR,
    ),
    Case(
        "a dose step whose added load was measured far above the band",
        RAISE,
        "activity:\n",
        "activity:\n  - {muscle: calf, mean: 70, sd: 9, study: invented-2001, at-place: Table 2,\n"
        "     load: light band, added-load: band, read: []}\n",
        "above-band",
        "3 x 10 with light band",
        ("'heel-raise' has 70.0 %MVIC in calf, 20.0 above the band",),
        at_path=REPAIR,
    ),
    Case(
        "the use of a variation above the band",
        RAISE,
        SEATED,
        SEATED + "    activity:\n      - {muscle: calf, mean: 55.5, sd: 4, study: invented-2001,\n"
        "         at-place: Table 2, load: half the weight, read: []}\n",
        "above-band",
        "heel-raise\n        variation: seated\n        dose",
        ("'heel-raise' has 55.5 %MVIC in calf",),
        at_path=REPAIR,
        before=((REPAIR, "use: heel-raise\n", "use: heel-raise\n        variation: seated\n"),),
    ),
    Case(
        "a measurement of an unknown number of people",
        "studies.yml",
        "  n: 12\n",
        "",
        "not-pooled",
        "muscle: calf\n",
        ("34.5 % for calf in 'heel-raise' by 'invented-2001' is set aside: the number of people",),
        at_path=RAISE,
    ),
    Case(
        "a measurement of one person",
        RAISE,
        "    sd: 11\n",
        "    sd: 11\n    n: 1\n",
        "not-pooled",
        "1\n    study",
        ("one person only",),
    ),
    Case(
        "a standard deviation of 0",
        RAISE,
        "    sd: 11\n",
        "    sd: 0\n",
        "not-pooled",
        "0\n    study",
        ("the standard deviation is 0",),
    ),
    Case(
        "a dose in words, in a sentence beside which the dose steps are printed",
        RAISE,
        "  - Lower slowly.\n",
        "  - Lower slowly, ten times.\n",
        "dose-typed-in-text",
        "Lower slowly, ten",
        ("the text says 'ten times'", "{hold}"),
    ),
    Case(
        "a dose in the note of a use",
        REPAIR,
        "        then: goes on\n",
        "        then: goes on\n        note: Begin with 2 x 8.\n",
        "dose-typed-in-text",
        "Begin with",
        ("the text says '2 x 8'",),
    ),
    Case(
        "a judgement of an exercise that is not there",
        PUMP,
        "strains: []\n",
        "strains: []\n" + judged("like", "others: [heel-raize], "),
        "judgement-of-unknown",
        "heel-raize",
        ("there is no exercise or variation 'heel-raize'", "did you mean 'heel-raise'?"),
    ),
    Case(
        "a judgement of a variation that is not there",
        PUMP,
        "strains: []\n",
        "strains: []\n" + judged("like", "others: [heel-raise/standing], "),
        "judgement-of-unknown",
        "heel-raise/standing",
        ("'heel-raise/standing'",),
    ),
    Case(
        "two exercises that are judged by each other",
        RAISE,
        "mean: 34.5\n    sd: 11\n    study: invented-2001\n    at-place: Table 1\n"
        "    load: body weight on both legs\n    read: [mean, sd]\n",
        "mean: 5\n    study: invented-2001\n    at-place: Table 1\n    statistic: median\n"
        "    load: none\n    read: []\n" + judged("like", "others: [ankle-pump], "),
        "judgement-circle",
        "[heel-raise]",
        ("for calf these judgements refer to each other: ankle-pump -> heel-raise -> ankle-pump",),
        at_path=PUMP,
        before=((PUMP, "strains: []\n", "strains: []\n" + judged("like", "others: [heel-raise], ")),),
    ),
    Case(
        "an exercise that is judged by itself",
        PUMP,
        "strains: []\n",
        "strains: []\n" + judged("between", "others: [ankle-pump, heel-raise], "),
        "judgement-circle",
        "[ankle-pump, heel-raise]",
        ("ankle-pump -> ankle-pump",),
    ),
    Case(
        "a judgement by something of which nothing is known",
        RAISE,
        SEATED,
        SEATED + "    judged:\n      - {as: like, others: [ankle-pump], muscles: [calf], role: surgeon, "
        "reason: Invented.}\n",
        "judgement-without-number",
        "calf], role",
        ("nothing is known of calf in 'ankle-pump'", "not measured"),
    ),
    Case(
        "a judgement of a muscle that was measured",
        RAISE,
        "alternative: ankle-pump\n",
        "alternative: ankle-pump\n" + judged("no load"),
        "judgement-not-needed",
        "calf], role",
        ("'heel-raise' was measured for calf: 34.5 %MVIC",),
    ),
    Case(
        "an exercise that asks more of the body than its phase is an error whatever its activity",
        RAISE,
        "demand: standing on two legs with support",
        "demand: standing on one leg",
        "demand-too-high",
        "heel-raise\n",
        ("'standing on one leg'", "phase 2", "'standing on two legs with support'"),
        at_path=REPAIR,
    ),
    Case(
        "more repetitions than the exercise permits",
        REPAIR,
        "3 x 8, 3 x 10,",
        "3 x 8, 3 x 15,",
        "dose-not-permitted",
        "3 x 15",
        ("'heel-raise' in phase 2", "15 is not within 6 to 12"),
    ),
    Case(
        "more sets than the exercise permits",
        REPAIR,
        "3 x 8, 3 x 10,",
        "3 x 8, 4 x 10,",
        "dose-not-permitted",
        "4 x 10",
        ("4 sets are not within 1 to 3",),
    ),
    Case(
        "a dose of another kind than the exercise's",
        REPAIR,
        "3 x 8, 3 x 10,",
        "3 x 8, 10 min,",
        "dose-not-permitted",
        "10 min",
        ("the step counts minutes, the exercise sets and repetitions",),
    ),
    Case(
        "a stronger band than the exercise permits",
        REPAIR,
        "with light band",
        "with strong band",
        "dose-not-permitted",
        "3 x 10 with strong",
        ("a strong band is not among",),
    ),
    Case(
        "a weight that the exercise does not permit",
        REPAIR,
        "with light band",
        "with 2.5 kg",
        "dose-not-permitted",
        "3 x 10 with 2.5",
        ("2.5 kg is more than the 0 kg",),
    ),
    Case(
        "a longer hold than the exercise permits",
        REPAIR,
        "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]",
        "[10 holds of 30 s]",
        "dose-not-permitted",
        "10 holds",
        ("a hold of 30 s is not within 3 to 3 s",),
        before=(
            (RAISE, "kind: sets and repetitions", "kind: holds"),
            (RAISE, "repetitions: {usual", "holds: {usual"),
            (RAISE, "  tempo: {lift: 2 s, lower: 3 s}\n", ""),
        ),
    ),
    Case(
        "two exercises that wait for each other",
        PUMP,
        "strains: []\n",
        "strains: []\nrequires: [heel-raise]\n",
        "prerequisite-cycle",
        "heel-raise]",
        ("ankle-pump -> heel-raise -> ankle-pump",),
        also=("prerequisite-later",),
    ),
    Case(
        "an exercise that waits for itself",
        RAISE,
        "requires: [ankle-pump]",
        "requires: [heel-raise]",
        "prerequisite-cycle",
        "heel-raise]",
        ("heel-raise -> heel-raise",),
    ),
    Case(
        "two exercises of one phase that wait for each other because nothing else is offered",
        RAISE,
        "requires: [ankle-pump]",
        "requires-one-of: [ankle-pump]",
        "prerequisite-cycle",
        "ankle-pump]",
        ("in phase 1 of 'tendon-repair'", "ankle-pump -> heel-raise -> ankle-pump"),
        also=("goes-on-nowhere",),
        before=(
            (PUMP, "strains: []\n", "strains: []\nrequires: [heel-raise]\n"),
            (REPAIR, USE_RAISE, USE_PUMP.replace("ends", "goes on").replace("pump", "pump # 2")),
            (REPAIR, USE_PUMP, USE_PUMP + USE_RAISE),
            (RAISE, "mean: 34.5", "mean: 12"),
            (
                REPAIR,
                "up-to: 20}\n    demand: lying or sitting",
                "up-to: 20}\n    demand: standing on two legs with support",
            ),
        ),
    ),
    Case(
        "an exercise whose prerequisite the programme leaves out",
        REPAIR,
        "      - use: ankle-pump\n        dose-steps: [5 times an hour, 10 times an hour]",
        "      - use: heel-raise\n        variation: seated\n        dose-steps: [1 x 6]",
        "prerequisite-left-out",
        "heel-raise\n        variation",
        ("'heel-raise' in phase 1 of 'tendon-repair' needs 'ankle-pump', which is left out", "waive"),
        also=("above-band", "alternative-not-at-hand", "alternative-not-at-hand", "rest-days-missing"),
    ),
    Case(
        "an exercise of which every alternative prerequisite is left out",
        RAISE,
        "requires: [ankle-pump]",
        "requires-one-of: [heel-raise-easy, heel-raise-slow]",
        "prerequisite-left-out",
        "heel-raise\n",
        ("needs one of 'heel-raise-easy', 'heel-raise-slow'; all are left out",),
        at_path=REPAIR,
        also=("unknown-exercise", "unknown-exercise"),
    ),
    Case(
        "an exercise that enters before what must be mastered first",
        PUMP,
        "strains: []\n",
        "strains: []\nrequires: [heel-raise]\n",
        "prerequisite-later",
        "ankle-pump\n",
        ("'ankle-pump' in phase 1 of 'tendon-repair' needs 'heel-raise', which enters later",),
        at_path=REPAIR,
        before=((RAISE, "requires: [ankle-pump]\n", ""),),
    ),
    Case(
        "an exercise that enters before each of its alternative prerequisites",
        PUMP,
        "strains: []\n",
        "strains: []\nrequires-one-of: [heel-raise]\n",
        "prerequisite-later",
        "ankle-pump\n",
        ("needs one of 'heel-raise'; all enter later",),
        at_path=REPAIR,
        before=((RAISE, "requires: [ankle-pump]\n", ""),),
    ),
    Case(
        "two restrictions with the same id",
        REPAIR,
        "id: no-jumping",
        "id: no-stretch # copied",
        "restriction-twice",
        "no-stretch # copied",
        ("'no-stretch' stands twice in 'tendon-repair'",),
    ),
    Case(
        "time alone ends no restriction",
        REPAIR,
        "until: {week: 6, delayed-week: 8, phase: 2}",
        "until: {week: 6, delayed-week: 8}",
        "restriction-without-end",
        "{week: 6",
        ("'no-stretch' would end by time alone", "release"),
    ),
    Case(
        "a restriction that ends with a phase that is not there",
        REPAIR,
        "until: {week: 6, delayed-week: 8, phase: 2}",
        "until: {week: 6, delayed-week: 8, phase: 3}",
        "restriction-phase",
        "3}\n    source",
        ("there is no phase 3 in 'tendon-repair'",),
    ),
    Case(
        "a restriction that would end earlier when recovery is delayed",
        REPAIR,
        "until: {week: 6, delayed-week: 8, phase: 2}",
        "until: {week: 6, delayed-week: 5, phase: 2}",
        "restriction-delay",
        "5, phase",
        ("'no-stretch' would end in week 5 instead of 6",),
    ),
    Case(
        "a caution for serious injury",
        RAISE,
        "signal: warning",
        "signal: caution",
        "signal-word",
        "caution\n",
        ("'caution' does not fit 'serious injury'", "write signal: warning or danger"),
    ),
    Case(
        "a notice never concerns injury",
        RAISE,
        "harm: serious injury",
        "harm: minor injury",
        "signal-word",
        "notice",
        ("'notice' does not fit 'minor injury'", "write signal: caution"),
        before=((RAISE, "signal: warning", "signal: notice"),),
    ),
    Case(
        "a caution of a variation",
        RAISE,
        "    demand: lying or sitting\n",
        "    cautions:\n      - {signal: danger, harm: no injury, hazard: a, consequence: b, avoid: c}\n",
        "signal-word",
        "danger",
    ),
    Case(
        "a caution of a use",
        REPAIR,
        "        then: ends\n",
        "        then: ends\n        cautions:\n"
        "          - {signal: notice, harm: serious injury, hazard: a, consequence: b, avoid: c}\n",
        "signal-word",
        "notice",
    ),
    Case(
        "an exercise twice in one phase",
        REPAIR,
        USE_PUMP,
        USE_PUMP + USE_PUMP.replace("pump", "pump # copied"),
        "use-twice",
        "ankle-pump # copied",
        ("'ankle-pump' stands twice in phase 1",),
    ),
    Case(
        "a variation that the exercise does not have",
        REPAIR,
        "      - use: heel-raise\n",
        "      - use: heel-raise\n        variation: seatd\n",
        "unknown-variation",
        "seatd",
        ("'heel-raise' has no variation 'seatd' (it has: seated)",),
    ),
    Case(
        "replaced, but not by what",
        REPAIR,
        "then: ends",
        "then: replaced",
        "replacement",
        "replaced",
        ("'ankle-pump'", "'then: replaced' and 'replaced-by'"),
    ),
    Case(
        "a replacement for something that is not replaced",
        REPAIR,
        "then: ends\n",
        "then: ends\n        replaced-by: heel-raise\n",
        "replacement",
        "ends\n",
    ),
    Case(
        "a use that goes on into a phase that does not have it",
        REPAIR,
        "then: ends",
        "then: goes on # and on",
        "goes-on-nowhere",
        "goes on # and on",
        ("'ankle-pump' is not used in phase 2",),
    ),
    Case(
        "a replacement that the next phase does not have",
        REPAIR,
        "then: ends\n",
        "then: replaced\n        replaced-by: ankle-pump\n",
        "goes-on-nowhere",
        "replaced\n",
        ("'ankle-pump' is not used in phase 2",),
    ),
    Case(
        "a waiver for something that is not required",
        REPAIR,
        "        then: goes on\n",
        "        then: goes on\n" + WAIVES.format("heel-raise"),
        "waiver-without-need",
        "prerequisite:",
        ("'heel-raise' does not require 'heel-raise'",),
    ),
    Case(
        "the first phase begins with the operation",
        REPAIR,
        "    week: 0\n",
        "    week: 1\n",
        "phase-weeks",
        "1\n    delayed-week: 0",
        ("must start in week 0",),
        also=("delay-shortens", "delay-shortens"),
    ),
    Case(
        "a phase that does not start after the one before it",
        REPAIR,
        PHASE_2,
        PHASE_2.replace("week: 6", "week: 0"),
        "phase-weeks",
        "0\n    delayed-week: 8",
        ("phase 2 starts in week 0, the one before in 0",),
        also=("entry-outside-phase",),
    ),
    Case(
        "a delayed track that is earlier than the usual one",
        REPAIR,
        PHASE_2,
        PHASE_2.replace("delayed-week: 8", "delayed-week: 5"),
        "delay-shortens",
        "5\n    week-source",
        ("5 is before week 6",),
        also=("delay-shortens",),
    ),
    Case(
        "a use that enters before its phase",
        REPAIR,
        "      - use: heel-raise\n",
        "      - use: heel-raise\n        week: 4\n        delayed-week: 9\n",
        "entry-outside-phase",
        "4\n        delayed",
        ("'heel-raise' enters in week 4, outside phase 2",),
    ),
    Case(
        "a use that enters when its phase is over on the delayed track",
        REPAIR,
        "      - use: ankle-pump\n",
        "      - use: ankle-pump\n        week: 5\n        delayed-week: 8\n",
        "entry-outside-phase",
        "8\n        dose",
        ("'ankle-pump' enters in week 8 when delayed, outside phase 1",),
    ),
    Case(
        "a muscle that moves a joint as no joint can is named",
        "muscles.yml",
        "  plain: the muscle at the back of your lower leg\n",
        "  plain: the muscle at the back of your lower leg\n  action: {joint: knee, movement: abduction}\n",
        "muscle-action-impossible",
        "abduction",
        ("'calf'", "there is no abduction of the knee, only: flexion, extension"),
    ),
    Case(
        "a text of a new file that nobody wrote is named",
        RAISE,
        "Makes your calf strong enough for stairs.",
        "Write here – why it is done.",
        "text-not-written",
        "Write here",
        ("not written yet", "write the text"),
    ),
    Case(
        "texts harder than the target are named with their hardest sentence",
        RAISE,
        "purpose: Makes your calf strong enough for stairs.",
        "purpose: Facilitates considerable rehabilitation of the musculature immediately underneath.",
        "hard-to-read",
        "Facilitates",
        (
            "exercise 'heel-raise'",
            "Flesch-Kincaid grade",
            "at most 6",
            "Facilitates considerable",
            "glossary",
        ),
        before=(
            (
                RAISE,
                "start: Stand with your feet as wide as your hips.",
                "start: Position yourself comfortably.",
            ),
            (RAISE, "feel: Work in both calves.", "feel: Muscular activity bilaterally."),
        ),
    ),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_mistake(case: Case) -> None:
    """A rule that the content breaks is named once, at its place, in words that name the thing."""
    case.hold()


def test_waived_prerequisite_is_no_error() -> None:
    """A clinician may waive a prerequisite that the programme leaves out, with role and reason."""
    seated = "      - use: heel-raise\n        variation: seated\n        dose-steps: [1 x 6]\n"
    seated += "        times-a-day: 1\n        days-a-week: 7\n        then: goes on\n"
    codes = []
    for use in (seated, seated + WAIVES.format("ankle-pump")):
        files = with_change(FILES, REPAIR, USE_PUMP, use)
        codes.append([problem.code for problem in findings_of(files)])
    assert ["prerequisite-left-out" in found for found in codes] == [True, False]


def test_one_of_several_prerequisites_is_enough() -> None:
    """An exercise that needs one of two may stand with one of them, though the other waits for it."""
    files = with_change(FILES, RAISE, "requires: [ankle-pump]", "requires-one-of: [ankle-pump, knee-bend]")
    bend = files[RAISE].replace("requires-one-of: [ankle-pump, knee-bend]", "requires: [heel-raise]")
    files["exercises/knee-bend.yml"] = bend
    files = with_change(files, REPAIR, USE_RAISE, USE_RAISE + USE_RAISE.replace("heel-raise", "knee-bend"))
    assert problems_of(files) == []


def test_delay_need_not_lengthen_a_restriction() -> None:
    """A restriction may end in the same week on both tracks, and with the last phase there is."""
    same = "until: {week: 8, delayed-week: 8, phase: 2}"
    old = "until: {week: 6, delayed-week: 8, phase: 2}"
    assert problems_of(with_change(FILES, REPAIR, old, same)) == []


def test_cautions_of_daily_life() -> None:
    """Stairs and cars have hazards too: their signal words are held to the same rule."""
    leg = "{moves: [], holds: [], carries: nothing, lain-on: no}"
    item = f"""\
name: Sleeping
purpose: How to lie at night.
demand: lying or sitting
posture: lying on the back
helper: none
support: none
operated-leg: {leg}
other-leg: {leg}
steps: [Lie on your back.]
avoid: [Crossing your legs.]
cautions:
  - {{signal: notice, harm: serious injury, hazard: a, consequence: b, avoid: c}}
"""
    assert problems_of({**FILES, "daily-life/sleeping.yml": item}) == [
        "in-no-phase daily-life/sleeping.yml:1:7",
        "signal-word daily-life/sleeping.yml:12:14",
    ]
    fitting = item.replace("signal: notice", "signal: warning")
    assert problems_of({**FILES, "daily-life/sleeping.yml": fitting}) == [
        "in-no-phase daily-life/sleeping.yml:1:7"
    ]


def test_trained_muscles_have_no_upper_limit() -> None:
    """Where a programme trains its muscles the band is an aim, so an exercise above it is no error."""
    files = with_change(FILES, RAISE, "mean: 34.5", "mean: 80")
    assert problems_of(with_change(files, REPAIR, "aim: protects", "aim: trains")) == []


def test_unmeasured_is_not_zero() -> None:
    """An exercise without a value for the repaired muscle is neither inside nor below a band."""
    files = with_change(
        FILES, RAISE, "  - muscle: calf\n    mean: 34.5", "  - muscle: inner-calf\n    mean: 90"
    )
    assert problems_of(files) == []


def test_a_note_does_not_stop_publishing() -> None:
    """Slightly above the band is said, and no more than said."""
    (note,) = findings_of(with_change(FILES, RAISE, "mean: 34.5", "mean: 50.4"))
    assert note.severity is Severity.NOTE
    assert "0.4 above the band" in note.message


def test_checks_bear_a_catalogue_with_holes() -> None:
    """Where a study or an exercise could not be read the checks still run on the rest."""
    files = with_change(FILES, "studies.yml", "year: 2001", "year: twenty")
    files = with_change(files, "exercises/ankle-pump.yml", "role: circulation", "role: circles")
    files = with_change(
        files, REPAIR, "until: {week: 6, delayed-week: 8, phase: 2}", "until: {week: 6, delayed-week: 8}"
    )
    assert [found.split()[0] for found in problems_of(files)] == [
        "unknown-choice",
        "restriction-without-end",
        "wrong-kind",
    ]


def test_a_muscle_moves_a_joint_as_the_joint_can() -> None:
    """What the joint can do is no error."""
    plain = "  plain: the muscle at the back of your lower leg\n"
    typed = plain + "  action: {joint: ankle, movement: plantarflexion}\n"
    assert problems_of(with_change(FILES, "muscles.yml", plain, typed)) == []
