"""Lists the keys of an exercise file: what an editor can say about one exercise."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from generator.catalogue import terms
from generator.catalogue.dose import Dose, DoseKind, Span, Tempo
from generator.catalogue.exercise import (
    Caution,
    Exercise,
    HelperRole,
    JointWork,
    LegWork,
    Measurement,
    Variation,
)
from generator.reading.fields_judged import JUDGEMENT
from generator.reading.fields_pose import FIELDS as POSE_FIELDS
from generator.reading.forms import Same, SpanOf
from generator.reading.kinds import Choice, Flag, Id, Measure, Number, Plain, Words
from generator.reading.table import Field, Group, ListOf, MapOf, Table, Tagged

WORDS = Words()
SECONDS = Measure({"s": 1, "min": 60}, 0, 3600, "3 s", whole=True)
DEGREES = Measure({"deg": 1}, -90, 180, "30 deg")

JOINT_WORK = Table(
    "a joint's work",
    JointWork,
    "A joint that moves, or is held, in one direction.",
    (
        Field("joint", Choice(terms.Joint), "Which joint."),
        Field("movement", Choice(terms.Movement), "Which direction."),
        Field("how", Choice(terms.How), "How the muscles take part."),
        Field("against", Choice(terms.Against), "Whether the muscles work against gravity."),
        Field("to", DEGREES, "The largest angle reached, where no pose is drawn.", required=False),
    ),
)
LEG = Table(
    "a leg",
    LegWork,
    "What one leg does. Nothing is assumed: write an empty list [] where it moves or holds nothing.",
    (
        Field("moves", ListOf(Group(JOINT_WORK), most=12), "Joints that move."),
        Field("holds", ListOf(Group(JOINT_WORK), most=12), "Joints that are held still by muscle work."),
        Field("carries", Choice(terms.Carries), "How much of the body it carries."),
        Field("lain-on", Flag(), "Whether the person lies on this side."),
    ),
)
CAUTION = Table(
    "a caution",
    Caution,
    "A warning at the place of the hazard: the word, the hazard, what happens, what to do.",
    (
        Field("signal", Choice(terms.Signal), "Signal word; it must agree with the worst outcome."),
        Field("harm", Choice(terms.Harm), "The worst that can happen."),
        Field("hazard", WORDS, "What is dangerous."),
        Field("consequence", WORDS, "What happens if it is not avoided."),
        Field("avoid", WORDS, "What to do."),
    ),
)
MEASUREMENT = Table(
    "a measurement",
    Measurement,
    "One published muscle-activity value.",
    (
        Field("muscle", Id("muscle"), "Muscle or segment, from muscles.yml."),
        Field(
            "mean",
            Number(0, 300, whole=False),
            "Mean or median in percent of the study's reference.",
            example="30",
        ),
        Field("sd", Number(0, 300, whole=False), "Standard deviation.", required=False),
        Field("iqr", Number(0, 300, whole=False), "Width of the interquartile range.", required=False),
        Field("n", Number(1, 10_000), "People measured.", required=False),
        Field("study", Id("study"), "Study, from studies.yml."),
        Field("at-place", Plain("a table or page"), "Where in the study it stands.", example="Table 1"),
        Field(
            "load",
            Plain("a condition of load"),
            "Condition of load; same words, same condition.",
            example="weight of the leg",
        ),
        Field(
            "added-load",
            Choice(terms.OutsideLoad),
            "Load added beyond what the exercise itself asks for.",
            required=False,
        ),
        Field("statistic", Choice(terms.Statistic), "Mean or median.", required=False),
        Field("electrode", Choice(terms.Electrode), "Where it differs from the study's.", required=False),
        Field("normalisation", Choice(terms.Normalisation), "Where it differs.", required=False),
        Field("part", Choice(terms.Part), "Part of the repetition, where it differs.", required=False),
        Field(
            "read",
            ListOf(Plain("mean, sd or n", "mean|sd|n"), most=3),
            "Which numbers were read in the source; the others are recalled.",
        ),
        Field("remark", Plain(), "For clinicians.", required=False),
    ),
)
POSITIONS = Field(
    "positions",
    ListOf(Choice(terms.Position)),
    "Positions that a surgeon may forbid; lying on a side is stated by the legs.",
    required=False,
)
JUDGED = Field(
    "judged",
    ListOf(JUDGEMENT),
    "How hard muscles work that nobody measured: like another exercise, between two, or no load.",
    required=False,
)
FINISH = Field(
    "finish", WORDS, "What the last pose looks like, for those who cannot see the picture.", required=False
)
VARIATION = Table(
    "a variation",
    Variation,
    "An easier or harder form. What it does not state is as in the exercise.",
    (
        Field("is", Choice(terms.Change), "Easier or harder."),
        Field("name", WORDS, "Its name."),
        Field("change", WORDS, "What to do otherwise."),
        Field("operated-leg", Same(Group(LEG)), "What the operated leg does."),
        Field("other-leg", Same(Group(LEG)), "What the other leg does."),
        Field("demand", Choice(terms.Demand), "Where it differs.", required=False),
        POSITIONS,
        Field("equipment", ListOf(Id("equipment")), "What it needs besides.", required=False),
        Field("activity", ListOf(Group(MEASUREMENT)), "Measurements of this form.", required=False),
        JUDGED,
        Field("cautions", ListOf(Group(CAUTION)), "Cautions of this form.", required=False),
        FINISH,
        *POSE_FIELDS,
    ),
)
HELPER = Table(
    "a helper's part",
    HelperRole,
    "What a second person does.",
    (
        Field("does", WORDS, "What the helper does."),
        Field("must-not", WORDS, "What the helper must not do."),
    ),
)
TEMPO = Table(
    "a tempo",
    Tempo,
    "How long one repetition takes.",
    (
        Field("lift", SECONDS, "Seconds to move out.", required=False),
        Field("lower", SECONDS, "Seconds to come back.", required=False),
    ),
)


def _dose(kind: DoseKind, key: str) -> Callable[..., Dose]:
    """Return a builder that takes the kind's own word for what it counts."""

    def build(**values: Any) -> Dose:
        values["count"] = values.pop(key)
        values.setdefault("sets", Span(1, 1, 1))
        return Dose(kind=kind, **values)

    return build


