// Asks for the parts of a screen that come later, and puts each in its place.
import { answered, latest } from "./asking.js";
import { open, opened } from "./room.js";
import { steady } from "./steady.js";
import { gone } from "./voice.js";

async function fill(slot, ready) {
  const mine = latest();
  try {
    const answer = await answered(mine, slot.dataset.later);
    const text = await answer.text();
    await steady();
    if (mine !== latest() || answer.status === 499 || !slot.isConnected) return;
    const part = new DOMParser().parseFromString(text, "text/html");
    const focus = document.activeElement && document.activeElement.id;
    const before = opened(slot);
    slot.replaceChildren(...(part.getElementById("room") || part.body).childNodes);
    open(slot, before);
    slot.style.minHeight = "";
    slot.removeAttribute("data-later");
    slot.removeAttribute("aria-busy");
    const again = focus && document.getElementById(focus);
    if (again && again !== document.activeElement) again.focus({ preventScroll: true });
    ready();
  } catch (wrong) {
    if (wrong.name !== "AbortError") gone();
  } finally {
    delete slot.dataset.asked; // should it stay, it is asked for again
  }
}

export function fillAll(ready) {
  for (const slot of document.querySelectorAll("[data-later]:not([data-asked])")) {
    if (slot.closest("details:not([open])")) continue; // asked for once somebody opens it
    slot.dataset.asked = "";
    fill(slot, ready);
  }
}
