// What every page does beyond htmx. layout.html says how pages use it.
(() => {
  "use strict";
  const meta = (name) => document.querySelector(`meta[name=${name}]`);
  const raise = (name, detail) => document.body.dispatchEvent(new CustomEvent(name, { bubbles: true, detail }));
  let waiting = false;

  document.addEventListener("htmx:configRequest", (event) => {
    const csrf = meta("csrf");
    if (csrf && event.detail.verb !== "get") {
      event.detail.headers[csrf.dataset.header] = csrf.content;
    }
  });

  // A session that ended: the page stays as it is; signing in happens beside it.
  document.addEventListener("session-ended", () => {
    const dialog = document.getElementById("ended");
    waiting = true;
    if (!dialog.open) {
      dialog.showModal();
    }
  });

  const resume = async () => {
    if (!waiting) {
      return;
    }
    const answer = await fetch("/access/token", { headers: { "HX-Request": "true" } }).catch(() => null);
    if (!answer || !answer.ok) {
      document.getElementById("ended-wait").textContent = "Not signed in yet.";
      return;
    }
    const now = await answer.json();
    if (meta("signed-in") && meta("signed-in").content !== now.name) {
      window.location.reload();
      return;
    }
    waiting = false;
    meta("csrf").content = now.token;
    document.querySelectorAll("input[name=_csrf]").forEach((field) => { field.value = now.token; });
    document.getElementById("ended").close();
    raise("session-resumed", { name: now.name });
  };
  document.addEventListener("visibilitychange", () => { if (!document.hidden) { resume(); } });
  window.addEventListener("focus", resume);

  // The connection.
  const away = (yes) => {
    const banner = document.getElementById("away");
    if (banner.hidden === yes) {
      banner.hidden = !yes;
      raise(yes ? "lensward:away" : "lensward:back");
    }
  };
  document.addEventListener("htmx:sendError", () => away(true));
  document.addEventListener("htmx:timeout", () => away(true));
  document.addEventListener("htmx:afterOnLoad", () => away(false));
  window.addEventListener("offline", () => away(true));
  window.addEventListener("online", () => away(false));

  // A notice of something that went wrong is of that one attempt.
  document.addEventListener("htmx:beforeRequest", (event) => {
    if (!event.detail.requestConfig.headers["Lensward-News"]) {
      document.getElementById("notice").replaceChildren();
    }
  });

  document.addEventListener("as-of", (event) => {
    document.querySelectorAll(".as-of").forEach((each) => { each.textContent = event.detail.value; });
  });
})();
