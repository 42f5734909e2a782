// Who of more groups than two plays now and who rests. Groups are numbered in the order in which they come on, and whoever
// comes on takes the part of the side that goes; the forecast reckons with the same.
// playing: the group of each side, court after court; waiting in turn; longer: the side whose group has played longer
let standing = null;

function firstStanding() {
  const { groups, courts } = game();
  if (!groups) return null;
  const all = [...Array(groups).keys()];
  return { playing: all.slice(0, 2 * courts), waiting: all.slice(2 * courts), longer: 0, won: Array(groups).fill(0), rounds: 0 };
}

// After a round with a winner on each court.
function nextStanding(winners) {
  if (!standing) return;
  const seats = winners.map((winner) => game().sides.findIndex((each) => each[0] === winner)); // -1 where no side won
  seats.forEach((seat, court) => seat >= 0 && (standing.won[standing.playing[2 * court + seat]] += 1));
  standing.rounds += 1;
  if (game().all_meet) return allMeet();
  if (game().courts === 2) return winnersMeet(seats);
  const [seat] = seats;
  const going = seat >= 0 ? 1 - seat : standing.longer;
  standing.waiting.push(standing.playing[going]);
  standing.playing[going] = standing.waiting.shift();
  standing.longer = 1 - going;
}

// Winners go to the first court, the others to the second; after a draw a lot decides who goes with the winners.
function winnersMeet(seats) {
  const up = seats.map((seat) => (seat >= 0 ? seat : Math.floor(2 * Math.random())));
  const ups = up.map((seat, court) => standing.playing[2 * court + seat]);
  const downs = up.map((seat, court) => standing.playing[2 * court + 1 - seat]);
  standing.playing = [...ups, ...downs];
}

// Every pair once, and then the other way round; on two courts with the pair that the two others make.
function allMeet() {
  const all = standing.won.map((_, number) => number);
  const pairs = all.flatMap((one) => all.slice(one + 1).map((other) => [one, other]));
  const rounds = pairs.length / game().courts;
  const now = standing.rounds % rounds;
  const meeting = game().courts === 2 ? [pairs[now], pairs[pairs.length - 1 - now]] : [pairs[now]];
  standing.playing = meeting.flatMap((pair) => (Math.floor(standing.rounds / rounds) % 2 ? [...pair].reverse() : pair));
  standing.waiting = all.filter((each) => !standing.playing.includes(each));
}

const group = (number) => say.group.replace("{number}", number + 1);

function withGroup(side, name, court = 0) {
  const seat = game().sides.findIndex((each) => each[0] === side);
  return standing && seat >= 0 ? `${name}, ${group(standing.playing[2 * court + seat])}` : name;
}

function drawGroups() {
  at("groups").hidden = !standing;
  if (!standing) return;
  const { courts } = game();
  const on = (court) => {
    const playing = game().sides.map(([side]) => withGroup(side, called(side), court));
    const words = courts > 1 ? say.on_court.replace("{number}", court + 1) : say.on;
    return words.replace("{first}", playing[0]).replace("{second}", playing[1]);
  };
  const most = Math.max(...standing.won);
  const first = standing.won.flatMap((won, number) => (most && won === most ? [number] : []));
  const told = [...Array(courts).keys()].map(on);
  if (standing.waiting.length) told.push(say.resting.replace("{groups}", standing.waiting.map(group).join(", ")));
  if (most) told.push(say.won.replace("{groups}", first.map(group).join(", ")).replace("{number}", most));
  at("groups").textContent = told.join(" ");
}
