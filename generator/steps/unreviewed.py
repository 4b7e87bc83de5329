"""Stops what nobody read: unsigned safety texts outside a demonstration, and drafts where none may go out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from generator.catalogue.editorial import Publish, Scope
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule
from generator.review.items import SAFETY
from generator.review.standing import Standing, Subject

SAFETY_UNSIGNED = Rule(
    "safety-not-signed",
    "Nothing is published, because nobody has signed the safety texts as they are now.",
    "They are new, or were changed after they were signed, and clinic.yml does not say 'demo: yes'.",
    "read safety.yml, precautions.yml and the telephone lines, then run: review sign safety --role ROLE",
    safety=True,
)
NOT_REVIEWED = Rule(
    "not-reviewed",
    "Nothing is published, because a part of the content was not reviewed as it is now.",
    "clinic.yml says 'publish: reviewed-only', and the part is new, or was changed after its review.",
    "have it read, then sign it with: review sign",
    safety=True,
)
RULES = (SAFETY_UNSIGNED, NOT_REVIEWED)

Stands = Mapping[Subject, Standing]


def safety_unsigned(catalogue: Catalogue, stands: Stands, language: str) -> bool:
    """Return whether the safety texts in a language want a signature that they do not have."""
    source = language == catalogue.source_language
    subject = (SAFETY, Scope.CONTENT, "") if source else (SAFETY, Scope.LANGUAGE, language)
    return not catalogue.clinic.demo and not stands[subject].valid


def unreviewed(catalogue: Catalogue, spoken: Sequence[tuple[str, Stands]]) -> Iterator[Problem]:
    """Yield why nothing at all may be published; `spoken`: languages, and what their sign-offs are worth."""
    source = dict(spoken).get(catalogue.source_language)
    if source is not None and safety_unsigned(catalogue, source, catalogue.source_language):
        yield SAFETY_UNSIGNED.at(catalogue.safety.place, "the safety texts are not signed as they are now")
    if catalogue.clinic.publish is not Publish.REVIEWED_ONLY:
        return
    every = {subject: one for _, stands in spoken for subject, one in stands.items()}
    for (item, scope, language), one in every.items():
        if not one.valid:
            what = f"{scope.value} '{language}'" if language else scope.value
            typed = f" --language {language}" if language else f" --scope {scope.value}"
            remedy = f"have it read, then run: review sign {item}{typed} --role ..."
            message = f"'{item}': its {what} is not signed ({one.state.value})"
            yield NOT_REVIEWED.at(one.item.place, message, remedy)
