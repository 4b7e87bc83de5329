"""Holds a patient's word for each of the trade's fixed words: no Latin, no abbreviation.

Small letters, so that a word can stand inside a sentence; `Voice.opening` starts a line with it.
Signal words are labels and keep their capital.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType

from generator.catalogue import arranged, base, dose, estimates, judgement, moments, restricted, review
from generator.catalogue import terms as t
from generator.wording.marked import Marked, mark
from generator.wording.terms_reporting import REPORTING

EVERYDAY: Mapping[Enum, Marked] = MappingProxyType(
    {
        t.Joint.HIP: mark("joint", "hip"),
        t.Joint.KNEE: mark("joint", "knee"),
        t.Joint.ANKLE: mark("joint", "ankle"),
        t.Joint.LOWER_BACK: mark("joint", "lower back"),
        t.Joint.UPPER_BACK: mark("joint", "upper back"),
        t.Joint.NECK: mark("joint", "neck"),
        t.Joint.SHOULDER: mark("joint", "shoulder"),
        t.Joint.ELBOW: mark("joint", "elbow"),
        t.Joint.FOREARM: mark("joint", "forearm"),
        t.Joint.WRIST: mark("joint", "wrist"),
        t.Movement.FLEXION: mark("movement", "bending"),
        t.Movement.EXTENSION: mark("movement", "straightening"),
        t.Movement.ABDUCTION: mark("movement", "moving out to the side"),
        t.Movement.ADDUCTION: mark("movement", "moving towards or across the middle"),
        t.Movement.INTERNAL_ROTATION: mark("movement", "turning inwards"),
        t.Movement.EXTERNAL_ROTATION: mark("movement", "turning outwards"),
        t.Movement.DORSIFLEXION: mark("movement", "pulling the foot up"),
        t.Movement.PLANTARFLEXION: mark("movement", "pointing the foot down"),
        t.Movement.SIDE_BENDING: mark("movement", "bending to the side"),
        t.Movement.ROTATION: mark("movement", "turning"),
        t.Movement.PRONATION: mark("movement", "turning the palm down"),
        t.Movement.SUPINATION: mark("movement", "turning the palm up"),
        t.How.PASSIVE: mark("how a joint is worked", "moved for you, muscles relaxed"),
        t.How.ASSISTED: mark("how a joint is worked", "moved with help"),
        t.How.ISOMETRIC: mark("how a joint is worked", "tensed without moving"),
        t.How.ACTIVE: mark("how a joint is worked", "moved by your own strength"),
        t.How.RESISTED: mark("how a joint is worked", "moved against an added load"),
        t.Against.GRAVITY: mark("what the muscle meets", "lifting against gravity"),
        t.Against.NOTHING: mark("what the muscle meets", "without lifting"),
        t.Carries.NONE: mark("what a leg carries", "carries no weight"),
        t.Carries.TOUCH: mark("what a leg carries", "only touches the floor"),
        t.Carries.PARTIAL: mark("what a leg carries", "carries part of your weight"),
        t.Carries.SHARED: mark("what a leg carries", "carries your weight together with the other leg"),
        t.Carries.ONE_LEG: mark("what a leg carries", "carries all your weight"),
        t.Leg.OPERATED: mark("which leg", "operated leg"),
        t.Leg.OTHER: mark("which leg", "other leg"),
        t.Leg.BOTH: mark("which leg", "both legs"),
        t.Sides.ONE: mark("sides", "the dose is done once"),
        t.Sides.BOTH: mark("sides", "each side does the whole dose in turn"),
        t.Role.CIRCULATION: mark("what an exercise is for", "blood flow"),
        t.Role.MOVEMENT: mark("what an exercise is for", "easy movement"),
        t.Role.WAKING: mark("what an exercise is for", "waking a muscle"),
        t.Role.STRENGTH: mark("what an exercise is for", "strength"),
        t.Role.BALANCE: mark("what an exercise is for", "balance"),
        t.Role.WALKING: mark("what an exercise is for", "walking"),
        t.Demand.LYING_OR_SITTING: mark("demand", "lying or sitting"),
        t.Demand.TWO_LEGS_SUPPORTED: mark("demand", "standing on both legs, holding on"),
        t.Demand.TWO_LEGS: mark("demand", "standing on both legs"),
        t.Demand.ONE_LEG_SUPPORTED: mark("demand", "standing on one leg, holding on"),
        t.Demand.ONE_LEG: mark("demand", "standing on one leg"),
        t.Demand.STEPPING: mark("demand", "moving or stepping"),
        t.Demand.JUMPING: mark("demand", "jumping"),
        t.Posture.ON_BACK: mark("start posture", "lying on your back"),
        t.Posture.ON_FRONT: mark("start posture", "lying on your front"),
        t.Posture.ON_SIDE: mark("start posture", "lying on your side"),
        t.Posture.SITTING: mark("start posture", "sitting"),
        t.Posture.LONG_SITTING: mark("start posture", "sitting with your legs stretched out"),
        t.Posture.HANDS_AND_KNEES: mark("start posture", "on your hands and knees"),
        t.Posture.HALF_KNEELING: mark("start posture", "kneeling on one knee"),
        t.Posture.SIDE_SUPPORT: mark("start posture", "on your side, propped on one elbow"),
        t.Posture.STANDING: mark("start posture", "standing"),
        t.Surface.BED: mark("where it is done", "on the bed"),
        t.Surface.FLOOR: mark("where it is done", "on the floor"),
        t.Surface.CHAIR: mark("where it is done", "on a chair"),
        t.Surface.STANDING: mark("where it is done", "standing"),
        t.Helper.NONE: mark("second person", "no helper needed"),
        t.Helper.NEARBY: mark("second person", "somebody nearby"),
        t.Helper.NEEDED: mark("second person", "a helper is needed"),
        t.Support.NONE: mark("what the hands hold", "nothing to hold on to"),
        t.Support.WITHIN_REACH: mark("what the hands hold", "something firm within reach"),
        t.Support.FINGERTIPS: mark("what the hands hold", "fingertips on something firm"),
        t.Support.BOTH_HANDS: mark("what the hands hold", "both hands on something firm"),
        t.Signal.DANGER: mark("signal word", "Danger"),
        t.Signal.WARNING: mark("signal word", "Warning"),
        t.Signal.CAUTION: mark("signal word", "Caution"),
        t.Signal.NOTICE: mark("signal word", "Notice"),
        t.Harm.SERIOUS: mark("worst harm", "serious injury"),
        t.Harm.MINOR: mark("worst harm", "minor injury"),
        t.Harm.NO_INJURY: mark("worst harm", "no injury"),
        t.Level.TODAY: mark("how fast help is needed", "stop for today"),
        t.Level.CLINIC: mark("how fast help is needed", "call the clinic within a day"),
        t.Level.EMERGENCY: mark("how fast help is needed", "call the emergency number now"),
        t.Tester.AT_HOME: mark("who tests", "you, at home"),
        t.Tester.CLINICIAN: mark("who tests", "your physiotherapist or surgeon"),
        t.Then.GOES_ON: mark("after the phase", "goes on in the next phase"),
        t.Then.ENDS: mark("after the phase", "ends with this phase"),
        t.Then.REPLACED: mark("after the phase", "another exercise takes its place"),
        t.Change.EASIER: mark("variation", "easier"),
        t.Change.HARDER: mark("variation", "harder"),
        t.MuscleAim.PROTECTS: mark("what a programme does with muscles", "protects"),
        t.MuscleAim.TRAINS: mark("what a programme does with muscles", "trains"),
        t.WeightBearing.NONE: mark("weight on the operated leg", "no weight at all"),
        t.WeightBearing.TOUCH: mark("weight on the operated leg", "only touch the floor"),
        t.WeightBearing.PARTIAL: mark("weight on the operated leg", "only part of your weight"),
        t.WeightBearing.AS_TOLERATED: mark("weight on the operated leg", "as much as feels comfortable"),
        t.Position.ON_OPERATED_SIDE: mark("forbidden position", "lying on the operated side"),
        t.Position.LEGS_CROSSED: mark("forbidden position", "crossing your legs"),
        t.Position.LOW_SEAT: mark("forbidden position", "sitting on a low seat"),
        t.Position.KNEELING: mark("forbidden position", "kneeling"),
        t.Position.ON_FRONT: mark("forbidden position", "lying on your front"),
        t.OutsideLoad.BAND: mark("added load", "elastic band"),
        t.OutsideLoad.WEIGHT: mark("added load", "weight"),
        t.BandStrength.LIGHT: mark("elastic band", "light band"),
        t.BandStrength.MEDIUM: mark("elastic band", "medium band"),
        t.BandStrength.STRONG: mark("elastic band", "strong band"),
        t.Landmark.ANKLE: mark("height on the body", "at the height of your ankle"),
        t.Landmark.KNEE: mark("height on the body", "at the height of your knee"),
        t.Landmark.HIP: mark("height on the body", "at the height of your hip"),
        t.Landmark.ELBOW: mark("height on the body", "at the height of your elbow"),
        t.Landmark.SHOULDER: mark("height on the body", "at the height of your shoulder"),
        t.Electrode.SURFACE: mark("electrode", "on the skin"),
        t.Electrode.FINE_WIRE: mark("electrode", "fine wire in the muscle"),
        t.Normalisation.MVIC: mark("compared with", "greatest effort without moving"),
        t.Normalisation.REFERENCE: mark("compared with", "a set reference effort"),
        t.Part.MEAN: mark("part of the repetition", "average over the repetition"),
        t.Part.PEAK: mark("part of the repetition", "highest moment of the repetition"),
        t.Part.HOLD: mark("part of the repetition", "while holding"),
        t.Part.UNKNOWN: mark("part of the repetition", "not stated"),
        t.Statistic.MEAN: mark("statistic", "mean"),
        t.Statistic.MEDIAN: mark("statistic", "median"),
        t.Reach.INTRANET: mark("who can open the site", "only inside the clinic"),
        t.Reach.PATIENTS: mark("who can open the site", "patients too"),
        t.Paper.A4: mark("paper", "A4"),
        t.Paper.LETTER: mark("paper", "Letter"),
        dose.DoseKind.REPETITIONS: mark("kind of dose", "sets and repetitions"),
        dose.DoseKind.HOLDS: mark("kind of dose", "sets and holds"),
        dose.DoseKind.MINUTES: mark("kind of dose", "minutes"),
        dose.DoseKind.HOURLY: mark("kind of dose", "times an hour while awake"),
        dose.DoseKind.STEPS: mark("kind of dose", "steps walked"),
        arranged.Basis.MEASURED: mark("what an estimate rests on", "measured"),
        arranged.Basis.PARTLY_RECALLED: mark("what an estimate rests on", "measured, partly from memory"),
        arranged.Basis.JUDGED_LIKE: mark("what an estimate rests on", "judged to be like an exercise"),
        arranged.Basis.JUDGED_BETWEEN: mark("what an estimate rests on", "judged to be between two"),
        arranged.Basis.JUDGED_NO_LOAD: mark("what an estimate rests on", "judged to put no load on it"),
        arranged.Basis.NOT_MEASURED: mark("what an estimate rests on", "not measured"),
        arranged.ReasonKind.ROLE: mark("reason for the place", "what it is for"),
        arranged.ReasonKind.DEMAND: mark("reason for the place", "what it asks of the body"),
        arranged.ReasonKind.ACTIVITY: mark("reason for the place", "how hard the muscle works"),
        arranged.ReasonKind.PREREQUISITE: mark("reason for the place", "what must go well first"),
        arranged.ReasonKind.NOT_MEASURED: mark("reason for the place", "muscle work not measured"),
        arranged.ReasonKind.ENTRY: mark("reason for the place", "when it may start"),
        arranged.ReasonKind.TIE: mark("reason for the place", "equal to its neighbour"),
        arranged.ReasonKind.JUDGED: mark("reason for the place", "muscle work judged, not measured"),
        arranged.ReasonKind.ABOUT_AS_HARD: mark("reason for the place", "about as hard as its neighbour"),
        arranged.ReasonKind.SAME_PEOPLE: mark(
            "reason for the place", "studies of both in the same people, which outrank all other numbers"
        ),
        arranged.ReasonKind.CHANCE: mark("reason for the place", "chance that it is the harder one"),
        arranged.ReasonKind.NEXT_STUDY: mark("reason for the place", "a study of both would settle it"),
        arranged.ReasonKind.LATE: mark("reason for the place", "slightly above the band, so late"),
        arranged.ReasonKind.ACCEPTED: mark("reason for the place", "above the band, accepted by a clinician"),
        arranged.ReasonKind.UPPER_LIMIT: mark("reason for the place", "in doubt it may be above the band"),
        arranged.BandPosition.BELOW: mark("place in the activity band", "below the band"),
        arranged.BandPosition.INSIDE: mark("place in the activity band", "within the band"),
        arranged.BandPosition.ABOVE: mark("place in the activity band", "above the band"),
        arranged.BandPosition.UNKNOWN: mark("place in the activity band", "not known"),
        moments.NoModel.LOADED: mark(
            "why there is no model of gravity", "a band, a weight or a pedal adds load"
        ),
        moments.NoModel.HELPED: mark("why there is no model of gravity", "the leg is helped"),
        moments.NoModel.RESTS: mark(
            "why there is no model of gravity", "the leg rests or carries weight in every pose"
        ),
        moments.NoModel.OTHER_JOINT: mark(
            "why there is no model of gravity", "only the hip and the knee are modelled"
        ),
        moments.NoModel.NO_POSES: mark("why there is no model of gravity", "there is no picture yet"),
        estimates.Aside.NO_STUDY: mark("why a value is set aside", "the study could not be read"),
        estimates.Aside.LEFT_OUT: mark(
            "why a value is set aside", "left out on purpose, to see what hangs on this study"
        ),
        estimates.Aside.SEGMENT: mark("why a value is set aside", "a part of the muscle, not the whole"),
        estimates.Aside.REFERENCE: mark(
            "why a value is set aside", "percent of a reference contraction, not of MVIC"
        ),
        estimates.Aside.MEDIAN: mark("why a value is set aside", "a median, not a mean"),
        estimates.Aside.NO_PEOPLE: mark("why a value is set aside", "the number of people is not known"),
        estimates.Aside.ONE_PERSON: mark("why a value is set aside", "one person only"),
        estimates.Aside.NO_SPREAD: mark(
            "why a value is set aside", "a standard deviation that is not above 0"
        ),
        estimates.Aside.NO_SD: mark(
            "why a value is set aside", "no standard deviation, and none of this muscle to borrow from"
        ),
        estimates.Aside.SAME_PEOPLE: mark(
            "why a value is set aside", "the same people are in the estimate already, with a higher value"
        ),
        estimates.Aside.OTHER_LOAD: mark(
            "why a value is set aside", "another condition of load than the values in the estimate"
        ),
        estimates.Aside.OTHER_ELECTRODE: mark(
            "why a value is set aside", "another kind of electrode than the values in the estimate"
        ),
        estimates.Aside.OTHER_PART: mark(
            "why a value is set aside", "another part of the repetition than the values in the estimate"
        ),
        estimates.CaveatKind.PART_UNKNOWN: mark(
            "caveat of a number", "part of the repetition not known, counted as mean"
        ),
        estimates.CaveatKind.HOLD: mark("caveat of a number", "average over a hold, counted as mean"),
        estimates.CaveatKind.SD_IMPUTED: mark(
            "caveat of a number", "standard deviation borrowed from the muscle's other measurements"
        ),
        estimates.CaveatKind.SD_FROM_IQR: mark(
            "caveat of a number", "standard deviation taken from the interquartile range"
        ),
        estimates.CaveatKind.FROM_MEDIAN: mark(
            "caveat of a number", "median with its interquartile range, counted as mean"
        ),
        estimates.CaveatKind.BORROWED_ELSEWHERE: mark(
            "caveat of a number", "doubt between studies borrowed from other muscles"
        ),
        estimates.CaveatKind.NO_BETWEEN: mark(
            "caveat of a number", "doubt between studies not known, the interval is too narrow"
        ),
        judgement.JudgedAs.LIKE: mark("judgement", "like"),
        judgement.JudgedAs.BETWEEN: mark("judgement", "between"),
        judgement.JudgedAs.NO_LOAD: mark("judgement", "no load"),
        arranged.Hold.FORBIDDEN: mark("what a phase allows", "not allowed"),
        arranged.Hold.LIMITED: mark("what a phase allows", "only up to a limit"),
        arranged.Hold.LIFTED: mark("what a phase allows", "allowed"),
        arranged.SessionReasonKind.WARM_UP: mark("reason for the place in a session", "it warms you up"),
        arranged.SessionReasonKind.FRESH_LEG: mark(
            "reason for the place in a session", "balance comes while the standing leg is fresh"
        ),
        arranged.SessionReasonKind.SAME_POSITION: mark(
            "reason for the place in a session", "you need not change your position"
        ),
        arranged.SessionReasonKind.INTRODUCED: mark(
            "reason for the place in a session", "you learned it in this order"
        ),
        restricted.Track.USUAL: mark("track", "usual start"),
        restricted.Track.DELAYED: mark("track", "delayed start"),
        base.TextState.SOURCE: mark("state of a text", "original"),
        base.TextState.TRANSLATED: mark("state of a text", "translated"),
        base.TextState.OUTDATED: mark("state of a text", "translation out of date"),
        base.TextState.MISSING: mark("state of a text", "not translated yet"),
        base.SourceStatus.READ: mark("how sure a source is", "read in the source"),
        base.SourceStatus.RECALLED: mark("how sure a source is", "recalled from memory, not checked"),
        base.SourceStatus.PRACTICE: mark("how sure a source is", "common practice, no source"),
        base.SourceStatus.INVENTED: mark("how sure a source is", "invented for the demonstration"),
        base.SourceStatus.PATIENT: mark("how sure a source is", "instruction for this patient"),
        review.Reviewer.PHYSIOTHERAPIST: mark("who reviewed a text", "physiotherapist"),
        review.Reviewer.SURGEON: mark("who reviewed a text", "surgeon"),
        review.Reviewer.DOCTOR: mark("who reviewed a text", "doctor"),
        review.Reviewer.NURSE: mark("who reviewed a text", "nurse"),
        review.Reviewer.OCCUPATIONAL_THERAPIST: mark("who reviewed a text", "occupational therapist"),
        review.Reviewer.TRANSLATOR: mark("who reviewed a text", "translator"),
        review.Reviewer.PATIENT: mark("who reviewed a text", "patient"),
        review.Reviewer.EDITOR: mark("who reviewed a text", "editor"),
        **REPORTING,
    }
)
