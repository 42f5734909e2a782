// What is kept in this browser: where a game stands, and rounds, which are sent when they can be.
const data = JSON.parse(document.getElementById("games").textContent);
const say = data.words;
const at = (id) => document.getElementById(id);
const KEPT = "ruleweave-rounds";
const NOW = "ruleweave-now";
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

function waiting() {
  const left = kept().length;
  at("kept").textContent = left ? (left === 1 ? say.one_kept : say.kept.replace("{number}", left)) : "";
  at("send").hidden = !left || !data.to;
  at("save").hidden = !left;
}

async function send() {
  waiting();
  if (!data.to || !kept().length) return;
  let told = "sent";
  for (const each of kept()) {
    const status = await sent(each);
    if (status === 204) write(KEPT, kept().filter((other) => !alike(each, other))); // others may have come meanwhile
    else told = [403, 409].includes(status) ? "old" : "not_sent"; // one that is refused keeps no other one back
    if (!status) break;
  }
  at("note").textContent = say[told];
  waiting();
}

const alike = (one, other) => JSON.stringify(one) === JSON.stringify(other);

// The status of the answer; 0 where there is none.
async function sent(round) {
  const fields = new URLSearchParams({ ...round, token: data.token, code: data.code });
  fields.delete("uses");
  for (const use of round.uses) fields.append("with", use);
  try {
    return (await fetch(data.to, { method: "POST", body: fields })).status;
  } catch {
    return 0;
  }
}

at("save").addEventListener("click", () => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([JSON.stringify({ version: 1, rounds: kept() }, null, 1)], { type: "application/json" }));
  link.download = "rounds.json";
  link.click();
  URL.revokeObjectURL(link.href);
});

at("send").addEventListener("click", () => send());
window.addEventListener("online", () => send());
