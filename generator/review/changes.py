"""Says what is different between two editions of a booklet, and how soon its readers must be told."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import TypeVar

from generator.catalogue.dose import DoseStep, is_harder
from generator.catalogue.edition_values import step_text
from generator.catalogue.editions import (
    Change,
    ChangeKind,
    Edition,
    ExerciseFact,
    Facts,
    ItemFact,
    RuleFact,
    Standing,
)

Fact = TypeVar("Fact", ExerciseFact, RuleFact, ItemFact)
Kind = ChangeKind


def differences(old: Facts, new: Facts, language: str) -> tuple[Change, ...]:
    """Return every difference, what keeps people safe first; `language` is that of the names in the facts."""
    found = (
        *_exercises(old, new, language),
        *_rules(old, new, language),
        *_items(old, new, language),
        *_phase(old, new),
    )
    kinds = tuple(Kind)
    return tuple(sorted(found, key=lambda change: kinds.index(change.kind)))


def standing(edition: Edition, code: str, now: Facts | None, codes: frozenset[str]) -> Standing:
    """Return how a recorded booklet stands to what is printed now; codes: all that are printed now."""
    if code in codes:
        return Standing.CURRENT
    if edition.facts is None:
        return Standing.CHANGED
    if now is None:
        return Standing.GONE
    same = not differences(edition.facts, now, edition.language)
    return Standing.SAME_TO_DO if same else Standing.CHANGED


def _exercises(old: Facts, new: Facts, language: str) -> Iterator[Change]:
    before, after = _by_id(old.exercises), _by_id(new.exercises)
    for id_ in before.keys() - after.keys():
        yield Change(Kind.REMOVED, id_, name=before[id_].name, language=language)
    for id_ in after.keys() - before.keys():
        yield Change(Kind.ADDED, id_, name=after[id_].name, language=language)
    for id_ in sorted(before.keys() & after.keys()):
        for kind, form, was, now in _exercise(before[id_], after[id_]):
            yield Change(kind, id_, form, after[id_].name, language, was, now)
    kept = [one.id for one in old.exercises if one.id in after]
    now_kept = [one.id for one in new.exercises if one.id in before]
    if kept != now_kept:
        yield Change(Kind.ORDER, before=", ".join(kept), after=", ".join(now_kept))


_Seen = tuple[ChangeKind, str, str, str]


def _exercise(old: ExerciseFact, new: ExerciseFact) -> Iterator[_Seen]:
    """Yield kind, form, before and after of each difference between two states of one exercise."""
    if old.variation != new.variation:
        yield Kind.OTHER_FORM, "", old.variation or "itself", new.variation or "itself"
    for form in sorted({*old.forms} - {*new.forms, new.variation}):
        yield Kind.FORM_REMOVED, form, form, ""
    for form in sorted({*new.forms} - {*old.forms, old.variation}):
        yield Kind.FORM_ADDED, form, "", form
    if old.weeks != new.weeks:
        later = any(now > then for now, then in zip(new.weeks, old.weeks, strict=True))
        yield (Kind.LATER if later else Kind.EARLIER), "", _weeks(old.weeks), _weeks(new.weeks)
    if (old.dose, old.often, old.pace) != (new.dose, new.often, new.pace):
        yield (Kind.LESS if _is_less(old, new) else Kind.DOSE), "", dose_line(old), dose_line(new)
    compared: tuple[tuple[ChangeKind, Callable[[ExerciseFact], str]], ...] = (
        (Kind.SAFETY, lambda fact: fact.safety),
        (Kind.WHEN, lambda fact: fact.when),
        (Kind.WORDS, lambda fact: fact.name + fact.words),
        (Kind.PICTURES, lambda fact: fact.pictures),
    )
    for kind, said in compared:
        if said(old) != said(new):
            yield kind, "", "", ""


def _is_less(old: ExerciseFact, new: ExerciseFact) -> bool:
    """Return whether somebody with the old paper may do too much: more in any respect than the new one says.

    Holding longer, and doing it oftener, is more; so is resting less. How fast a leg is lifted is neither.
    """
    steps = zip(old.dose, new.dose, strict=False)
    more_steps = len(old.dose) > len(new.dose)
    harder = any(then.kind is not now.kind or is_harder(then, now) for then, now in steps)
    most = _exceeds(old.dose, new.dose)
    times, days, rest = (then - now for then, now in zip(old.often, new.often, strict=True))
    hold, pause = old.pace[0] - new.pace[0], old.pace[3] - new.pace[3]
    return more_steps or harder or most or times > 0 or days > 0 or rest < 0 or hold > 0 or pause < 0


def _exceeds(old: Sequence[DoseStep], new: Sequence[DoseStep]) -> bool:
    """Return whether the last dose step of the old paper is more than that of the new one."""
    return bool(old and new) and (old[-1].kind is not new[-1].kind or is_harder(old[-1], new[-1]))


def dose_line(fact: ExerciseFact) -> str:
    """Return the dose in figures: ``2 x 8, 3 x 8; 1 a day, 3 days a week, 1 of rest; hold 5 s``."""
    steps = ", ".join(step_text(step) for step in fact.dose)
    times, days, rest = fact.often
    hold, lift, lower, pause = fact.pace
    parts = [steps, f"{times} a day, {days} days a week" + (f", {rest} of rest" if rest else "")]
    parts += [f"hold {hold} s"] if hold else []
    return "; ".join([*parts, f"up {lift} s, down {lower} s" + (f", pause {pause} s" if pause else "")])


def _rules(old: Facts, new: Facts, language: str) -> Iterator[Change]:
    before, after = _by_id(old.rules), _by_id(new.rules)
    for id_, rule in after.items():
        if id_ not in before:
            yield Change(Kind.NEW_RULE, id_, "", rule.words, language, "", rule.words)
            continue
        was = before[id_]
        if (was.weeks, was.limit) != (rule.weeks, rule.limit):
            weeks = (_weeks(was.weeks), _weeks(rule.weeks))
            shown = weeks if was.weeks != rule.weeks else (was.words, rule.words)
            yield Change(Kind.CHANGED_RULE, id_, "", rule.words, language, *shown)
        elif was.words != rule.words:
            yield Change(Kind.RULE_WORDS, id_, "", rule.words, language, was.words, rule.words)
    for id_, rule in before.items():
        if id_ not in after:
            yield Change(Kind.RULE_ENDED, id_, "", rule.words, language, rule.words, "")


def _items(old: Facts, new: Facts, language: str) -> Iterator[Change]:
    before, after = _by_id(old.daily_life), _by_id(new.daily_life)
    for id_, item in after.items():
        if id_ not in before:
            yield Change(Kind.ITEM_ADDED, id_, name=item.name, language=language)
        elif before[id_].safety != item.safety:
            yield Change(Kind.ITEM_SAFETY, id_, name=item.name, language=language)
        elif (before[id_].words, before[id_].name) != (item.words, item.name):
            yield Change(Kind.ITEM_WORDS, id_, name=item.name, language=language)
        elif before[id_].pictures != item.pictures:
            yield Change(Kind.PICTURES, id_, name=item.name, language=language)
    for id_, item in before.items():
        if id_ not in after:
            yield Change(Kind.ITEM_REMOVED, id_, name=item.name, language=language)


def _phase(old: Facts, new: Facts) -> Iterator[Change]:
    if old.weeks != new.weeks:
        later = any(now > then for now, then in zip(new.weeks, old.weeks, strict=True))
        kind = Kind.PHASE_LATER if later else Kind.PHASE_EARLIER
        yield Change(kind, before=_weeks(old.weeks), after=_weeks(new.weeks))
    if old.pain != new.pain:
        lower = any(now < then for now, then in zip(new.pain, old.pain, strict=True))
        kind = Kind.PAIN_LOWER if lower else Kind.PAIN_HIGHER
        yield Change(kind, before=_figures(old.pain), after=_figures(new.pain))
    compared = {
        Kind.HELP: (old.help, new.help),
        Kind.SUPPORT: (old.support, new.support),
        Kind.AVOID: (old.avoid, new.avoid),
        Kind.TELEPHONE: (old.telephone, new.telephone),
        Kind.PHASE: (old.phase, new.phase),
        Kind.REST: (old.rest, new.rest),
    }
    for kind, (was, now) in compared.items():
        if was != now:
            yield Change(kind)


def _by_id(facts: Sequence[Fact]) -> Mapping[str, Fact]:
    return {one.id: one for one in facts}


def _weeks(weeks: Sequence[int]) -> str:
    usual, delayed = weeks
    return f"week {usual}" if usual == delayed else f"week {usual} (delayed: {delayed})"


def _figures(values: Sequence[int]) -> str:
    return ", ".join(str(value) for value in values)
