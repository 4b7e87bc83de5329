/* The first page of the site, where there are several languages: goes on to the first one the browser asks for.
   Without it the page still lists them all. */

"use strict";

addEventListener("DOMContentLoaded", () => {
  const doors = [...document.querySelectorAll("a[hreflang][data-pb-door]")];
  const primary = (code) => code.toLowerCase().split("-")[0];
  for (const wish of navigator.languages) {
    const same = doors.find((door) => door.hreflang.toLowerCase() === wish.toLowerCase());
    const near = doors.find((door) => primary(door.hreflang) === primary(wish));
    if (same || near) {
      location.replace((same || near).href);
      return;
    }
  }
});
