// One screen for each question. A screen gets the draft and says when it is answered; it never sends anything itself.
import { big, make, number, parse, problem, words } from "./draw.js";
import { STATES, WAYS, expected, noteOf, numbersOf } from "./steps.js";

const CAUTION = "Transmitter off and locked out, the mast earthed, before anything is touched. Stay clear of the line of a guy: it stores energy. Do not climb alone or untrained. Go when thunder can be heard.";

export const caution = () => make("p", { class: "caution" }, make("strong", {}, "Caution. "), CAUTION);

const choose = (ask, options, value, take) => [make("h1", { tabindex: "-1" }, ask),
  ...options.map(([key, label, under, kind]) => big(label, under, () => take(key), { pressed: value === key, class: kind }))];

const onward = (act, label = "Go on") => big(label, "", act, { class: "go" });

// Checks numbers on the way forward; an empty one may be allowed.
const numbers = (fields, draft, on, label) => onward(() => {
  for (const [name, optional, least] of fields) {
    const text = String(draft.values[name] ?? "").trim();
    if (text === "" && optional) {
      continue;
    }
    const value = parse(text);
    if (!Number.isFinite(value)) {
      return problem(`v-${name}`, text === "" ? "Enter a number." : `“${text}” is not a number.`);
    }
    if (least !== undefined && value < least) {
      return problem(`v-${name}`, `Not below ${least}.`);
    }
    problem(`v-${name}`, "");
  }
  on.next();
}, label);

const field = (draft, on, name, label, unit, more) => number(`v-${name}`, label, unit, draft.values[name], text => on.set({ [name]: text }, true), more);

// Counting by tapping: the first tap starts the clock, each further one counts and is timed.
const tap = (draft, on) => {
  let first = 0;
  let last = 0;
  let count = -1;
  const shown = make("span", { class: "words" }, "Tap at the first");
  const under = make("span", { class: "under" }, "then at every one that follows");
  const button = make("button", {
    type: "button", class: "big tap", onclick: e => {
      last = e.timeStamp;
      count += 1;
      first = count === 0 ? last : first;
      const seconds = (last - first) / 1000;
      shown.textContent = count === 0 ? "Started" : `${count} in ${seconds.toFixed(2)} s`;
      under.textContent = "tap at each that follows";
      if (count > 0) {
        on.set({ count: String(count), time: seconds.toFixed(2) }, true);
      }
    },
  }, shown, under);
  return [make("h1", { tabindex: "-1" }, draft.values.way === "pulse" ? "Tap at every return of the pulse" : "Tap at every full swing"), button,
    onward(on.next, "Go on"), make("p", { class: "soft" }, "Or go on at once and type count and time from your own watch.")];
};

const looks = (draft, card, on) => {
  const items = card.masts.find(m => m.name === draft.values.mast)?.items ?? [];
  const at = Math.min(draft.values.at ?? 0, items.length - 1);
  const item = items[at];
  if (!item) {
    return [make("h1", { tabindex: "-1" }, "Nothing to look at"), make("p", {}, "The design gives no checklist for this mast.")];
  }
  const found = draft.values.items?.[item.key] ?? {};
  const note = more => on.set({ items: { ...draft.values.items, [item.key]: { ...found, ...(draft.values.items?.[item.key] ?? {}), ...more } } }, true);
  const move = by => {
    on.set({ at: Math.max(0, Math.min(items.length - 1, at + by)) }, true);
    on.draw(true);
  };
  const seen = Object.values(draft.values.items ?? {}).filter(i => i.state).length;
  return [
    make("p", { class: "soft" }, `${at + 1} of ${items.length}; ${seen} looked at${item.due ? `; due ${item.due}${item.overdue ? ", overdue" : ""}` : ""}`),
    make("progress", { max: items.length, value: at + 1, "aria-label": "Place in the checklist" }),
    make("h1", { tabindex: "-1" }, item.label),
    item.caution ? make("p", { class: "caution" }, item.caution) : null,
    item.last ? make("p", { class: "soft" }, `Last: ${item.last}`) : null,
    make("div", { class: "pair" }, STATES.map(([state, label]) => big(label, "", () => {
      note({ state });
      // Something wrong wants words; anything else goes on to the next.
      if ((state === "good" || state === "not-seen") && at < items.length - 1) {
        move(1);
      } else {
        on.draw();
      }
    }, { pressed: found.state === state, class: state }))),
    words("v-remark", "What you saw", found.remark, text => note({ remark: text }), 2),
    make("div", { class: "pair" }, at > 0 ? big("‹ Before", "", () => move(-1)) : make("span"), at < items.length - 1 ? big("Next ›", "", () => move(1)) : make("span")),
    seen > 0 ? onward(on.next, `Finish with ${seen} of ${items.length}`) : null,
  ];
};

const digestOf = async file => {
  try {
    // Only a page from this machine or over a secure connection may reckon digests.
    const hash = await crypto.subtle.digest("SHA-256", await file.arrayBuffer());
    return [...new Uint8Array(hash)].map(b => b.toString(16).padStart(2, "0")).join("");
  } catch {
    return null;
  }
};

