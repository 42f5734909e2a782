// What is being pressed stays where it is: whatever would move or replace it waits until it is let go.
const CLICK_MS = 300; // our choice: how long after a finger is lifted its click may still come
const LONGEST_MS = 8000; // our choice: for so long a press may last, or the list of a select be open
const pressed = new Map(); // what presses (a pointer, the space bar, a drag, a list), with the timer that ends it
const waiting = [];

function letGo(...which) {
  for (const each of which) {
    clearTimeout(pressed.get(each));
    pressed.delete(each);
  }
  if (!pressed.size) for (const goOn of waiting.splice(0)) goOn();
}

function press(which, ms) {
  clearTimeout(pressed.get(which));
  pressed.set(which, ms && setTimeout(letGo, ms, which));
}

// What has pressed is done with: its click comes, if it comes at all, before this.
const soon = (ms, ...which) => setTimeout(() => letGo(...which), ms);
const pressing = () => [...pressed.keys()].filter((each) => each !== "list");

window.addEventListener("pointerdown", (event) => {
  if (event.button === 0) press(event.pointerId, LONGEST_MS);
  if (event.target.closest?.("select")) press("list", LONGEST_MS); // the list that it opens is drawn by the browser
}, true);
for (const chosen of ["change", "focusout"]) window.addEventListener(chosen, () => soon(0, "list"), true);
window.addEventListener("pointerup", (event) => soon(CLICK_MS, event.pointerId), true);
window.addEventListener("pointercancel", (event) => letGo(event.pointerId), true);
window.addEventListener("click", () => soon(0, ...pressing()), true);
window.addEventListener("dragstart", () => press("drag"), true);
window.addEventListener("dragend", () => soon(0, "drag"), true);
window.addEventListener("keydown", (event) => event.key === " " && press("space", LONGEST_MS), true);
window.addEventListener("keyup", (event) => event.key === " " && soon(0, "space"), true);
for (const other of ["contextmenu", "blur"]) window.addEventListener(other, () => letGo(...pressing())); // then nobody hears it let go

export const steady = () => (pressed.size ? new Promise((goOn) => waiting.push(goOn)) : Promise.resolve());
