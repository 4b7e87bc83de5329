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
    say = voice.gettext
    return {
        Item.CERT_1: say(
            "Exercises that need things and name them: {number} of {total}. The others need none."
        ),
        Item.CERT_2: say("Limits are set by: {listed}. Which training they have is not said."),
        Item.CERT_3: say("Each person alone. Exercises without a helper: {number} of {total}."),
        Item.CERT_4: say(
            "By booklet and site, unsupervised. Milestones that a clinician tests: {number} of {total}."
        ),
        Item.CERT_5: say("Boxes to tick for each exercise and day, and a diary of pain. Uses: {number}."),
        Item.CERT_7A: say("Phases with a rule for the next dose step and milestones: {number} of {total}."),
        Item.CERT_7B: say("Exercises that rise in dose or give way to a harder one: {number} of {total}."),
        Item.CERT_8: say("Exercises with start, steps, dose and picture: {number} of {total}."),
        Item.CERT_9: say("All of it is done at home. Exercises: {number}."),
        Item.CERT_10: say("Weight, walking aid, brace and pain limits, and things of daily life: {number}."),
        Item.CERT_11: say(
            "Warning signs with what to do and whom to call: {number}. How often harm happens is not known."
        ),
        Item.CERT_12: say("At home: {listed}."),
        Item.CERT_13: say("Dose steps with how often and how long: {number} in {total} uses of exercises."),
        Item.CERT_14A: say("One programme for all, with ways to fit it: {number}."),
        Item.CERT_14B: say(
            "Easier and harder forms: {number}. Listed reasons for a delayed start: {total}."
            " Whoever treats the patient narrows it further."
        ),
        Item.CERT_15: say(
            "Everybody begins with the first dose step, and with a phase only when told. Uses: {number}."
        ),
    }


def _pemat(voice: Voice) -> dict[Item, str]:
    say = voice.gettext
    pictures = say("Exercises with pictures: {number} of {total}.")
    return {
        Item.PEMAT_1: say("Title and summary say it. Whether it is plain, only readers can tell."),
        Item.PEMAT_3: say("Texts at or below the target of readability: {number} of {total}."),
        Item.PEMAT_4: say("Words explained in the glossary: {number}."),
        Item.PEMAT_6: say("Doses stand in figures and in words, with units. Readers have not been asked."),
        Item.PEMAT_7: say("Times, weeks and steps are worked out beforehand."),
        Item.PEMAT_8: say("Texts that are short: {number} of {total}."),
        Item.PEMAT_9: say("Every part of a page or sheet has a heading."),
        Item.PEMAT_10: say(
            "Phases follow the weeks: {number}. Exercises follow their order of introduction."
        ),
        Item.PEMAT_11: say("Phases that open with a summary and goals: {number} of {total}."),
        Item.PEMAT_12: say("Warnings with signal word and shape at the exercise: {number}."),
        Item.PEMAT_15: pictures,
        Item.PEMAT_17: say("Exercises whose pictures say start and finish in words: {number} of {total}."),
        Item.PEMAT_18: say("Drawings hold nothing but body, ground and tools. Readers have not been asked."),
        Item.PEMAT_19: say("Tables have short headings for every column."),
        Item.PEMAT_20: say("Instructions: {number}."),
        Item.PEMAT_22: say("Exercises told in numbered steps: {number} of {total}."),
        Item.PEMAT_23: say("Boxes to tick, a diary, and a list of milestones to tick."),
        Item.PEMAT_24: say("The pain scale has a key, the ticks say how. Readers have not been asked."),
        Item.PEMAT_25: say("No sums are asked."),
        Item.PEMAT_26: pictures,
    }