const check = (draft, card, on) => {
  const note = noteOf(draft, card, on.author());
  const rows = [["When", draft.at.slice(0, 16).replace("T", " ")], ["Mast", note.mast], ["Guy", note.guy], ["Read by", WAYS.find(w => w[0] === note.way)?.[1]], ["Reading", note.reading], ["Air", note.temperature],
    ["Gust", note.gust], ["Ice", note.ice], ["Lightning", draft.kind === "storm" ? (note.lightning ? "yes" : "no") : null], ["Photo", note.path],
    ...(note.items ? STATES.map(([state, label]) => [label, note.items.filter(i => i.state === state).length || null]) : [])];
  const table = draft.kind === "tension" ? expected(card, draft.values.mast, draft.values.guy, parse(draft.values.temperature)) : null;
  return [
    make("h1", { tabindex: "-1" }, "Is this right?"),
    make("dl", {}, rows.filter(r => r[1]).flatMap(([name, value]) => [make("dt", {}, name), make("dd", {}, String(value))])),
    table !== null ? make("p", {}, `The table says ${Math.round(table)} ${card.units.force} at the anchor at this temperature, in still air.`) : null,
    draft.kind === "tension" && table === null ? make("p", { class: "soft" }, "Without a temperature inside the table this reading cannot be held against it.") : null,
    draft.kind === "note" ? null : words("v-text", "Words to it, if any", draft.values.text, text => on.set({ text }, true), 2),
    draft.kind === "note" ? make("p", {}, draft.values.text ?? "") : null,
    make("div", { class: "text" }, make("label", { for: "v-author" }, "Who notes it"), make("textarea", { id: "v-author", rows: 1, maxlength: 200, oninput: e => on.author(e.target.value) }, on.author())),
    onward(on.keep, "Keep it"),
  ];
};

// Draws the screen of a step into a list of elements.
export const screen = (step, draft, card, on) => {
  const v = draft.values;
  const mastName = v.mast ?? card.masts[0]?.name;
  switch (step) {
    case "mast":
      return choose("Which mast?", card.masts.map(m => [m.name, `Mast ${m.name}`, ""]), v.mast, mast => on.next({ mast }));
    case "guy":
      return [caution(), ...choose("Which guy?", (card.masts.find(m => m.name === mastName)?.guys ?? []).map(g => [g.name, g.name, g.last ? `last ${g.last}` : "not read yet"]), v.guy, guy => on.next({ guy, mast: mastName }))];
    case "way":
      return choose(`Guy ${v.guy}: how is it read?`, WAYS, v.way, way => on.next({ way }));
    case "tap":
      return tap(draft, on);
    case "reading": {
      const fields = numbersOf(v.way, card.units);
      return [make("h1", { tabindex: "-1" }, `Guy ${v.guy}: the reading`), ...fields.map(([name, label, unit]) => field(draft, on, name, label, unit, { whole: name === "count" })),
        numbers(fields.map(([name]) => [name, false, 0]), draft, on)];
    }
    case "temperature":
      return [make("h1", { tabindex: "-1" }, "How warm is the air?"), field(draft, on, "temperature", "Air temperature", card.units.temperature),
        make("div", { class: "pair" }, big("+ / −", "turn the sign", () => {
          const text = String(v.temperature ?? "").trim();
          on.set({ temperature: text.startsWith("-") ? text.slice(1) : `-${text}` });
        })),
        make("p", { class: "soft" }, "Without it the reading is kept, but cannot be held against the table nor watched for drift."),
        numbers([["temperature", true]], draft, on)];
    case "items":
      return looks({ ...draft, values: { ...v, mast: mastName } }, card, on);
    case "when":
      return [make("h1", { tabindex: "-1" }, "When did it begin?"), make("div", { class: "when" }, make("label", { for: "v-at" }, "Day and time"),
        make("input", { id: "v-at", type: "datetime-local", value: draft.at.slice(0, 16), onchange: e => on.when(e.target.value) })), onward(on.next)];
    case "gust":
      return [make("h1", { tabindex: "-1" }, "Strongest gust?"), field(draft, on, "gust", "Gust", card.units.speed), make("p", { class: "soft" }, "Leave it empty when it is not known."), numbers([["gust", true, 0]], draft, on)];
    case "ice":
      return [make("h1", { tabindex: "-1" }, "How thick was the ice?"), field(draft, on, "ice", "All round, from the wire out", card.units.small), make("p", { class: "soft" }, "Empty: not known. 0: none."), numbers([["ice", true, 0]], draft, on)];
    case "lightning":
      return choose("Lightning here or near?", [["yes", "Yes", ""], ["no", "No", ""]], v.lightning, lightning => on.next({ lightning }));
    case "file":
      return [make("h1", { tabindex: "-1" }, "Which photo?"), make("div", { class: "file" }, make("label", { for: "v-file" }, "Take or choose a photo"), make("input", {
        id: "v-file", type: "file", accept: "image/*", onchange: async e => {
          const file = e.target.files[0];
          if (file) {
            on.set({ path: file.name, sha256: await digestOf(file) });
          }
        },
      })), v.path ? make("p", {}, `Noted: ${v.path}${v.sha256 ? ", known by its digest" : ""}`) : null,
      make("p", { class: "soft" }, "The picture stays where it is; the journal keeps its name, and its digest where the browser can reckon it."),
      v.path ? onward(on.next) : null];
    case "place":
      return choose("What does it show?", [["", "The station", ""], ...card.masts.map(m => [m.name, `Mast ${m.name}`, ""])], v.mast, mast => on.next({ mast: mast || null }));
    case "text":
      return [make("h1", { tabindex: "-1" }, "What is to be kept?"), words("v-text", "Words", v.text, text => on.set({ text }, true), 6), onward(() => (v.text ?? "").trim() ? on.next() : document.getElementById("v-text").focus())];
    default:
      return check({ ...draft, values: { ...v, mast: draft.kind === "tension" || draft.kind === "inspection" ? mastName : v.mast } }, card, on);
  }
};
