/* The page that tells whether a booklet is current: shows what stands under the typed code and hides the rest.
   Without it the page lists every code. What was typed stays in the address's #fragment and goes nowhere. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXY";
  const at = (id) => document.getElementById(id);
  const form = at("ask");
  const codes = [...document.querySelectorAll(".pb-told__codes > [id]")];
  const sections = [...document.querySelectorAll("#told > .pb-told")];
  const near = at("near").querySelector("a");

  /* As it is printed; O is read as 0, I and L as 1 (Crockford's base 32). */
  const printed = (typed) => {
    const code = typed.toUpperCase().replace(/[\s-]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");
    return `${code.slice(0, 4)}-${code.slice(4)}`;
  };

  /* The last character is the sum of the others, weighted 1 to 7, modulo 31. */
  const isCode = (code) => {
    const values = [...code.replace("-", "")].map((char) => ALPHABET.indexOf(char));
    if (values.length !== 8 || values.includes(-1)) return false;
    return values.slice(0, 7).reduce((sum, value, place) => sum + (place + 1) * value, 0) % 31 === values[7];
  };

  /* How many characters must be changed, added or left out. */
  const apart = (one, other) => {
    let row = [...Array(other.length + 1).keys()];
    for (let i = 1; i <= one.length; i += 1) {
      const next = [i];
      for (let j = 1; j <= other.length; j += 1) {
        next[j] = Math.min(next[j - 1] + 1, row[j] + 1, row[j - 1] + (one[i - 1] === other[j - 1] ? 0 : 1));
      }
      row = next;
    }
    return row[other.length];
  };

  const show = (typed) => {
    const code = printed(typed);
    const known = codes.find((one) => one.id === code);
    const right = isCode(code);
    for (const section of sections) section.hidden = !known || !section.contains(known);
    for (const one of codes) one.classList.toggle("pb-told__asked", one === known);
    at("mistyped").hidden = Boolean(known) || right;
    at("unlisted").hidden = Boolean(known) || !right;
    at("found").hidden = !known;
    at("unknown").hidden = Boolean(known);
    const best = known ? null : codes.map((one) => [apart(code, one.id), one.id]).sort()[0];
    at("near").hidden = !best || best[0] > 3;
    if (!at("near").hidden) {
      near.href = `#${best[1]}`;
      near.querySelector("bdi").textContent = best[1];
    }
  };

  const fromAddress = () => {
    const typed = location.hash.slice(1).replaceAll("%20", " ");
    if (!/^[0-9a-z\s-]{6,14}$/i.test(typed) || !/[0-9]|-/.test(typed)) return;
    at("code").value = printed(typed);
    show(typed);
  };

  form.hidden = false;
  document.documentElement.classList.add("pb-asking");
  for (const section of sections) section.hidden = true;
  at("unknown").hidden = true;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const typed = at("code").value;
    if (!typed.trim()) return;
    history.replaceState(null, "", `#${printed(typed)}`);
    show(typed);
  });
  addEventListener("hashchange", fromAddress);
  fromAddress();
});
