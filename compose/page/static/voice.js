// What is said to who does not see the page, and to everybody where the program does not answer.
export function says(words) {
  const voice = document.getElementById("voice");
  voice.textContent = words;
  voice.classList.remove("seen");
}

// Where there is nothing else to see it by.
export function shows(words) {
  says(words);
  document.getElementById("voice").classList.add("seen");
}

export const gone = () => shows(document.getElementById("voice").dataset.gone);

// Whether a file is larger than the program takes: that is said here, for it would be cut off on its way.
export function tooLarge(form) {
  const { large, most } = document.getElementById("voice").dataset;
  const found = [...form.elements].some((each) => [...(each.files || [])].some((file) => file.size > Number(most)));
  if (found) shows(large);
  return found;
}
