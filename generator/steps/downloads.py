"""Writes the files with a programme's evidence beside the clinicians' pages: the same in every language."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from generator.catalogue.values import Catalogue
from generator.steps.ordered import gravity_json, json_text, order_csv, order_json, studies_csl
from generator.steps.worked import Worked
from generator.website.addresses import order_file, studies_file
from generator.website.values import DataFact, DataKind

Texts = Mapping[str, tuple[tuple[str, DataKind, str], ...]]


def data_texts(catalogue: Catalogue, worked: Worked) -> Texts:
    """Return for each programme path from a language's folder, kind and text of its files."""
    return {
        id_: (
            (order_file(id_, "csv"), DataKind.ORDER_TABLE, order_csv(catalogue, order)),
            (
                order_file(id_, "json"),
                DataKind.ORDER,
                json_text(
                    {
                        **order_json(catalogue, order, hangs=worked.hanging[id_]),
                        "gravity": gravity_json(worked.moments[id_], worked.contradictions[id_]),
                    }
                ),
            ),
            (studies_file(id_), DataKind.STUDIES, studies_csl(catalogue, order)),
        )
        for id_, order in worked.orders.items()
    }


def write_data(texts: Texts, folder: Path) -> Mapping[str, tuple[DataFact, ...]]:
    """Write the files below a language's folder of pages, and return what a page says of them."""
    facts: dict[str, tuple[DataFact, ...]] = {}
    for programme, files in texts.items():
        found = []
        for path, kind, text in files:
            content = text.encode("utf-8")
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            (folder / path).write_bytes(content)
            found.append(DataFact(path, kind, len(content)))
        facts[programme] = tuple(found)
    return facts
