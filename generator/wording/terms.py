"""Says the trade's fixed words in one language: everyday words for patients, the trade's for clinicians."""

from __future__ import annotations

from enum import Enum

from generator.wording.terms_clinical import CLINICAL
from generator.wording.terms_everyday import EVERYDAY
from generator.wording.voice import Voice


def term(voice: Voice, member: Enum) -> str:
    """Return a patient's word for a member of one of the catalogue's enumerations."""
    return voice.pgettext(*EVERYDAY[member])


def clinical_term(voice: Voice, member: Enum) -> str:
    """Return a clinician's word for a member, the patient's where they do not differ."""
    return voice.pgettext(*(CLINICAL.get(member) or EVERYDAY[member]))
