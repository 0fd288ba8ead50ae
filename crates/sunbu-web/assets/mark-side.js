// Beside the photo: the mark under the hand, the list of all marks, and what else is known.

import { shapeOf } from "./mark-picture.js";

const get = (id) => document.getElementById(id);

export class Side {
  #rows = [...document.querySelectorAll("#marks > li")];

  constructor(words) {
    this.words = words;
    this.marks = this.#rows.map((row) => row.dataset.mark);
  }

  nameOf = (mark) => {
    const row = get(`mark-${mark}`);
    if (!row) return { no: "", name: "" };
    return { no: row.querySelector(".no").textContent, name: row.querySelector(".name").textContent };
  };

  #state(marking, mark, begun) {
    if (marking.left_out.includes(mark)) return "left-out";
    const shape = shapeOf(marking, mark);
    if (shape === "none") return begun ? "not-in-sight" : "not-yet";
    return shape === "hand" ? "by-hand" : shape;
  }

  draw({ marking, problems }, chosen, aiming) {
    const { marks } = marking.shot;
    const begun = Boolean(marks.floor && marks.crown);
    for (const row of this.#rows) {
      const { mark } = row.dataset;
      const state = this.#state(marking, mark, begun);
      const pick = row.querySelector(".pick-mark");
      pick.setAttribute("aria-pressed", String(mark === chosen));
      pick.querySelector(".shape").dataset.shape = shapeOf(marking, mark);
      pick.querySelector(".state").textContent = this.words[state];
      const act = row.querySelector(".row-act");
      const placed = Boolean(marks[mark]);
      act.hidden = !begun;
      act.dataset.act = placed ? "out" : "again";
      act.textContent = this.words[placed ? "leave-out" : state === "left-out" ? "again" : "by-hand-now"];
      act.setAttribute("aria-label", `${act.textContent}: ${this.nameOf(mark).name}`);
    }
    this.#chosen(marking, begun ? chosen : null, begun, aiming);
    this.#references(marking);
    this.#problems(problems);
  }

  #chosen(marking, chosen, begun, aiming) {
    const row = chosen && get(`mark-${chosen}`);
    get("chosen").hidden = !row;
    if (!row) return;
    const placed = marking.shot.marks[chosen];
    const say = (id, text) => {
      if (get(id).textContent !== text) get(id).textContent = text;
    };
    say("chosen-name", this.nameOf(chosen).name);
    say("chosen-hint", row.querySelector(".hint").textContent);
    say("chosen-state", this.words[this.#state(marking, chosen, begun)]);
    const first = chosen === "floor" || chosen === "crown";
    const shown = {
      unsure: placed && (placed.trust === "sure" || !marking.moved.includes(chosen)),
      sure: placed && (placed.trust === "unsure" || !marking.moved.includes(chosen)),
      follow: placed && marking.moved.includes(chosen) && !first,
      out: Boolean(placed),
      again: !placed && !aiming,
    };
    const out = marking.left_out.includes(chosen);
    document.querySelector("#chosen [data-act=again]").textContent = this.words[out ? "again" : "by-hand-now"];
    for (const [act, show] of Object.entries(shown)) {
      document.querySelector(`#chosen [data-act=${act}]`).hidden = !show;
    }
  }

  #references({ shot, tape, snapping, lens_height }) {
    get("snapping").checked = snapping;
    get("mirrored").checked = shot.mirrored;
    const type = (id, text) => {
      if (get(id) !== document.activeElement) get(id).value = text;
    };
    type("lens-height", lens_height);
    type("tape-length", tape?.length ?? "");
    document.querySelector("[data-drop=sheet]").hidden = !shot.references.sheet;
    document.querySelector("[data-drop=tape]").hidden = !tape;
    get("tape-read").hidden = !tape;
  }

  // Each beside its field; those of marks above the photo.
  #problems(problems) {
    const own = { lens_height: "lens-height", tape_length: "tape-length" };
    for (const [place, id] of Object.entries(own)) {
      const found = problems.find((problem) => problem.place === place);
      get(`${id}-wrong`).textContent = found?.sentence ?? "";
      get(id).toggleAttribute("aria-invalid", Boolean(found));
      if (found) get(id).setAttribute("aria-invalid", "true");
      get(id).closest(".field").classList.toggle("bad", Boolean(found));
    }
    const others = problems.filter(({ place }) => !(place in own));
    const lines = others.map(({ label, sentence }) => (label ? `${label}: ${sentence}` : sentence));
    const list = get("wrong-list");
    if (list.dataset.said !== lines.join("\n")) {
      list.dataset.said = lines.join("\n");
      list.replaceChildren(...lines.map((line) => {
        const item = document.createElement("li");
        item.textContent = line;
        return item;
      }));
    }
    get("wrong").hidden = lines.length === 0;
  }
}
