// The button that opens the browser's own print window; hidden where there is no script.

for (const button of document.querySelectorAll("[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}
