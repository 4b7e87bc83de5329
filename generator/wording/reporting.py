"""Says in one sentence what a programme answers to an item of a reporting checklist."""

from __future__ import annotations

from generator.catalogue.reporting import Answer, Item, ItemAnswer
from generator.wording.phrases import list_of, number
from generator.wording.terms import term
from generator.wording.voice import Voice


def answer_words(voice: Voice, one: ItemAnswer) -> str:
    """Return the fact behind an answer; for an open item what is missing."""
    if one.answer is Answer.OPEN:
        return _open(voice, one.item)
    words = _cert(voice).get(one.item) or _pemat(voice).get(one.item) or ""
    return words.format(
        number=number(voice, one.number),
        total=number(voice, one.total),
        listed=list_of(voice, (*(term(voice, member) for member in one.terms), *one.names)),
    )


def _open(voice: Voice, item: Item) -> str:
    judged = (Item.PEMAT_2, Item.PEMAT_5, Item.PEMAT_16, Item.PEMAT_21)
    if item in judged:
        return voice.gettext("Only a person can judge this; nobody has recorded it here.")
    if item in (Item.CERT_16A, Item.CERT_16B):
        return voice.gettext("This is known only where the programme is carried out.")
    if item is Item.PEMAT_3:
        return voice.gettext("The texts have not been measured.")
    return voice.gettext("The content does not say it.")


def _cert(voice: Voice) -> dict[Item, str]:
    return {
        Item.CERT_1: voice.gettext(
            "Exercises that need things and name them: {number} of {total}. The others need none."
        ),
        Item.CERT_2: voice.gettext("Limits are set by: {listed}. Which training they have is not said."),
        Item.CERT_3: voice.gettext("Each person alone. Exercises without a helper: {number} of {total}."),
        Item.CERT_4: voice.gettext(
            "By booklet and site, unsupervised. Milestones that a clinician tests: {number} of {total}."
        ),
        Item.CERT_5: voice.gettext(
            "Boxes to tick for each exercise and day, and a diary of pain. Uses: {number}."
        ),
        Item.CERT_7A: voice.gettext(
            "Phases with a rule for the next dose step and milestones: {number} of {total}."
        ),
        Item.CERT_7B: voice.gettext(
            "Exercises that rise in dose or give way to a harder one: {number} of {total}."
        ),
        Item.CERT_8: voice.gettext("Exercises with start, steps, dose and picture: {number} of {total}."),
        Item.CERT_9: voice.gettext("All of it is done at home. Exercises: {number}."),
        Item.CERT_10: voice.gettext(
            "Weight, walking aid, brace and pain limits, and things of daily life: {number}."
        ),
        Item.CERT_11: voice.gettext(
            "Warning signs with what to do and whom to call: {number}. How often harm happens is not known."
        ),
        Item.CERT_12: voice.gettext("At home: {listed}."),
        Item.CERT_13: voice.gettext(
            "Dose steps with how often and how long: {number} in {total} uses of exercises."
        ),
        Item.CERT_14A: voice.gettext("One programme for all, with ways to fit it: {number}."),
        Item.CERT_14B: voice.gettext(
            "Easier and harder forms: {number}. Listed reasons for a delayed start: {total}."
            " Whoever treats the patient narrows it further."
        ),
        Item.CERT_15: voice.gettext(
            "Everybody begins with the first dose step, and with a phase only when told. Uses: {number}."
        ),
    }


def _pemat(voice: Voice) -> dict[Item, str]:
    pictures = voice.gettext("Exercises with pictures: {number} of {total}.")
    return {
        Item.PEMAT_1: voice.gettext("Title and summary say it. Whether it is plain, only readers can tell."),
        Item.PEMAT_3: voice.gettext("Texts at or below the target of readability: {number} of {total}."),
        Item.PEMAT_4: voice.gettext("Words explained in the glossary: {number}."),
        Item.PEMAT_6: voice.gettext(
            "Doses stand in figures and in words, with units. Readers have not been asked."
        ),
        Item.PEMAT_7: voice.gettext("Times, weeks and steps are worked out beforehand."),
        Item.PEMAT_8: voice.gettext("Texts that are short: {number} of {total}."),
        Item.PEMAT_9: voice.gettext("Every part of a page or sheet has a heading."),
        Item.PEMAT_10: voice.gettext(
            "Phases follow the weeks: {number}. Exercises follow their order of introduction."
        ),
        Item.PEMAT_11: voice.gettext("Phases that open with a summary and goals: {number} of {total}."),
        Item.PEMAT_12: voice.gettext("Warnings with signal word and shape at the exercise: {number}."),
        Item.PEMAT_15: pictures,
        Item.PEMAT_17: voice.gettext(
            "Exercises whose pictures say start and finish in words: {number} of {total}."
        ),
        Item.PEMAT_18: voice.gettext(
            "Drawings hold nothing but body, ground and tools. Readers have not been asked."
        ),
        Item.PEMAT_19: voice.gettext("Tables have short headings for every column."),
        Item.PEMAT_20: voice.gettext("Instructions: {number}."),
        Item.PEMAT_22: voice.gettext("Exercises told in numbered steps: {number} of {total}."),
        Item.PEMAT_23: voice.gettext("Boxes to tick, a diary, and a list of milestones to tick."),
        Item.PEMAT_24: voice.gettext(
            "The pain scale has a key, the ticks say how. Readers have not been asked."
        ),
        Item.PEMAT_25: voice.gettext("No sums are asked."),
        Item.PEMAT_26: pictures,
    }
