// Buttons that count a number up and down, beside its field.
export function steppers() {
  for (const box of document.querySelectorAll("[data-stepper]:not([data-ready])")) {
    box.dataset.ready = "";
    const input = box.querySelector("input");
    const name = document.querySelector(`label[for="${input.id}"]`).textContent.trim();
    for (const [sign, by, place, word] of [["−", -1, "prepend", box.dataset.less], ["+", 1, "append", box.dataset.more]]) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "step";
      button.textContent = sign;
      button.setAttribute("aria-label", `${name}: ${word}`);
      button.addEventListener("click", () => {
        input.value = Math.min(Number(input.max), Math.max(Number(input.min), Number(input.value || 0) + by));
        input.dispatchEvent(new Event("change", { bubbles: true }));
      });
      box[place](button);
    }
  }
}
