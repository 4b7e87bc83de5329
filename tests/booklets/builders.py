"""A small, valid catalogue to print; each test changes one thing. All of it is invented."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

from generator.booklets.values import BookletJob
from generator.catalogue.arranged import (
    BandPosition,
    Basis,
    Day,
    Estimate,
    Order,
    Placed,
    Session,
    SessionPlace,
    SessionReason,
    SessionReasonKind,
    StepBack,
    Thing,
    Window,
)
from generator.catalogue.base import Source, SourceStatus, Text
from generator.catalogue.clinic import Clinic, Equipment, Safety, Sign, Study, Telephone, Term, Worse
from generator.catalogue.dose import Dose, DoseKind, DoseStep, Load, Span
from generator.catalogue.exercise import Caution, Exercise, LegWork, Variation
from generator.catalogue.programme import (
    Band,
    End,
    Milestone,
    MovementRestriction,
    PainLimit,
    Phase,
    PositionRestriction,
    Programme,
    Use,
)
from generator.catalogue.terms import (
    Against,
    BandStrength,
    Carries,
    Change,
    Demand,
    Electrode,
    Harm,
    Helper,
    How,
    Joint,
    Leg,
    Level,
    Movement,
    MuscleAim,
    Normalisation,
    Paper,
    Part,
    Position,
    Posture,
    Reach,
    Role,
    Signal,
    Support,
    Surface,
    Tester,
    Then,
)
from generator.catalogue.values import Catalogue
from generator.wording.voice import voice

ASSETS = Path(__file__).parents[2] / "site_assets"
EDITION = "7KQ2-M0XP"
INVENTED = Source(text="Example Clinic, working rule", status=SourceStatus.INVENTED)
_STILL = LegWork(moves=(), holds=(), carries=Carries.SHARED, lain_on=False)
_DOSE = Dose(
    kind=DoseKind.REPETITIONS,
    sets=Span(3, 1, 4),
    count=Span(10, 5, 15),
    hold=Span(3, 2, 10),
    rest=60,
    bands=(BandStrength.LIGHT,),
)


def t(words: str) -> Text:
    """Return a sentence as the editor typed it."""
    return Text(words)


def reps(sets: int, count: int, load: Load | None = None) -> DoseStep:
    """Return a dose step such as 3 × 10."""
    return DoseStep(DoseKind.REPETITIONS, sets, count, load=load or Load())


def bridge(**changes: Any) -> Exercise:
    """Return the exercise that most tests print."""
    made = Exercise(
        id="bridge-both-legs",
        name=t("Bridge with both legs"),
        purpose=t("Wakes the muscles behind and beside your hip while both feet share the work."),
        role=Role.WAKING,
        demand=Demand.LYING_OR_SITTING,
        posture=Posture.ON_BACK,
        surface=(Surface.BED, Surface.FLOOR),
        helper=Helper.NONE,
        support=Support.NONE,
        requires=("squeeze-buttocks",),
        operated_leg=_STILL,
        other_leg=_STILL,
        set_up=(t("Choose a firm bed."), t("Put the telephone within reach.")),
        start=t("Lie on your back. Bend both knees. Put your feet flat, as wide as your hips."),
        steps=(
            t("Press through both heels."),
            t("Lift your hips until knees, hips and shoulders make one line."),
            t("Hold while you count to three."),
            t("Lower slowly."),
        ),
        limits=(t("Keep both sides of your pelvis level."),),
        feel=t("Work in your buttocks."),
        not_feel=t("Pain beside your hip, in your back or at the scar."),
        mistakes=(t("Pushing the ribs up and hollowing the back."),),
        cautions=(
            Caution(
                signal=Signal.CAUTION,
                harm=Harm.MINOR,
                hazard=t("Lifting too high"),
                consequence=t("strains your lower back."),
                avoid=t("Stop when knees, hips and shoulders are in line."),
            ),
        ),
        dose=_DOSE,
        variations={
            "half-height": _variation("half-height", Change.EASIER, "Half height", "Lift half as high."),
            "arms-crossed": _variation(
                "arms-crossed", Change.HARDER, "Arms crossed", "Cross your arms on your chest."
            ),
        },
    )
    return replace(made, **changes)


def _variation(name: str, change: Change, title: str, what: str) -> Variation:
    return Variation(id=name, is_=change, name=t(title), change=t(what), operated_leg=None, other_leg=None)


def squeeze(**changes: Any) -> Exercise:
    """Return a small exercise without cautions and variations."""
    made = replace(
        bridge(),
        id="squeeze-buttocks",
        name=t("Squeeze your buttocks"),
        purpose=t("Wakes the large muscle behind your hip without moving the joint."),
        requires=(),
        set_up=(),
        start=t("Lie on your back with both legs straight."),
        steps=(t("Squeeze both buttocks together, gently."), t("Hold and keep breathing."), t("Let go.")),
        limits=(),
        mistakes=(),
        cautions=(),
        variations={},
        dose=replace(_DOSE, kind=DoseKind.HOLDS),
    )
    return replace(made, **changes)


def abduction(**changes: Any) -> Exercise:
    """Return a standing exercise with a band and two cautions."""
    made = replace(
        bridge(),
        id="standing-hip-abduction",
        name=t("Lift your leg to the side, standing"),
        purpose=t("Strengthens the repaired muscle beside your hip, so that your pelvis stays level."),
        role=Role.STRENGTH,
        surface=(Surface.STANDING,),
        support=Support.FINGERTIPS,
        equipment=("band",),
        requires=("bridge-both-legs",),
        set_up=(t("Stand beside a kitchen worktop that cannot move."),),
        start=t("Stand tall. Hold the worktop with your fingertips. Put your weight on your other leg."),
        steps=(
            t("Tighten your belly a little."),
            t("Lift your operated leg straight out to the side."),
            t("Keep your toes pointing forwards."),
            t("Lower it slowly."),
        ),
        limits=(t("Lift no higher than a hand's width."),),
        mistakes=(),
        cautions=(
            Caution(
                signal=Signal.WARNING,
                harm=Harm.SERIOUS,
                hazard=t("Letting go of the worktop"),
                consequence=t("can make you fall and tear the repair."),
                avoid=t("Keep your fingertips on the worktop all the time."),
            ),
        ),
    )
    return replace(made, **changes)


def use(exercise: str, *steps: DoseStep, **changes: Any) -> Use:
    """Return a use of an exercise, once a day on five days."""
    made = Use(use=exercise, dose_steps=steps, times_a_day=1, days_a_week=5, then=Then.GOES_ON)
    return replace(made, **changes)


def _phase(number: int, name: str, week: int, delayed: int, *uses: Use) -> Phase:
    return Phase(
        number=number,
        name=t(name),
        summary=t("Your hip learns to work again while the repair still needs care."),
        week=week,
        delayed_week=delayed,
        week_source=INVENTED,
        goals=(t("Walk evenly with one stick."), t("Wake the muscles around your hip.")),
        avoid=(t("Sitting with your legs crossed."),),
        band=Band(above=0, up_to=20),
        demand=Demand.ONE_LEG_SUPPORTED,
        weight_bearing=t("Put as much weight on your operated leg as is comfortable."),
        walking_aid=t("Use two crutches outdoors. Indoors one stick is enough, held on your other side."),
        pain=PainLimit(
            during=2, after=2, next_morning=2, set_by="physiotherapist of the example clinic", source=INVENTED
        ),
        going_up=t(
            "Take the next step when you did all sets two sessions running, pain stayed within your limit"
            " and the next morning was no worse."
        ),
        milestones=(
            Milestone(
                goal=t("You walk evenly indoors with one stick."),
                test=t("Walk 20 steps on a flat floor while someone watches."),
                passed=t("No limp, and pain at most 2 of 10."),
                tester=Tester.AT_HOME,
            ),
            Milestone(
                goal=t("You stand on your operated leg with a light hand on the worktop."),
                test=t("Stand for 10 seconds, three times."),
                passed=t("Your pelvis stays level each time."),
                tester=Tester.CLINICIAN,
            ),
        ),
        uses=uses,
    )


def programme(**changes: Any) -> Programme:
    """Return a programme of four phases; the second holds the exercises."""
    restrictions = (
        MovementRestriction(
            id="no-active-abduction",
            leg=Leg.OPERATED,
            words=t("Do not lift your operated leg out to the side by its own strength."),
            why=t("The repaired tendon is not yet strong enough."),
            until=End(week=10, delayed_week=13, phase=3),
            source=INVENTED,
            joint=Joint.HIP,
            movement=Movement.ABDUCTION,
            how=(How.ACTIVE,),
            against=Against.GRAVITY,
        ),
        PositionRestriction(
            id="not-on-operated-side",
            leg=Leg.OPERATED,
            words=t("Do not lie on your operated side."),
            why=t("It presses on the repair."),
            until=End(week=12, delayed_week=12, phase=3),
            source=INVENTED,
            position=Position.ON_OPERATED_SIDE,
        ),
    )
    made = Programme(
        id="hip-abductor-repair",
        name=t("After repair of your hip abductor tendon"),
        operation=t("The torn tendon beside your hip was sewn back to the bone."),
        summary=t("Four phases from protection to strength."),
        joint=Joint.HIP,
        aim=MuscleAim.PROTECTS,
        muscles=("gluteus-medius",),
        delay_reasons=(t("A large tear."),),
        restrictions=restrictions,
        phases=(
            _phase(1, "Protect", 0, 0, use("squeeze-buttocks", reps(1, 10))),
            _phase(
                2,
                "Wake the muscle",
                6,
                6,
                use("squeeze-buttocks", DoseStep(DoseKind.HOLDS, 2, 8, hold=5), times_a_day=3, days_a_week=7),
                use("bridge-both-legs", reps(2, 8), reps(3, 8), reps(3, 10), reps(3, 12)),
                use(
                    "standing-hip-abduction",
                    reps(2, 8),
                    reps(3, 10),
                    reps(3, 10, Load(band=BandStrength.LIGHT)),
                    days_a_week=3,
                    rest_days=1,
                    week=8,
                    delayed_week=11,
                ),
            ),
            _phase(3, "Build strength", 10, 13, use("bridge-both-legs", reps(3, 12))),
            _phase(4, "Return", 16, 20, use("standing-hip-abduction", reps(3, 12))),
        ),
    )
    return replace(made, **changes)


def order() -> Order:
    """Return the order of the programme as if it had been computed."""
    windows = (
        Window(1, 0, 6, 0, 6),
        Window(2, 6, 10, 6, 13),
        Window(3, 10, 16, 13, 20),
        Window(4, 16, None, 20, None),
    )
    ranked = (
        ("squeeze-buttocks", 1, 1, None),
        ("squeeze-buttocks", 2, 1, None),
        ("bridge-both-legs", 2, 2, 1),
        ("standing-hip-abduction", 2, 3, 1),
        ("bridge-both-legs", 3, 1, 1),
        ("standing-hip-abduction", 4, 1, 1),
    )
    measured = Estimate("gluteus-medius", 24.0, 1, 30, Basis.MEASURED, ("ekstrom-2007",))
    places = tuple(
        Placed(name, phase, place, 1, level, measured if level else None, BandPosition.INSIDE, 0.0, ())
        for name, phase, place, level in ranked
    )
    return Order("hip-abductor-repair", windows, places)


def safety(**changes: Any) -> Safety:
    """Return the safety texts."""
    signs = (
        _sign(
            "lung", Level.EMERGENCY, "Sudden shortness of breath, or chest pain when you breathe in", "a clot"
        ),
        _sign("infection", Level.EMERGENCY, "Fever above 38 °C with shivering or confusion", "an infection"),
        _sign(
            "calf", Level.CLINIC, "New swelling, warmth or pain in your calf or thigh", "a clot in your leg"
        ),
        _sign("wound", Level.CLINIC, "Spreading redness or fluid from the wound", "a wound infection"),
        _sign("pop", Level.CLINIC, "A pop at the hip, or sudden loss of strength", "a new tear"),
    )
    made = Safety(
        deferral=t("If the clinician treating you told you something else, do what they said."),
        deferral_full=t(
            "This booklet does not replace your surgeon or physiotherapist. If they told you something"
            " else, do what they said, and show them this booklet."
        ),
        demonstration=t("Demonstration, not for treatment."),
        start_only=t("Start only when your physiotherapist has said so."),
        stay=t("Stay with this phase until you are told to move on, even when the weeks are over."),
        working_area=t("Stand beside something fixed. Have your telephone within reach."),
        pain_rule=t("A dull ache may come. It must have settled by the next morning."),
        signs=signs,
        worse=Worse(
            today=(
                t("Stop for today."),
                t("Take a day of rest."),
                t("Then go back by one dose step, or do the easier form."),
            ),
            clinic=(
                t("It has not settled after 24 hours."),
                t("Two bad mornings in a row."),
                t("You limp more than before, you fell, or you felt a pop."),
            ),
            emergency=(t("You cannot stand on the leg."), t("You are short of breath or have chest pain.")),
        ),
        fall=(
            t("Stay where you are and breathe."),
            t("Check whether anything hurts badly. If it does, call for help and keep still."),
            t("If not, roll onto your other side and get up with the help of a chair."),
            t("Call the clinic the same day, even when you feel well."),
        ),
    )
    return replace(made, **changes)


def _sign(name: str, level: Level, what: str, meaning: str) -> Sign:
    act = "Call at once." if level is Level.EMERGENCY else "Call the clinic today."
    return Sign(
        id=name, level=level, sign=t(what), meaning=t(f"It can be {meaning}."), act=t(act), source=INVENTED
    )


def clinic(**changes: Any) -> Clinic:
    """Return an invented clinic; its number comes from Ofcom's range for drama (01632 960000 to 960999)."""
    made = Clinic(
        name=t("Example Hip Clinic"),
        about=t("An invented clinic."),
        telephone=Telephone(
            clinic="01632 960 100",
            hours=t("Monday to Friday, 8 to 16"),
            out_of_hours="01632 960 199",
            emergency="112",
        ),
        languages=("en", "de"),
        paper=Paper.A4,
        reach=Reach.INTRANET,
        demo=True,
    )
    return replace(made, **changes)


