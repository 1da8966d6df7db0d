// Finding a text in the day's list. It never leaves the page: no address and no log holds a patient's name.
(() => {
  "use strict";
  const field = () => document.getElementById("find");

  const show = () => {
    const words = field().value.toLowerCase().split(/\s+/).filter(Boolean);
    let shown = 0;
    document.querySelectorAll("tr[data-words]").forEach((row) => {
      row.hidden = !words.every((word) => row.dataset.words.includes(word));
      shown += row.hidden ? 0 : 1;
    });
    document.querySelectorAll(".theatre-list").forEach((section) => {
      section.hidden = !section.querySelector("tr[data-words]:not([hidden])");
    });
    document.getElementById("none-found").hidden = words.length === 0 || shown > 0;
    return shown;
  };

  const say = (text) => { document.getElementById("spoken").textContent = text; };

  field().addEventListener("input", () => {
    const shown = show();
    say(shown === 1 ? "1 eye" : `${shown} eyes`);
  });
  document.addEventListener("htmx:afterSettle", (event) => {
    if (event.detail.target.id === "list" || event.detail.elt.id === "list") {
      show();
      say("The list has changed");
    }
  });
})();
