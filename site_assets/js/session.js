/* The session on a phase's page: what was ticked, the dose in use, the day's pain, and the diary of it. All of it
   stays in this browser; where the browser keeps nothing, it lasts until the page is closed. Every word stands in
   the page. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const DAYS_KEPT = 120;
  const DAY = /^\d{4}-\d{2}-\d{2}$/;
  const TICK = /^\d{1,2}-\d{1,2}$/;
  const TIMES = ["during", "after", "morning"];
  const diary = document.getElementById("diary");
  const key = `phasebook/${diary.dataset.pbKey}`;
  const cards = [...document.querySelectorAll("[data-pb-do]")];
  const scales = [...document.querySelectorAll("[data-pb-pain]")];
  const table = diary.querySelector("table");
  const { lang } = document.documentElement;
  /* Plain English writes dates as in Britain, as the booklets do. */
  const locale = `${lang === "en" ? "en-GB" : lang}-u-ca-gregory-nu-latn`;
  const days = new Intl.DateTimeFormat(locale, { weekday: "short", day: "numeric", month: "long", timeZone: "UTC" });

  /* The calendar day of the device, some days from today. */
  const day = (from = 0) => {
    const now = new Date();
    return new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate() + from)).toISOString().slice(0, 10);
  };

  const isRecord = (value) => value !== null && typeof value === "object" && !Array.isArray(value);
  const isLevel = (value) => Number.isInteger(value) && value >= 0 && value <= 10;
  const levels = (told) =>
    Object.fromEntries(TIMES.filter((time) => isLevel(told[time])).map((time) => [time, told[time]]));
  const ticks = (told) =>
    Object.fromEntries(
      cards
        .map((card) => card.dataset.pbDo)
        .filter((name) => Object.hasOwn(told, name) && Array.isArray(told[name]))
        .map((name) => [name, told[name].filter((one) => TICK.test(one))]),
    );

  /* Whatever lies there, only what this page could have written is taken from it. */
  const sound = (told) => {
    const kept = { days: {}, steps: {} };
    if (!isRecord(told) || !isRecord(told.days)) throw new TypeError("not a diary");
    for (const [date, entry] of Object.entries(told.days)) {
      if (!DAY.test(date) || !isRecord(entry)) continue;
      kept.days[date] = {
        ticks: isRecord(entry.ticks) ? ticks(entry.ticks) : {},
        pain: isRecord(entry.pain) ? levels(entry.pain) : {},
      };
    }
    for (const card of cards) {
      const step = isRecord(told.steps) ? told.steps[card.dataset.pbDo] : undefined;
      if (Number.isInteger(step) && card.querySelector(`[data-pb-step="${step}"]`)) kept.steps[card.dataset.pbDo] = step;
    }
    return kept;
  };

  const say = (name, yes = true) => {
    diary.querySelector(`[data-pb-say="${name}"]`).hidden = !yes;
  };

  let store = null;
  try {
    store = window.localStorage;
    store.setItem("phasebook", "");
    store.removeItem("phasebook");
  } catch {
    /* A full store can still be read; a browser that keeps nothing cannot. */
    if (!store || store.length === 0) store = null;
    say("nothing-kept", !store);
    say("full", Boolean(store));
  }

  let kept = { days: {}, steps: {} };
  let unsaved = store === null;
  const read = () => {
    if (unsaved) return;
    let text = null;
    try {
      text = store.getItem(key);
      kept = text === null ? { days: {}, steps: {} } : sound(JSON.parse(text));
    } catch {
      say("unreadable");
    }
  };

  const write = () => {
    for (const old of Object.keys(kept.days).sort().slice(0, -DAYS_KEPT)) delete kept.days[old];
    say("deleted", false);
    say("unreadable", false);
    if (!store) return;
    try {
      store.setItem(key, JSON.stringify(kept));
      unsaved = false;
    } catch {
      unsaved = true;
    }
    say("full", unsaved);
  };

  const entry = (date) => (kept.days[date] ??= { ticks: {}, pain: {} });
  const sets = (card) => card.dataset.pbSets.trim().split(" ").map(Number)[kept.steps[card.dataset.pbDo] ?? 0];
  const boxes = (card) => [...card.querySelectorAll(".pb-tick input")];
  const wanted = (card) => boxes(card).filter((box) => Number(box.value.split("-")[1]) < sets(card));

  /* A dose, its boxes and its step back are shown for the step in use; what was said of no step is said of all. */
  const showStep = (card) => {
    const step = kept.steps[card.dataset.pbDo] ?? 0;
    for (const one of card.querySelectorAll("[data-pb-step]")) one.hidden = Number(one.dataset.pbStep) !== step;
    for (const radio of card.querySelectorAll(".pb-ladder input")) radio.checked = Number(radio.value) === step;
    const backs = [...card.querySelectorAll("[data-pb-back]")];
    const known = backs.some((one) => Number(one.dataset.pbBack) === step);
    for (const one of backs) one.hidden = known && Number(one.dataset.pbBack) !== step;
    for (const box of boxes(card)) box.closest(".pb-tick").hidden = Number(box.value.split("-")[1]) >= sets(card);
  };

  const cell = (words, label) => {
    const made = document.createElement("td");
    const inner = document.createElement("span");
    made.dataset.label = label;
    if (typeof words === "string") inner.textContent = words;
    else inner.append(...words);
    made.append(inner);
    return made;
  };

  const done = (told) =>
    cards
      .map((card) => [card, told[card.dataset.pbDo]?.length ?? 0])
      .filter(([, count]) => count > 0)
      .map(([card, count]) => {
        const line = document.createElement("span");
        const share = document.createElement("bdi");
        line.className = "pb-line";
        share.dir = "ltr";
        share.textContent = `${count}/${Math.max(count, wanted(card).length)}`;
        line.append(card.querySelector(".pb-do__name").textContent, " ", share);
        return line;
      });

  const row = ([date, { ticks: told, pain }]) => {
    const made = document.createElement("tr");
    const head = document.createElement("th");
    const labels = [...table.querySelectorAll("thead th")].map((one) => one.textContent);
    head.scope = "row";
    head.textContent = days.format(new Date(`${date}T00:00:00Z`));
    made.append(head, cell(done(told), labels[1]));
    TIMES.forEach((time, place) => made.append(cell(time in pain ? String(pain[time]) : "–", labels[place + 2])));
    return made;
  };

  const show = () => {
    const today = kept.days[day()] ?? { ticks: {}, pain: {} };
    const pains = { ...today.pain, morning: kept.days[day(-1)]?.pain.morning };
    for (const card of cards) {
      showStep(card);
      const told = today.ticks[card.dataset.pbDo] ?? [];
      for (const box of boxes(card)) box.checked = told.includes(box.value);
      card.classList.toggle("pb-do--done", wanted(card).every((box) => box.checked));
    }
    let over = false;
    for (const scale of scales) {
      const level = pains[scale.dataset.pbPain];
      for (const radio of scale.querySelectorAll("input")) radio.checked = radio.value === String(level);
      over ||= level > Number(scale.dataset.pbLimit);
    }
    document.getElementById("over").hidden = !over;
    const written = Object.entries(kept.days).filter(
      ([, one]) => Object.keys(one.pain).length > 0 || Object.values(one.ticks).some((told) => told.length > 0),
    );
    table.hidden = written.length === 0;
    say("empty", written.length === 0);
    table.tBodies[0].replaceChildren(...written.sort().reverse().map(row));
  };

  /* Another window may have written in the meantime, and midnight may have passed. */
  const change = (how) => {
    read();
    how();
    write();
    show();
  };

  for (const card of cards) {
    card.addEventListener("change", (event) => {
      const box = event.target;
      change(() => {
        if (box.type === "radio") {
          kept.steps[card.dataset.pbDo] = Number(box.value);
        } else {
          const told = new Set(entry(day()).ticks[card.dataset.pbDo] ?? []);
          if (box.checked) told.add(box.value);
          else told.delete(box.value);
          entry(day()).ticks[card.dataset.pbDo] = [...told].sort();
        }
      });
    });
  }

  for (const scale of scales) {
    const time = scale.dataset.pbPain;
    scale.addEventListener("change", (event) => {
      change(() => {
        entry(day(time === "morning" ? -1 : 0)).pain[time] = Number(event.target.value);
      });
    });
  }

  diary.querySelector("[data-pb-print]").addEventListener("click", () => {
    document.documentElement.classList.add("pb-only-diary");
    window.print();
  });
  addEventListener("afterprint", () => document.documentElement.classList.remove("pb-only-diary"));

  diary.querySelector("[data-pb-delete]").addEventListener("click", (event) => {
    kept = { days: {}, steps: {} };
    try {
      store?.removeItem(key);
    } catch {
      store = null;
    }
    show();
    event.target.closest("details").open = false;
    event.target.closest("details").querySelector("summary").focus();
    say("deleted");
  });

  const again = () => {
    read();
    show();
  };
  addEventListener("storage", (event) => {
    if (event.key === key || event.key === null) again();
  });
  addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") again();
  });

  for (const live of document.querySelectorAll("[data-pb-live]")) live.hidden = false;
  again();
  /* What was once begun stands open; who has not been told to begin it need not see more than that. */
  for (const fold of document.querySelectorAll("[data-pb-do] > .pb-fold")) {
    const { pbDo: name } = fold.parentElement.dataset;
    fold.open ||= name in kept.steps || Object.values(kept.days).some((one) => one.ticks[name]?.length > 0);
  }
});
