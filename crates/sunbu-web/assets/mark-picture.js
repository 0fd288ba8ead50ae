// The photo in its frame with the marks drawn over it: how large it is, where a finger points.

const SVG = "http://www.w3.org/2000/svg";
const NEAR = 24; // how near to a mark a finger takes it, in CSS pixels

// Shapes about the place itself, for a reach of 1: what a hand has set is a square, or a triangle
// where it is unsure; what follows and found an edge is a circle, and a guess a circle of dashes.
const SHAPES = {
  hand: "M-1 -1H1V1H-1Z",
  follows: "M-1 0A1 1 0 1 0 1 0A1 1 0 1 0 -1 0Z",
  guess: "M-1 0A1 1 0 1 0 1 0A1 1 0 1 0 -1 0Z",
  unsure: "M0 -1.25L1.2 0.9H-1.2Z",
  expected: "M-1 0H1M0 -1V1",
};

function part(name, attributes, text) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  if (text !== undefined) element.textContent = text;
  return element;
}

export function shapeOf(marking, mark) {
  const placed = marking.shot.marks[mark];
  if (!placed) return "none";
  const isSure = placed.trust !== "unsure";
  if (marking.moved.includes(mark)) return isSure ? "hand" : "unsure";
  return isSure ? "follows" : "guess";
}

export class Picture {
  #frame = document.getElementById("frame");
  #stage = document.getElementById("stage");
  #over = document.getElementById("over");
  #zoom = 1;
  #shown = []; // places that can be taken: { id, at }

  constructor([width, height], nameOf) {
    [this.width, this.height] = [width, height];
    this.nameOf = nameOf;
    this.size();
  }

  // How many CSS pixels a pixel of the photo takes: all of it in sight, times the zoom.
  get scale() {
    const high = innerHeight || 600; // a window that is not laid out yet has no size
    const room = Math.max(0.5 * high, Math.min(high - 190, 1200));
    const wide = this.#frame.clientWidth || 300;
    const whole = Math.min(wide / this.width, room / this.height);
    return whole * this.#zoom;
  }

  size() {
    this.#stage.style.width = `${this.scale * this.width}px`;
    this.#stage.style.height = `${this.scale * this.height}px`;
  }

  zoom(factor) {
    const frame = this.#frame;
    const middle = [frame.scrollLeft + frame.clientWidth / 2, frame.scrollTop + frame.clientHeight / 2];
    const before = this.scale;
    this.#zoom = Math.min(8, Math.max(1, this.#zoom * factor));
    this.size();
    const grown = this.scale / before;
    frame.scrollLeft = middle[0] * grown - frame.clientWidth / 2;
    frame.scrollTop = middle[1] * grown - frame.clientHeight / 2;
  }

  // Brings a place of the photo into the frame, when it is zoomed out of it.
  reveal(at) {
    const [x, y] = at.map((value) => value * this.scale);
    const frame = this.#frame;
    const inside = x > frame.scrollLeft + NEAR && x < frame.scrollLeft + frame.clientWidth - NEAR
      && y > frame.scrollTop + NEAR && y < frame.scrollTop + frame.clientHeight - NEAR;
    if (inside) return;
    frame.scrollLeft = x - frame.clientWidth / 2;
    frame.scrollTop = y - frame.clientHeight / 2;
  }

  // Where a finger points, in pixels of the photo.
  at(finger) {
    const box = this.#stage.getBoundingClientRect();
    return [(finger.clientX - box.left) / this.scale, (finger.clientY - box.top) / this.scale];
  }

  holds([x, y]) {
    return x >= 0 && y >= 0 && x <= this.width && y <= this.height;
  }

  within([x, y]) {
    return [Math.min(Math.max(x, 0), this.width), Math.min(Math.max(y, 0), this.height)];
  }

  // The mark nearest to a place, if a finger there means one; the chosen one is taken from twice as
  // far as its neighbours.
  near([x, y], chosen) {
    let best = null;
    for (const { id, at } of this.#shown) {
      const far = Math.hypot(at[0] - x, at[1] - y) * this.scale;
      const counts = id === chosen ? far / 2 : far;
      if (far <= NEAR && (!best || counts < best.counts)) best = { id, counts };
    }
    return best?.id ?? null;
  }

  draw(marking, expected, chosen) {
    const over = this.#over;
    over.replaceChildren();
    this.#shown = [];
    this.#references(marking);
    const numbers = this.scale * this.width >= 480;
    for (const [mark, { at }] of Object.entries(marking.shot.marks)) {
      if (mark !== chosen) this.#mark(mark, at, shapeOf(marking, mark), numbers ? this.nameOf(mark).no : "");
    }
    const there = marking.shot.marks[chosen];
    if (there) this.#mark(chosen, there.at, shapeOf(marking, chosen), this.nameOf(chosen).name, true);
    else if (expected[chosen]) this.#mark("", expected[chosen], "expected", this.nameOf(chosen).name, true);
  }

  #references({ shot, tape }) {
    const one = 1 / this.scale;
    const line = (points, closed) => {
      const d = `M${points.map((p) => p.join(" ")).join("L")}${closed ? "Z" : ""}`;
      this.#over.append(part("path", { d, class: "under", "stroke-width": 4 * one }));
      this.#over.append(part("path", { d, class: "line", "stroke-width": 1.5 * one, "stroke-dasharray": `${6 * one} ${3 * one}` }));
    };
    if (shot.references.sheet) line(shot.references.sheet, true);
    if (tape) line(tape.ends, false);
    const ends = [["sheet", shot.references.sheet ?? []], ["tape", tape?.ends ?? []]];
    for (const [kind, points] of ends) {
      points.forEach((at, i) => this.#mark(`${kind}.${i}`, at, "expected", ""));
    }
  }

  #mark(id, at, shape, label, chosen = false) {
    const one = 1 / this.scale;
    const reach = (chosen ? 8 : 5) * one;
    const group = part("g", { class: `dot ${shape}${chosen ? " chosen" : ""}`, transform: `translate(${at.join(" ")})` });
    if (id) {
      group.dataset.id = id;
      this.#shown.push({ id, at });
    }
    const d = SHAPES[shape];
    const dashes = shape === "guess" ? { "stroke-dasharray": "0.5 0.547" } : {}; // six of each
    for (const [name, width, more] of [["under", 4.5, {}], ["line", 1.8, dashes]]) {
      const weight = { "stroke-width": (width * one) / reach };
      group.append(part("path", { d, class: name, transform: `scale(${reach})`, ...weight, ...more }));
    }
    group.append(part("circle", { r: 1.2 * one, class: "point" }));
    if (label) {
      const left = at[0] > 0.6 * this.width;
      const x = (left ? -1 : 1) * (reach + 4 * one);
      const size = (chosen ? 14 : 10.5) * one;
      group.append(part("text", {
        x, y: 0.35 * size, "font-size": size, "stroke-width": 3 * one, "text-anchor": left ? "end" : "start",
      }, label));
    }
    this.#over.append(group);
  }
}
