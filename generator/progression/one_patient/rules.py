"""Names why a booklet for one patient is refused: wishes that would widen, contradict, or mean nothing."""

from __future__ import annotations

from generator.problems import Place, Rule

UNKNOWN = Rule(
    "patient-unknown",
    "A wish names something that is not in this phase or in the content.",
    "An id is misspelt, or belongs to another phase.",
    "type the id or the name as it stands in the content",
)
NOTATION = Rule(
    "patient-notation",
    "A wish is not written as the command reads it.",
    "A sign or a part is missing, or the same thing is said twice.",
    "write it as the help of the command shows",
)
WIDER = Rule(
    "patient-wider",
    "A wish would allow more than the programme does.",
    "Limits for one patient only narrow.",
    "give a tighter limit, or leave the wish out",
    safety=True,
)
DOSE = Rule(
    "patient-dose",
    "A wish names a dose that the exercise or the phase does not allow.",
    "It is outside the permitted range, harder than each dose step of the phase, or of an exercise left out.",
    "choose a dose at or below one of the phase's dose steps",
    safety=True,
)
NEEDED = Rule(
    "patient-prerequisite",
    "Something is left out that an exercise which stays needs first.",
    "Nobody should begin with what builds on an exercise that is missing.",
    "keep it, leave out what builds on it, or name it under --mastered when the patient can do it already",
    safety=True,
)
BOTH_SIDES = Rule(
    "patient-both-sides",
    "The programme does not hold for two operated sides.",
    "Its exercises rely on a good leg.",
    "choose a programme with 'both-sides: yes', or plan these exercises by hand",
    safety=True,
)
EMPTY = Rule(
    "patient-empty",
    "No exercise is left.",
    "The wishes exclude every exercise of the phase and its alternatives.",
    "take back one of the wishes",
)
RULES = (UNKNOWN, NOTATION, WIDER, DOSE, NEEDED, BOTH_SIDES, EMPTY)


def option(name: str) -> Place:
    """Return the place of a wish: the option of the command line that said it."""
    return Place(f"--{name}")
