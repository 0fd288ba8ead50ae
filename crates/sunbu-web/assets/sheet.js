// The box over a face: dragged, sized, moved by keys, always the same as the numbers beneath it; and
// the message copied. Without this the numbers are typed and the text is selected by hand.

const SIDES = ["left", "top", "width", "height"];
const LEAST = 1; // per cent: no box is smaller

const within = (value, low, high) => Math.min(Math.max(value, low), high);

for (const form of document.querySelectorAll("form.face")) {
  const stage = form.querySelector(".stage");
  const box = form.querySelector(".face-box");
  const input = Object.fromEntries(SIDES.map((side) => [side, form.elements[side]]));
  const hides = () => form.elements.face.value === "hide";

  // The numbers as they stand; none while one of them cannot be read.
  const read = () => {
    const sides = SIDES.map((side) => Number(input[side].value.trim() || NaN));
    return sides.every(Number.isFinite) ? sides : null;
  };

  const draw = () => {
    const sides = read();
    box.hidden = !hides() || sides === null;
    if (sides) SIDES.forEach((side, i) => (box.style[side] = `${sides[i]}%`));
  };

  const write = ([left, top, width, height]) => {
    width = within(width, LEAST, 100);
    height = within(height, LEAST, 100);
    const sides = [within(left, 0, 100 - width), within(top, 0, 100 - height), width, height];
    SIDES.forEach((side, i) => (input[side].value = String(Math.round(sides[i] * 10) / 10)));
    draw();
  };

  box.addEventListener("pointerdown", (down) => {
    const start = read();
    if (!start || down.button !== 0) return;
    const sizes = down.target.closest(".grip") !== null;
    const { width, height } = stage.getBoundingClientRect();
    box.setPointerCapture(down.pointerId);
    const move = (event) => {
      const x = (100 * (event.clientX - down.clientX)) / width;
      const y = (100 * (event.clientY - down.clientY)) / height;
      const [left, top, wide, high] = start;
      write(sizes
        ? [left, top, Math.min(wide + x, 100 - left), Math.min(high + y, 100 - top)]
        : [left + x, top + y, wide, high]);
    };
    const end = () => {
      box.removeEventListener("pointermove", move);
      box.removeEventListener("pointerup", end);
      box.removeEventListener("pointercancel", end);
    };
    box.addEventListener("pointermove", move);
    box.addEventListener("pointerup", end);
    box.addEventListener("pointercancel", end);
  });

  const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  box.addEventListener("keydown", (event) => {
    const step = KEYS[event.key];
    const sides = read();
    if (!step || !sides) return;
    event.preventDefault();
    const [left, top, width, height] = sides;
    const [x, y] = step;
    write(event.shiftKey
      ? [left, top, Math.min(width + x, 100 - left), Math.min(height + y, 100 - top)]
      : [left + x, top + y, width, height]);
  });

  form.addEventListener("input", draw);
  form.addEventListener("change", draw);
  draw();
}

// Over plain http to another machine a page has no clipboard: then the old command is tried, and
// where that is refused as well the text stays selected.
for (const button of document.querySelectorAll("[data-copy]")) {
  const text = document.getElementById(button.dataset.copy);
  const said = document.getElementById("copied");
  button.hidden = false;
  button.addEventListener("click", async () => {
    let copied = false;
    try {
      await navigator.clipboard.writeText(text.value);
      copied = true;
    } catch {
      text.focus();
      text.select();
      copied = document.execCommand("copy");
    }
    said.textContent = copied ? button.dataset.copied : button.dataset.self;
  });
}

document.querySelector(".wrong")?.closest(".field").querySelector("input").focus();
