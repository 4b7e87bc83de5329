"""Lists the keys of a programme file: phases, restrictions, milestones and uses."""

from __future__ import annotations

from generator.catalogue import terms
from generator.catalogue.base import Source, SourceStatus
from generator.catalogue.programme import (
    Acceptance,
    Band,
    End,
    ImpactRestriction,
    LoadRestriction,
    Milestone,
    MovementRestriction,
    PainLimit,
    Phase,
    PositionRestriction,
    Programme,
    Use,
    Waiver,
    WeightRestriction,
)
from generator.reading.doses import SCHEMA, WANTED, parse_step
from generator.reading.fields_exercise import CAUTION, DEGREES, WORDS
from generator.reading.kinds import Choice, Flag, Id, Number, Parsed, Plain
from generator.reading.table import Field, Group, ListOf, Numbered, Table, Tagged

WEEK = Number(0, 104)
PERCENT = Number(0, 300, whole=False)
ROLE = Plain("the role of a person, such as surgeon")

SOURCE = Table(
    "a source",
    Source,
    "Where a rule or number comes from.",
    (
        Field(
            "text",
            Plain("a citation or a plain statement", ".{1,500}"),
            "Citation or statement.",
            example="Not stated yet",
        ),
        # A new file must not claim that anybody read anything.
        Field("status", Choice(SourceStatus, (SourceStatus.PATIENT,)), "How sure it is.", example="invented"),
    ),
)
END = Table(
    "an end",
    End,
    "A restriction ends when week and phase are reached, or when the named person lifts it.",
    (
        Field("week", WEEK, "Full weeks after the operation, usual track.", example="6"),
        Field("delayed-week", WEEK, "The same on the delayed track.", example="8"),
        Field("phase", Number(1, 12), "Phase that must have been entered.", required=False),
        Field("release", WORDS, "Who lifts it.", required=False),
    ),
)
_RESTRICTION = (
    Field("id", Id(), "Name of its own.", example="no-stretch"),
    Field("leg", Choice(terms.Leg), "Which leg."),
    Field("words", WORDS, "As said to the patient."),
    Field("why", WORDS, "One plain sentence."),
    Field("until", Group(END), "When it ends."),
    Field("source", Group(SOURCE), "Where it comes from."),
)
RESTRICTION = Tagged(
    "kind",
    {
        "movement": Table(
            "a movement restriction",
            MovementRestriction,
            "Forbids a movement in the listed ways.",
            (
                *_RESTRICTION,
                Field("joint", Choice(terms.Joint), "Which joint."),
                Field("movement", Choice(terms.Movement), "Which direction."),
                Field("how", ListOf(Choice(terms.How), least=1), "In which ways."),
                Field("limit", DEGREES, "Allowed up to here; left out: not at all.", required=False),
                Field("against", Choice(terms.Against), "Only when against this.", required=False),
            ),
        ),
        "weight-bearing": Table(
            "a weight restriction",
            WeightRestriction,
            "Limits the weight on the leg.",
            (
                *_RESTRICTION,
                Field("allows", Choice(terms.WeightBearing), "What is allowed."),
                Field("kilograms", Number(0, 200, whole=False), "How much.", required=False),
                Field("percent", Number(0, 100, whole=False), "How much of body weight.", required=False),
            ),
        ),
        "position": Table(
            "a position restriction",
            PositionRestriction,
            "Forbids a position.",
            (*_RESTRICTION, Field("position", Choice(terms.Position), "Which position.")),
        ),
        "impact": Table("an impact restriction", ImpactRestriction, "Forbids jumping.", _RESTRICTION),
        "outside-load": Table(
            "a load restriction",
            LoadRestriction,
            "Forbids added loads.",
            (
                *_RESTRICTION,
                Field("loads", ListOf(Choice(terms.OutsideLoad), least=1), "Which loads."),
                Field("kilograms", Number(0, 50, whole=False), "Most allowed.", required=False),
            ),
        ),
    },
)
BAND = Table(
    "a band",
    Band,
    "Activity band: above the first number, up to and including the second.",
    (
        Field("above", PERCENT, "Lower end, not included.", example="0"),
        Field("up-to", PERCENT, "Upper end, included.", example="20"),
    ),
)
PAIN = Table(
    "a pain limit",
    PainLimit,
    "Highest pain at the operated site, 0 to 10. There is no default.",
    (
        Field("during", Number(0, 10), "While exercising."),
        Field("after", Number(0, 10), "After exercising."),
        Field("next-morning", Number(0, 10), "The next morning."),
        Field("set-by", ROLE, "Who set it.", example="physiotherapist"),
        Field("source", Group(SOURCE), "Where it comes from."),
    ),
)
MILESTONE = Table(
    "a milestone",
    Milestone,
    "What must be reached before the next phase.",
    (
        Field("goal", WORDS, "What is to be reached."),
        Field("test", WORDS, "How to test it."),
        Field("passed", WORDS, "The pass mark."),
        Field("tester", Choice(terms.Tester), "Who tests."),
    ),
)
WAIVER = Table(
    "a waiver",
    Waiver,
    "Sets a prerequisite aside for this use; role and reason are shown.",
    (
        Field("prerequisite", Id("exercise"), "Which exercise need not come first."),
        Field("role", ROLE, "Who decided.", example="physiotherapist"),
        Field("reason", WORDS, "Why."),
    ),
)
ACCEPTANCE = Table(
    "an acceptance",
    Acceptance,
    "Lets this use stand above the phase's band; role and reason are shown.",
    (
        Field("up-to", PERCENT, "Highest activity that is accepted, in %MVIC.", example="55"),
        Field("role", ROLE, "Who decided.", example="physiotherapist"),
        Field("reason", Plain("a reason", ".{1,500}"), "Why, for clinicians."),
    ),
)
USE = Table(
    "a use",
    Use,
    "An exercise in a phase.",
    (
        Field("use", Id("exercise"), "Which exercise."),
        Field("variation", Id(), "Which of its variations.", required=False, example="small-lift"),
        Field("week", WEEK, "Entry later than the phase.", required=False),
        Field("delayed-week", WEEK, "The same on the delayed track.", required=False),
        Field("when", WORDS, "What must be reached besides the week.", required=False),
        Field("dose-steps", ListOf(Parsed(parse_step, SCHEMA, WANTED), least=1, most=8), "First to last."),
        Field("times-a-day", Number(1, 12), "How often a day."),
        Field("days-a-week", Number(1, 7), "On how many days."),
        Field("rest-days", Number(0, 6), "Whole days of rest in between.", required=False),
        Field("then", Choice(terms.Then), "What becomes of it after the phase.", example="ends"),
        Field("replaced-by", Id("exercise"), "What takes its place.", required=False),
        Field("note", WORDS, "What is special here.", required=False),
        Field("cautions", ListOf(Group(CAUTION)), "Warnings of this use.", required=False),
        Field("waives", ListOf(Group(WAIVER)), "Prerequisites set aside.", required=False),
        Field("accepts", Group(ACCEPTANCE), "Leave to stand above the band.", required=False),
    ),
)
PHASE = Table(
    "a phase",
    Phase,
    "A stage of recovery; its number is its place in the file.",
    (
        Field("name", WORDS, "Short name."),
        Field("summary", WORDS, "What this phase is about."),
        Field("week", WEEK, "Starts when so many full weeks are over."),
        Field("delayed-week", WEEK, "The same when recovery is delayed."),
        Field("week-source", Group(SOURCE), "Where the weeks come from."),
        Field("goals", ListOf(WORDS, least=1), "What to reach."),
        Field("avoid", ListOf(WORDS, least=1), "What to avoid."),
        Field("band", Group(BAND), "Activity band of the programme's muscles."),
        Field("demand", Choice(terms.Demand), "The highest that an exercise may ask."),
        Field("weight-bearing", WORDS, "How much weight the leg may take."),
        Field("walking-aid", WORDS, "Which aid, and how it is given up."),
        Field("brace", WORDS, "Whether a brace is worn.", required=False),
        Field("pain", Group(PAIN), "Pain limit."),
        Field("going-up", WORDS, "When to take the next dose step."),
        Field("milestones", ListOf(Group(MILESTONE), least=1), "Before moving on."),
        Field("daily-life", ListOf(Id("daily-life-item")), "Items of this phase.", required=False),
        Field("uses", ListOf(Group(USE), least=1), "Exercises, in any order: the order is computed."),
    ),
)
PROGRAMME = Table(
    "a programme",
    Programme,
    "What follows one operation.",
    (
        Field("name", WORDS, "Name."),
        Field("operation", WORDS, "What was done, in everyday words."),
        Field("summary", WORDS, "What this programme is about."),
        Field("joint", Choice(terms.Joint), "The operated joint."),
        Field("aim", Choice(terms.MuscleAim), "Protects or trains its muscles."),
        Field("muscles", ListOf(Id("muscle"), least=1), "Which muscles."),
        Field("margin", Number(0, 20, whole=False), "Points above a band, late in a phase.", required=False),
        Field("level-span", Number(1, 50, whole=False), "Widest level in points.", required=False),
        Field("both-sides", Flag(), "Whether it holds for both sides operated.", required=False),
        Field("delay-reasons", ListOf(WORDS, least=1), "Reasons for the delayed track."),
        Field("restrictions", ListOf(RESTRICTION), "What is forbidden, and until when."),
        Field("phases", Numbered(Group(PHASE)), "Phases, first to last."),
    ),
)
