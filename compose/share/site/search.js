"use strict";
// Searching the list: every wish hides what does not fit; where nothing fits, the nearest are shown with what they lack.
(function () {
  const things = JSON.parse(document.getElementById("data").textContent);
  const rows = Array.from(document.querySelectorAll(".things > li"));
  const form = document.querySelector("form.search");
  const count = document.querySelector(".count");
  const NEAREST = 5;
  form.hidden = false;

  function folded(text) {
    return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  }

  function wishes() {
    const wanted = new FormData(form);
    const number = (name) => (wanted.get(name) === "" ? null : Number(wanted.get(name)));
    return {
      words: folded(wanted.get("words")).match(/[\p{L}\p{N}]+/gu) || [],
      kind: wanted.get("kind"),
      skill: wanted.get("skill"),
      age: number("age"),
      players: number("players"),
    };
  }

  // How far a number lies outside a band, as a part of a whole wish; `scale` is a whole wish off.
  function off(value, band, scale) {
    if (value === null) return 0;
    if (band === null) return 1;
    return Math.min(1, Math.max(band[0] - value, value - band[1], 0) / scale);
  }

  // What a thing lacks, as pairs of how much that counts and the words for it.
  function lacks(thing, wanted) {
    const found = [];
    const missing = wanted.words.filter((word) => !thing.words.some((each) => each.startsWith(word)));
    if (missing.length) found.push([1.5, "does not say " + missing.join(", ")]);
    if (wanted.kind && thing.kind !== wanted.kind) found.push([2, "is a " + thing.kind]);
    if (wanted.skill && !thing.skills.includes(wanted.skill)) found.push([1, "does not practise " + wanted.skill]);
    const age = off(wanted.age, thing.ages, 6);
    if (age) found.push([age, thing.ages ? "is for ages " + thing.ages.join(" to ") : "names no ages"]);
    const players = off(wanted.players, thing.players, 15);
    if (players) {
      found.push([players, thing.players ? "is for " + thing.players.join(" to ") + " players" : "names no players"]);
    }
    return found;
  }

  function show(row, lacking) {
    row.hidden = lacking === null;
    const said = row.querySelector(".lacks");
    said.textContent = lacking && lacking.length ? "Not quite: " + lacking.map((each) => each[1]).join("; ") + "." : "";
  }

  function search() {
    const wanted = wishes();
    const lacking = things.map((thing) => lacks(thing, wanted));
    const fitting = lacking.filter((each) => each.length === 0).length;
    let near = new Set();
    if (fitting === 0) {
      const far = (each) => each.reduce((sum, [weight]) => sum + weight, 0);
      const order = lacking.map((each, at) => [far(each), at]).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
      near = new Set(order.slice(0, NEAREST).map((each) => each[1]));
    }
    rows.forEach((row, at) => {
      if (fitting) show(row, lacking[at].length ? null : []);
      else show(row, near.has(at) ? lacking[at] : null);
    });
    const all = things.length === 1 ? "1 thing" : things.length + " things";
    count.textContent = fitting ? fitting + " of " + all + " fit." : "Nothing fits. The nearest of " + all + ":";
    const kept = new URLSearchParams();
    for (const [name, value] of new FormData(form)) if (value) kept.set(name, value);
    history.replaceState(null, "", "#" + kept.toString());
  }

  function fromAddress() {
    const kept = new URLSearchParams(location.hash.slice(1));
    for (const [name, value] of kept) {
      const field = form.elements.namedItem(name);
      if (field) field.value = value;
    }
  }

  fromAddress();
  form.addEventListener("input", search);
  form.addEventListener("reset", () => setTimeout(search));
  form.addEventListener("submit", (event) => event.preventDefault());
  search();
})();
