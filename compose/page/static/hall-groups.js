// Who of more groups than two plays now and who rests. Groups are numbered in the order in which they come on, and whoever
// comes on takes the part of the side that goes; the forecast reckons with the same.
let standing = null; // playing: the group of each side; waiting in turn; longer: the side whose group has played longer

function firstStanding() {
  const { groups } = game();
  if (!groups) return null;
  return { playing: [0, 1], waiting: [...Array(groups).keys()].slice(2), longer: 0, won: Array(groups).fill(0), rounds: 0 };
}

function nextStanding(winner) {
  if (!standing) return;
  const seat = game().sides.findIndex((each) => each[0] === winner); // -1 after a draw, or where nobody won
  if (seat >= 0) standing.won[standing.playing[seat]] += 1;
  standing.rounds += 1;
  if (game().all_meet) return allMeet();
  const going = seat >= 0 ? 1 - seat : standing.longer;
  standing.waiting.push(standing.playing[going]);
  standing.playing[going] = standing.waiting.shift();
  standing.longer = 1 - going;
}

// Every pair once, and then the other way round.
function allMeet() {
  const all = standing.won.map((_, number) => number);
  const pairs = all.flatMap((one) => all.slice(one + 1).map((other) => [one, other]));
  const pair = [...pairs[standing.rounds % pairs.length]];
  standing.playing = Math.floor(standing.rounds / pairs.length) % 2 ? pair.reverse() : pair;
  standing.waiting = all.filter((each) => !standing.playing.includes(each));
}

const group = (number) => say.group.replace("{number}", number + 1);

function withGroup(side, name) {
  const seat = game().sides.findIndex((each) => each[0] === side);
  return standing && seat >= 0 ? `${name}, ${group(standing.playing[seat])}` : name;
}

function drawGroups() {
  at("groups").hidden = !standing;
  if (!standing) return;
  const playing = game().sides.map(([side]) => withGroup(side, called(side)));
  const most = Math.max(...standing.won);
  const first = standing.won.flatMap((won, number) => (most && won === most ? [number] : []));
  const told = [say.on.replace("{first}", playing[0]).replace("{second}", playing[1])];
  if (standing.waiting.length) told.push(say.resting.replace("{groups}", standing.waiting.map(group).join(", ")));
  if (most) told.push(say.won.replace("{groups}", first.map(group).join(", ")).replace("{number}", most));
  at("groups").textContent = told.join(" ");
}
