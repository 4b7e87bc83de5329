"""Mistakes against the rules of the trade that concern the body and the day: typed as an editor would."""

from __future__ import annotations

import pytest

from generator.problems import Severity
from tests.cases import Case
from tests.content import FILES, findings_of, problems_of, with_change

PUMP = "exercises/ankle-pump.yml"
RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"
CLINIC = "clinic.yml"
STAIRS = "daily-life/stairs.yml"

STRETCH = """\
  - kind: movement
    id: no-stretch
    leg: operated
    words: Do not pull your toes towards you.
    why: The repaired tendon must not be stretched.
    until: {week: 6, delayed-week: 8, phase: 2}
"""
END = "until: {week: 6, delayed-week: 8, phase: 2}\n"
WAYS = (
    "    joint: ankle\n    movement: dorsiflexion\n    how: [passive, assisted, active]\n    limit: 0 deg\n"
)
PUMP_MOVES = "{joint: ankle, movement: plantarflexion, how: active, against: nothing, to: 20 deg}"
RAISE_USE = "      - use: heel-raise\n"
RAISE_LEGS = """\
operated-leg:
  moves:
    - {joint: ankle, movement: plantarflexion, how: active, against: gravity, to: 30 deg}
  holds: []
  carries: shared
  lain-on: no
other-leg:
  moves:
"""
LAST = "  - kind: impact\n    id: no-jumping\n"
MORE = """\
  - kind: {kind}
    id: more
    leg: {leg}
    words: Not yet.
    why: It is too early.
    until: {until}
    source: {{text: Invented for tests, status: invented}}
{rest}"""


def more(
    kind: str, rest: str, until: str = "{week: 9, delayed-week: 12, phase: 2}", leg: str = "operated"
) -> str:
    """Return one more restriction and, after it, the last of the small content."""
    return MORE.format(kind=kind, leg=leg, until=until, rest=rest) + LAST


def case_of(
    rule: str, kind: str, rest: str, mark: str, *says: str, leg: str = "operated", until: str = ""
) -> Case:
    """Return a restriction that a use breaks."""
    ends = until or "{week: 9, delayed-week: 12, phase: 2}"
    return Case(rule, REPAIR, LAST, more(kind, rest, ends, leg), "forbidden", mark, says)


RAISED = "    joint: ankle\n    movement: plantarflexion\n    "
LIFTED = RAISED + "how: [active]\n    against: gravity\n"
BAND_STEP = "3 x 10 with light band"

