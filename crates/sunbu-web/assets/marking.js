// Marks on a photo under the hands: tapped, dragged, nudged with keys, taken back.
//
// Where marks go and what is wrong with them comes from the studio; this file knows what a finger
// means. A task is what the next tap on the photo is for.

import { Keep } from "./mark-keep.js";
import { Loupe } from "./mark-loupe.js";
import { Picture } from "./mark-picture.js";
import { Side } from "./mark-side.js";

const get = (id) => document.getElementById(id);
const root = get("marking");
const words = JSON.parse(root.dataset.words);
const frame = get("frame");
const side = new Side(words);
const keep = new Keep(root, () => draw());
const picture = new Picture(keep.marking.shot.size, side.nameOf);
const loupe = new Loupe();

let chosen = null;
let asked = null; // a task that was asked for: { mark } or { kind, points }
let drag = null; // a finger on its way: { id, from, start, at, moved }

function task() {
  const { marks } = keep.marking.shot;
  if (!marks.floor) return { mark: "floor" };
  if (!marks.crown) return { mark: "crown" };
  return asked;
}

function draw() {
  const { marking, expected } = keep;
  const shown = drag?.moved ? structuredClone(marking) : marking;
  if (drag?.moved) put(shown, drag.id, drag.at);
  const here = task()?.mark ?? chosen;
  picture.draw(shown, expected, here);
  side.draw(keep, here, Boolean(task()));
  sayTask();
  get("undo").disabled = !keep.canUndo;
  get("saved").textContent = keep.trouble || keep.theirs ? "" : words[keep.unsaved ? "saving" : "saved"];
  const told = words[keep.trouble] ?? keep.trouble;
  if (get("kept-here").textContent !== told) get("kept-here").textContent = told;
  get("kept-here").hidden = !told;
  get("stale").hidden = !keep.theirs;
}

function sayTask() {
  const now = task();
  let text = words.ready;
  if (now?.kind) text = words[`tap-${now.kind}-${now.points.length + 1}`];
  else if (now?.mark === "floor" || now?.mark === "crown") text = `${words[`tap-${now.mark}`]} ${words[`hint-${now.mark}`]}`;
  else if (now) text = `${side.nameOf(now.mark).name}: ${words["tap-mark"]}`;
  if (get("task").textContent !== text) get("task").textContent = text;
  frame.classList.toggle("aiming", Boolean(now));
}

const without = (list, mark) => list.filter((other) => other !== mark);
const joined = (list, mark) => [...without(list, mark), mark].sort();

// Places are kept in hundredths of a pixel, as the studio keeps them.
const rounded = (at) => at.map((value) => Math.round(100 * value) / 100);

// Puts a mark, a corner of the sheet or an end of the tape where a hand wants it.
function put(marking, id, there) {
  const at = rounded(there);
  const [kind, i] = id.split(".");
  if (i !== undefined) {
    const points = kind === "sheet" ? marking.shot.references.sheet : marking.tape.ends;
    points[i] = at;
    return;
  }
  // A guess that a hand has moved is none any more.
  const said = marking.moved.includes(id) ? marking.shot.marks[id]?.trust : null;
  marking.shot.marks[id] = { at, trust: said ?? "sure" };
  marking.moved = joined(marking.moved, id);
  marking.left_out = without(marking.left_out, id);
}

function set(id, at, options = {}) {
  const isMark = !id.includes(".");
  keep.change((marking) => put(marking, id, at), { hands: isMark ? [id] : [], ...options });
}

// A tap that a task was waiting for.
function tapped(at) {
  const now = task();
  if (!now.kind) {
    asked = null;
    const first = now.mark === "floor" || now.mark === "crown";
    chosen = first ? null : now.mark;
    set(now.mark, at);
    return;
  }
  now.points.push(rounded(at));
  const all = now.kind === "sheet" ? 4 : 2;
  if (now.points.length < all) {
    draw();
    return;
  }
  asked = null;
  keep.change((marking) => {
    if (now.kind === "sheet") marking.shot.references.sheet = now.points;
    else marking.tape = { ends: now.points, length: marking.tape?.length ?? "" };
  });
  if (now.kind === "tape") get("tape-length").focus();
}

function trust(marking, mark, how) {
  marking.shot.marks[mark].trust = how;
  marking.moved = joined(marking.moved, mark);
}

const acts = {
  // Who says how sure a mark is speaks for where it stands.
  unsure: (mark) => keep.change((m) => trust(m, mark, "unsure")),
  sure: (mark) => keep.change((m) => trust(m, mark, "sure")),
  follow: (mark) => keep.change((m) => (m.moved = without(m.moved, mark))),
  out: (mark) => keep.change((m) => {
    delete m.shot.marks[mark];
    m.moved = without(m.moved, mark);
    m.left_out = joined(m.left_out, mark);
  }),
  // A mark that was left out follows again; one that is not in sight is put by hand.
  again: (mark) => {
    if (keep.marking.left_out.includes(mark)) {
      keep.change((m) => (m.left_out = without(m.left_out, mark)));
    } else {
      asked = { mark };
      draw();
    }
  },
};

function choose(mark) {
  chosen = mark;
  asked = null;
  const at = keep.marking.shot.marks[mark]?.at ?? keep.expected[mark];
  if (at) picture.reveal(at);
  draw();
}

// Fingers. One that begins on a mark, or that a task waits for, does not scroll.

const means = (finger) => {
  const at = picture.at(finger);
  if (task()) return picture.holds(at) ? "task" : null;
  return picture.near(at, chosen);
};

frame.addEventListener("touchstart", (event) => {
  if (event.touches.length === 1 && means(event.touches[0])) event.preventDefault();
}, { passive: false });

