// Readings taken outdoors: one question at a time, kept on this phone until the journal has them.
import { all, drop, moment, newId, put, send, sent } from "./keep.js";
import { big, make } from "./draw.js";
import { caution, screen } from "./screens.js";
import { KINDS, noteOf, stepsOf, titleOf } from "./steps.js";

const AGAIN_MS = 15000;
const main = document.getElementById("main");
const sign = document.getElementById("sign");
const back = document.getElementById("back");
const store = {
  get: name => {
    try {
      return JSON.parse(localStorage.getItem(`mastwright-outdoors-${name}`) ?? "null");
    } catch {
      return null;
    }
  },
  set: (name, value) => value === null ? localStorage.removeItem(`mastwright-outdoors-${name}`) : localStorage.setItem(`mastwright-outdoors-${name}`, JSON.stringify(value)),
};

let card = store.get("card");
let draft = store.get("draft");
let last = { state: "unknown" };
let just = null;
let waiting = [];

const step = () => draft ? stepsOf(draft, card)[Math.min(draft.step, stepsOf(draft, card).length - 1)] : null;

// Every keystroke goes to the store: a browser that is closed in between has it again.
const save = () => store.set("draft", draft);

const on = {
  set: (values, quiet) => {
    Object.assign(draft.values, values);
    save();
    if (!quiet) {
      draw();
    }
  },
  next: values => {
    if (values && !(values instanceof Event)) {
      Object.assign(draft.values, values);
    }
    draft.step += 1;
    save();
    history.pushState({ step: draft.step }, "");
    draw(true);
  },
  when: text => {
    const at = new Date(text);
    if (!Number.isNaN(at.getTime())) {
      draft.at = moment(at);
      save();
    }
  },
  author: name => {
    if (name !== undefined) {
      store.set("author", name.trim());
    }
    return store.get("author") ?? "";
  },
  draw: moved => draw(moved),
  keep: async () => {
    const mast = draft.values.mast ?? (draft.kind === "tension" || draft.kind === "inspection" ? card.masts[0]?.name : null);
    const note = noteOf({ ...draft, values: { ...draft.values, mast } }, card, on.author());
    try {
      await put({ id: draft.id, note, title: titleOf(draft), draft: { ...draft } });
    } catch (e) {
      return main.append(make("p", { class: "problem", role: "alert" }, `This phone cannot keep it: ${e?.message ?? "its store refuses"}. Free some room, or write it down; the entry stays on this screen.`));
    }
    just = draft;
    draft = null;
    save();
    history.pushState({}, "");
    await refresh();
    draw(true);
    await trySending();
  },
};

// An entry left half done waits on this phone until it is taken up again or dropped.
const parked = () => store.get("parked") ?? [];

const park = () => {
  const said = v => v !== null && v !== undefined && v !== "" && (typeof v !== "object" || Object.keys(v).length > 0);
  const { at, mast, ...answered } = draft.values;
  if (Object.values(answered).some(said)) {
    store.set("parked", [draft, ...parked().filter(d => d.id !== draft.id)]);
  }
  draft = null;
};

const unpark = (id, go) => {
  const found = parked().find(d => d.id === id);
  store.set("parked", parked().filter(d => d.id !== id));
  if (go && found) {
    draft = found;
    save();
    history.pushState({ step: draft.step }, "");
  }
  draw(true);
};

const begin = (kind, values = {}) => {
  draft = { id: newId(), kind, at: moment(), step: 0, values };
  save();
  history.pushState({ step: 0 }, "");
  draw(true);
};

const tag = entry => entry.refused ? make("span", { class: "tag" }, `✕ Not taken: ${entry.refused}`) : make("span", { class: "tag" }, "▲ Kept on this phone, not yet sent");

const mend = async entry => {
  // The same entry with the same key when nothing of it was taken; a new one when the journal has it in other words.
  // It leaves the one store only when it stands in the other.
  draft = { ...entry.draft, id: entry.field === "id" ? newId() : entry.id, step: 0 };
  save();
  await drop(entry.id);
  await refresh();
  history.pushState({ step: 0 }, "");
  draw(true);
};

const away = async entry => {
  if (confirm(`Drop “${entry.title}”? It is nowhere else.`)) {
    await drop(entry.id);
    await refresh();
    draw();
  }
};

