// The clock and the counts of a game that is being played. It loads nothing further.
let number = data.first; // of the games of the lesson
let since = null; // when the clock was started, in ms of the day; null while it stands
let before = 0; // ms that it had run before that
let round = 1;
let rang = false;
let counts = {};
let turned = 0; // when the clock was last started or stopped
let last = null; // the tap before
const won = []; // on each court that was asked of: who has, and how many waited
const TWICE_MS = 500; // our choice: so soon a second tap is a slip of the first
const NEAR = 30; // our choice, in px: so near, too

const game = () => data.games[number];
const soon = (since) => Date.now() - since < TWICE_MS;

function remember() {
  write(NOW, { content: game().content, since, before, round, counts, rang, standing });
}

function begin(next) {
  number = next;
  try {
    history.replaceState({ number }, ""); // loading anew stays at this game
  } catch {} // a file that was carried away may not
  const now = read(NOW);
  const same = now && now.content === game().content;
  since = same ? now.since : null;
  before = same ? now.before : 0;
  round = same ? now.round : 1;
  rang = same ? now.rang : false;
  counts = same ? now.counts : fresh();
  standing = same && now.standing ? now.standing : firstStanding();
  draw();
}

function fresh() {
  return Object.fromEntries(courts().flatMap((court) => game().counters.map((each) => [counted(each.side, court), each.start])));
}

const courts = () => [...Array(game().courts).keys()];
const counted = (side, court) => (court ? `${side} ${court + 1}` : side); // by what its count goes

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
  bell();
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
  drawGroups();
  at("care").textContent = game().cautions.join(" ");
  for (const [id, other, words] of [["earlier", number - 1, say.earlier], ["next", number + 1, say.next]]) {
    at(id).hidden = !data.games[other];
    if (data.games[other]) at(id).textContent = words.replace("{game}", data.games[other].title);
  }
  running();
  at("counters").replaceChildren(
    ...courts().flatMap((court) => game().counters.map((each) => counter(each, court)))
  );
  waiting();
  tick();
}

function counter(each, court) {
  const tile = part("div", undefined, "counter");
  const [key, who] = [counted(each.side, court), game().courts > 1 ? withGroup(each.side, called(each.side), court) : called(each.side)];
  tile.dataset.sign = Math.max(0, game().sides.findIndex(([side]) => side === each.side)) % 4;
  tile.append(part("span", withGroup(each.side, called(each.side), court), "called"), part("b", counts[key]), part("span", each.words));
  const buttons = part("div", undefined, "buttons");
  const step = (by) => () => {
    counts[key] = Math.max(0, counts[key] + by);
    remember();
    tile.querySelector("b").textContent = counts[key];
  };
  const name = `${who}, ${each.words}`;
  buttons.append(button("−", `${name}: ${say.less}`, step(-1)), button("+", `${name}: ${say.more}`, step(1)));
  tile.append(buttons);
  return tile;
}

// While the clock runs, nothing takes the round away by one wrong tap.
function running() {
  at("start").textContent = since === null ? say.start : say.stop;
  for (const id of ["new", "earlier", "next"]) at(id).disabled = since !== null;
}

function startOrStop() {
  turned = Date.now();
  if (since === null) {
    since = Date.now();
    openSound();
    stayAwake();
    if (document.documentElement.requestFullscreen && data.full) document.documentElement.requestFullscreen().catch(() => {});
  } else {
    before = passed();
    since = null;
    sleep();
  }
  remember();
  running();
}

at("start").addEventListener("click", () => soon(turned) || startOrStop());

at("over").addEventListener("click", () => {
  if (since !== null) startOrStop();
  won.length = 0;
  ask();
  at("ended").showModal();
  toWinners();
});

// Who has won, court by court.
function ask() {
  const court = won.length;
  const choices = [...game().sides, ["draw", say.draw], ["nobody", say.nobody]];
  const likely = byCounts(court);
  at("who").textContent = game().courts > 1 ? say.who_on.replace("{number}", court + 1) : say.who;
  at("winners").replaceChildren(
    ...choices.map(([side, name]) => button(withGroup(side, name, court), "", () => end(side), side === likely ? "main" : ""))
  );
  const [, name] = choices.find(([side]) => side === likely) || [];
  at("by-counts").textContent = name ? say.by_counts.replace("{winner}", withGroup(likely, name, court)) : "";
  at("waits").hidden = !game().waits; // where nobody can wait, nobody is asked how many did
  at("waited").value = 0;
  at("waited").max = game().pupils;
}

// In the field of the number a phone would open its keys over the winners.
const toWinners = () => (at("winners").querySelector(".main") || at("winners").firstChild).focus();

// Who has won by what is counted, where that decides: the one end that has come, else the bell. "" where it does not.
function byCounts(court) {
  const { at_bell, level, ends } = game().deciding;
  const holds = { ">=": (one, other) => one >= other, "<=": (one, other) => one <= other, "==": (one, other) => one === other };
  const count = (side) => counts[counted(side, court)];
  const come = new Set(ends.filter(([, side, relation, bound]) => holds[relation](count(side), bound)).map(([who]) => who));
  if (come.size) return come.size === 1 ? [...come][0] : "";
  if (!rang || !at_bell) return "";
  const sides = game().counters.map((each) => each.side);
  const best = (at_bell === "more" ? Math.max : Math.min)(...sides.map(count));
  const first = sides.filter((side) => count(side) === best);
  return first.length === 1 ? first[0] : level;
}

// Nothing is kept before all courts have told.
function end(winner) {
  const length = Math.round(Math.min(passed(), 1000 * (game().clock_s ?? Infinity)) / 100) / 10;
  won.push([winner, Math.max(0, Math.min(game().pupils, Math.round(Number(at("waited").value) || 0)))]);
  if (length > 0 && won.length < game().courts) {
    ask();
    return toWinners();
  }
  if (length > 0) {
    const day = new Date(Date.now() - new Date().getTimezoneOffset() * 60000).toISOString().slice(0, 10);
    const { slug, uses, content, pupils } = game();
    const rounds = won.map(([winner, waited]) => ({ slug, uses, content, pupils, day, length_s: length, winner, waited }));
    write(KEPT, [...kept(), ...rounds]);
  }
  at("ended").close();
  if (length > 0) nextStanding(won.map(([winner]) => winner));
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
// A second quick tap does not hit what has come to the place of the first one's button.
document.addEventListener("click", (event) => {
  const { clientX: x, clientY: y, target, detail } = event;
  const slip = last && soon(last.when) && target !== last.target && Math.hypot(x - last.x, y - last.y) < NEAR;
  if (detail) last = { x, y, target, when: Date.now() }; // keys have no place
  if (!detail || !slip) return;
  event.stopPropagation();
  event.preventDefault();
}, true);
at("new").addEventListener("click", () => again(round));
at("earlier").addEventListener("click", () => begin(number - 1));
at("next").addEventListener("click", () => begin(number + 1));

document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible" && since !== null) stayAwake();
});

begin(data.games[history.state?.number] ? history.state.number : number);
setInterval(tick, 200);
send();
