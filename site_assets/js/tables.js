/* Sorts tables that clinicians read by the column they choose. Without it the tables stand as they were made,
   in the order of introduction; the first column brings that order back. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const texts = new Intl.Collator(document.documentElement.lang, { numeric: true });
  const shown = (row, place) => row.cells[place].textContent.trim();

  /* The first number of a cell, in the digits of any script; NaN where there is none, as in "judged". */
  const first = (text) => {
    const latin = text.replace(/\p{Nd}/gu, (digit) => {
      let start = digit.codePointAt(0);
      while (/\p{Nd}/u.test(String.fromCodePoint(start - 1)) && digit.codePointAt(0) - start < 9) start -= 1;
      return String((digit.codePointAt(0) - start) % 10);
    });
    return parseFloat((/\d+(?:[.,٫]\d+)?/.exec(latin) ?? [""])[0].replace(/[,٫]/, "."));
  };

  const compared = (place, counts) => (one, other) => {
    if (!counts) return texts.compare(shown(one, place), shown(other, place));
    const [a, b] = [first(shown(one, place)), first(shown(other, place))];
    return a - b;
  };

  /* What has no number comes last whichever way the others run. */
  const sorted = (rows, place, counts, down) => {
    const told = counts ? rows.filter((row) => !Number.isNaN(first(shown(row, place)))) : [...rows];
    told.sort(compared(place, counts));
    if (down) told.reverse();
    return [...told, ...rows.filter((row) => !told.includes(row))];
  };

  for (const table of document.querySelectorAll("table[data-pb-sort]")) {
    const [body] = table.tBodies;
    const heads = [...table.tHead.rows[0].cells];
    const rows = [...body.rows];
    if (rows.length < 2) continue;
    heads.forEach((head, place) => {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "pb-sort";
      button.append(...head.childNodes);
      head.append(button);
      const counts = head.classList.contains("pb-number");
      button.addEventListener("click", () => {
        const down = head.getAttribute("aria-sort") === "ascending";
        for (const other of heads) other.removeAttribute("aria-sort");
        head.setAttribute("aria-sort", down ? "descending" : "ascending");
        body.append(...sorted(rows, place, counts, down));
      });
    });
  }
});
