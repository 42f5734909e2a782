// What is said to who does not see the page, and to everybody where the program does not answer.
export function says(words) {
  const voice = document.getElementById("voice");
  voice.textContent = words;
  voice.classList.remove("seen");
}

export function gone() {
  const voice = document.getElementById("voice");
  says(voice.dataset.gone);
  voice.classList.add("seen"); // there is nothing else to see it by
}
