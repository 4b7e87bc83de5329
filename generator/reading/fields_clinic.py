"""Lists the keys of the shared files: clinic, safety texts, studies, muscles, things, strains, terms."""

from __future__ import annotations

from generator.catalogue import terms
from generator.catalogue.clinic import (
    Action,
    Clinic,
    CodeWeight,
    Equipment,
    HelperPage,
    Limits,
    Muscle,
    NotUsed,
    Safety,
    Sign,
    Strain,
    Study,
    Telephone,
    Term,
    Worse,
)
from generator.catalogue.editorial import Publish, Weight
from generator.reading.fields_exercise import WORDS
from generator.reading.fields_programme import SOURCE
from generator.reading.kinds import Choice, Flag, Id, Number, Plain
from generator.reading.table import Field, Group, ListOf, Table

NUMBER = Plain("a telephone number", r"\+?[0-9][0-9 ()-]{1,20}")
LANGUAGE = Plain("a language code, such as en or de", r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*")
ADDRESS = Plain("a web address that begins with https:// or http://", r"https?://[^\s/]+(/\S*)?")
DOI = Plain("a DOI, such as 10.1000/182", r"10\.\d{4,9}/\S+")

TELEPHONE = Table(
    "the telephone lines",
    Telephone,
    "Numbers that patients call.",
    (
        Field("clinic", NUMBER, "The clinic's line."),
        Field("hours", WORDS, "When it is answered."),
        Field("out-of-hours", NUMBER, "Outside these hours."),
        Field("emergency", NUMBER, "The emergency number."),
    ),
)
LIMITS = Table(
    "the limits of a day",
    Limits,
    "More than this is a warning.",
    (
        Field("exercises-at-once", Number(1, 30), "Exercises.", required=False),
        Field("minutes-a-day", Number(5, 240), "Minutes.", required=False),
    ),
)
CODE = Table(
    "the weight of a code",
    CodeWeight,
    "What the project lets one code weigh.",
    (
        Field("code", Id(), "The code, as a message shows it."),
        Field("weight", Choice(Weight), "What it weighs here."),
        Field("reason", Plain("a reason", ".{1,500}"), "Why, for those who ask later."),
    ),
)
CLINIC = Table(
    "the clinic",
    Clinic,
    "Who publishes.",
    (
        Field("name", WORDS, "Name of the clinic."),
        Field("about", WORDS, "Who it is, in a sentence."),
        Field("telephone", Group(TELEPHONE), "Telephone lines."),
        Field("languages", ListOf(LANGUAGE, least=1, most=40), "Languages, that of the content first."),
        Field("paper", Choice(terms.Paper), "Paper size."),
        Field("reach", Choice(terms.Reach), "Who can open the site."),
        Field("base-address", ADDRESS, "Where the site is served.", required=False),
        Field("limits", Group(LIMITS), "Limits of a day.", required=False),
        Field("demo", Flag(), "Yes: everything says Demonstration.", required=False),
        Field("publish", Choice(Publish), "Whether drafts are published too.", required=False),
        Field("codes", ListOf(Group(CODE)), "Codes that weigh more or less here.", required=False),
    ),
)
SIGN = Table(
    "a warning sign",
    Sign,
    "What one notices, what it can mean, what to do.",
    (
        Field("id", Id(), "Name of its own."),
        Field("level", Choice(terms.Level), "How fast help is needed."),
        Field("sign", WORDS, "What one notices."),
        Field("meaning", WORDS, "What it can mean."),
        Field("act", WORDS, "What to do."),
        Field("source", Group(SOURCE), "Where it comes from."),
    ),
)
_LINES = ListOf(WORDS, least=1)
WORSE = Table(
    "the three levels",
    Worse,
    "What to do when it got worse.",
    (
        Field("today", _LINES, "What to do at home today."),
        Field("clinic", _LINES, "When to call the clinic within a day."),
        Field("emergency", _LINES, "When to call the emergency number."),
    ),
)
HELPER = Table(
    "the helper's page",
    HelperPage,
    "What every helper should know.",
    (Field("does", _LINES, "What to do."), Field("must-not", _LINES, "What never to do.")),
)
SAFETY = Table(
    "the safety texts",
    Safety,
    "Texts that keep people safe; each page and sheet is read back for them.",
    (
        Field("deferral", WORDS, "Short note for every page and sheet."),
        Field("deferral-full", WORDS, "The same at length."),
        Field("demonstration", WORDS, "The line under demo: yes."),
        Field("start-only", WORDS, "Before every phase from the second."),
        Field("stay", WORDS, "What holds until the patient is told to move on."),
        Field("working-area", WORDS, "Fixed support and telephone."),
        Field("pain-rule", WORDS, "When to stop; the phase gives the number."),
        Field("signs", ListOf(Group(SIGN), least=1, distinct=True), "Warning signs."),
        Field("worse", Group(WORSE), "If it got worse."),
        Field("fall", _LINES, "If you fall, step by step."),
        Field("helper", Group(HELPER), "The page for the helper.", required=False),
    ),
)
NOT_USED = Table(
    "a value not used",
    NotUsed,
    "A value that the study gives and no exercise carries.",
    (
        Field("exercise", Plain("the name of an exercise"), "What was done."),
        Field("muscle", Id("muscle"), "Muscle or segment, from muscles.yml."),
        Field("mean", Number(0, 300, whole=False), "Mean or median in percent of the study's reference."),
        Field("reason", Plain(), "Why no exercise carries it, for clinicians."),
    ),
)
STUDY = Table(
    "a study",
    Study,
    "A publication with measurements.",
    (
        Field("authors", Plain(), "Authors."),
        Field("year", Number(1900, 2100), "Year."),
        Field("title", Plain(), "Title."),
        Field("journal", Plain(), "Journal."),
        Field("volume", Plain(), "Volume and issue.", required=False),
        Field("pages", Plain(), "Pages.", required=False),
        Field("doi", DOI, "DOI.", required=False),
        Field("people", Plain(), "Who was measured."),
        Field("n", Number(1, 10_000), "How many.", required=False),
        Field("electrode", Choice(terms.Electrode), "Surface or fine wire."),
        Field("normalisation", Choice(terms.Normalisation), "What the signal was divided by."),
        Field("part", Choice(terms.Part), "Part of the repetition."),
        Field("remark", Plain("a short text", ".{1,500}"), "For clinicians.", required=False),
        Field("not-used", ListOf(Group(NOT_USED)), "Values that no exercise carries.", required=False),
        Field("status", Group(SOURCE), "What of this entry was read, what recalled."),
    ),
)
ACTION = Table(
    "a muscle's action",
    Action,
    "What a muscle does at a joint.",
    (
        Field("joint", Choice(terms.Joint), "Which joint."),
        Field("movement", Choice(terms.Movement), "Which direction."),
    ),
)
MUSCLE = Table(
    "a muscle",
    Muscle,
    "A muscle or a segment of one.",
    (
        Field("name", WORDS, "Anatomical name."),
        Field("plain", WORDS, "Where it is, in everyday words."),
        Field("part-of", Id("muscle"), "The whole muscle.", required=False),
        Field("action", Group(ACTION), "What it does, to model how gravity pulls.", required=False),
    ),
)
EQUIPMENT = Table(
    "a thing",
    Equipment,
    "Something the patient needs.",
    (
        Field("name", WORDS, "Its name."),
        Field("check", WORDS, "What to look at before use.", required=False),
    ),
)
STRAIN = Table(
    "a strain",
    Strain,
    "A load on the body that some people must avoid.",
    (Field("name", WORDS, "Its name."), Field("advice", WORDS, "What to ask or watch.")),
)
TERM = Table(
    "a term",
    Term,
    "A word that needs explaining.",
    (Field("term", WORDS, "The word."), Field("meaning", WORDS, "What it means.")),
)
