"use strict";
// Swaps the room of the page instead of loading the page anew, and asks for what comes later.
// Without this script every link and every form does the same by itself.
(() => {
  const tab = Math.random().toString(36).slice(2);
  const asked = new Set();
  const turns = []; // what was tapped while another tap was on its way, by ids: each begins where the one before leads
  let looking = null;
  let changing = null; // a change on its way is never put off: whatever is asked for next is asked for after it
  let screen = location.pathname.split("/")[1];

  function says(words) {
    const voice = document.getElementById("voice");
    voice.textContent = words;
    voice.classList.remove("seen");
  }

  function gone() {
    says(document.getElementById("voice").dataset.gone);
    document.getElementById("voice").classList.add("seen"); // there is nothing else to see it by
  }

  async function fetched(url, options = {}) {
    if (options.method) {
      const change = fetch(url, { ...options, headers: { "X-Tab": tab } });
      changing = change.catch(() => {});
      return change;
    }
    await changing;
    const stop = new AbortController();
    asked.add(stop);
    try {
      return await fetch(url, { ...options, signal: stop.signal, headers: { "X-Tab": tab } });
    } finally {
      asked.delete(stop);
    }
  }

  // An older tap that reaches the program late may have withdrawn what is asked now: then it is asked again.
  async function newest(mine, url, options) {
    let answer = await fetched(url, options);
    for (let again = 0; again < 3 && answer.status === 499 && mine === looking; again += 1)
      answer = await (answer.redirected ? fetched(answer.url) : fetched(url, options)); // a change is made only once
    return answer;
  }

  function putOff() {
    for (const stop of asked) stop.abort();
    asked.clear();
  }

  // Whether a tap has to wait for its turn: where it leads now is known only once the one before has been answered.
  function waits(event, tapped) {
    const room = document.getElementById("room");
    if (!tapped || !tapped.id || !room.contains(tapped)) {
      turns.length = 0;
      return false;
    }
    if (!room.hasAttribute("aria-busy")) return false;
    event.preventDefault();
    tapped.classList.add("tapped");
    turns.push(tapped.id);
    return true;
  }

  function takeTurn() {
    while (turns.length) {
      const tapped = document.getElementById(turns.shift());
      if (!tapped) continue; // there is no more of it, or it no longer fits
      return tapped.click();
    }
  }

  async function shown(url, options, keep) {
    putOff();
    const mine = (looking = {});
    const room = document.getElementById("room");
    const typed = room.querySelector("textarea")?.value;
    room.setAttribute("aria-busy", "true");
    try {
      const answer = await newest(mine, url, options);
      const text = await answer.text();
      await steady();
      if (mine !== looking) return;
      const page = new DOMParser().parseFromString(text, "text/html");
      const next = page.getElementById("room");
      if (!next) throw new Error("not a page of ours");
      if (keep) history.pushState({}, "", answer.url || url);
      swap(page, next, typed);
    } catch (wrong) {
      if (wrong.name !== "AbortError" && mine === looking) gone();
    } finally {
      if (mine === looking) {
        turns.length = 0;
        document.getElementById("room").removeAttribute("aria-busy");
        ready();
      }
    }
  }

  function swap(page, next, typed) {
    const room = document.getElementById("room");
    const focus = document.activeElement && document.activeElement.id;
    const caret = document.activeElement && document.activeElement.selectionStart;
    const open = new Map([...room.querySelectorAll("details[id]")].map((each) => [each.id, each.open]));
    const [before, now] = [screen, location.pathname.split("/")[1]];
    const [mine, theirs] = [document, page].map((each) => each.title.split(" · ")[0].split(" Remix")[0]);
    const same = before === now && mine === theirs; // then nothing jumps; a game's other screens begin at their top
    screen = now;
    for (const slot of same ? next.querySelectorAll("[data-later][id]") : []) {
      const high = room.querySelector(`#${slot.id}`)?.offsetHeight;
      if (high) slot.style.minHeight = `${high}px`; // what stands below it stays there
    }
    for (const slot of next.querySelectorAll("[data-keep]")) {
      const kept = room.querySelector(`#${slot.id}`);
      if (kept && kept.childElementCount) {
        const links = new Map([...slot.querySelectorAll("a[id]")].map((each) => [each.id, each]));
        slot.replaceChildren(...kept.childNodes);
        for (const each of slot.querySelectorAll("a[id]")) if (links.has(each.id)) each.replaceWith(links.get(each.id));
        slot.setAttribute("aria-busy", "true");
      }
    }
    for (const each of next.querySelectorAll("details[id]")) if (open.has(each.id)) each.open = open.get(each.id);
    const [area, fresh] = [room, next].map((each) => each.querySelector("textarea"));
    if (area && fresh && area.value !== typed) {
      fresh.value = area.value; // somebody wrote on while the answer was on its way
      setTimeout(() => fresh.dispatchEvent(new Event("input", { bubbles: true })));
    }
    document.title = page.title;
    for (const part of [".ways", ".tongues"]) {
      const [old, fresh] = [document.querySelector(part), page.querySelector(part)];
      if (old && fresh) old.replaceWith(document.adoptNode(fresh));
    }
    room.replaceWith(document.adoptNode(next));
    const again = focus && document.getElementById(focus);
    if (again) {
      again.focus({ preventScroll: same });
      if (again.tagName === "TEXTAREA") again.setSelectionRange(caret, caret);
    } else next.focus({ preventScroll: same });
    if (!same) window.scrollTo(0, 0);
    const verdict = document.getElementById("verdict");
    says(verdict ? verdict.textContent : document.title.split(" · ")[0]);
    takeTurn();
  }

  async function fill(slot) {
    const mine = looking;
    try {
      const answer = await newest(mine, slot.dataset.later);
      const text = await answer.text();
      await steady();
      if (mine !== looking || answer.status === 499 || !slot.isConnected) return;
      const part = new DOMParser().parseFromString(text, "text/html");
      const focus = document.activeElement && document.activeElement.id;
      const open = new Map([...slot.querySelectorAll("details[id]")].map((each) => [each.id, each.open]));
      slot.replaceChildren(...(part.getElementById("room") || part.body).childNodes);
      for (const each of slot.querySelectorAll("details[id]")) if (open.has(each.id)) each.open = open.get(each.id);
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

  function steppers() {
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

  function echo() {
    const line = document.getElementById("echo");
    const verdict = document.getElementById("verdict");
    if (!line) return;
    line.hidden = !verdict;
    if (!verdict) return;
    line.className = `${verdict.className} echo`;
    line.querySelector("a").textContent = `${verdict.textContent.trim()} ↑`;
    const odds = document.getElementById("odds");
    line.querySelector("small").textContent = odds ? (odds.querySelector("li")?.textContent ?? "…") : "";
  }

  function ready() {
    steppers();
    echo();
    if (document.getElementById("room").hasAttribute("aria-busy")) return; // what belongs to it would come too late
    for (const slot of document.querySelectorAll("[data-later]:not([data-asked])")) {
      if (slot.closest("details:not([open])")) continue; // asked for once somebody opens it
      slot.dataset.asked = "";
      fill(slot);
    }
    document.dispatchEvent(new CustomEvent("page-ready"));
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
    if (form.target || form.dataset.whole !== undefined || waits(event, event.submitter)) return;
    event.preventDefault();
    event.submitter?.classList.add("tapped");
    const data = new FormData(form, event.submitter);
    if (form.method === "get") {
      const query = new URLSearchParams([...data].filter(([, value]) => value !== ""));
      shown(`${form.getAttribute("action")}?${query}`, {}, true);
    } else {
      const body = form.enctype === "multipart/form-data" ? data : new URLSearchParams(data);
      shown(form.action, { method: "POST", body }, true);
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
    turns.length = 0;
    shown(location.href, {}, false);
  });
  ready();
})();
