/* Lets the search work where the pages are opened from a stick. A browser starts no worker from a file and reads no
   file, so the worker's script runs in a hidden frame instead, and the list of words comes as a script of its own. */

"use strict";

if (location.protocol === "file:") {
  window.Worker = class extends EventTarget {
    #frame = document.createElement("iframe");
    #waiting = [];
    #ready = false;

    constructor(script) {
      super();
      this.#frame.hidden = true;
      this.#frame.title = "";
      const begin = () => {
        document.body.append(this.#frame);
        const inside = this.#frame.contentWindow;
        /* What the worker says, it says to itself as it believes; here it reaches the page. */
        inside.postMessage = (data) => this.dispatchEvent(new MessageEvent("message", { data }));
        const own = new URL(script, location.href).href;
        const load = (address) =>
          new Promise((done, failed) => {
            const code = inside.document.createElement("script");
            code.src = new URL(address, own).href;
            code.addEventListener("load", done);
            code.addEventListener("error", failed);
            inside.document.head.append(code);
          });
        /* Rules of languages without blanks between words come this way, one after the other. */
        inside.importScripts = async (...addresses) => {
          for (const address of addresses) await load(address);
        };
        load(own).then(() => {
          this.#ready = true;
          for (const data of this.#waiting.splice(0)) this.#hand(data);
        });
      };
      if (document.body) begin();
      else addEventListener("DOMContentLoaded", begin);
    }

    #hand(data) {
      const inside = this.#frame.contentWindow;
      inside.dispatchEvent(new inside.MessageEvent("message", { data }));
    }

    postMessage(data) {
      if (this.#ready) this.#hand(data);
      else this.#waiting.push(data);
    }

    terminate() {
      this.#frame.remove();
    }
  };
}
