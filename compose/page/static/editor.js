// Colours and completion for the sheet that is written. The text area stays what it is: this only draws behind it.
import { steady } from "./steady.js";

let timer = null;
let asked = 0;
const tab = Math.random().toString(36).slice(2);

const HEADS = /^(space|sides|kit|set-up|play|when|finish|care|game|modifier|remix|note|class|hall)\b/i;
const escaped = (text) => text.replace(/[&<>]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;" })[sign]);

function pattern(names) {
  const known = [...names].sort((one, other) => other.length - one.length).map((name) => name.replace(/[^\w\s]/g, "\\$&"));
  const name = known.length ? `\\b(?:${known.join("|")})\\b` : "(?!)";
  return new RegExp(`("[^"]*"?)|(\\b\\d[\\d.]*(?:\\s?(?:m|cm|s|min|kg|%))?(?!\\w))|(${name})`, "gi");
}

function coloured(line, marks, tokens) {
  const kinds = new Array(line.length).fill("");
  if (/^\s*note:/i.test(line)) kinds.fill("k-note");
  else if (!/^\s/.test(line) && HEADS.test(line)) kinds.fill("k-head");
  else
    for (const found of line.matchAll(tokens)) {
      const kind = found[1] ? "k-said" : found[2] ? "k-count" : "k-name";
      kinds.fill(kind, found.index, found.index + found[0].length);
    }
  for (const [from, to] of marks) for (let at = from - 1; at < Math.min(to - 1, line.length); at++) kinds[at] += " k-slip";
  let html = "";
  for (let at = 0; at < line.length; ) {
    let end = at + 1;
    while (end < line.length && kinds[end] === kinds[at]) end++;
    const text = escaped(line.slice(at, end));
    html += kinds[at].trim() ? `<span class="${kinds[at].trim()}">${text}</span>` : text;
    at = end;
  }
  return html;
}

const row = (number, html, slip) => `<span class="row${slip ? " wrong" : ""}" id="line-${number}">${html}</span>`;

function paint(box) {
  const area = box.querySelector("textarea");
  const tokens = pattern(JSON.parse(box.dataset.known).names);
  const marks = new Map();
  for (const each of document.querySelectorAll("#told [data-line]")) {
    const { line, column, end } = each.dataset;
    if (each.dataset.text === undefined) each.dataset.text = area.value.split("\n")[line - 1] ?? "";
    if (area.value.split("\n")[line - 1] !== each.dataset.text) continue; // the line was changed since
    marks.set(Number(line), [...(marks.get(Number(line)) || []), [Number(column), Number(end)]]);
  }
  const rows = area.value.split("\n").map((line, at) => row(at + 1, coloured(line, marks.get(at + 1) || [], tokens), marks.has(at + 1)));
  box.querySelector(".colours").innerHTML = rows.join("");
  area.style.height = "auto";
  area.style.height = `${Math.max(area.scrollHeight, 500)}px`;
}

async function look(form) {
  const mine = ++asked;
  const data = new URLSearchParams(new FormData(form));
  try {
    const answer = await fetch(form.dataset.look, { method: "POST", body: data, headers: { "X-Tab": tab } });
    const text = await answer.text();
    await steady();
    if (mine !== asked || !answer.ok || !form.isConnected) return;
    const part = new DOMParser().parseFromString(text, "text/html");
    const told = document.getElementById("told");
    told.replaceChildren(...part.body.childNodes);
    told.removeAttribute("aria-busy");
    paint(form.querySelector("[data-editor]"));
  } catch {
    document.dispatchEvent(new CustomEvent("page-gone")); // what was typed is still there
  }
}

function where(area) {
  const before = area.value.slice(0, area.selectionStart);
  const line = before.slice(before.lastIndexOf("\n") + 1);
  const heads = before.split("\n").filter((each) => HEADS.test(each) && !/^\s/.test(each));
  const section = heads.length ? heads[heads.length - 1].trim().split(/\s/)[0].toLowerCase() : "";
  return { line: line.trimStart(), section };
}

function candidates(box) {
  const area = box.querySelector("textarea");
  const known = JSON.parse(box.dataset.known);
  const { line, section } = where(area);
  const word = line.split(/\s/).pop().toLowerCase();
  const lines = (known.lines[section] || []).filter((each) => each.toLowerCase().startsWith(line.toLowerCase()) && each !== line);
  const names = word ? known.names.filter((each) => each.toLowerCase().startsWith(word) && each.toLowerCase() !== word) : [];
  return [...names.map((each) => [each, word.length]), ...lines.map((each) => [each, line.length])].slice(0, 7);
}

function complete(box) {
  const list = document.getElementById("completions");
  const area = box.querySelector("textarea");
  const found = candidates(box);
  list.hidden = !found.length;
  const words = document.createElement("span");
  words.textContent = list.dataset.words;
  list.replaceChildren(
    words,
    ...found.map(([text, typed]) => {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = text;
      button.lang = "en";
      button.addEventListener("click", () => {
        const at = area.selectionStart;
        area.setRangeText(text, at - typed, at, "end");
        list.hidden = true;
        area.focus();
        area.dispatchEvent(new Event("input", { bubbles: true }));
      });
      return button;
    })
  );
  return found.length ? list.querySelector("button") : null;
}

// From a mistake to what it speaks of, in the text.
document.addEventListener("click", (event) => {
  const slip = event.target.closest?.(".to-line")?.closest("[data-line]");
  const area = document.querySelector(".coloured textarea");
  if (!slip || !area) return;
  event.preventDefault();
  const { line, column, end } = slip.dataset;
  const lines = area.value.split("\n");
  const start = lines.slice(0, line - 1).join("\n").length + (line > 1);
  const to = (place) => start + Math.min(place - 1, (lines[line - 1] ?? "").length);
  area.focus({ preventScroll: true });
  area.setSelectionRange(to(column), to(end));
  document.getElementById(`line-${line}`)?.scrollIntoView({ block: "center" });
});

function ready() {
  const box = document.querySelector("[data-editor]:not([data-ready])");
  if (!box) return;
  box.dataset.ready = "";
  const area = box.querySelector("textarea");
  document.querySelector(".keys").hidden = false;
  document.getElementById("what-can").addEventListener("click", () => complete(box)?.focus());
  box.classList.add("coloured");
  area.addEventListener("input", () => {
    paint(box);
    document.getElementById("completions").hidden = true;
    document.getElementById("told").setAttribute("aria-busy", "true"); // it is said of the text before
    clearTimeout(timer);
    timer = setTimeout(() => look(area.form), 450);
  });
  area.addEventListener("keydown", (event) => {
    if (event.key === " " && event.ctrlKey) {
      event.preventDefault();
      complete(box)?.focus();
    }
  });
  document.getElementById("completions").addEventListener("keydown", (event) => {
    if (event.key === "Escape") {
      event.currentTarget.hidden = true;
      area.focus();
    }
  });
  paint(box);
}

document.addEventListener("page-ready", ready);
ready();
