"""Narrows a phase to one patient: what falls out, what takes its place, from which day on."""

from generator.progression.one_patient.choices import phase_choices
from generator.progression.one_patient.narrowing import Narrowed, narrow
from generator.progression.one_patient.rules import RULES

__all__ = ["RULES", "Narrowed", "narrow", "phase_choices"]