def study() -> Study:
    """Return the study behind the order."""
    return Study(
        id="ekstrom-2007",
        authors="Ekstrom RA, Donatelli RA, Carp KC",
        year=2007,
        title="Electromyographic analysis of core trunk, hip, and thigh muscles",
        journal="J Orthop Sports Phys Ther",
        volume="37",
        pages="754–762",
        people="healthy adults",
        n=30,
        electrode=Electrode.SURFACE,
        normalisation=Normalisation.MVIC,
        part=Part.HOLD,
        status=Source(text="abstract", status=SourceStatus.RECALLED),
    )


def catalogue(**changes: Any) -> Catalogue:
    """Return all of it; texts are in the source language."""
    exercises = {one.id: one for one in (abduction(), bridge(), squeeze())}
    made = Catalogue(
        clinic=clinic(),
        safety=safety(),
        exercises=exercises,
        programmes={"hip-abductor-repair": programme()},
        studies={"ekstrom-2007": study()},
        muscles={},
        equipment={"band": Equipment(id="band", name=t("An elastic band"), check=t("Check it for tears."))},
        strains={},
        glossary={
            "tendon": Term(
                id="tendon", term=t("tendon"), meaning=t("the strong cord from a muscle to a bone")
            ),
            "pelvis": Term(
                id="pelvis", term=t("pelvis"), meaning=t("the ring of bone that your legs hang from")
            ),
            "cast": Term(id="cast", term=t("plaster cast"), meaning=t("a hard bandage")),
        },
    )
    return replace(made, **changes)


