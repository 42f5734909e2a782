// Swaps the room of the page instead of loading the page anew. Without scripts every link and form does the same by itself.
import { answered, begin, latest } from "./asking.js";
import { drafts, forget as forgetDraft } from "./draft.js";
import { echo } from "./echo.js";
import { examples } from "./examples.js";
import { fillAll } from "./later.js";
import { swap } from "./room.js";
import { steady } from "./steady.js";
import { steppers } from "./steppers.js";
import { forget, takeTurn, waits } from "./turns.js";
import { gone, shows, tooLarge } from "./voice.js";
import "./drag.js";
import "./editor.js";

let opened = true; // whether the room was asked for by its address

async function shown(url, options, keep, form) {
  const mine = begin();
  const room = document.getElementById("room");
  const typed = room.querySelector("textarea")?.value;
  room.setAttribute("aria-busy", "true");
  try {
    const answer = await answered(mine, url, options);
    const text = await answer.text();
    await steady();
    if (mine !== latest()) return;
    const page = new DOMParser().parseFromString(text, "text/html");
    const next = page.getElementById("room");
    if (!next) return shows(text.slice(0, 200)); // refused at the door, in a line
    const elsewhere = !options.method || answer.redirected; // what a form answers itself cannot be asked for again
    if (form && elsewhere) forgetDraft(form);
    if (keep && elsewhere && answer.url !== location.href) history.pushState({}, "", answer.url);
    swap(page, next, typed);
    opened = elsewhere;
    takeTurn();
  } catch (wrong) {
    if (wrong.name !== "AbortError" && mine === latest()) gone();
  } finally {
    if (mine === latest()) {
      forget();
      for (const each of document.querySelectorAll(".tapped")) each.classList.remove("tapped");
      document.getElementById("room").removeAttribute("aria-busy");
      ready();
    }
  }
}

function ready() {
  steppers();
  examples();
  echo();
  if (document.getElementById("room").hasAttribute("aria-busy")) return; // what belongs to it would come too late
  fillAll(ready);
  document.dispatchEvent(new CustomEvent("page-ready"));
  drafts(opened);
}

function ours(link) {
  return link.origin === location.origin && !link.hasAttribute("download") && !link.target && link.dataset.whole === undefined;
}

document.addEventListener("click", (event) => {
  const link = event.target.closest("a[href]");
  if (!link || event.defaultPrevented || event.button || event.metaKey || event.ctrlKey || event.shiftKey) return;
  if (link.getAttribute("href").startsWith("#") || waits(event, link) || !ours(link)) return;
  event.preventDefault();
  link.classList.add("tapped");
  shown(link.href, {}, true);
});

document.addEventListener("submit", (event) => {
  const form = event.target;
  form.querySelector("[data-sent]")?.removeAttribute("hidden"); // its answer is a file; where it is a page, this one is gone
  if (form.target || form.dataset.whole !== undefined || waits(event, event.submitter)) return;
  event.preventDefault();
  if (tooLarge(form)) return;
  event.submitter?.classList.add("tapped");
  const data = new FormData(form, event.submitter);
  if (form.method === "get") {
    const query = new URLSearchParams([...data].filter(([, value]) => value !== ""));
    shown(`${form.getAttribute("action")}?${query}`, {}, true);
  } else {
    const body = form.enctype === "multipart/form-data" ? data : new URLSearchParams(data);
    shown(form.action, { method: "POST", body }, true, form);
  }
});

document.addEventListener("change", (event) => {
  const form = event.target.form;
  if (form && form.dataset.atOnce !== undefined) form.requestSubmit();
});

document.addEventListener("toggle", (event) => event.target.open && ready(), true);

document.addEventListener("keydown", (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey || /^(INPUT|SELECT|TEXTAREA)$/.test(event.target.tagName)) return;
  const link = document.querySelector(`[data-keys] [data-key="${event.key}"]`);
  if (!link) return;
  event.preventDefault();
  link.click();
});

document.documentElement.classList.add("scripted"); // what a tap does at once needs no button besides
document.addEventListener("page-gone", gone);
window.addEventListener("popstate", () => {
  forget();
  shown(location.href, {}, false);
});
ready();