FORBIDDEN = (
    case_of(
        "a movement that a restriction forbids when the exercise enters",
        "movement",
        LIFTED,
        "heel-raise\n",
        "'heel-raise' in phase 2 breaks 'more': ankle plantarflexion (active)",
        "in week 6 (usual) and in week 8 (delayed)",
        "'week: 9' at the earliest (delayed: 12)",
    ),
    case_of(
        "a movement beyond the limit in degrees",
        "movement",
        RAISED + "how: [active]\n    limit: 29 deg\n",
        "heel-raise\n",
        "to 30 degrees, allowed up to 29",
    ),
    case_of(
        "a movement of the other leg",
        "movement",
        RAISED + "how: [active]\n",
        "heel-raise\n",
        "breaks 'more'",
        leg="other",
    ),
    case_of(
        "an active movement with a band is one against a load",
        "movement",
        RAISED + "how: [resisted]\n",
        "heel-raise\n",
        "(resisted)",
    ),
    case_of(
        "more weight on the leg than it may take",
        "weight-bearing",
        "    allows: touch\n    kilograms: 9\n",
        "heel-raise\n",
        "carries 'shared', allowed is 'touch'",
    ),
    case_of(
        "less than half the body weight is no leave to share it",
        "weight-bearing",
        "    allows: partial\n    percent: 49\n",
        "heel-raise\n",
        "carries 'shared', allowed is 'part'",
    ),
    case_of(
        "a band while bands are forbidden, at the dose step that adds it",
        "outside-load",
        "    loads: [band]\n",
        BAND_STEP,
        "a light band",
        leg="both",
    ),
    Case(
        "a restriction that ends with a later phase asks for that phase",
        REPAIR,
        STRETCH.splitlines(keepends=True)[-1]
        + "    source: {text: Invented for tests, status: invented}\n"
        + WAYS,
        "    until: {week: 0, delayed-week: 0, phase: 2}\n"
        "    source: {text: Invented for tests, status: invented}\n"
        + WAYS.replace("dorsiflexion", "plantarflexion"),
        "forbidden",
        "ankle-pump\n",
        ("to 20 degrees, allowed up to 0", "use it in phase 2 or later"),
    ),
    Case(
        "an entry that waits for the restriction on the usual track only",
        REPAIR,
        RAISE_USE,
        RAISE_USE + "        week: 9\n        delayed-week: 11\n",
        "forbidden",
        "heel-raise\n",
        ("in week 11 (delayed)",),
        before=((REPAIR, LAST, more("movement", LIFTED)),),
    ),
    Case(
        "a position that the posture implies",
        RAISE,
        "posture: standing",
        "posture: half kneeling",
        "forbidden",
        "heel-raise\n",
        ("kneeling",),
        before=((REPAIR, LAST, more("position", "    position: kneeling\n")),),
        at_path=REPAIR,
    ),
    Case(
        "a position that the exercise states",
        RAISE,
        "strains: [knee]\n",
        "strains: [knee]\npositions: [low seat]\n",
        "forbidden",
        "heel-raise\n",
        ("low seat",),
        before=((REPAIR, LAST, more("position", "    position: low seat\n")),),
        at_path=REPAIR,
    ),
    Case(
        "lying on the operated side",
        PUMP,
        "posture: lying on the back",
        "posture: lying on the side",
        "forbidden",
        "ankle-pump\n",
        ("lying on the operated side",),
        before=(
            (REPAIR, LAST, more("position", "    position: lying on the operated side\n")),
            (PUMP, "  lain-on: no\nother-leg", "  lain-on: yes\nother-leg"),
        ),
        at_path=REPAIR,
        also=("alternative-forbidden",),
    ),
    Case(
        "a variation that a restriction forbids, where a use names it",
        REPAIR,
        RAISE_USE,
        RAISE_USE + "        variation: seated\n",
        "forbidden",
        "seated",
        ("'heel-raise/seated' in phase 2",),
        before=(
            (REPAIR, LAST, more("position", "    position: legs crossed\n")),
            (
                RAISE,
                "    demand: lying or sitting\n",
                "    demand: lying or sitting\n    positions: [legs crossed]\n",
            ),
        ),
    ),
    Case(
        "a joint that is held is isometric work, also in the supporting leg",
        RAISE,
        "    - {joint: ankle, movement: plantarflexion, how: active, against: gravity, to: 30 deg}\n"
        "  holds: []\n  carries: shared\n  lain-on: no\nset-up",
        "    - {joint: ankle, movement: plantarflexion, how: active, against: gravity, to: 30 deg}\n"
        "  holds:\n    - {joint: hip, movement: abduction, how: active, against: gravity}\n"
        "  carries: shared\n  lain-on: no\nset-up",
        "forbidden",
        "heel-raise\n",
        ("hip abduction (isometric)",),
        before=(
            (
                REPAIR,
                LAST,
                more(
                    "movement", "    joint: hip\n    movement: abduction\n    how: [isometric]\n", leg="both"
                ),
            ),
        ),
        at_path=REPAIR,
    ),
)
RELEASED = more("movement", LIFTED, "{week: 2, delayed-week: 2, release: your surgeon}")
ALLOWED_BY = "        when: Your surgeon has said so.\n"
STAIRS_ITEM = """\
name: Stairs
purpose: Up and down safely.
demand: moving or stepping
posture: standing
helper: none
support: both hands
operated-leg:
  moves: []
  holds: []
  carries: part
  lain-on: no
other-leg:
  moves: []
  holds:
    - {joint: hip, movement: abduction, how: isometric, against: gravity}
  carries: whole body
  lain-on: no
steps: [Hold the banister.]
avoid: [Hurrying.]
"""
PHASE_2_GOES_UP = "set-by: physiotherapist\n      source: {text: Invented for tests, status: invented}\n"
LISTED = PHASE_2_GOES_UP + "    daily-life: [stairs]\n"
WHOLE_DAY = ("daily-life-incomplete",)
PRESS = (
    FILES[PUMP]
    .replace("Ankle pump", "Calf press")
    .replace("strains: []\n", "strains: []\npositions: [legs crossed]\n")
)
PRESSES = {"exercises/calf-press.yml": PRESS}
CLIMBS = {STAIRS: STAIRS_ITEM}

