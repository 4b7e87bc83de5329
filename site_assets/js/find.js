/* Narrows the list of all exercises. The choice lives in the address's #fragment, so that it can be kept as a
   bookmark; what stands there is only ever compared with the choices offered, never put into the page. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const form = document.getElementById("find");
  const fields = [...form.querySelectorAll("select")];
  const counts = [...form.querySelectorAll("[data-pb-count]")];
  const odd = form.querySelector("[data-pb-odd]");
  const none = form.querySelector("[data-pb-none]");
  const words = (value) => new Set((value ?? "").split(" ").filter(Boolean));
  const entries = [...document.querySelectorAll("[data-pb-exercise]")].map((element) => ({
    element,
    id: element.dataset.pbExercise,
    told: new Map(fields.map((field) => [field.name, words(element.dataset[field.name])])),
  }));
  /* From the inside out: a list is empty when nothing in it is shown. */
  const lists = [...document.querySelectorAll("[data-pb-list]")].reverse().map((element) => ({
    element,
    entries: entries.filter((entry) => element.contains(entry.element)),
  }));
  const all = new Set(entries.map((entry) => entry.id)).size;

  /* "Not" turns a choice round: what an exercise strains, needs or asks for is what one may want to avoid. */
  const fits = (entry, chosen) =>
    chosen.every(({ name, value, not }) => {
      const told = entry.told.get(name);
      if (value === "-") return told.size === 0;
      return told.has(value) !== not;
    });

  const show = () => {
    const chosen = fields
      .filter((field) => field.value)
      .map((field) => ({ name: field.name, value: field.value, not: "pbNot" in field.dataset }));
    const shown = new Set();
    for (const entry of entries) {
      const yes = fits(entry, chosen);
      if (entry.element.hidden === yes) entry.element.hidden = !yes;
      if (yes) shown.add(entry.id);
    }
    for (const list of lists) list.element.hidden = !list.entries.some((entry) => !entry.element.hidden);
    counts[0].textContent = String(shown.size);
    counts[1].textContent = String(all);
    none.hidden = shown.size > 0;
  };

  const keep = () => {
    const state = new URLSearchParams(fields.filter((field) => field.value).map((field) => [field.name, field.value]));
    const text = state.toString();
    history.replaceState(null, "", text ? `#${text}` : location.pathname + location.search);
  };

  const read = () => {
    const text = location.hash.slice(1);
    /* The way past the frame, or to a place in the page, is no choice. */
    if (text && document.getElementById(text)) return;
    const state = [...new URLSearchParams(text)];
    let understood = true;
    form.reset();
    for (const [name, value] of state) {
      const field = fields.find((one) => one.name === name);
      if (field && value && [...field.options].some((option) => option.value === value)) field.value = value;
      else understood = false;
    }
    odd.hidden = understood;
  };

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("change", () => {
    odd.hidden = true;
    keep();
    show();
  });
  form.querySelector("[data-pb-all]").addEventListener("click", () => {
    for (const field of fields) field.value = "";
    odd.hidden = true;
    keep();
    show();
  });
  addEventListener("hashchange", () => {
    read();
    show();
  });
  form.hidden = false;
  read();
  show();
});
