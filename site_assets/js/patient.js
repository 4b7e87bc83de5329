/* Narrows the sheet of a phase to one patient. What each choice does to each exercise was worked out when the page
   was made and stands in its elements; every word stands in the page. The choice lives in the address's #fragment
   and nowhere else; what stands there is only ever compared with what is offered. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const page = document.getElementById("patient");
  const form = document.getElementById("choose");
  const sheet = document.getElementById("one");
  const part = (selector) => page.querySelector(selector);
  const parts = (selector, within = page) => [...within.querySelectorAll(selector)];
  const say = (name, yes) => { part(`[data-pb-say="${name}"]`).hidden = !yes; };
  const listed = (text) => (text ?? "").split(" ").filter(Boolean);
  const labelled = (name) => parts(`[name="${name}"]`, form).map((one) => [one.value, one.labels[0].textContent.trim()]);
  const avoidable = new Map(labelled("avoid"));
  const things = new Map(labelled("have"));
  const names = new Map([
    ...labelled("mastered"),
    ...parts("[data-pb-card]").map((one) => [one.dataset.pbCard, one.querySelector("h3").firstChild.textContent.trim()]),
  ]);
  const nameOf = (id) => names.get(id) ?? id;

  const cards = parts("[data-pb-card]").map((element) => {
    const { things: asked, strains, positions, surfaces, weights, limits, needs, oneOf, instead, pbCard, pbBrought } = element.dataset;
    return {
      element, instead, id: pbCard, brought: pbBrought !== undefined,
      asked: listed(asked), strains: listed(strains), positions: listed(positions), surfaces: listed(surfaces),
      weights: listed(weights), limits: listed(limits).map((one) => one.split(":")), needs: listed(needs), oneOf: listed(oneOf),
    };
  });
  const byId = new Map(cards.map((card) => [card.id, card]));

  /* Words with their gaps filled; `values` by the name of the gap. */
  const worded = (name, values) =>
    part(`[data-pb-word="${name}"]`).dataset.pbText.replace(/\{(\w+)\}/g, (_, gap) => values[gap] ?? "");

  /* The things at hand; null where nothing was said to be missing. */
  const atHand = () => {
    const boxes = parts('[name="have"]', form);
    return boxes.every((one) => one.checked) ? null : boxes.filter((one) => one.checked).map((one) => one.value);
  };

  const chosen = () => ({
    have: atHand(),
    without: parts('[name="use"]', form).filter((one) => !one.checked).map((one) => one.value),
    avoid: parts('[name="avoid"]:checked', form).map((one) => one.value),
    mastered: parts('[name="mastered"]:checked', form).map((one) => one.value),
    limits: parts('[name="limit"]', form).filter((one) => one.value).map((one) => [one.dataset.pbOf, one.value]),
    doses: parts('[name="dose"]', form).filter((one) => one.value).map((one) => [one.dataset.pbOf, one.value]),
    weight: form.elements["weight-bearing"]?.value ?? "",
    side: form.elements.side.value,
    kind: form.elements.kind.value,
  });

  /* Why a card falls out, as the name of the sentence and what it speaks of; null where it stays. */
  const why = (card, choice) => {
    const met = (some) => some.filter((one) => choice.avoid.includes(one));
    if (!card.brought && choice.without.includes(card.id)) return ["asked", []];
    const lacking = card.asked.filter((one) => choice.have && !choice.have.includes(one));
    if (lacking.length) return ["thing", lacking];
    if (met(card.strains).length) return ["strain", met(card.strains)];
    if (card.surfaces.every((one) => choice.avoid.includes(one))) return ["avoided", card.surfaces];
    if (met(card.positions).length) return ["avoided", met(card.positions)];
    const least = new Map(card.limits);
    const broken = choice.limits.filter(([name, degrees]) => Number(degrees) < Number(least.get(name) ?? 0));
    const weight = choice.weight && !card.weights.includes(choice.weight) ? ["weight"] : [];
    const all = [...broken.map(([name]) => name), ...weight];
    return all.length ? ["limit", all] : null;
  };

  const limitName = (name) => {
    const field = name === "weight" ? form.elements["weight-bearing"] : part(`select[data-pb-of="${name}"]`);
    return `${field.labels[0].textContent.trim()}: ${field.selectedOptions[0].textContent.trim()}`;
  };

  const worked = (choice) => {
    const kept = [];
    const out = [];
    for (const card of cards.filter((one) => !one.brought)) {
      const reason = why(card, choice);
      if (!reason) {
        kept.push(card);
        continue;
      }
      const other = reason[0] === "asked" ? null : byId.get(card.instead);
      const instead = other && !why(other, choice) ? other : null;
      if (instead?.brought && !kept.includes(instead)) kept.push(instead);
      out.push({ card, reason, instead });
    }
    const ids = new Set([...kept.map((card) => card.id), ...choice.mastered]);
    const refused = kept.flatMap((card) => [
      ...card.needs.filter((one) => !ids.has(one)).map((one) => [card, "needs", [one]]),
      ...(card.oneOf.length && !card.oneOf.some((one) => ids.has(one)) ? [[card, "one-of", card.oneOf]] : []),
    ]);
    return { kept, out, refused };
  };

  const line = (text) => {
    const item = document.createElement("li");
    item.textContent = text;
    return item;
  };

  const outLine = ({ card, reason: [kind, what], instead }) => {
    const nameOfReason = { limit: limitName, thing: (one) => things.get(one) }[kind] ?? ((one) => avoidable.get(one) ?? one);
    const said = what.map((one) => nameOfReason(one)).join(", ");
    const after = kind === "asked" ? worded("nothing", {})
      : instead ? worded("instead", { exercise: nameOf(instead.id) }) : worded("none", {});
    return line(`${nameOf(card.id)}: ${worded(kind, { what: said })} ${after}`);
  };

  /* A dose that was chosen for an exercise that is not on the sheet is left out of what is told. */
  const typed = (choice, kept) => {
    const quoted = (word) => (/^[\w.,=/-]+$/.test(word) ? word : `"${word}"`);
    const there = kept.map((card) => card.id);
    const words = [page.dataset.pbCommand, "--language", page.dataset.pbLanguage];
    const option = (name, value) => { if (value) words.push(`--${name}`, quoted(value)); };
    option("side", choice.side);
    option("without", choice.without.join(","));
    option("mastered", choice.mastered.join(","));
    if (choice.have) words.push("--have", quoted(choice.have.join(",")));
    option("avoid", choice.avoid.join(","));
    for (const [name, degrees] of choice.limits) option("limit", `${name}=${degrees}`);
    option("weight-bearing", choice.weight);
    for (const [id, dose] of choice.doses) if (there.includes(id)) option("dose", `${id}=${dose}`);
    option("kind", choice.kind);
    return words.join(" ");
  };

  const showCard = (card, choice, kept) => {
    card.element.hidden = !kept.includes(card);
    const dose = new Map(choice.doses).get(card.id);
    const amounts = parts("[data-pb-dose]", card.element);
    const shown = amounts.find((one) => one.dataset.pbDose === dose) ?? amounts.find((one) => one.dataset.pbFirst !== undefined);
    for (const one of amounts) one.hidden = one !== shown;
    const steps = parts("[data-pb-step]", card.element);
    for (const one of steps) one.hidden = Number(one.dataset.pbStep) < Number(shown.dataset.pbOnwards);
    const then = card.element.querySelector("[data-pb-then]");
    if (then) then.hidden = steps.every((one) => one.hidden);
    for (const one of parts("[data-pb-surface]", card.element)) one.hidden = choice.avoid.includes(one.dataset.pbSurface);
    for (const one of parts("[data-pb-heir]", card.element)) one.hidden = !kept.some((other) => other.id === one.dataset.pbHeir);
  };

  const show = () => {
    const choice = chosen();
    const { kept, out, refused } = worked(choice);
    for (const card of cards) showCard(card, choice, kept);
    const limits = new Map([...choice.limits, ...(choice.weight ? [["weight", choice.weight]] : [])]);
    for (const one of parts("[data-pb-for]", sheet)) one.hidden = limits.get(one.dataset.pbFor) !== one.dataset.pbValue;
    for (const one of parts("[data-pb-covered]", sheet)) one.hidden = limits.has(one.dataset.pbCovered);
    const side = part("[data-pb-side]");
    side.hidden = !choice.side;
    for (const one of parts("[data-pb-value]", side)) one.hidden = one.dataset.pbValue !== choice.side;
    page.dataset.pbShown = choice.kind || "standard";
    page.classList.toggle("pb-patient--left", choice.side === "left");
    const whole = kept.length > 0 && refused.length === 0;
    sheet.hidden = !whole;
    part("[data-pb-print]").disabled = !whole;
    part(".pb-command").hidden = !whole;
    say("empty", kept.length === 0);
    say("refused", kept.length > 0 && refused.length > 0);
    part("[data-pb-refused]").replaceChildren(...refused.map(([card, kind, what]) =>
      line(worded(kind, { exercise: nameOf(card.id), what: what.map(nameOf).join(", ") }))));
    say("count", whole);
    part("[data-pb-count]").textContent = String(kept.length);
    say("out", out.length > 0);
    part("[data-pb-out]").replaceChildren(...out.map(outLine));
    part("[data-pb-typed]").textContent = typed(choice, kept);
    say("copied", false);
  };

  const fragment = () => {
    const { have, without, avoid, mastered, limits, doses, weight, side, kind } = chosen();
    const all = [
      ["without", without.join(",")], ["have", have?.join(",")], ["avoid", avoid.join(",")],
      ["mastered", mastered.join(",")],
      ...limits.map(([name, degrees]) => ["limit", `${name}=${degrees}`]), ["weight-bearing", weight],
      ...doses.map(([id, dose]) => ["dose", `${id}=${dose}`]), ["side", side], ["kind", kind],
    ];
    return new URLSearchParams(all.filter(([name, value]) => value || (name === "have" && have))).toString();
  };

  const keep = () => {
    const text = fragment();
    history.replaceState(null, "", text ? `#${text}` : location.pathname + location.search);
    carry();
  };

  /* The other languages show the same choice. */
  const carry = () => {
    const text = fragment();
    for (const link of document.querySelectorAll(".pb-languages a")) link.hash = text;
  };

  /* Sets one field to a value that it offers; false where it does not. */
  const set = (field, value) => {
    if (!field || !value || ![...field.options].some((one) => one.value === value)) return false;
    field.value = value;
    return true;
  };
  const tick = (name, value, yes) => {
    const box = parts(`[name="${name}"]`, form).find((one) => one.value === value);
    if (box) box.checked = yes;
    return Boolean(box);
  };
  const ofField = (name, text) => {
    const [id, ...rest] = text.split("=");
    const field = parts(`select[name="${name}"]`, form).find((one) => one.dataset.pbOf === id);
    return set(field, rest.join("="));
  };
  const every = (text, one) => text.split(",").map(one).every(Boolean);
  const readers = {
    without: (text) => every(text, (id) => tick("use", id, false)),
    have: (text) => {
      const told = listed(text.replaceAll(",", " "));
      const known = told.filter((one) => things.has(one));
      if (told.length && !known.length) return false;
      for (const box of parts('[name="have"]', form)) box.checked = known.includes(box.value);
      return known.length === told.length;
    },
    avoid: (text) => every(text, (word) => tick("avoid", word, true)),
    mastered: (text) => every(text, (id) => tick("mastered", id, true)),
    limit: (text) => ofField("limit", text),
    dose: (text) => ofField("dose", text),
    "weight-bearing": (text) => set(form.elements["weight-bearing"], text),
    side: (text) => set(form.elements.side, text),
    kind: (text) => set(form.elements.kind, text),
  };

  const read = () => {
    const text = location.hash.slice(1);
    if (text && document.getElementById(text)) return;
    form.reset();
    const told = [...new URLSearchParams(text)].map(([name, value]) =>
      Object.hasOwn(readers, name) && readers[name](value));
    say("odd", told.includes(false));
  };

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("change", (event) => {
    if ("pbLanguages" in event.target.dataset) {
      location.href = `${event.target.value}#${fragment()}`;
      return;
    }
    say("odd", false);
    keep();
    show();
  });
  part("[data-pb-again]").addEventListener("click", () => {
    form.reset();
    say("odd", false);
    keep();
    show();
  });
  part("[data-pb-print]").addEventListener("click", () => print());
  const copy = part("[data-pb-copy]");
  copy.hidden = !navigator.clipboard;
  copy.addEventListener("click", () =>
    navigator.clipboard.writeText(part("[data-pb-typed]").textContent).then(() => say("copied", true), () => {
      getSelection().selectAllChildren(part("[data-pb-typed]"));
    }));
  addEventListener("hashchange", () => {
    read();
    carry();
    show();
  });
  form.hidden = false;
  read();
  carry();
  show();
});
