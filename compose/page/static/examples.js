// Buttons that put a line to change at the end of a text.
export function examples() {
  for (const box of document.querySelectorAll("[data-into]:not([data-ready])")) {
    box.dataset.ready = "";
    box.hidden = false;
    box.addEventListener("click", (event) => {
      const line = event.target.dataset.line;
      if (!line) return;
      const text = document.getElementById(box.dataset.into);
      text.value = `${text.value.trim() ? `${text.value.trimEnd()}\n` : ""}${line}\n`;
      text.dispatchEvent(new Event("input", { bubbles: true }));
      text.focus();
    });
  }
}
