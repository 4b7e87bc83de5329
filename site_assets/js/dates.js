/* Says before which calendar day no phase may begin, from the day of the operation. Worked out here and kept
   nowhere: nothing is written to the address or to the device. Every word stands in the page. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const part = document.getElementById("dates");
  const form = part.querySelector("form");
  const [dayField, monthField, yearField] = ["day", "month", "year"].map((name) => form.elements[name]);
  const table = part.querySelector("table");
  const { lang } = document.documentElement;
  /* Plain English writes dates as in Britain, as the booklets do. */
  const locale = `${lang === "en" ? "en-GB" : lang}-u-ca-gregory-nu-latn`;
  const written = { weekday: "short", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" };
  const inFull = new Intl.DateTimeFormat(locale, written);
  const monthName = new Intl.DateTimeFormat(locale, { month: "long", timeZone: "UTC" });
  const A_DAY = 86400000;

  /* Days are counted in UTC, where every day has 24 hours. */
  const midnight = (year, month, day) => {
    const date = new Date(0);
    date.setUTCFullYear(year, month - 1, day);
    return date;
  };
  const notBefore = (operation, week) => new Date(operation.getTime() + week * 7 * A_DAY);

  /* A number as typed, in the digits of any script; else NaN. */
  const typed = (field) => {
    const text = field.value.trim().replace(/\p{Nd}/gu, (digit) => {
      let start = digit.codePointAt(0);
      while (/\p{Nd}/u.test(String.fromCodePoint(start - 1)) && digit.codePointAt(0) - start < 9) start -= 1;
      return String((digit.codePointAt(0) - start) % 10);
    });
    return /^\d{1,4}$/.test(text) ? Number(text) : NaN;
  };

  /* What is wrong with the date, by the name of the sentence that says so; "" where nothing is. */
  const wrong = (year, month, day, date) => {
    const exists = date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
    if (![year, month, day].every(Number.isInteger) || !exists) return "none";
    if (date < new Date(part.dataset.pbEarliest)) return "early";
    const now = new Date();
    const today = midnight(now.getFullYear(), now.getMonth() + 1, now.getDate());
    return date - today > Number(part.dataset.pbAhead) * A_DAY ? "late" : "";
  };

  const show = () => {
    const [year, month, day] = [yearField, monthField, dayField].map(typed);
    const operation = midnight(year, month, day);
    const why = wrong(year, month, day, operation);
    for (const one of part.querySelectorAll("[data-pb-wrong]")) one.hidden = one.dataset.pbWrong !== why;
    for (const field of [dayField, monthField, yearField]) field.setAttribute("aria-invalid", String(why !== ""));
    part.querySelector("[data-pb-told]").hidden = why !== "";
    if (why) {
      dayField.focus();
      return;
    }
    for (const place of table.querySelectorAll("[data-pb-week]")) {
      const date = notBefore(operation, Number(place.dataset.pbWeek));
      const time = document.createElement("time");
      time.dateTime = date.toISOString().slice(0, 10);
      time.textContent = inFull.format(date);
      place.replaceChildren(time);
    }
  };

  for (let month = 1; month <= 12; month += 1) {
    monthField.add(new Option(monthName.format(midnight(2000, month, 1)), String(month)));
  }
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    show();
  });
  /* A browser that keeps the page for "back" must not keep the date. */
  addEventListener("pagehide", () => form.reset());
  addEventListener("pageshow", () => {
    form.reset();
    part.querySelector("[data-pb-told]").hidden = true;
  });
  part.querySelector("[data-pb-live]").hidden = false;
});
