/* The page for lost readers: an address that led to an exercise is answered with the exercises named most like it,
   from the list of all exercises. Without it the page leads to that list. What stands in the address is only
   compared, never put into the page. */

"use strict";

addEventListener("DOMContentLoaded", async () => {
  const MOST = 3;
  const [code, folder, file] = location.pathname.split("/").slice(-3);
  const part = [...document.querySelectorAll("[data-pb-lost]")].find((one) => one.lang === code);
  if (folder !== "exercises" || !part) return;
  document.querySelector("h1").after(part);
  const asked = file.replace(/\.html?$/, "").toLowerCase();

  /* Longer words that a name shares with the one that was asked for; then how much of its beginning is the same. */
  const words = new Set(asked.split("-").filter((word) => word.length > 3));
  const alike = (id) => {
    const same = [...id].findIndex((letter, place) => letter !== asked[place]);
    return [id.split("-").filter((word) => words.has(word)).length, same < 0 ? id.length : same];
  };

  const list = part.querySelector("[data-pb-list]");
  const answer = await fetch(list.href).catch(() => null);
  if (answer?.ok) {
    const read = new DOMParser().parseFromString(await answer.text(), "text/html");
    const found = new Map();
    for (const one of read.querySelectorAll("[data-pb-exercise]")) {
      found.set(one.dataset.pbExercise, one.querySelector("a").textContent.trim());
    }
    const near = [...found].map(([id, name]) => ({ id, name, of: alike(id) }))
      .filter(({ of: [shared, same] }) => shared > 0 || same > 3)
      .sort(({ of: a }, { of: b }) => b[0] - a[0] || b[1] - a[1])
      .slice(0, MOST);
    for (const { id, name } of near) {
      const link = document.createElement("a");
      link.href = new URL(`${id}.html`, list.href);
      link.textContent = name;
      const item = document.createElement("li");
      item.append(link);
      part.querySelector("[data-pb-near] ul").append(item);
    }
    part.querySelector("[data-pb-near]").hidden = near.length === 0;
  }
  part.querySelector("[data-pb-gone]").hidden = false;
});