const home = () => {
  const before = just;
  if (!card) {
    return [make("h1", { tabindex: "-1" }, "Readings outdoors"), make("p", {}, "This phone has not met the workbench yet: the station's guys and checklist are not here. Come within its reach once and open this page.")];
  }
  const taken = sent();
  return [
    make("h1", { tabindex: "-1" }, before ? "Kept. What next?" : "What do you note?"),
    before?.kind === "tension" ? big("Next guy, read the same way", "", () => begin("tension", { way: before.values.way, temperature: before.values.temperature, mast: before.values.mast }), { class: "go" }) : null,
    ...parked().map(d => make("div", { class: "pair" }, big("Go on", `${titleOf(d)}, half done`, () => unpark(d.id, true), { class: "go" }), big("Drop it", "", () => confirm(`Drop “${titleOf(d)}”? It is nowhere else.`) && unpark(d.id, false)))),
    ...KINDS.map(([kind, label, under]) => big(label, under, () => begin(kind))),
    waiting.length ? make("h2", {}, "On this phone") : null,
    waiting.length ? make("ul", { class: "list" }, waiting.map(e => make("li", { class: e.refused ? "refused" : "not-sent" }, make("strong", {}, e.title), make("span", {}, e.note.at.slice(0, 16).replace("T", " ")), tag(e),
      make("div", { class: "pair" }, big("Change", "", () => mend(e)), big("Drop", "", () => away(e)))))) : null,
    taken.length ? make("h2", {}, "Taken by the journal") : null,
    taken.length ? make("ul", { class: "list" }, taken.slice(0, 8).map(e => make("li", { class: "taken" }, make("strong", {}, e.title), make("span", {}, e.at.slice(0, 16).replace("T", " ")), make("span", { class: "tag" }, "✓ In the journal"), e.says ? make("span", {}, e.says) : null))) : null,
    caution(),
    make("p", { class: "soft" }, "serviceWorker" in navigator
      ? "This page opens without a connection once it has been opened here."
      : "This connection is not a secure one, so the browser keeps this page only while it stays open: leave it open outdoors. What you enter is kept on this phone either way."),
    make("p", { class: "soft" }, `Guys and checklist as of ${card.made.slice(0, 16).replace("T", " ")}.`),
  ];
};

const draw = moved => {
  just = draft ? null : just;
  back.hidden = !draft;
  document.getElementById("bench").hidden = Boolean(draft);
  document.getElementById("station").textContent = card?.station ?? "Mastwright";
  const elements = draft ? screen(step(), draft, card, on) : home();
  main.replaceChildren(...elements.filter(Boolean));
  if (moved) {
    main.querySelector("h1")?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }
};

const REASONS = {
  away: "No connection to the workbench. It will be sent when there is one; nothing is lost meanwhile.",
  key: "The workbench was started anew: open its address with the new key on this phone once.",
  unknown: "",
  fine: "",
};

const showSign = () => {
  const refused = waiting.filter(e => e.refused).length;
  const open = waiting.length - refused;
  sign.className = `sign ${open ? "waiting" : refused ? "refused" : last.state === "fine" ? "fine" : "away"}`;
  const lines = [];
  if (open) {
    lines.push(make("span", {}, `▲ ${open} ${open === 1 ? "entry" : "entries"} kept on this phone, not yet sent`));
  }
  if (refused) {
    lines.push(make("span", {}, `${open ? " · " : ""}✕ ${refused} not taken: see below`));
  }
  if (!open && !refused && last.state === "fine") {
    lines.push(make("span", {}, "✓ Everything entered here is in the journal"));
  }
  const reason = last.state === "trouble" ? last.words : REASONS[last.state];
  if (reason && (open || last.state !== "away")) {
    lines.push(make("small", {}, reason));
  } else if (last.state === "away") {
    lines.push(make("small", {}, "No connection to the workbench. Go on: entries are kept here."));
  }
  sign.replaceChildren(...lines);
};

const refresh = async () => {
  waiting = await all();
  showSign();
};

const trySending = async () => {
  if (last.state !== "fine") {
    await meet();
  }
  const found = await send();
  last = found.state === "nothing" ? last : found;
  await refresh();
  if (!draft) {
    draw();
  }
};

// The newest guys and checklist, when the workbench can be reached.
const meet = async () => {
  try {
    const response = await fetch("/api/journal/card", { cache: "no-store", signal: AbortSignal.timeout(10000) });
    if (response.ok) {
      card = await response.json();
      store.set("card", card);
      last = { state: "fine" };
    } else {
      last = response.status === 401 ? { state: "key" } : { state: "trouble", words: (await response.text()).slice(0, 300) };
    }
  } catch {
    last = { state: "away" };
  }
};

const look = document.getElementById("look");
const dress = dark => {
  document.documentElement.dataset.theme = dark ? "dark" : "light";
  document.querySelector('meta[name="color-scheme"]').content = dark ? "dark" : "light";
  look.setAttribute("aria-pressed", String(dark));
};
look.addEventListener("click", () => {
  store.set("dark", document.documentElement.dataset.theme !== "dark");
  dress(store.get("dark"));
});

back.addEventListener("click", () => history.back());
addEventListener("popstate", e => {
  if (draft && e.state && Number.isInteger(e.state.step)) {
    draft.step = e.state.step;
  } else if (draft) {
    park();
  }
  save();
  draw(true);
});
addEventListener("online", () => trySending());
document.addEventListener("visibilitychange", () => document.hidden || trySending());
setInterval(() => (last.state !== "fine" || waiting.some(e => !e.refused)) && trySending(), AGAIN_MS);

dress(store.get("dark") ?? document.cookie.includes("mastwright-look=dark"));
if (draft && !card) {
  draft = null;
}
history.replaceState(draft ? { step: draft.step } : {}, "");
navigator.storage?.persist?.();
navigator.serviceWorker?.register("worker.js");
await refresh();
draw();
await trySending();
