// The verdict once more beside the changes, for whoever has gone further down.
export function echo() {
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
