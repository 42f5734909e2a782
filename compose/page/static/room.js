// Puts the next room of the page in the place of the one before: nothing jumps, and nothing typed is lost.
import { says } from "./voice.js";

const place = () => location.pathname.split("/")[1];
const game = (page) => page.title.split(" · ")[0].split(" Remix")[0];
let screen = place();

export const opened = (part) => new Map([...part.querySelectorAll("details[id]")].map((each) => [each.id, each.open]));

export function open(part, before) {
  for (const each of part.querySelectorAll("details[id]")) if (before.has(each.id)) each.open = before.get(each.id);
}

// What comes later takes as much room as it had, and choices stand as they were until it is known which of them fit.
function heldOver(room, next, same) {
  for (const slot of same ? next.querySelectorAll("[data-later][id]") : []) {
    const high = room.querySelector(`#${slot.id}`)?.offsetHeight;
    if (high) slot.style.minHeight = `${high}px`; // what stands below it stays there
  }
  for (const slot of next.querySelectorAll("[data-keep]")) {
    const kept = room.querySelector(`#${slot.id}`);
    if (!kept || !kept.childElementCount) continue;
    const links = new Map([...slot.querySelectorAll("a[id]")].map((each) => [each.id, each]));
    slot.replaceChildren(...kept.childNodes);
    for (const each of slot.querySelectorAll("a[id]")) if (links.has(each.id)) each.replaceWith(links.get(each.id));
    slot.setAttribute("aria-busy", "true");
  }
}

function writtenOn(room, next, typed) {
  const [area, fresh] = [room, next].map((each) => each.querySelector("textarea"));
  if (!area || !fresh || area.value === typed) return;
  fresh.value = area.value; // somebody wrote on while the answer was on its way
  setTimeout(() => fresh.dispatchEvent(new Event("input", { bubbles: true })));
}

// At an end there is no way further: then the way back has the focus.
function turned(id) {
  const [way, ...of] = id.split("-");
  return [{ earlier: "later", later: "earlier", more: "less", less: "more" }[way], ...of].join("-");
}

// What a tap comes to stands at the top, and whoever tapped below would see nothing happen.
const told = (part) => part.querySelector('[role="alert"], [role="status"]:not([hidden])');

export function swap(page, next, typed) {
  const room = document.getElementById("room");
  const focus = document.activeElement && document.activeElement.id;
  const caret = document.activeElement && document.activeElement.selectionStart;
  const same = screen === place() && game(document) === game(page); // a game's other screens begin at their top
  screen = place();
  heldOver(room, next, same);
  const [before, news] = [told(room)?.textContent, told(next)];
  open(next, opened(room));
  writtenOn(room, next, typed);
  document.title = page.title;
  for (const part of [".ways", ".tongues"]) {
    const [old, fresh] = [document.querySelector(part), page.querySelector(part)];
    if (old && fresh) old.replaceWith(document.adoptNode(fresh));
  }
  room.replaceWith(document.adoptNode(next));
  const again = focus && (document.getElementById(focus) || document.getElementById(turned(focus)));
  if (again) {
    again.focus({ preventScroll: same });
    if (again.tagName === "TEXTAREA") again.setSelectionRange(caret, caret);
  } else next.focus({ preventScroll: same });
  if (!same) window.scrollTo(0, 0);
  else if (news && (news.role === "alert" || news.textContent !== before)) news.scrollIntoView({ block: "center" });
  const verdict = document.getElementById("verdict");
  says(verdict ? verdict.textContent : document.title.split(" · ")[0]);
}
