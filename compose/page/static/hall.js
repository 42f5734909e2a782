"use strict";
// The clock and the counts of a game that is being played. It loads nothing: rounds are kept here and sent when they can be.
(() => {
  const data = JSON.parse(document.getElementById("games").textContent);
  const say = data.words;
  const at = (id) => document.getElementById(id);
  const KEPT = "ruleweave-rounds";
  const NOW = "ruleweave-now";
  let number = data.first;
  let since = null; // when the clock was started, in ms of the day; null while it stands
  let before = 0; // ms that it had run before that
  let round = 1;
  let rang = false;
  let counts = {};
  let sound = null;
  let awake = null;

  const game = () => data.games[number];
  const kept = () => read(KEPT) || [];

  function read(key) {
    try {
      return JSON.parse(localStorage.getItem(key));
    } catch {
      return null;
    }
  }

  function write(key, value) {
    try {
      localStorage.setItem(key, JSON.stringify(value));
    } catch {
      at("note").textContent = say.full;
    }
  }

  function remember() {
    write(NOW, { content: game().content, since, before, round, counts, rang });
  }

  function begin(next) {
    number = next;
    const last = read(NOW);
    const same = last && last.content === game().content;
    since = same ? last.since : null;
    before = same ? last.before : 0;
    round = same ? last.round : 1;
    rang = same ? last.rang : false;
    counts = same ? last.counts : fresh();
    draw();
  }

  function fresh() {
    return Object.fromEntries(game().counters.map((each) => [each.side, each.start]));
  }

  function passed() {
    return before + (since === null ? 0 : Date.now() - since);
  }

  function tick() {
    const clock = game().clock_s;
    const ms = passed();
    const shown = clock === null ? Math.floor(ms / 1000) : Math.max(0, Math.ceil((clock * 1000 - ms) / 1000));
    at("clock").textContent = `${Math.floor(shown / 60)}:${String(shown % 60).padStart(2, "0")}`;
    if (clock !== null && ms >= clock * 1000 && !rang) ring();
    document.body.classList.toggle("rang", rang);
    at("bell").textContent = rang ? say.bell : "";
  }

  function ring() {
    rang = true;
    remember();
    if (navigator.vibrate) navigator.vibrate([600, 200, 600]);
    if (!sound) return;
    for (const [start, high] of [[0, 880], [0.45, 660], [0.9, 880], [1.35, 660]]) {
      const tone = sound.createOscillator();
      const loud = sound.createGain();
      tone.frequency.value = high;
      loud.gain.setValueAtTime(0.6, sound.currentTime + start);
      loud.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + start + 0.42);
      tone.connect(loud).connect(sound.destination);
      tone.start(sound.currentTime + start);
      tone.stop(sound.currentTime + start + 0.44);
    }
  }

  function part(tag, text, name) {
    const made = document.createElement(tag);
    if (text !== undefined) made.textContent = text;
    if (name) made.className = name;
    return made;
  }

  function button(text, label, act, name) {
    const made = part("button", text, name);
    made.type = "button";
    if (label) made.setAttribute("aria-label", label);
    made.addEventListener("click", act);
    return made;
  }

  function called(side) {
    const found = game().sides.find((each) => each[0] === side);
    return found ? found[1] : side;
  }

  function draw() {
    at("title").textContent = game().title;
    document.title = game().title;
    at("round").textContent = (game().rounds > 1 ? say.round : say.one_round).replace("{number}", round).replace("{most}", game().rounds);
    at("care").textContent = game().cautions.join(" ");
    for (const [id, other, words] of [["earlier", number - 1, say.earlier], ["next", number + 1, say.next]]) {
      at(id).hidden = !data.games[other];
      if (data.games[other]) at(id).textContent = words.replace("{game}", data.games[other].title);
    }
    running();
    at("counters").replaceChildren(
      ...game().counters.map((each) => {
        const tile = part("div", undefined, "counter");
        tile.append(part("span", called(each.side), "called"), part("b", counts[each.side]), part("span", each.words));
        const buttons = part("div", undefined, "buttons");
        const step = (by) => () => {
          counts[each.side] = Math.max(0, counts[each.side] + by);
          remember();
          tile.querySelector("b").textContent = counts[each.side];
        };
        const name = `${called(each.side)}, ${each.words}`;
        buttons.append(button("−", `${name}: ${say.less}`, step(-1)), button("+", `${name}: ${say.more}`, step(1)));
        tile.append(buttons);
        return tile;
      })
    );
    waiting();
    tick();
  }

  // While the clock runs, nothing takes the round away by one wrong tap.
  function running() {
    at("start").textContent = since === null ? say.start : say.stop;
    for (const id of ["new", "earlier", "next"]) at(id).disabled = since !== null;
  }

  function waiting() {
    const left = kept().length;
    at("kept").textContent = left ? (left === 1 ? say.one_kept : say.kept.replace("{number}", left)) : "";
    at("send").hidden = !left || !data.to;
    at("save").hidden = !left;
  }

  async function stayAwake() {
    if (!("wakeLock" in navigator)) {
      at("awake").textContent = say.not_awake;
      return;
    }
    try {
      awake = await navigator.wakeLock.request("screen");
      at("awake").textContent = say.awake;
      awake.addEventListener("release", () => {
        at("awake").textContent = since === null ? "" : say.not_awake;
      });
    } catch {
      at("awake").textContent = say.not_awake;
    }
  }

  at("start").addEventListener("click", () => {
    if (since === null) {
      since = Date.now();
      sound = sound || (window.AudioContext ? new AudioContext() : null);
      if (sound) sound.resume();
      stayAwake();
      if (document.documentElement.requestFullscreen && data.full) document.documentElement.requestFullscreen().catch(() => {});
    } else {
      before = passed();
      since = null;
      if (awake) awake.release();
    }
    remember();
    running();
  });

  at("over").addEventListener("click", () => {
    if (since !== null) at("start").click();
    const choices = [...game().sides, ["draw", say.draw], ["nobody", say.nobody]];
    at("winners").replaceChildren(...choices.map(([side, name]) => button(name, "", () => end(side))));
    at("waits").hidden = !game().waits; // where nobody can wait, nobody is asked how many did
    at("waited").value = 0;
    at("waited").max = game().pupils;
    at("ended").showModal();
    at("winners").firstChild.focus(); // in the field of the number a phone would open its keys over the winners
  });

  function end(winner) {
    const length = Math.round(Math.min(passed(), 1000 * (game().clock_s ?? Infinity)) / 100) / 10;
    if (length > 0) {
      const waited = Math.max(0, Math.min(game().pupils, Math.round(Number(at("waited").value) || 0)));
      const day = new Date(Date.now() - new Date().getTimezoneOffset() * 60000).toISOString().slice(0, 10);
      const { slug, uses, content, pupils } = game();
      write(KEPT, [...kept(), { slug, uses, content, pupils, day, length_s: length, winner, waited }]);
    }
    at("ended").close();
    again(length > 0 ? round + 1 : round);
    at("note").textContent = length > 0 ? "" : say.not_timed;
    if (length > 0) send();
  }

  function again(next) {
    since = null;
    before = 0;
    rang = false;
    round = next;
    counts = fresh();
    remember();
    draw();
  }

  for (const [id, by] of [["fewer", -1], ["more", 1]])
    at(id).addEventListener("click", () => {
      at("waited").value = Math.max(0, Math.min(game().pupils, Number(at("waited").value || 0) + by));
    });
  at("back").addEventListener("click", () => at("ended").close());
  at("new").addEventListener("click", () => again(round));
  at("earlier").addEventListener("click", () => begin(number - 1));
  at("next").addEventListener("click", () => begin(number + 1));
  at("send").addEventListener("click", () => send());

  async function send() {
    waiting();
    if (!data.to || !kept().length) return;
    try {
      while (kept().length) {
        const [first, ...others] = kept();
        const fields = new URLSearchParams({ ...first, token: data.token, code: data.code });
        fields.delete("uses");
        for (const use of first.uses) fields.append("with", use);
        const answer = await fetch(data.to, { method: "POST", body: fields });
        if (answer.status !== 204) throw new Error([403, 409].includes(answer.status) ? "old" : "not_sent");
        write(KEPT, others);
      }
      at("note").textContent = say.sent;
    } catch (wrong) {
      at("note").textContent = say[wrong.message === "old" ? "old" : "not_sent"];
    }
    waiting();
  }

  at("save").addEventListener("click", () => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([JSON.stringify({ version: 1, rounds: kept() }, null, 1)], { type: "application/json" }));
    link.download = "rounds.json";
    link.click();
    URL.revokeObjectURL(link.href);
  });

  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && since !== null) stayAwake();
  });
  window.addEventListener("online", () => send());
  begin(number);
  setInterval(tick, 200);
  send();
})();
