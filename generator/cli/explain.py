"""``explain``: says what a code means, from the same words as the page of all codes."""

from __future__ import annotations

import click

from generator.cli.shared import DONE, NOT_STARTED, format_option, print_json
from generator.problems import Rule, did_you_mean
from generator.steps.all_rules import ALL_RULES


@click.command()
@click.argument("code", required=False)
@format_option
def explain(code: str | None, form: str) -> int:
    """Explain CODE: what you see, why, what to do. Without CODE, list all codes."""
    known = {rule.code: rule for rule in ALL_RULES}
    if code is not None and code not in known:
        hint = did_you_mean(code, known) or "run 'explain' without a code to see all of them"
        click.echo(f"There is no code '{code}'; {hint}", err=True)
        return NOT_STARTED
    chosen = [known[code]] if code else list(ALL_RULES)
    if form == "json":
        print_json({"format": 1, "codes": [_as_json(rule) for rule in chosen]})
    elif code:
        click.echo(_as_text(chosen[0]))
    else:
        for rule in chosen:
            click.echo(f"{rule.code:28} {rule.symptom}")
    return DONE


def _as_text(rule: Rule) -> str:
    safety = " (safety: cannot be lowered)" if rule.safety else ""
    return (
        f"{rule.code}: {rule.severity.value}{safety}\n\n"
        f"What you see: {rule.symptom}\nWhy: {rule.cause}\nWhat to do: {rule.remedy}"
    )


def _as_json(rule: Rule) -> dict[str, object]:
    return {
        "code": rule.code,
        "severity": rule.severity.value,
        "safety": rule.safety,
        "symptom": rule.symptom,
        "cause": rule.cause,
        "remedy": rule.remedy,
    }
