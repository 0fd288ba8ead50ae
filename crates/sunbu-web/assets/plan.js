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
let wrong = false; // whether a number cannot be taken
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
      tell(answer.problems);
      // While a thumb is on a slider its control must not be replaced under it.
      put(answer.parts);
      if (answer.parts.knobs) dress();
      else if (answer.values_cm) follow(answer.values_cm);
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

// Says beside each field what is wrong with it. What is shown elsewhere stays as it was, marked as
// another dressing than the numbers say.
function tell(problems) {
  for (const input of form.querySelectorAll(".knob .cm input")) {
    const sentence = problems[input.name] ?? "";
    const place = document.getElementById(`${input.name}-wrong`);
    if (place.textContent !== sentence) place.textContent = sentence;
    input.closest(".knob").classList.toggle("bad", sentence !== "");
    if (sentence) {
      input.setAttribute("aria-invalid", "true");
      input.closest("details").open = true;
    } else {
      input.removeAttribute("aria-invalid");
    }
  }
  wrong = Object.keys(problems).length > 0;
  form.querySelector(".pin").classList.toggle("unlike-it", wrong);
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
  if (wrong) return;
  waysTimer = setTimeout(async () => {
    try {
      const answer = await fetchPart("ways-out", stateOf());
      if (mine === waysAsked) put(answer.parts);
    } catch {
      say(form.dataset.lost);
    }
  }, 500);
}

const sliderOf = (knob) => knob.querySelector("input[type=range]");
const numberOf = (knob) => knob.querySelector(".cm input");

// A plain number as it stands in a field; none for shaku and for what cannot be read: the studio
// reads those.
function plain(text) {
  const number = Number(text.trim() || NaN);
  return Number.isFinite(number) ? number : null;
}

// Sliders have no name and are not sent: each moves the number beside it.
function dress() {
  for (const knob of form.querySelectorAll(".knob")) {
    knob.querySelector(".track").hidden = false;
    slide(knob, plain(numberOf(knob).value));
  }
}

const within = (slider, cm) => cm !== null && cm >= slider.min && cm <= slider.max;

// Moves a slider to a number, unless that lies beyond its ends and may be a slip, and says it
// with its unit.
function slide(knob, cm) {
  const slider = sliderOf(knob);
  if (within(slider, cm)) slider.value = cm;
  slider.setAttribute("aria-valuetext", `${slider.value} cm`);
}

// What the studio has read: sliders follow lengths in shaku, and to their end numbers beyond it; a
// field that was left empty gets the usual number that is drawn for it.
function follow(values) {
  for (const knob of form.querySelectorAll(".knob")) {
    const [number, slider] = [numberOf(knob), sliderOf(knob)];
    const cm = values[number.name];
    if (!within(slider, plain(number.value))) {
      slider.value = cm;
      slide(knob, null);
    }
    if (number.value.trim() === "" && number !== document.activeElement) number.value = cm;
  }
}

let typing; // waits for the end of a number before it is judged
form.addEventListener("input", (event) => {
  const knob = event.target.closest(".knob");
  if (!knob) return;
  const [slider, number] = [sliderOf(knob), numberOf(knob)];
  if (event.target === slider) {
    number.value = slider.value;
    slide(knob, slider.valueAsNumber);
    redraw();
  }
  if (event.target === number) {
    slide(knob, plain(number.value));
    clearTimeout(typing);
    // An emptied field waits for what is typed next, or for its end.
    if (number.value.trim() !== "") typing = setTimeout(redraw, 300);
  }
});

form.addEventListener("change", (event) => {
  if (event.target.name === "lock" || event.target.closest(".cm")) redraw();
  if (event.target.name === "occasion") redraw({ ask: true });
});

form.addEventListener("submit", (event) => {
  const name = event.submitter?.name;
  if (event.submitter?.hasAttribute("formaction")) return;
  event.preventDefault();
  redraw({ ask: name === "ask" });
});

window.addEventListener("popstate", () => location.reload());

// On a narrow screen what is met is folded away; it opens with a touch.
if (matchMedia("(max-width: 45rem)").matches) {
  for (const met of document.querySelectorAll("#numbers .met")) met.open = false;
}

document.getElementById("redraw").hidden = true;
dress();
waysOutSoon();
