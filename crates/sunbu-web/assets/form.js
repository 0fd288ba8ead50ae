// Help while a form is filled in: what a length reads as in both units, and a word before
// typed text would be left behind. The form works the same without this.

const pending = new WeakMap();

async function read(input) {
  const out = document.getElementById(`${input.id}-read`);
  if (!out) return;
  pending.get(input)?.abort();
  const stop = new AbortController();
  pending.set(input, stop);
  const text = input.value.trim();
  if (!text) {
    out.textContent = "";
    return;
  }
  try {
    const query = new URLSearchParams({ text });
    const answer = await fetch(`/reading?${query}`, { signal: stop.signal });
    if (answer.ok) out.textContent = await answer.text();
  } catch (failure) {
    // A newer keystroke stopped this one, or the studio is closed: the form itself still says
    // what is wrong when it is sent.
    if (failure.name !== "AbortError") out.textContent = "";
  }
}

for (const input of document.querySelectorAll("input[data-length]")) {
  let wait;
  input.addEventListener("input", () => {
    clearTimeout(wait);
    wait = setTimeout(() => read(input), 250);
  });
}

const guarded = document.querySelector("form[data-keep]");
if (guarded) {
  // A form that came back with faults holds text that was never saved.
  let unsaved = guarded.dataset.keep === "unsaved";
  guarded.addEventListener("input", () => (unsaved = true));
  guarded.addEventListener("submit", () => (unsaved = false));
  window.addEventListener("beforeunload", (event) => {
    if (unsaved) event.preventDefault();
  });
}

document.querySelector(".errors")?.focus();
