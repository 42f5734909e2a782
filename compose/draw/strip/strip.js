"use strict";
(() => {
  const round = JSON.parse(document.getElementById("round").textContent);
  const player = document.getElementById("player");
  const layer = document.getElementById("tokens");
  const told = document.getElementById("told");
  const counts = document.getElementById("counts");
  const place = document.getElementById("place");
  const play = document.getElementById("play");
  const still = window.matchMedia("(prefers-reduced-motion: reduce)");
  const tokens = round.scenes[0].map(() => {
    const group = document.createElementNS("http://www.w3.org/2000/svg", "g");
    group.setAttribute("class", "token");
    layer.append(group);
    return { group, look: -1 };
  });
  let now = 0;
  let timer = null;

  function show(next) {
    now = Math.max(0, Math.min(next, round.scenes.length - 1));
    round.scenes[now].forEach(([x, y, look], order) => {
      const token = tokens[order];
      if (token.look !== look) {
        token.group.innerHTML = round.looks[look];
        token.look = look;
      }
      token.group.style.transform = `translate(${x}px, ${y}px)`;
    });
    told.textContent = round.told[now][0];
    counts.textContent = round.told[now][1];
    place.textContent = `${now + 1} / ${round.scenes.length}`;
    document.getElementById("back").disabled = now === 0;
    document.getElementById("forward").disabled = now === round.scenes.length - 1;
  }

  function stop() {
    clearInterval(timer);
    timer = null;
    play.textContent = round.words.play;
    play.setAttribute("aria-pressed", "false");
  }

  function start() {
    if (now === round.scenes.length - 1) show(0);
    play.textContent = round.words.pause;
    play.setAttribute("aria-pressed", "true");
    timer = setInterval(() => {
      show(now + 1);
      if (now === round.scenes.length - 1) stop();
    }, still.matches ? 5000 : 3200);
  }

  function step(by) {
    stop();
    show(now + by);
  }

  const doing = {
    " ": () => (timer ? stop() : start()),
    ArrowRight: () => step(1),
    ArrowLeft: () => step(-1),
    Home: () => step(-round.scenes.length),
    End: () => step(round.scenes.length),
  };
  play.addEventListener("click", doing[" "]);
  document.getElementById("back").addEventListener("click", () => step(-1));
  document.getElementById("forward").addEventListener("click", () => step(1));
  document.getElementById("first").addEventListener("click", doing.Home);
  document.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === " " && event.target.tagName === "BUTTON") return;
    const act = doing[event.key];
    if (act) {
      event.preventDefault();
      act();
    }
  });
  player.hidden = false;
  show(0);
})();