def in_words(value: Any, language: str, said: Mapping[str, str] | None = None) -> Any:
    """Return a value with every text in `language`: its translation in `said`, else its own words."""
    if isinstance(value, Text):
        return replace(value, words=value.source if said is None else said[value.source], language=language)
    if isinstance(value, tuple):
        return tuple(in_words(item, language, said) for item in value)
    if isinstance(value, dict):
        return {key: in_words(item, language, said) for key, item in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        return replace(value, **dict(_worded(value, language, said)))
    return value


def _worded(value: Any, language: str, said: Mapping[str, str] | None) -> Iterator[tuple[str, Any]]:
    for one in fields(value):
        if one.name not in ("place", "places"):
            yield one.name, in_words(getattr(value, one.name), language, said)


def in_turn(*exercises: str) -> tuple[SessionPlace, ...]:
    """Return a session of these exercises on the bed, the lift of the leg standing, as if computed."""
    return tuple(
        SessionPlace(
            name,
            place,
            Surface.STANDING if name == "standing-hip-abduction" else Surface.BED,
            300,
            (SessionReason(SessionReasonKind.INTRODUCED),),
        )
        for place, name in enumerate(exercises, 1)
    )


def steps_back(stages: Programme, phase: int, exercises: Mapping[str, Exercise]) -> dict[Any, StepBack]:
    """Return for each dose step the one before it, and every easier form, as if computed."""
    return {
        (one.use, step): StepBack(
            one.use,
            step,
            one.dose_steps[step - 1] if step else None,
            tuple(
                f"{one.use}/{form.id}"
                for form in exercises[one.use].variations.values()
                if form.is_ is Change.EASIER and form.id != one.variation
            ),
            (),
        )
        for one in stages.phase(phase).uses
        for step in range(len(one.dose_steps))
    }


def job(output: Path = Path("booklet.pdf"), **changes: Any) -> BookletJob:
    """Return the job of printing phase 2 in English on A4; what follows from its phase is worked out."""
    known: Catalogue = changes.get("catalogue", catalogue())
    phase: int = changes.get("phase", 2)
    stages = known.programmes["hip-abductor-repair"]
    turns = in_turn(*(one.use for one in stages.phase(phase).uses))
    made = BookletJob(
        catalogue=in_words(catalogue(), "en"),
        voice=voice("en"),
        programme="hip-abductor-repair",
        phase=2,
        order=order(),
        edition=EDITION,
        output=output,
        assets=ASSETS,
        withheld=frozenset(),
        day=Day(phase, (Session(turns, 1, 1200, 20),), (), 20),
        turns=turns,
        back=steps_back(stages, phase, known.exercises),
        things=(Thing("band", ("standing-hip-abduction",), optional=False),),
    )
    return replace(made, **changes)
