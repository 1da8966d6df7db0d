// The lens check: one question at a time. Only answers are kept, in this tab alone, and they are cleared when the step is done.
(() => {
  "use strict";
  const main = document.querySelector("main.check-page");
  const asking = document.getElementById("asking");
  if (!main) {
    return;
  }
  const next = main.dataset.next;
  const store = `check ${main.dataset.check} ${next}`;
  const asks = asking ? [...asking.querySelectorAll(".ask")] : [];
  const GS = "\u001d";
  let kept = { at: 0, answers: {}, scans: [], waiting: false };
  let timer = 0;

  const keep = () => sessionStorage.setItem(store, JSON.stringify(kept));
  const forget = () => sessionStorage.removeItem(store);
  const say = (words) => { document.getElementById("spoken").textContent = words; };
  const url = `/check/${encodeURIComponent(main.dataset.booking)}`;

  // A keyboard wedge may send FNC1 as Ctrl+] (ASCII 29) or as a character the hospital has named; both are kept as ASCII 29.
  document.addEventListener("keydown", (event) => {
    const field = event.target;
    const separator = (event.ctrlKey && event.key === "]") || event.key === GS;
    if (separator && field.matches && field.matches("input")) {
      event.preventDefault();
      field.setRangeText(GS, field.selectionStart, field.selectionEnd, "end");
    }
  });
  const scanned = (text) => (main.dataset.separator ? text.split(main.dataset.separator).join(GS) : text);
  document.addEventListener("htmx:configRequest", (event) => {
    if (event.detail.elt.closest && event.detail.elt.closest(".instead")) {
      const scans = event.detail.formData.getAll("scan").map(scanned);
      event.detail.formData.delete("scan");
      scans.forEach((each) => event.detail.formData.append("scan", each));
    }
  });
  document.querySelectorAll(".carton-field").forEach((field) => field.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      event.preventDefault();
      const fields = [...field.form.querySelectorAll("input, textarea")];
      fields[fields.indexOf(field) + 1].focus();
    }
  }));

  const words = (ask) => {
    const given = kept.answers[ask.dataset.id] || [];
    const of = (value) => {
      const option = [...ask.querySelectorAll("[data-value]")].find((each) => each.dataset.value === value);
      return option ? option.textContent.trim() : value;
    };
    if (ask.dataset.kind === "CARTON") {
      return kept.scans.length ? `${kept.scans.length} scanned` : "not scanned";
    }
    return given.length ? given.map(of).join(", ") : (ask.dataset.kind === "EACH" ? "none" : "not stated");
  };

  const review = () => {
    const list = document.getElementById("review");
    list.replaceChildren();
    asks.slice(0, -1).forEach((ask) => {
      const name = document.createElement("dt");
      const value = document.createElement("dd");
      name.textContent = ask.querySelector(".ask-word").textContent;
      value.textContent = words(ask);
      list.append(name, value);
    });
  };

  const show = () => {
    asking.hidden = false;
    asks.forEach((each, index) => { each.hidden = index !== kept.at; });
    const ask = asks[kept.at];
    document.getElementById("count").textContent = String(Math.min(kept.at + 1, asks.length - 1));
    document.getElementById("back").hidden = kept.at === 0;
    const field = ask.querySelector("input.big-field:not(.other)");
    const given = kept.answers[ask.dataset.id] || [];
    ask.querySelectorAll(".toggle").forEach((each) => each.setAttribute("aria-pressed", String(given.includes(each.dataset.value))));
    if (ask.dataset.kind === "REVIEW") {
      review();
    } else if (ask.dataset.kind === "CARTON") {
      list(ask);
      field.value = "";
    } else if (field && given.length) {
      field.value = given[0];
    }
    (field || ask.querySelector(".ask-word")).focus();
    const help = ask.querySelector(".ask-help");
    say(`${ask.querySelector(".ask-word").textContent} ${help ? help.textContent : ""}`);
    keep();
  };

  const go = (by) => {
    kept.at = Math.max(0, Math.min(asks.length - 1, kept.at + by));
    show();
  };

  const answer = (values) => {
    kept.answers[asks[kept.at].dataset.id] = values.map((each) => each.trim()).filter((each) => each);
    go(1);
  };

  const list = (ask) => {
    const shown = ask.querySelector(".scans");
    shown.replaceChildren();
    kept.scans.forEach((each) => {
      const line = document.createElement("li");
      line.textContent = each.split(GS).join("\u241d");
      shown.append(line);
    });
  };

  const label = (ask) => {
    window.htmx.ajax("POST", `${url}/label`, { target: "#label-said", swap: "innerHTML", source: ask, values: { scan: kept.scans } });
  };
  document.addEventListener("htmx:afterSwap", (event) => {
    if (event.detail.target.id === "label-said" && event.detail.target.querySelector("[data-whole=true]")) {
      say(event.detail.target.textContent);
      go(1);
    }
  });

  const typed = (ask) => {
    const field = ask.querySelector("input.big-field");
    if (ask.dataset.kind === "EACH") {
      const pressed = [...ask.querySelectorAll(".toggle[aria-pressed=true]")].map((each) => each.dataset.value);
      answer(field ? pressed.concat(field.value) : pressed);
      return;
    }
    if (!field.value.trim()) {
      say("Nothing is stated yet.");
      field.focus();
      return;
    }
    if (ask.dataset.kind === "CARTON") {
      const text = scanned(field.value);
      if (!kept.scans.includes(text)) {
        kept.scans.push(text);
      }
      field.value = "";
      list(ask);
      keep();
      label(ask);
      return;
    }
    answer([field.value]);
  };

  // Sending: the same answers sent twice do no harm, so they are sent until an answer comes.
  const outcome = document.getElementById("outcome");
  const send = () => {
    kept.waiting = true;
    keep();
    const values = { ...kept.answers, scan: kept.scans };
    window.htmx.ajax("POST", `${url}/${next}`, { target: "#outcome", swap: "innerHTML", source: asking, values });
  };
  const wait = (yes) => {
    document.getElementById("waiting").hidden = !yes;
    clearInterval(timer);
    timer = yes ? setInterval(() => { if (kept.waiting) { send(); } }, 5000) : 0;
  };
  document.addEventListener("htmx:sendError", () => { if (kept.waiting) { wait(true); } });
  document.addEventListener("lensward:back", () => { if (kept.waiting) { send(); } });
  document.addEventListener("session-resumed", () => { if (kept.waiting) { send(); } });

  document.addEventListener("htmx:afterSwap", (event) => {
    const verdict = outcome.querySelector(".verdict[data-kind]");
    if (event.detail.target !== outcome || !verdict) {
      return;
    }
    kept.waiting = false;
    if (asking) {
      wait(false);
      asking.hidden = true;
    }
    document.querySelectorAll(".instead").forEach((each) => { each.hidden = verdict.dataset.kind === "passed"; });
    document.body.classList.toggle("is-stop", verdict.dataset.kind === "stopped");
    if (["passed", "stopped", "renewed"].includes(verdict.dataset.kind)) {
      forget();
    } else {
      keep();
    }
    verdict.focus();
    window.scrollTo(0, 0);
    say(verdict.textContent.replace(/\s+/g, " "));
  });

  document.addEventListener("click", (event) => {
    const press = event.target.closest("button");
    if (!press || !main.contains(press)) {
      return;
    }
    const ask = press.closest(".ask");
    const field = ask && ask.querySelector("input.big-field");
    if (press.matches(".toggle")) {
      press.setAttribute("aria-pressed", String(press.getAttribute("aria-pressed") !== "true"));
    } else if (press.dataset.value && ask) {
      answer([press.dataset.value]);
    } else if (press.dataset.key === "back") {
      field.value = field.value.slice(0, -1);
    } else if (press.dataset.key === "-") {
      field.value = field.value.startsWith("-") ? field.value.slice(1) : `-${field.value}`;
    } else if (press.dataset.key) {
      field.value += press.dataset.key;
    } else if (press.matches("[data-go]")) {
      typed(ask);
    } else if (press.matches("[data-clear]")) {
      kept.scans = [];
      document.getElementById("label-said").replaceChildren();
      show();
    } else if (press.matches("[data-send]")) {
      send();
    } else if (press.matches("[data-again]")) {
      outcome.replaceChildren();
      show();
    } else if (press.id === "back") {
      go(-1);
    } else if (press.id === "restart") {
      kept = { at: 0, answers: {}, scans: [], waiting: false };
      asks.forEach((each) => each.querySelectorAll("input").forEach((one) => { one.value = one.defaultValue; }));
      show();
    }
  });

  document.addEventListener("keydown", (event) => {
    const ask = event.target.closest && event.target.closest(".ask");
    if (event.key === "Enter" && ask && event.target.matches("input")) {
      event.preventDefault();
      typed(ask);
    }
  });

  if (asking) {
    const old = sessionStorage.getItem(store);
    kept = old ? JSON.parse(old) : kept;
    show();
    if (kept.waiting) {
      send();
    }
  }
})();
