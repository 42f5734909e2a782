// What is dragged: a row to another place of its list, and a file onto the box that takes it, or beside it: there the
// browser would leave the page for the file.
const holdsFiles = (event) => [...event.dataTransfer.types].includes("Files");
const box = (event) => (holdsFiles(event) ? document.querySelector("[data-drop]") : null);

document.addEventListener("dragstart", (event) => {
  const item = event.target.closest?.("[data-order] > li");
  if (item) event.dataTransfer.setData("text/plain", String([...item.parentNode.children].indexOf(item)));
});
document.addEventListener("dragover", (event) => {
  if (box(event) || event.target.closest?.("[data-order] > li")) event.preventDefault();
});
document.addEventListener("drop", (event) => {
  const takes = box(event);
  if (takes) {
    event.preventDefault();
    takes.querySelector("input[type=file]").files = event.dataTransfer.files;
    takes.requestSubmit();
    return;
  }
  const item = event.target.closest?.("[data-order] > li");
  if (!item) return;
  event.preventDefault();
  const rows = [...item.parentNode.children];
  const from = Number(event.dataTransfer.getData("text/plain"));
  const move = rows[from]?.querySelector(`[data-to="${rows.indexOf(item)}"]`);
  if (move) (move.querySelector("button") || move).click();
});
