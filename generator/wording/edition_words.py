"""Says what changed between two editions of a booklet, in a patient's words."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from generator.catalogue.editions import Change, ChangeKind, Standing, Urgency
from generator.catalogue.values import Catalogue
from generator.wording.isolation import isolate_numbers
from generator.wording.voice import Voice

Kind = ChangeKind


def change_words(voice: Voice, change: Change, catalogue: Catalogue, programme: str) -> str:
    """Return one change as a sentence; names come from the catalogue in its language where it has them."""
    words = _sentences(voice)[change.kind]
    return words.format(name=_name(change, catalogue, programme), form=_form(change, catalogue))


def standing_words(voice: Voice, standing: Standing) -> str:
    """Return how a booklet stands, as a heading."""
    return {
        Standing.CURRENT: voice.gettext("This booklet is current"),
        Standing.SAME_TO_DO: voice.gettext("There is a newer booklet. What you do is the same"),
        Standing.CHANGED: voice.gettext("There is a newer booklet. Something changed"),
        Standing.GONE: voice.gettext("This booklet is no longer in use"),
    }[standing]


def what_to_do(voice: Voice, standing: Standing, urgency: Urgency) -> str:
    """Return what the reader of a booklet does now."""
    if standing is Standing.CURRENT:
        return voice.gettext("Go on as it says, as your physiotherapist has told you.")
    if standing is Standing.GONE:
        return voice.gettext(
            "Stop the exercises in it. Call the clinic line before you go on, and ask for the new booklet."
        )
    return {
        Urgency.NOW: voice.gettext(
            "Call the clinic line before you exercise again, and ask for the new booklet. Leave out what is "
            "named here until you have spoken to the clinic."
        ),
        Urgency.NEXT_VISIT: voice.gettext(
            "Go on with the booklet you have. Ask for the new booklet at your next visit. Change nothing "
            "before that."
        ),
        Urgency.NO_NEED: voice.gettext(
            "Go on with the booklet you have. You can ask for the new booklet at your next visit."
        ),
    }[urgency]


def _name(change: Change, catalogue: Catalogue, programme: str) -> str:
    """Return the name of what changed: in words of today, else as the old paper said it."""
    item = catalogue.exercises.get(change.item) or catalogue.daily_life.get(change.item)
    if item is not None:
        return str(item.name)
    stages = catalogue.programmes.get(programme)
    rules = {rule.id: rule.words for rule in stages.restrictions} if stages else {}
    return str(rules[change.item]) if change.item in rules else isolate_numbers(change.name)


def _form(change: Change, catalogue: Catalogue) -> str:
    exercise = catalogue.exercises.get(change.item)
    form = exercise.variations.get(change.form) if exercise else None
    return str(form.name) if form else change.form


def _sentences(voice: Voice) -> Mapping[ChangeKind, str]:
    _: Callable[[str], str] = voice.gettext
    return {
        Kind.NOT_IN_USE: _("This booklet is no longer in use."),
        Kind.REMOVED: _("Must no longer be done: {name}"),
        Kind.FORM_REMOVED: _("Must no longer be done: {form} ({name})"),
        Kind.OTHER_FORM: _("Is done in another form now: {name}"),
        Kind.NEW_RULE: _("New rule: {name}"),
        Kind.CHANGED_RULE: _("This rule changed: {name}"),
        Kind.LATER: _("Begins later now: {name}"),
        Kind.PHASE_LATER: _("This phase begins later now."),
        Kind.LESS: _("The dose is lower in part or in whole: {name}"),
        Kind.SAFETY: _("The advice that keeps you safe changed: {name}"),
        Kind.PAIN_LOWER: _("The pain limit is lower now."),
        Kind.HELP: _("The warning signs, or what to do when it got worse, changed."),
        Kind.SUPPORT: _("What is said about weight, walking aid or brace changed."),
        Kind.AVOID: _("What you must not do in this phase changed."),
        Kind.TELEPHONE: _("A telephone number or its hours changed."),
        Kind.ITEM_SAFETY: _("The advice that keeps you safe in daily life changed: {name}"),
        Kind.DOSE: _("The dose changed: {name}"),
        Kind.ADDED: _("New exercise: {name}"),
        Kind.FORM_ADDED: _("A new form of an exercise: {form} ({name})"),
        Kind.RULE_ENDED: _("This rule is not in the new booklet: {name}"),
        Kind.EARLIER: _("May begin earlier now: {name}"),
        Kind.PHASE_EARLIER: _("This phase may begin earlier now."),
        Kind.PAIN_HIGHER: _("The pain limit changed."),
        Kind.WHEN: _("What you must reach first changed: {name}"),
        Kind.WORDS: _("How it is done is said in other words: {name}"),
        Kind.RULE_WORDS: _("This rule is said in other words: {name}"),
        Kind.PICTURES: _("The pictures changed: {name}"),
        Kind.ITEM_ADDED: _("New in daily life: {name}"),
        Kind.ITEM_REMOVED: _("No longer in the booklet: {name}"),
        Kind.ITEM_WORDS: _("Daily life is said in other words: {name}"),
        Kind.PHASE: _("The goals, tests or dose rule of this phase changed."),
        Kind.ORDER: _("The order of the exercises changed."),
        Kind.REST: _("Other words changed, such as words explained."),
    }