def _dose_table(kind: DoseKind, key: str, counted: str, most: int, *own: Field) -> Table:
    shared = (
        Field("bands", ListOf(Choice(terms.BandStrength)), "Bands that may be added.", required=False),
        Field("kilograms", Number(0, 50, whole=False), "Most weight that may be added.", required=False),
    )
    count = Field(key, SpanOf(Number(1, most), Span), counted)
    return Table(f"a dose in {kind.value}", _dose(kind, key), "What is permitted.", (count, *own, *shared))


_SETS = Field("sets", SpanOf(Number(1, 10), Span), "Sets.", example={"usual": "2", "from": "1", "to": "3"})
_HOLD = Field("hold", SpanOf(SECONDS, Span), "How long to hold.")
_OPTIONAL_HOLD = Field("hold", SpanOf(SECONDS, Span), "How long to hold at the end.", required=False)
_REST = Field("rest", SECONDS, "Rest between sets.", required=False)
_TEMPO = Field("tempo", Group(TEMPO), "Pace of one repetition.", required=False)

DOSE = Tagged(
    "kind",
    {
        kind.value: _dose_table(kind, key, counted, most, *own)
        for kind, key, counted, most, own in (
            (
                DoseKind.REPETITIONS,
                "repetitions",
                "Repetitions in a set.",
                50,
                (_SETS, _OPTIONAL_HOLD, _TEMPO, _REST),
            ),
            (DoseKind.HOLDS, "holds", "Holds in a set.", 50, (_SETS, _HOLD, _REST)),
            (DoseKind.MINUTES, "minutes", "Minutes.", 60, ()),
            (DoseKind.HOURLY, "times", "Repetitions each hour while awake.", 60, (_OPTIONAL_HOLD, _TEMPO)),
            (DoseKind.STEPS, "steps", "Steps walked.", 20_000, ()),
        )
    },
)
EXERCISE = Table(
    "an exercise",
    Exercise,
    "What is done, shared by all programmes.",
    (
        Field("name", WORDS, "Everyday name."),
        Field("purpose", WORDS, "Why it is done, in everyday words."),
        Field("role", Choice(terms.Role), "What it is for."),
        Field("demand", Choice(terms.Demand), "What it asks of the body."),
        Field("posture", Choice(terms.Posture), "Start posture."),
        Field("surface", ListOf(Choice(terms.Surface), least=1), "Where it can be done."),
        Field("helper", Choice(terms.Helper), "Whether a second person is wanted."),
        Field("helper-role", Group(HELPER), "What the helper does and must not do.", required=False),
        Field("support", Choice(terms.Support), "What the hands can reach or hold."),
        Field("equipment", ListOf(Id("equipment")), "Things it needs.", required=False),
        Field("anchor", Choice(terms.Landmark), "Height of a band's anchor.", required=False),
        Field("strains", ListOf(Id("strain")), "Loads that some people must avoid."),
        POSITIONS,
        Field("requires", ListOf(Id("exercise")), "Exercises to master first, all.", required=False),
        Field("requires-one-of", ListOf(Id("exercise")), "At least one of these first.", required=False),
        Field("alternative", Id("exercise"), "What to do instead, for another person.", required=False),
        Field("sides", Choice(terms.Sides), "'both' where each side does the dose in turn.", required=False),
        Field("operated-leg", Group(LEG), "What the operated leg does."),
        Field("other-leg", Group(LEG), "What the other leg does."),
        Field("set-up", ListOf(WORDS), "What to prepare.", required=False),
        Field("start", WORDS, "Start position."),
        FINISH,
        Field("steps", ListOf(WORDS, least=1, most=12), "One action a step."),
        Field("limits", ListOf(WORDS), "How far, and no further.", required=False),
        Field("feel", WORDS, "What it should feel like."),
        Field("not-feel", WORDS, "What it should not feel like."),
        Field("mistakes", ListOf(WORDS), "Common mistakes.", required=False),
        Field("cautions", ListOf(Group(CAUTION)), "Warnings at the place of the hazard.", required=False),
        Field("dose", DOSE, "What is permitted; a use in a phase says what is done."),
        *POSE_FIELDS,
        Field("variations", MapOf(Group(VARIATION)), "Easier and harder forms.", required=False),
        Field("activity", ListOf(Group(MEASUREMENT)), "Published muscle activity.", required=False),
        JUDGED,
    ),
)
