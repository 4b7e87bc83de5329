"""Lists the keys of a daily-life file: sleeping, stairs, the car, with the same statements as an exercise."""

from __future__ import annotations

from generator.catalogue import terms
from generator.catalogue.daily_life import DailyLife
from generator.reading.fields_exercise import CAUTION, FINISH, HELPER, LEG, POSITIONS, WORDS
from generator.reading.fields_pose import FIELDS as POSE_FIELDS
from generator.reading.kinds import Choice, Id
from generator.reading.table import Field, Group, ListOf, Table

DAILY_LIFE = Table(
    "a daily-life item",
    DailyLife,
    "One thing of daily life and how to do it safely.",
    (
        Field("name", WORDS, "Everyday name."),
        Field("purpose", WORDS, "What it is about."),
        Field("demand", Choice(terms.Demand), "What it asks of the body."),
        Field("posture", Choice(terms.Posture), "Posture."),
        Field("helper", Choice(terms.Helper), "Whether a second person is wanted."),
        Field("helper-role", Group(HELPER), "What the helper does and must not do.", required=False),
        Field("support", Choice(terms.Support), "What the hands can reach or hold."),
        Field("equipment", ListOf(Id("equipment")), "Things it needs.", required=False),
        Field("strains", ListOf(Id("strain")), "Loads that some people must avoid.", required=False),
        POSITIONS,
        Field("operated-leg", Group(LEG), "What the operated leg does."),
        Field("other-leg", Group(LEG), "What the other leg does."),
        Field("steps", ListOf(WORDS, least=1, most=12), "One action a step."),
        Field("avoid", ListOf(WORDS, least=1), "What not to do."),
        Field("cautions", ListOf(Group(CAUTION)), "Warnings at the place of the hazard.", required=False),
        FINISH,
        *POSE_FIELDS,
    ),
)
