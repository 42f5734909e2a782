// The verdict once more in the bar, for whoever has gone further down than where it stands.
const seen = new IntersectionObserver((entries) => {
  const line = document.getElementById("echo");
  if (line) line.hidden = entries.at(-1).isIntersecting;
});

export function echo() {
  const line = document.getElementById("echo");
  const verdict = document.getElementById("verdict");
  if (!line) return;
  seen.disconnect();
  if (!verdict) return (line.hidden = true);
  seen.observe(verdict);
  line.className = `${verdict.className} echo`;
  line.querySelector("a").textContent = `${verdict.textContent.trim()} ↑`;
  const odds = document.getElementById("odds");
  line.querySelector("small").textContent = odds ? (odds.querySelector("li")?.textContent ?? "…") : "";
}
