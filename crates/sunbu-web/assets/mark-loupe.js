// A round, larger view of the place under the finger, beside the finger.

const SIDE = 160; // its width on the screen, in CSS pixels

export class Loupe {
  #canvas = document.getElementById("loupe");
  #photo = document.getElementById("photo");

  // Shows the photo around a place of it; `scale` is the photo's own, in CSS pixels a pixel.
  show([x, y], scale, finger) {
    const canvas = this.#canvas;
    const paper = canvas.getContext("2d");
    const larger = Math.min(6, Math.max(1, 4 * scale));
    const around = SIDE / larger;
    paper.fillStyle = "#888";
    paper.fillRect(0, 0, canvas.width, canvas.height);
    paper.drawImage(
      this.#photo,
      x - around / 2, y - around / 2, around, around,
      0, 0, canvas.width, canvas.height,
    );
    this.#cross(paper, canvas.width);
    canvas.hidden = false;
    const [left, top] = this.#beside(finger);
    canvas.style.left = `${left}px`;
    canvas.style.top = `${top}px`;
  }

  hide() {
    this.#canvas.hidden = true;
  }

  // Fine lines to the exact place, which itself stays free.
  #cross(paper, side) {
    const middle = side / 2;
    for (const [width, colour] of [[5, "#fff"], [2, "#111"]]) {
      paper.lineWidth = width;
      paper.strokeStyle = colour;
      paper.beginPath();
      for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
        paper.moveTo(middle + 12 * dx, middle + 12 * dy);
        paper.lineTo(middle + 0.42 * side * dx, middle + 0.42 * side * dy);
      }
      paper.stroke();
    }
  }

  // Above the finger; where there is no room, on the side that is farther from the screen's edge.
  #beside([x, y]) {
    const clamp = (value, most) => Math.max(4, Math.min(value, most - SIDE - 4));
    const above = y - SIDE - 48;
    if (above >= 4) return [clamp(x - SIDE / 2, innerWidth), above];
    const left = x > innerWidth / 2 ? x - SIDE - 48 : x + 48;
    return [clamp(left, innerWidth), clamp(y - SIDE / 2, innerHeight)];
  }
}
