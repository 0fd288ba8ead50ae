// The marks of a photo as they are here, and their way to the studio.
//
// A change counts here at once, is written into the browser's own store, and is sent; one request
// runs at a time. What comes back is taken over where nothing was changed meanwhile. Nothing is
// forgotten before the studio has said that it is saved.

const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);
const plain = (value) => value !== null && typeof value === "object" && !Array.isArray(value);

// What was changed here since `sent` stays; everything else is as it came back.
function merge(here, sent, back) {
  if (same(here, sent)) return back;
  if (!plain(here) || !plain(back)) return here;
  const names = new Set([...Object.keys(here), ...Object.keys(back)]);
  const merged = {};
  for (const name of names) {
    const value = merge(here[name], sent?.[name], back[name]);
    if (value !== undefined) merged[name] = value;
  }
  return merged;
}

// A browser may refuse to store; the marks are then only as safe as the page is open.
const store = {
  read(name) {
    try {
      return JSON.parse(localStorage.getItem(name));
    } catch {
      return null;
    }
  },
  write(name, value) {
    try {
      localStorage.setItem(name, JSON.stringify(value));
    } catch {
      return;
    }
  },
  drop(name) {
    try {
      localStorage.removeItem(name);
    } catch {
      return;
    }
  },
};

export class Keep {
  #path;
  #name;
  #hands = new Set(); // marks that hands have set and that are not brought to their edges yet
  #dirty = false;
  #running = false;
  #retry = null;
  #wait = 1000;
  #past = []; // markings to go back to
  #last = { label: "", at: 0 };

  constructor(root, changed) {
    this.#path = `${root.dataset.path}/marks`;
    this.#name = `sunbu-marks-${root.dataset.photo}`;
    this.changed = changed;
    this.trouble = ""; // "lost", "gone", or the studio's own sentence
    this.theirs = null; // what somebody else saved meanwhile
    this.afterwards = null; // what waits until all is saved
    Object.assign(this, JSON.parse(root.dataset.state));
    const unsent = store.read(this.#name);
    if (unsent?.marking?.shot) {
      this.revision = unsent.revision;
      this.marking = unsent.marking;
      this.#hands = new Set(unsent.hands);
      this.#dirty = true;
    }
    addEventListener("online", () => this.send());
    addEventListener("pagehide", () => this.send());
  }

  get unsaved() {
    return this.#dirty || this.#running;
  }

  get canUndo() {
    return this.#past.length > 0;
  }

  // Changes the marking. Quick changes of the same label are taken back together.
  change(edit, { hands = [], label = "" } = {}) {
    const now = performance.now();
    const again = label && label === this.#last.label && now - this.#last.at < 800;
    this.#last = { label, at: now };
    if (!again) this.#past.push(structuredClone(this.marking));
    edit(this.marking);
    for (const mark of hands) this.#hands.add(mark);
    this.#changedHere();
  }

  undo() {
    const before = this.#past.pop();
    if (!before) return;
    this.marking = before;
    this.#hands.clear();
    this.#last.label = "";
    this.#changedHere();
  }

  #changedHere() {
    this.#dirty = true;
    this.#write();
    this.changed();
    this.send();
  }

  #write() {
    const { revision, marking } = this;
    store.write(this.#name, { revision, marking, hands: [...this.#hands] });
  }

  async send() {
    if (!this.#dirty || this.#running || this.theirs || this.trouble === "gone") return;
    clearTimeout(this.#retry);
    this.#running = true;
    this.#dirty = false;
    const sent = structuredClone(this.marking);
    const hands = [...this.#hands];
    const body = new URLSearchParams({
      revision: this.revision,
      marking: JSON.stringify(sent),
      hands: hands.join(","),
    });
    try {
      const answer = await fetch(this.#path, { method: "POST", body, keepalive: true });
      const kind = answer.headers.get("content-type") ?? "";
      const told = kind.startsWith("application/json") ? await answer.json() : {};
      if (answer.ok) this.#saved(sent, hands, told);
      else if (answer.status === 409 && told.marking) this.#stale(told);
      else if (answer.status === 422) this.#refused(told.refused);
      else if (answer.status === 404) this.#gone();
      else this.#lost();
    } catch {
      this.#lost();
    } finally {
      this.#running = false;
    }
    this.changed();
    if (this.#dirty && !this.trouble) this.send();
    if (!this.unsaved && !this.trouble) this.afterwards?.();
  }

  #saved(sent, hands, told) {
    this.trouble = "";
    this.#wait = 1000;
    for (const mark of hands) {
      if (same(this.marking.shot.marks[mark], sent.shot.marks[mark])) this.#hands.delete(mark);
    }
    this.marking = merge(this.marking, sent, told.marking);
    this.revision = told.revision;
    this.expected = told.expected;
    this.problems = told.problems;
    if (this.#dirty) this.#write();
    else store.drop(this.#name);
  }

  #lost() {
    this.#dirty = true;
    this.trouble = "lost";
    this.#retry = setTimeout(() => this.send(), this.#wait);
    this.#wait = Math.min(2 * this.#wait, 8000);
  }

  #gone() {
    this.#dirty = true;
    this.trouble = "gone";
  }

  #stale(told) {
    this.#dirty = true;
    this.trouble = "";
    this.theirs = told;
  }

  #refused(sentence) {
    this.trouble = sentence ?? "lost";
    store.drop(this.#name);
  }

  keepMine() {
    this.revision = this.theirs.revision;
    this.theirs = null;
    this.#changedHere();
  }

  takeTheirs() {
    Object.assign(this, this.theirs);
    this.theirs = null;
    this.#dirty = false;
    this.#hands.clear();
    this.#past = [];
    store.drop(this.#name);
    this.changed();
  }
}