frame.addEventListener("pointerdown", (event) => {
  if (!event.isPrimary || event.button !== 0) return;
  const id = means(event);
  if (!id) return;
  event.preventDefault();
  frame.focus({ preventScroll: true });
  frame.setPointerCapture(event.pointerId);
  const from = picture.at(event);
  const [kind, i] = id.split(".");
  const { shot, tape } = keep.marking;
  const points = { sheet: shot.references.sheet, tape: tape?.ends }[kind];
  const start = id === "task" ? from : (points?.[i] ?? shot.marks[id].at);
  drag = { id, from, start, at: start, moved: false };
  if (id !== "task" && !points) chosen = id;
  loupe.show(start, picture.scale, [event.clientX, event.clientY]);
  draw();
});

frame.addEventListener("pointermove", (event) => {
  if (!drag) return;
  const [x, y] = picture.at(event);
  const by = [x - drag.from[0], y - drag.from[1]];
  if (!drag.moved && Math.hypot(...by) * picture.scale < 3) return;
  drag.at = picture.within([drag.start[0] + by[0], drag.start[1] + by[1]]);
  drag.moved = drag.id !== "task";
  loupe.show(drag.at, picture.scale, [event.clientX, event.clientY]);
  if (drag.moved) draw();
});

function letGo(done) {
  if (!drag) return;
  const { id, at, moved } = drag;
  drag = null;
  loupe.hide();
  if (done && id === "task") tapped(at);
  else if (done && moved) set(id, at);
  else draw();
}
frame.addEventListener("pointerup", () => letGo(true));
frame.addEventListener("pointercancel", () => letGo(false));

// Keys.

const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function nudge(step, by) {
  const placed = keep.marking.shot.marks[chosen];
  if (!placed) return false;
  const at = picture.within(placed.at.map((value, axis) => value + by * step[axis]));
  set(chosen, at, { hands: [], label: `nudge ${chosen}` });
  picture.reveal(at);
  return true;
}

document.addEventListener("keydown", (event) => {
  if (event.target.matches("input[type=text], textarea, select")) return;
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z" && !event.shiftKey) {
    event.preventDefault();
    keep.undo();
    return;
  }
  const step = STEPS[event.key];
  const here = frame.contains(event.target) || event.target.closest("#marks, #chosen");
  if (step && here && !event.ctrlKey && !event.altKey && !event.metaKey) {
    if (nudge(step, event.shiftKey ? 10 : 1)) event.preventDefault();
  }
  if (event.key === "Enter" && event.target === frame && keep.marking.shot.marks[chosen]) {
    event.preventDefault();
    acts.sure(chosen);
  }
  if (event.key === "Escape") {
    asked = null;
    letGo(false);
    draw();
  }
});

// Buttons and fields.

get("undo").addEventListener("click", () => keep.undo());
for (const [id, factor] of [["larger", 1.5], ["smaller", 1 / 1.5]]) {
  get(id).addEventListener("click", () => {
    picture.zoom(factor);
    const at = keep.marking.shot.marks[chosen]?.at;
    if (at && factor > 1) picture.reveal(at);
    draw();
  });
}

root.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  const mark = button?.closest("#marks li")?.dataset.mark ?? chosen;
  if (button?.classList.contains("pick-mark")) choose(mark);
  else if (button?.dataset.act && mark) {
    chosen = mark;
    acts[button.dataset.act](mark);
  } else if (button?.dataset.refer) {
    asked = { kind: button.dataset.refer, points: [] };
    frame.scrollIntoView({ block: "nearest" });
    frame.focus({ preventScroll: true });
    draw();
  } else if (button?.dataset.drop) {
    keep.change((m) => {
      if (button.dataset.drop === "sheet") delete m.shot.references.sheet;
      else delete m.tape;
    });
  }
});

get("snapping").addEventListener("change", ({ target }) => {
  keep.change((m) => (m.snapping = target.checked));
});

// Left and right change places with everything that hands have set on them.
get("mirrored").addEventListener("change", ({ target }) => {
  const other = (mark) => mark.replace(/_(left|right)$/, (_, end) => (end === "left" ? "_right" : "_left"));
  keep.change((m) => {
    m.shot.mirrored = target.checked;
    const marks = Object.entries(m.shot.marks).map(([mark, placed]) => [other(mark), placed]);
    m.shot.marks = Object.fromEntries(marks);
    for (const set of ["moved", "left_out"]) m[set] = m[set].map(other).sort();
  });
});

get("lens-height").addEventListener("input", ({ target }) => {
  keep.change((m) => (m.lens_height = target.value), { label: "lens height" });
});
get("tape-length").addEventListener("input", ({ target }) => {
  keep.change((m) => (m.tape.length = target.value), { label: "tape length" });
});

get("keep-mine").addEventListener("click", () => keep.keepMine());
get("take-theirs").addEventListener("click", () => keep.takeTheirs());

// A way on waits until all is saved; where that cannot be, the second tap goes, and the marks stay
// in this browser.
for (const link of document.querySelectorAll(".ways-on a")) {
  link.addEventListener("click", (event) => {
    if (!keep.unsaved || keep.afterwards) return;
    event.preventDefault();
    keep.afterwards = () => location.assign(link.href);
    keep.send();
  });
}

function anew() {
  picture.size();
  draw();
}
addEventListener("resize", anew);

// The frame has no width before the style sheet is there.
let wide = 0;
new ResizeObserver(([{ contentRect }]) => {
  if (contentRect.width === wide) return;
  wide = contentRect.width;
  anew();
}).observe(document.getElementById("frame"));

document.querySelector(".tools").hidden = false;
root.classList.add("ready");
picture.size();
draw();
keep.send();
