// Taps that do not wait: each begins where the one before leads, which is known only once that has been answered.
const turns = []; // by ids

export const forget = () => (turns.length = 0);

// Whether a tap is to be left alone now: it has to wait for its turn, or it is a change that is being made already.
export function waits(event, tapped) {
  const room = document.getElementById("room");
  const busy = room.hasAttribute("aria-busy");
  if (!tapped || !tapped.id || !room.contains(tapped)) {
    const twice = busy && event.type === "submit" && tapped?.classList.contains("tapped");
    if (twice) event.preventDefault();
    else forget();
    return twice;
  }
  if (!busy) return false;
  event.preventDefault();
  tapped.classList.add("tapped");
  turns.push(tapped.id);
  return true;
}

export function takeTurn() {
  while (turns.length) {
    const tapped = document.getElementById(turns.shift());
    if (!tapped) continue; // there is no more of it, or it no longer fits
    return tapped.click();
  }
}
