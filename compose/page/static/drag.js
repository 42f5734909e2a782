// What is dragged: a row to another place of its list, and a file onto the box that takes it.
document.addEventListener("dragstart", (event) => {
  const item = event.target.closest?.("[data-order] > li");
  if (item) event.dataTransfer.setData("text/plain", String([...item.parentNode.children].indexOf(item)));
});
document.addEventListener("dragover", (event) => {
  if (event.target.closest?.("[data-order] > li, [data-drop]")) event.preventDefault();
});
document.addEventListener("drop", (event) => {
  const box = event.target.closest?.("[data-drop]");
  if (box && event.dataTransfer.files.length) {
    event.preventDefault();
    box.querySelector("input[type=file]").files = event.dataTransfer.files;
    box.requestSubmit();
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
