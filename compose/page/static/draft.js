// What is typed into a form that is kept only by its button: it is there again after a look elsewhere, or loading anew.
const KEY = "ruleweave-drafts";
const MOST = 12; // our choice: the forms of this tab that are remembered

function read() {
  try {
    return JSON.parse(sessionStorage.getItem(KEY)) || {};
  } catch {
    return {};
  }
}

function write(drafts) {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(Object.fromEntries(Object.entries(drafts).slice(-MOST))));
  } catch {} // a browser that keeps nothing: then it is as without this script
}

const named = (form) => `${location.pathname}${location.search} ${form.getAttribute("action")}`;
const fields = (form) => [...form.elements].filter((each) => each.name && !["hidden", "submit"].includes(each.type));
const chosen = (options) => (options.find((each) => each.defaultSelected) || options[0]).value;
const first = (each) => (each.options ? chosen([...each.options]) : each.defaultValue);
const typed = (form) => fields(form).map((each) => each.value);

export function forget(form) {
  const { [named(form)]: _, ...others } = read();
  write(others);
}

const asOpened = new Map(); // a draft does not write over what was kept since, or changed elsewhere

function keep(form) {
  const from = asOpened.get(named(form));
  forget(form);
  if (String(typed(form)) !== String(from)) write({ ...read(), [named(form)]: { from, typed: typed(form) } });
}

export function drafts(opened) {
  for (const form of document.querySelectorAll("form[data-draft]:not([data-ready])")) {
    form.dataset.ready = "";
    const [draft, now] = [read()[named(form)], fields(form).map(first)];
    if (opened) asOpened.set(named(form), now);
    if (!opened) keep(form); // the program answered in its place
    else if (draft && String(draft.from) === String(now)) again(form, draft.typed);
    else forget(form);
    for (const kind of ["input", "change"]) form.addEventListener(kind, () => keep(form));
  }
}

function again(form, values) {
  const set = (all) => fields(form).forEach((each, at) => {
    if (each.value === all[at]) return;
    each.value = all[at];
    each.closest("details")?.setAttribute("open", "");
    each.dispatchEvent(new Event("input", { bubbles: true }));
  });
  set(values);
  const told = document.getElementById("again");
  told.hidden = false;
  told.querySelector("button").addEventListener("click", () => {
    set(fields(form).map(first));
    told.hidden = true;
  });
}
