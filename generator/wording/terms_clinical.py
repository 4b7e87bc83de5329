"""Holds the clinician's word where it differs from the patient's."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType

from generator.catalogue import arranged, base, estimates
from generator.catalogue import terms as t
from generator.wording.marked import Marked, mark

CLINICAL: Mapping[Enum, Marked] = MappingProxyType(
    {
        t.Movement.FLEXION: mark("movement, for clinicians", "flexion"),
        t.Movement.EXTENSION: mark("movement, for clinicians", "extension"),
        t.Movement.ABDUCTION: mark("movement, for clinicians", "abduction"),
        t.Movement.ADDUCTION: mark("movement, for clinicians", "adduction"),
        t.Movement.INTERNAL_ROTATION: mark("movement, for clinicians", "internal rotation"),
        t.Movement.EXTERNAL_ROTATION: mark("movement, for clinicians", "external rotation"),
        t.Movement.DORSIFLEXION: mark("movement, for clinicians", "dorsiflexion"),
        t.Movement.PLANTARFLEXION: mark("movement, for clinicians", "plantarflexion"),
        t.Movement.SIDE_BENDING: mark("movement, for clinicians", "lateral flexion"),
        t.Movement.ROTATION: mark("movement, for clinicians", "rotation"),
        t.Movement.PRONATION: mark("movement, for clinicians", "pronation"),
        t.Movement.SUPINATION: mark("movement, for clinicians", "supination"),
        t.How.PASSIVE: mark("kind of work, for clinicians", "passive"),
        t.How.ASSISTED: mark("kind of work, for clinicians", "active assisted"),
        t.How.ISOMETRIC: mark("kind of work, for clinicians", "isometric"),
        t.How.ACTIVE: mark("kind of work, for clinicians", "active"),
        t.How.RESISTED: mark("kind of work, for clinicians", "resisted"),
        t.Against.GRAVITY: mark("load on the muscle, for clinicians", "against gravity"),
        t.Against.NOTHING: mark("load on the muscle, for clinicians", "gravity eliminated"),
        t.Carries.NONE: mark("load on a leg, for clinicians", "non-weight-bearing"),
        t.Carries.TOUCH: mark("load on a leg, for clinicians", "touch weight-bearing"),
        t.Carries.PARTIAL: mark("load on a leg, for clinicians", "partial weight-bearing"),
        t.Carries.SHARED: mark("load on a leg, for clinicians", "weight-bearing on both legs"),
        t.Carries.ONE_LEG: mark("load on a leg, for clinicians", "full weight-bearing on one leg"),
        t.Role.CIRCULATION: mark("role, for clinicians", "circulation"),
        t.Role.MOVEMENT: mark("role, for clinicians", "range of motion"),
        t.Role.WAKING: mark("role, for clinicians", "muscle activation"),
        t.Role.STRENGTH: mark("role, for clinicians", "strengthening"),
        t.Role.BALANCE: mark("role, for clinicians", "balance"),
        t.Role.WALKING: mark("role, for clinicians", "gait"),
        t.Posture.ON_BACK: mark("posture, for clinicians", "supine"),
        t.Posture.ON_FRONT: mark("posture, for clinicians", "prone"),
        t.Posture.ON_SIDE: mark("posture, for clinicians", "side-lying"),
        t.Posture.LONG_SITTING: mark("posture, for clinicians", "long sitting"),
        t.Posture.HANDS_AND_KNEES: mark("posture, for clinicians", "quadruped"),
        t.Posture.HALF_KNEELING: mark("posture, for clinicians", "half kneeling"),
        t.Posture.SIDE_SUPPORT: mark("posture, for clinicians", "side support on the elbow"),
        t.Tester.AT_HOME: mark("tester, for clinicians", "patient at home"),
        t.Tester.CLINICIAN: mark("tester, for clinicians", "clinician only"),
        t.WeightBearing.NONE: mark("weight-bearing, for clinicians", "non-weight-bearing"),
        t.WeightBearing.TOUCH: mark("weight-bearing, for clinicians", "touch weight-bearing"),
        t.WeightBearing.PARTIAL: mark("weight-bearing, for clinicians", "partial weight-bearing"),
        t.WeightBearing.AS_TOLERATED: mark("weight-bearing, for clinicians", "weight-bearing as tolerated"),
        t.Electrode.SURFACE: mark("electrode, for clinicians", "surface electrode"),
        t.Electrode.FINE_WIRE: mark("electrode, for clinicians", "fine-wire electrode"),
        t.Normalisation.MVIC: mark(
            "normalisation, for clinicians", "maximal voluntary isometric contraction (MVIC)"
        ),
        t.Normalisation.REFERENCE: mark("normalisation, for clinicians", "reference contraction"),
        t.Part.MEAN: mark("part of the repetition, for clinicians", "mean"),
        t.Part.PEAK: mark("part of the repetition, for clinicians", "peak"),
        t.Part.HOLD: mark("part of the repetition, for clinicians", "hold"),
        t.Demand.TWO_LEGS_SUPPORTED: mark("demand, for clinicians", "two legs, supported"),
        t.Demand.TWO_LEGS: mark("demand, for clinicians", "two legs"),
        t.Demand.ONE_LEG_SUPPORTED: mark("demand, for clinicians", "one leg, supported"),
        t.Demand.ONE_LEG: mark("demand, for clinicians", "one leg"),
        t.Demand.STEPPING: mark("demand, for clinicians", "stepping"),
        arranged.BandPosition.BELOW: mark("place in the activity band, for clinicians", "below"),
        arranged.BandPosition.INSIDE: mark("place in the activity band, for clinicians", "within"),
        arranged.BandPosition.ABOVE: mark("place in the activity band, for clinicians", "above"),
        estimates.Basis.PARTLY_RECALLED: mark("basis of an estimate, for clinicians", "partly recalled"),
        estimates.Basis.JUDGED_LIKE: mark("basis of an estimate, for clinicians", "judged like another"),
        estimates.Basis.JUDGED_BETWEEN: mark("basis of an estimate, for clinicians", "judged between two"),
        estimates.Basis.JUDGED_NO_LOAD: mark("basis of an estimate, for clinicians", "judged no load"),
        base.SourceStatus.READ: mark("status of a source, for clinicians", "read"),
        base.SourceStatus.RECALLED: mark("status of a source, for clinicians", "recalled"),
        base.SourceStatus.PRACTICE: mark("status of a source, for clinicians", "common practice"),
        base.SourceStatus.INVENTED: mark("status of a source, for clinicians", "invented"),
        base.SourceStatus.PATIENT: mark("status of a source, for clinicians", "for this patient"),
    }
)
