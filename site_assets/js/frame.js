/* The little the frame needs beyond HTML: the names the theme's search expects, and the menu on a small screen.
   Loaded from the head; without it every page still shows everything. */

"use strict";

document.documentElement.classList.replace("no-js", "js");

/* The theme keeps small states under these names. Nothing is kept between visits here: a shared tablet in a
   waiting room must not remember the last reader. */
window.__md_scope = new URL(".", location);
window.__md_hash = () => 0;
window.__md_get = () => null;
window.__md_set = () => undefined;

/* The theme jumps to the search at a bare "s" or "f". Someone who dictates or has shaky hands would be thrown
   about, and cannot turn it off (WCAG 2.2, 2.1.4), so bare letters never reach it outside a field. */
addEventListener(
  "keydown",
  (event) => {
    if (event.key.length === 1 && !event.target.closest?.("input, textarea, select")) {
      event.stopImmediatePropagation();
    }
  },
  true,
);

addEventListener("DOMContentLoaded", () => {
  const button = document.querySelector(".pb-menu-button");
  const menu = document.getElementById("menu");
  const opened = () => document.querySelector("details.pb-drop[open]");
  const show = (open) => {
    button.setAttribute("aria-expanded", String(open));
    menu.classList.toggle("pb-menu--open", open);
  };
  button.hidden = false;
  button.addEventListener("click", () => show(button.getAttribute("aria-expanded") !== "true"));
  addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    const drop = opened();
    if (drop) {
      drop.open = false;
      drop.querySelector("summary").focus();
    } else if (menu.classList.contains("pb-menu--open")) {
      show(false);
      button.focus();
    }
  });
  addEventListener("click", (event) => {
    for (const drop of document.querySelectorAll("details.pb-drop[open]")) {
      if (!drop.contains(event.target)) drop.open = false;
    }
  });
});

/* Not every browser opens what is folded when an address leads into it, and none opens a part that begins with its
   own fold. */
const unfold = () => {
  const target = document.getElementById(location.hash.slice(1));
  const own = target?.querySelector(":scope > details.pb-fold:first-child");
  let opened = false;
  for (let fold = (own ?? target)?.closest("details:not([open])"); fold; fold = fold.parentElement.closest("details:not([open])")) {
    fold.open = true;
    opened = true;
  }
  if (opened) target.scrollIntoView();
};
addEventListener("DOMContentLoaded", unfold);
addEventListener("hashchange", unfold);

/* Paper has no folds. Browsers that print closed parts by the style sheet alone lose nothing by this. */
addEventListener("beforeprint", () => {
  for (const fold of document.querySelectorAll(".pb-fold:not([open])")) {
    fold.open = true;
    addEventListener("afterprint", () => { fold.open = false; }, { once: true });
  }
});

/* A movement plays only when asked for, in place of a link to its file, and stops when asked again: a picture that
   moves cannot be paused, so it is taken away and the still pictures above remain. */
addEventListener("DOMContentLoaded", () => {
  for (const link of document.querySelectorAll(".pb-moving a")) {
    const { pbStop: stop, pbAlt: alt, pbSize: size } = link.dataset;
    const play = link.textContent;
    const button = document.createElement("button");
    const picture = new Image(...size.split(" ").map(Number));
    picture.alt = alt;
    button.type = "button";
    button.textContent = play;
    button.addEventListener("click", () => {
      if (picture.isConnected) {
        picture.remove();
        picture.removeAttribute("src");
      } else {
        picture.src = link.href;
        button.before(picture);
      }
      button.textContent = picture.isConnected ? stop : play;
    });
    link.replaceWith(button);
  }
});
