"""Mistakes in poses, typed as an editor would: pictures, words and limits cannot disagree."""

from __future__ import annotations

import pytest

from generator.checks import poses
from generator.problems import Severity
from tests.cases import Case
from tests.content import FILES, findings_of, problems_of, with_change

PUMP = "exercises/ankle-pump.yml"
REPAIR = "programmes/tendon-repair.yml"
START = "    operated: {ankle: {dorsiflexion: 0}}\n"
FINISH = "    like: start\n    operated: {ankle: {plantarflexion: 20}}\n"
POSES = f"""\
finish: Your toes point away from you.
poses:
  start:
{START}  finish:
{FINISH}figure:
  with: [bed, pillow]
"""
TYPED = ", to: 20 deg"
NAME = "name: Ankle pump\n"
# What sets the scene: the exercise has poses, and no angle beside them.
DRAWN = ((PUMP, TYPED, ""), (PUMP, NAME, NAME + POSES))
OPERATED_ONLY = "other-leg:\n  moves: []\n"
OTHER_LIES = "  lain-on: no\nstart: Lie"


def drawn(
    rule: str, old: str, new: str, code: str, mark: str, *says: str, also: tuple[str, ...] = ()
) -> Case:
    """Return a mistake in the exercise with poses."""
    return Case(rule, PUMP, old, new, code, mark, says, also, before=DRAWN)