CASES = (
    *FORBIDDEN,
    Case(
        "what only a person can allow needs a use that waits for it",
        REPAIR,
        LAST,
        RELEASED,
        "forbidden-until-released",
        "heel-raise\n",
        ("'heel-raise' in phase 2 breaks 'more'", "'when'"),
    ),
    Case(
        "a movement that does not say how far cannot be judged against a limit",
        PUMP,
        PUMP_MOVES,
        "{joint: ankle, movement: dorsiflexion, how: active, against: nothing}",
        "cannot-be-judged",
        "{joint: ankle, movement: dorsi",
        ("'ankle-pump': ankle dorsiflexion (active) does not say how far", "'no-stretch'", "'to'"),
    ),
    Case(
        "resisted work whose dose step names no load cannot be judged",
        RAISE,
        RAISE_LEGS,
        RAISE_LEGS.replace("how: active", "how: resisted"),
        "cannot-be-judged",
        "2 x 8,",
        ("the dose step names no load", "'more'"),
        before=(
            (REPAIR, LAST, more("outside-load", "    loads: [weight]\n")),
            (REPAIR, "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]", "[2 x 8, 3 x 10 with light band]"),
        ),
        at_path=REPAIR,
    ),
    Case(
        "daily life is held to the same restrictions",
        REPAIR,
        LAST,
        more(
            "weight-bearing", "    allows: touch\n    kilograms: 9\n", "{week: 6, delayed-week: 9, phase: 2}"
        ),
        "daily-life-forbidden",
        "stairs]",
        ("'stairs' in phase 2 breaks 'more'", "carries 'part', allowed is 'touch'"),
        before=((REPAIR, PHASE_2_GOES_UP, LISTED),),
        beside=CLIMBS,
        also=(*WHOLE_DAY, "forbidden"),
    ),
    Case(
        "a weight restriction in part says how much",
        REPAIR,
        LAST,
        more("weight-bearing", "    allows: partial\n", "{week: 5, delayed-week: 5, phase: 2}"),
        "restriction-without-amount",
        "partial",
        ("'more'", "'percent'"),
    ),
    Case(
        "lying on the side says on which",
        RAISE,
        "posture: standing",
        "posture: lying on the side",
        "side-not-stated",
        "lying on the side",
        ("'heel-raise'", "exactly one leg"),
    ),
    Case(
        "a leg that one stands on alone works at its hip",
        RAISE,
        "  carries: shared\n  lain-on: no\nother-leg",
        "  carries: whole body\n  lain-on: no\nother-leg",
        "stance-leg-not-stated",
        "whole body",
        ("'heel-raise' stands on one leg", "hip abduction"),
    ),
    Case(
        "more days than a week has with their rest",
        REPAIR,
        "rest-days: 1",
        "rest-days: 3",
        "week-too-short",
        "3\n        rest-days: 3",
        ("3 days with 3 rest days in between are more than a week",),
    ),
    Case(
        "strength work says its rest days",
        REPAIR,
        "        rest-days: 1\n",
        "",
        "rest-days-missing",
        "heel-raise\n",
        ("'heel-raise' in phase 2 is strength work", "'rest-days'"),
    ),
    Case(
        "a dose step that is in no respect harder",
        REPAIR,
        "[2 x 8, 3 x 8, 3 x 10,",
        "[2 x 8, 3 x 10, 3 x 8,",
        "step-not-harder",
        "3 x 8,",
        ("step 3 is not harder", "rising"),
    ),
    Case(
        "more exercises at once than the clinic's limit",
        CLINIC,
        "demo: yes",
        "limits: {exercises-at-once: 1}\ndemo: yes",
        "too-many-exercises",
        "- use: ankle-pump\n        dose-steps: [5 times an hour]\n",
        ("phase 2 has 2 exercises at once, the limit is 1",),
        before=(
            (
                REPAIR,
                RAISE_USE,
                "      - use: ankle-pump\n        dose-steps: [5 times an hour]\n        times-a-day: 1\n"
                "        days-a-week: 7\n        then: ends\n" + RAISE_USE,
            ),
        ),
        at_path=REPAIR,
    ),
    Case(
        "more minutes a day than the clinic's limit",
        REPAIR,
        "        times-a-day: 1\n        days-a-week: 3",
        "        times-a-day: 5\n        days-a-week: 3",
        "too-many-minutes",
        "- use: heel-raise",
        ("a full day of phase 2 takes 35 minutes, the limit is 30",),
    ),
    Case(
        "pain may not be higher after the exercise than during it",
        REPAIR,
        "      after: 2",
        "      after: 3",
        "pain-limits",
        "3\n      next-morning: 0\n      set-by: surgeon",
        ("phase 1 allows 3 after, but only 2 during",),
    ),
    Case(
        "pain may not be higher on the next morning than after the exercise",
        REPAIR,
        "      next-morning: 0\n      set-by: surgeon",
        "      next-morning: 3\n      set-by: surgeon",
        "pain-limits",
        "3\n      set-by: surgeon",
        ("allows 3 on the next morning, but only 2 after",),
    ),
    Case(
        "pain above 5 of 10 is more than the pain-monitoring model accepts",
        REPAIR,
        "      during: 3",
        "      during: 6",
        "pain-limit-high",
        "6\n      after",
        ("phase 2 allows a pain of 6 of 10",),
    ),
    Case(
        "a helper who is needed has a part",
        PUMP,
        "helper: none",
        "helper: needed",
        "helper-role-missing",
        "needed",
        ("'ankle-pump' needs a helper", "'must-not'"),
    ),
    Case(
        "standing work has something to hold",
        RAISE,
        "support: fingertips",
        "support: none",
        "support-missing",
        "none\nequipment",
        ("'heel-raise' is standing work without support",),
    ),
    Case(
        "a variation that is standing work has something to hold",
        PUMP,
        "dose:\n",
        "variations:\n  standing:\n    is: harder\n    name: Standing\n    change: Stand.\n"
        "    operated-leg: same\n    other-leg: same\n    demand: standing on two legs\ndose:\n",
        "support-missing",
        "standing on two legs",
        ("'ankle-pump/standing'",),
    ),
    Case(
        "before the last phase the floor is never the only place",
        PUMP,
        "surface: [bed, floor]",
        "surface: [floor]",
        "floor-only",
        "ankle-pump\n",
        ("'ankle-pump' in phase 1 can only be done on the floor",),
        at_path=REPAIR,
    ),
    Case(
        "a programme that speaks of daily life speaks of the whole day",
        REPAIR,
        PHASE_2_GOES_UP,
        LISTED,
        "daily-life-incomplete",
        "- name: Protect",
        ("sleeping, bed, toilet, wound, dressing, chair, car",),
        beside=CLIMBS,
    ),
    Case(
        "a strain without an alternative is listed for the clinician",
        RAISE,
        "alternative: ankle-pump\n",
        "",
        "strain-without-alternative",
        "[knee]",
        ("'heel-raise' has no alternative that spares: knee",),
    ),
    Case(
        "an alternative that strains the same spares nothing",
        PUMP,
        "strains: []",
        "strains: [knee]",
        "strain-without-alternative",
        "[knee]",
        ("'heel-raise' has no alternative that spares: knee",),
        at_path=RAISE,
        also=("strain-without-alternative",),
    ),
    Case(
        "an alternative has a dose by then",
        RAISE,
        "alternative: ankle-pump\n",
        "alternative: calf-press\n",
        "alternative-not-at-hand",
        "heel-raise\n",
        ("'calf-press', which takes the place of 'heel-raise' in phase 2, is not used",),
        at_path=REPAIR,
        beside=PRESSES,
    ),
    Case(
        "an alternative is held to the restrictions when the exercise enters",
        RAISE,
        "alternative: ankle-pump\n",
        "alternative: calf-press\n",
        "alternative-forbidden",
        "heel-raise\n",
        ("'calf-press', which takes the place of 'heel-raise' in phase 2, is forbidden then",),
        before=((REPAIR, LAST, more("position", "    position: legs crossed\n")),),
        at_path=REPAIR,
        beside=PRESSES,
        also=("alternative-not-at-hand",),
    ),
    Case(
        "a milestone says who tests it",
        REPAIR,
        "        tester: clinician\n",
        "",
        "missing-key",
        "goal: The wound is closed.",
        ("'tester'",),
    ),
    Case(
        "a phase without a milestone would be left by time alone",
        REPAIR,
        "    milestones:\n      - goal: The wound is closed.\n"
        "        test: Look at the wound in good light.\n"
        "        passed: It is dry and closed.\n        tester: clinician\n",
        "    milestones: []\n",
        "out-of-range",
        "[]\n    uses:\n      - use: ankle-pump",
    ),
    Case(
        "a pain limit has a source",
        REPAIR,
        "      set-by: surgeon\n      source: {text: Invented for tests, status: invented}\n",
        "      set-by: surgeon\n",
        "missing-key",
        "during: 2",
        ("'source'",),
    ),
    Case(
        "a warning says what happens if it is not heeded",
        RAISE,
        "    consequence: can make you fall\n",
        "",
        "missing-key",
        "signal: warning",
        ("'consequence'",),
    ),
    Case(
        "after an operation on both sides no exercise relies on a good leg",
        REPAIR,
        "joint: ankle\naim",
        "both-sides: yes\njoint: ankle\naim",
        "relies-on-good-leg",
        "stairs]",
        ("'stairs' in phase 2 relies on the other leg alone",),
        before=((REPAIR, PHASE_2_GOES_UP, LISTED),),
        beside=CLIMBS,
        also=(*WHOLE_DAY,),
    ),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_mistake(case: Case) -> None:
    """Each mistake is found once, at its place, with words that help, and brings no other finding."""
    case.hold()


@pytest.mark.parametrize(
    "rest",
    [
        RAISED + "how: [active]\n    limit: 30 deg\n",
        RAISED + "how: [passive, assisted, isometric]\n",
        "    joint: knee\n    movement: flexion\n    how: [active]\n",
    ],
    ids=["up to the limit", "in other ways", "of another joint"],
)
def test_what_a_restriction_does_not_name_is_allowed(rest: str) -> None:
    """Each way of moving, each joint and each degree is restricted by itself."""
    assert problems_of(with_change(FILES, REPAIR, LAST, more("movement", rest))) == []


def test_half_the_body_weight_may_be_shared() -> None:
    """Standing on both legs shares the weight: half of it is enough (common practice, no source)."""
    half = "    allows: partial\n    percent: 50\n"
    assert problems_of(with_change(FILES, REPAIR, LAST, more("weight-bearing", half))) == []


@pytest.mark.parametrize(("week", "delayed", "allowed"), [(9, 12, True), (8, 12, False), (9, 11, False)])
def test_an_entry_is_held_to_both_tracks(week: int, delayed: int, allowed: bool) -> None:
    """A use may enter when the restriction has ended on the usual and on the delayed track."""
    files = with_change(FILES, REPAIR, LAST, more("movement", LIFTED))
    entry = f"        week: {week}\n        delayed-week: {delayed}\n"
    found = problems_of(with_change(files, REPAIR, RAISE_USE, RAISE_USE + entry))
    assert (found == []) is allowed


def test_a_use_that_waits_for_the_release_is_allowed() -> None:
    """What a person must allow is no mistake where the use says what it waits for."""
    files = with_change(FILES, REPAIR, LAST, RELEASED)
    files = with_change(files, REPAIR, RAISE_USE, RAISE_USE + ALLOWED_BY)
    assert [problem.message for problem in findings_of(files) if "phase 2" in problem.message] == []


def test_one_statement_of_rest_is_enough() -> None:
    """Strength work every day is allowed where 'rest-days: 0' shows that it was thought about."""
    files = with_change(
        FILES, REPAIR, "days-a-week: 3\n        rest-days: 1", "days-a-week: 7\n        rest-days: 0"
    )
    assert problems_of(files) == []


def test_limits_of_a_day_only_warn() -> None:
    """A clinic's limits and rising steps are warnings; what can hurt is an error."""
    warned = {"too-many-exercises", "too-many-minutes", "step-not-harder", "pain-limit-high"}
    for case in CASES:
        severity = next(item.severity for item in findings_of(case.files) if item.code == case.code)
        if case.code in warned:
            assert severity is Severity.WARNING
