// The Eye page: printing, and where the focus goes when the record's answer has come.
(() => {
  "use strict";
  document.addEventListener("click", (event) => {
    if (event.target.closest("[data-print]")) {
      window.print();
    }
  });
  document.addEventListener("htmx:afterSwap", (event) => {
    if (event.detail.target.id === "evidence") {
      event.detail.target.focus({ preventScroll: true });
    }
    const notDone = document.getElementById("not-done");
    if (notDone) {
      notDone.focus();
    }
  });
  document.addEventListener("keydown", (event) => {
    const panel = document.getElementById("evidence");
    if (event.key === "Escape" && panel) {
      panel.replaceChildren();
    }
  });
})();
