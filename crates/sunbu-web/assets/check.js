// A chosen photo is sent at once, and says that it is on its way. Without scripts the button sends
// it.

for (const form of document.querySelectorAll("form.upload")) {
  const [file, send] = [form.querySelector("input[type=file]"), form.querySelector("button")];
  send.hidden = true;
  file.addEventListener("change", () => {
    if (!file.files.length) return;
    form.querySelector("[role=status]").textContent = form.dataset.busy;
    form.submit();
  });
}

document.querySelector(".errors")?.focus();
