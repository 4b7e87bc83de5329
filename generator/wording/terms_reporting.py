"""Holds the words of the reporting checklists: what each item asks, how far it is answered, where.

The items are those of CERT and PEMAT-P (sources in `catalogue.reporting`), in our own short words.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType

from generator.catalogue.reporting import Answer, Checklist, Item, Shown
from generator.wording.marked import Marked, mark

REPORTING: Mapping[Enum, Marked] = MappingProxyType(
    {
        Checklist.CERT: mark("reporting checklist", "CERT: what a report of exercises must tell"),
        Checklist.PEMAT: mark("reporting checklist", "PEMAT-P: whether patients can understand and act"),
        Answer.ANSWERED: mark("how far an item is answered", "answered"),
        Answer.PARTLY: mark("how far an item is answered", "partly"),
        Answer.OPEN: mark("how far an item is answered", "open"),
        Answer.NOT_APPLICABLE: mark("how far an item is answered", "does not apply"),
        Shown.PROGRAMME_PAGE: mark("where an item is answered", "page of the programme"),
        Shown.PHASE_PAGES: mark("where an item is answered", "pages of the phases"),
        Shown.EXERCISE_PAGES: mark("where an item is answered", "pages of the exercises"),
        Shown.CLINICIANS_PAGE: mark("where an item is answered", "page for clinicians"),
        Shown.WARNING_SIGNS: mark("where an item is answered", "warning signs"),
        Shown.GLOSSARY: mark("where an item is answered", "glossary"),
        Shown.BOOKLETS: mark("where an item is answered", "booklets"),
        Shown.PROTOCOL: mark("where an item is answered", "protocol for clinicians"),
        Item.CERT_1: mark("CERT item", "things needed for each exercise"),
        Item.CERT_2: mark("CERT item", "qualification of those who instruct"),
        Item.CERT_3: mark("CERT item", "alone or in a group"),
        Item.CERT_4: mark("CERT item", "supervised or not, and how it reaches people"),
        Item.CERT_5: mark("CERT item", "how it is recorded what was done"),
        Item.CERT_6: mark("CERT item", "what keeps people going"),
        Item.CERT_7A: mark("CERT item", "rule for going up"),
        Item.CERT_7B: mark("CERT item", "how the programme goes up"),
        Item.CERT_8: mark("CERT item", "each exercise told so that anybody can repeat it"),
        Item.CERT_9: mark("CERT item", "what is done at home"),
        Item.CERT_10: mark("CERT item", "what belongs to it besides exercise"),
        Item.CERT_11: mark("CERT item", "harm while exercising: which, and how often"),
        Item.CERT_12: mark("CERT item", "where it is done"),
        Item.CERT_13: mark("CERT item", "dose in numbers"),
        Item.CERT_14A: mark("CERT item", "the same for all, or fitted to the person"),
        Item.CERT_14B: mark("CERT item", "how it is fitted to the person"),
        Item.CERT_15: mark("CERT item", "rule for where to start"),
        Item.CERT_16A: mark("CERT item", "how it is checked that it is done as planned"),
        Item.CERT_16B: mark("CERT item", "whether it was done as planned"),
        Item.PEMAT_1: mark("PEMAT-P item", "the purpose is plain at once"),
        Item.PEMAT_2: mark("PEMAT-P item", "nothing leads away from the purpose"),
        Item.PEMAT_3: mark("PEMAT-P item", "everyday words"),
        Item.PEMAT_4: mark("PEMAT-P item", "medical words are explained"),
        Item.PEMAT_5: mark("PEMAT-P item", "active voice"),
        Item.PEMAT_6: mark("PEMAT-P item", "numbers are clear"),
        Item.PEMAT_7: mark("PEMAT-P item", "the reader need not reckon"),
        Item.PEMAT_8: mark("PEMAT-P item", "small pieces"),
        Item.PEMAT_9: mark("PEMAT-P item", "headings that tell"),
        Item.PEMAT_10: mark("PEMAT-P item", "a sensible order"),
        Item.PEMAT_11: mark("PEMAT-P item", "a summary"),
        Item.PEMAT_12: mark("PEMAT-P item", "what matters catches the eye"),
        Item.PEMAT_15: mark("PEMAT-P item", "pictures wherever they help to understand"),
        Item.PEMAT_16: mark("PEMAT-P item", "pictures support the text"),
        Item.PEMAT_17: mark("PEMAT-P item", "pictures have titles"),
        Item.PEMAT_18: mark("PEMAT-P item", "drawings without clutter"),
        Item.PEMAT_19: mark("PEMAT-P item", "simple tables with short headings"),
        Item.PEMAT_20: mark("PEMAT-P item", "at least one thing to do"),
        Item.PEMAT_21: mark("PEMAT-P item", "speaks to the reader"),
        Item.PEMAT_22: mark("PEMAT-P item", "actions in clear steps"),
        Item.PEMAT_23: mark("PEMAT-P item", "a tool to act with"),
        Item.PEMAT_24: mark("PEMAT-P item", "says how to use its charts and tables"),
        Item.PEMAT_25: mark("PEMAT-P item", "says how to reckon"),
        Item.PEMAT_26: mark("PEMAT-P item", "pictures wherever they help to act"),
    }
)
