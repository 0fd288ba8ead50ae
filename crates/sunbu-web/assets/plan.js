// The plan under the hands: sliders, numbers and locks redraw figure and tables as they move.
//
// All numbers and all words come from the studio; this file only carries values there and
// markup back. Of several answers only the newest counts. The page's address always holds the
// state, so that a reload, a bookmark and the way back keep it.

const form = document.getElementById("dressing");
const base = form.dataset.path;

let asked = 0; // counts requests: an answer older than the newest shown is dropped
let shown = 0;
let running = false;
let again = null; // what to ask once the running request has come back

const stateOf = () => {
  const query = new URLSearchParams(new FormData(form));
  for (const name of ["title", "ask"]) query.delete(name);
  return query;
};

async function fetchPart(path, query) {
  const answer = await fetch(`${base}/${path}?${query}`);
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  return answer.json();
}

// Groups of sliders stay open or closed as the hands have left them.
function put(parts) {
  for (const [id, markup] of Object.entries(parts)) {
    const place = document.getElementById(id);
    if (!place) continue;
    const open = [...place.querySelectorAll("details")].map((group) => group.open);
    place.innerHTML = markup;
    place.querySelectorAll("details").forEach((group, i) => (group.open = open[i] ?? group.open));
  }
}

// One request at a time: while one runs, only the newest wish waits.
async function redraw(options = {}) {
  if (running) {
    again = { ...again, ...options };
    return;
  }
  running = true;
  const query = stateOf();
  if (options.ask) query.set("ask", "1");
  const mine = ++asked;
  document.body.classList.add("busy");
  try {
    const answer = await fetchPart("redraw", query);
    if (mine > shown) {
      shown = mine;
      // While a thumb is on a slider its control must not be replaced under it.
      put(answer.parts);
      if (options.ask) dress();
      keepAddress(answer.query, options.ask);
    }
    say("");
  } catch {
    say(form.dataset.lost);
  } finally {
    running = false;
    document.body.classList.remove("busy");
  }
  if (again) {
    const next = again;
    again = null;
    redraw(next);
  } else {
    waysOutSoon();
  }
}

function say(text) {
  const place = document.getElementById("lost");
  place.textContent = text;
  place.hidden = !text;
}

// Browsers refuse too many changes of address in a short time: it is written when hands rest,
// and the state before "ask the plan" stays one step back.
let addressTimer;
function keepAddress(query, asNewStep) {
  clearTimeout(addressTimer);
  const address = `${base}?${query}`;
  if (asNewStep) {
    history.pushState(null, "", address);
  } else {
    addressTimer = setTimeout(() => history.replaceState(null, "", address), 200);
  }
}

// What would free a missed wish takes the planner many plans, so it is asked for at rest.
let waysTimer;
let waysAsked = 0;
function waysOutSoon() {
  clearTimeout(waysTimer);
  const mine = ++waysAsked;
  waysTimer = setTimeout(async () => {
    try {
      const answer = await fetchPart("ways-out", stateOf());
      if (mine === waysAsked) put(answer.parts);
    } catch {
      say(form.dataset.lost);
    }
  }, 500);
}

// Sliders have no name and are not sent: each moves the number beside it.
function dress() {
  for (const knob of form.querySelectorAll(".knob")) {
    const slider = knob.querySelector("input[type=range]");
    const number = knob.querySelector("input[type=number]");
    knob.querySelector(".track").hidden = false;
    slider.value = number.value;
    speak(slider);
  }
}

// A slider says its unit too.
function speak(slider) {
  slider.setAttribute("aria-valuetext", `${slider.value} cm`);
}

form.addEventListener("input", (event) => {
  const knob = event.target.closest(".knob");
  if (!knob) return;
  const slider = knob.querySelector("input[type=range]");
  const number = knob.querySelector("input[type=number]");
  if (event.target === slider) number.value = slider.value;
  if (event.target === number) {
    // An empty or half-typed number is not sent; the figure keeps the last whole one.
    if (number.value === "" || !Number.isFinite(number.valueAsNumber)) return;
    slider.value = number.value;
  }
  if (event.target !== slider && event.target !== number) return;
  speak(slider);
  redraw();
});

form.addEventListener("change", (event) => {
  if (event.target.name === "lock") redraw();
  if (event.target.name === "occasion") redraw({ ask: true });
});

form.addEventListener("submit", (event) => {
  const name = event.submitter?.name;
  if (event.submitter?.hasAttribute("formaction")) return;
  event.preventDefault();
  redraw({ ask: name === "ask" });
});

window.addEventListener("popstate", () => location.reload());

document.getElementById("redraw").hidden = true;
dress();
waysOutSoon();
