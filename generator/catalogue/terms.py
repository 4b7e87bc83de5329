"""Fixes the trade's words that code relies on: joints, movements, postures, roles, demands, signal words.

Each member's value is the word an editor types. What is a list of content (muscles, equipment,
studies, strains) is no enumeration: it lives in the content files.
"""

from __future__ import annotations

from enum import Enum


class Joint(Enum):
    """Joints and spinal regions that an exercise can move or hold."""

    HIP = "hip"
    KNEE = "knee"
    ANKLE = "ankle"
    LOWER_BACK = "lower back"
    UPPER_BACK = "upper back"
    NECK = "neck"
    SHOULDER = "shoulder"
    ELBOW = "elbow"
    FOREARM = "forearm"
    WRIST = "wrist"


class Movement(Enum):
    """Directions of joint movement, neutral-zero convention."""

    FLEXION = "flexion"
    EXTENSION = "extension"
    ABDUCTION = "abduction"
    ADDUCTION = "adduction"
    INTERNAL_ROTATION = "internal rotation"
    EXTERNAL_ROTATION = "external rotation"
    DORSIFLEXION = "dorsiflexion"
    PLANTARFLEXION = "plantarflexion"
    SIDE_BENDING = "side bending"
    ROTATION = "rotation"
    PRONATION = "pronation"
    SUPINATION = "supination"


class How(Enum):
    """How a joint is worked, from no muscle work to work against an added load."""

    PASSIVE = "passive"
    ASSISTED = "assisted"
    ISOMETRIC = "isometric"
    ACTIVE = "active"
    RESISTED = "resisted"


class Against(Enum):
    """What the working muscle meets."""

    GRAVITY = "gravity"
    NOTHING = "nothing"


class Carries(Enum):
    """How much of the body a leg carries."""

    NONE = "nothing"
    TOUCH = "touch"
    PARTIAL = "part"
    SHARED = "shared"
    ONE_LEG = "whole body"


class Leg(Enum):
    """Which leg a rule speaks of; texts say operated and other, never left or right."""

    OPERATED = "operated"
    OTHER = "other"
    BOTH = "both"


class Sides(Enum):
    """Whether a dose is done once, or in full by one side after the other."""

    ONE = "one"
    BOTH = "both"


class Role(Enum):
    """What an exercise is for; only waking a muscle and strength are ordered by activity."""

    CIRCULATION = "circulation"
    MOVEMENT = "movement"
    WAKING = "waking a muscle"
    STRENGTH = "strength"
    BALANCE = "balance"
    WALKING = "walking"


class Demand(Enum):
    """What an exercise asks of the body as a whole, rising."""

    LYING_OR_SITTING = "lying or sitting"
    TWO_LEGS_SUPPORTED = "standing on two legs with support"
    TWO_LEGS = "standing on two legs"
    ONE_LEG_SUPPORTED = "standing on one leg with support"
    ONE_LEG = "standing on one leg"
    STEPPING = "moving or stepping"
    JUMPING = "jumping"

    @property
    def rank(self) -> int:
        """Return the place in the rising order, from 0."""
        return list(Demand).index(self)


class Posture(Enum):
    """Start postures as the trade names them."""

    ON_BACK = "lying on the back"
    ON_FRONT = "lying on the front"
    ON_SIDE = "lying on the side"
    SITTING = "sitting"
    LONG_SITTING = "sitting with legs stretched out"
    HANDS_AND_KNEES = "on hands and knees"
    HALF_KNEELING = "half kneeling"
    SIDE_SUPPORT = "side support on the elbow"
    STANDING = "standing"


class Surface(Enum):
    """Where an exercise is done."""

    BED = "bed"
    FLOOR = "floor"
    CHAIR = "chair"
    STANDING = "standing"


class Helper(Enum):
    """Whether a second person is wanted."""

    NONE = "none"
    NEARBY = "nearby"
    NEEDED = "needed"


class Support(Enum):
    """What the hands can reach or hold."""

    NONE = "none"
    WITHIN_REACH = "within reach"
    FINGERTIPS = "fingertips"
    BOTH_HANDS = "both hands"


class Signal(Enum):
    """Signal words, graded as in ANSI Z535.6 and ISO 3864-2; a notice never concerns injury."""

    DANGER = "danger"
    WARNING = "warning"
    CAUTION = "caution"
    NOTICE = "notice"


class Harm(Enum):
    """The worst that a hazard can lead to."""

    SERIOUS = "serious injury"
    MINOR = "minor injury"
    NO_INJURY = "no injury"


class Level(Enum):
    """How fast help is needed."""

    TODAY = "today"
    CLINIC = "clinic"
    EMERGENCY = "emergency"


class Tester(Enum):
    """Who judges a milestone."""

    AT_HOME = "at home"
    CLINICIAN = "clinician"


class Then(Enum):
    """What becomes of a use when its phase is over."""

    GOES_ON = "goes on"
    ENDS = "ends"
    REPLACED = "replaced"


class Change(Enum):
    """Which way a variation differs from its exercise."""

    EASIER = "easier"
    HARDER = "harder"


class MuscleAim(Enum):
    """What a programme does with its muscles: the band is a limit for protected, an aim for trained ones."""

    PROTECTS = "protects"
    TRAINS = "trains"


class WeightBearing(Enum):
    """How much weight the operated leg may take."""

    NONE = "none"
    TOUCH = "touch"
    PARTIAL = "partial"
    AS_TOLERATED = "as tolerated"


class Position(Enum):
    """Positions that a surgeon may forbid."""

    ON_OPERATED_SIDE = "lying on the operated side"
    LEGS_CROSSED = "legs crossed"
    LOW_SEAT = "low seat"
    KNEELING = "kneeling"
    ON_FRONT = "lying on the front"


class OutsideLoad(Enum):
    """Loads added from outside."""

    BAND = "band"
    WEIGHT = "weight"


class BandStrength(Enum):
    """Elastic bands in words, since colours differ between makers."""

    LIGHT = "light"
    MEDIUM = "medium"
    STRONG = "strong"


class Landmark(Enum):
    """Body landmarks that say how high a band is anchored."""

    ANKLE = "ankle"
    KNEE = "knee"
    HIP = "hip"
    ELBOW = "elbow"
    SHOULDER = "shoulder"


class Electrode(Enum):
    """How the muscle's signal was picked up."""

    SURFACE = "surface"
    FINE_WIRE = "fine wire"


class Normalisation(Enum):
    """What the signal was divided by."""

    MVIC = "mvic"
    REFERENCE = "reference contraction"


class Part(Enum):
    """Which part of the repetition the number describes; an unknown part counts as mean and is marked."""

    MEAN = "mean"
    PEAK = "peak"
    HOLD = "hold"
    UNKNOWN = "unknown"


class Statistic(Enum):
    """Which average a study printed."""

    MEAN = "mean"
    MEDIAN = "median"


class Reach(Enum):
    """Who can open the site."""

    INTRANET = "intranet only"
    PATIENTS = "patients"


class Paper(Enum):
    """Sheet sizes."""

    A4 = "A4"
    LETTER = "Letter"