CASES = (
    Case(
        "an angle is typed beside the poses that show it",
        PUMP,
        NAME,
        NAME + POSES,
        "typed-and-drawn",
        "20 deg",
        ("ankle plantarflexion", "delete 'to'"),
    ),
    drawn(
        "a joint goes further than anybody's",
        "plantarflexion: 20}",
        "plantarflexion: 95}",
        "pose-angle-range",
        "95}",
        "ankle plantarflexion is 95°",
    ),
    drawn(
        "a knee bends backwards",
        FINISH,
        "    like: start\n    operated: {ankle: {plantarflexion: 20}, knee: {flexion: -30}}\n",
        "pose-knee-backwards",
        "-30",
        "operated knee flexion is -30°",
    ),
    drawn(
        "a joint has no such movement",
        FINISH,
        "    like: start\n    operated: {ankle: {plantarflexion: 20}, knee: {abduction: 15}}\n",
        "pose-joint-movement",
        "15}}",
        "knee abduction",
    ),
    drawn(
        "angles are typed in radians",
        FINISH,
        "    like: start\n    operated: {ankle: {plantarflexion: 0.35}}\n",
        "pose-radians",
        "0.35",
        "degrees",
    ),
    drawn(
        "a pose is like one that is not there",
        "like: start",
        "like: begin",
        "pose-like-unknown",
        "like: begin",
        "'begin'",
    ),
    drawn(
        "poses are like one another in a circle",
        START,
        "    like: finish\n" + START,
        "pose-like-circle",
        "like: finish",
        "start → finish → start",
        also=("pose-like-circle",),
    ),
    drawn(
        "a joint is misspelt",
        START,
        START.replace("ankle", "anckle"),
        "unknown-choice",
        "anckle",
        "'anckle' is no joint known here",
        "did you mean 'ankle'?",
    ),
    drawn(
        "a posture is misspelt",
        START,
        START + "    posture: sittng\n",
        "unknown-choice",
        "sittng",
        "did you mean 'sitting'?",
    ),
    drawn(
        "nothing carries the person",
        START,
        START + "    rests-on: []\n",
        "pose-not-carried",
        "operated: {ankle: {dorsiflexion",
        "nothing carries 'start'",
        also=("pose-not-carried",),
    ),
    drawn(
        "a part rests in two places at once",
        START,
        "    posture: sitting\n    rests-on: [pelvis on seat, pelvis on step, feet]\n",
        "pose-sinks",
        "posture: sitting",
        "too deep",
        also=("pose-sinks",),
    ),
    drawn(
        "a sole lies flat beside the buttock with a straight knee",
        FINISH,
        "    operated: {hip: {flexion: 60}, knee: {flexion: 10}}\n"
        "    rests-on: [pelvis, chest, head on pillow, hands, feet]\n",
        "pose-not-reached",
        "10}}",
        "comes out as",
        also=("pose-sinks",),
    ),
    Case(
        "a pose lies on the other side than the legs say",
        PUMP,
        START,
        START + "    on-side: operated\n",
        "pose-on-wrong-side",
        "operated\n  finish",
        ("the legs say the other one",),
        before=(
            *DRAWN,
            (PUMP, "posture: lying on the back", "posture: lying on the side"),
            (PUMP, OTHER_LIES, OTHER_LIES.replace("no", "yes")),
        ),
    ),
    drawn(
        "the poses move a joint that the leg does not state",
        FINISH,
        "    like: start\n    operated: {ankle: {plantarflexion: 20}, hip: {abduction: 25}}\n",
        "movement-not-stated",
        "- {joint: ankle, movement: plantarflexion, how: active, against: nothing}",
        "the operated hip turns 20 degrees about abduction",
    ),
    drawn(
        "a leg states a movement that no pose shows",
        OPERATED_ONLY,
        "other-leg:\n  moves:\n    - {joint: knee, movement: flexion, how: active, against: nothing}\n",
        "movement-not-shown",
        "{joint: knee",
        "other knee flexion",
    ),
    drawn(
        "a finish has no words",
        "finish: Your toes point away from you.\n",
        "",
        "finish-not-described",
        "start:\n    operated",
        "'ankle-pump'",
    ),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_mistake(case: Case) -> None:
    """Each mistake is found once, at its place, with words that help, and brings no other finding."""
    case.hold()


def files_with(old: str = "", new: str = "") -> dict[str, str]:
    """Return the small content with poses in one exercise, and one change in it."""
    files = dict(FILES)
    for path, before, after in DRAWN:
        files = with_change(files, path, before, after)
    return with_change(files, PUMP, old, new) if old else files


def test_sound_poses_are_no_finding() -> None:
    """Poses as an editor would type them, with no angle beside them, pass in silence."""
    assert problems_of(files_with()) == []


def test_a_movement_up_to_ten_degrees_goes_with_others() -> None:
    """What turns no more than 10 degrees need not be stated (our own choice)."""
    moved = FINISH.replace("20}", "20}, hip: {abduction: 13}")
    assert problems_of(files_with(FINISH, moved)) == []


def test_words_that_differ_only_warn() -> None:
    """Where poses and statements differ is for the editor to judge; what cannot be drawn is not."""
    severities = {rule.code: rule.severity for rule in poses.RULES}
    only_told = {"movement-not-stated", "movement-not-shown", "finish-not-described"}
    assert {code for code, weight in severities.items() if weight is not Severity.ERROR} == only_told


STRETCHED = "operated: {ankle: {dorsiflexion: 5}}"


def test_a_start_pose_beyond_a_limit_is_found() -> None:
    """A limit is held in the start pose too, which no leg states as a movement."""
    found = findings_of(files_with("operated: {ankle: {dorsiflexion: 0}}", STRETCHED))
    assert [problem.code for problem in found] == ["forbidden"]
    assert "ankle dorsiflexion reaches 5 degrees in the poses, allowed up to 0" in found[0].message


def test_between_the_poses_counts() -> None:
    """Poses are held to a limit on the way as well: the middle of three is one of them."""
    middle = (
        FINISH.replace("finish", "middle")
        + "  middle:\n    like: start\n    operated: {ankle: {dorsiflexion: 8}}\n"
    )
    found = findings_of(files_with(FINISH, middle))
    assert [problem.code for problem in found] == ["forbidden"]


LIMIT = """\
  - kind: movement
    id: middle-line
    leg: operated
    words: Do not let your leg cross the middle line.
    why: The repaired tendon must not be stretched.
    until: {week: 6, delayed-week: 8, phase: 2}
    source: {text: Invented for tests, status: invented}
    joint: hip
    movement: adduction
    how: [passive, assisted, active]
    limit: 0 deg
"""
ON_SIDE = f"""\
finish: Your toes point away from you.
poses:
  start:
    rests-on: [pelvis, head on pillow, other upper arm, other shin, operated handSAGGING]
    other: {{hip: {{flexion: 45}}, knee: {{flexion: 80}}}}
    operated: {{hip: {{flexion: 0}}, knee: {{flexion: 0}}}}
  finish:
{FINISH}"""


@pytest.mark.parametrize(("sagging", "codes"), [("", []), (", operated shin", ["forbidden"])])
def test_a_top_leg_that_sags_past_the_middle_line_is_found(sagging: str, codes: list[str]) -> None:
    """Lying on the side, a top leg that sinks to the bed comes to adduction, though nobody typed an angle."""
    files = with_change(FILES, PUMP, TYPED, "")
    files = with_change(files, PUMP, NAME, NAME + ON_SIDE.replace("SAGGING", sagging))
    files = with_change(files, PUMP, "posture: lying on the back", "posture: lying on the side")
    files = with_change(files, PUMP, OTHER_LIES, OTHER_LIES.replace("no", "yes"))
    files = with_change(files, REPAIR, "  - kind: impact\n", LIMIT + "  - kind: impact\n")
    assert [problem.code for problem in findings_of(files)] == codes


def test_a_movement_that_nobody_states_cannot_be_judged() -> None:
    """Where only work is restricted, a joint that moves and is not stated counts as forbidden."""
    limit = LIMIT.replace("adduction", "abduction").replace("[passive, assisted, active]", "[active]")
    files = with_change(
        files_with(FINISH, FINISH.replace("20}", "20}, hip: {abduction: 25}")),
        REPAIR,
        "  - kind: impact\n",
        limit + "  - kind: impact\n",
    )
    codes = {problem.code for problem in findings_of(files)}
    assert codes == {"cannot-be-judged", "movement-not-stated"}
