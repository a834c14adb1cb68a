// The order in which things are asked, one at a time, for each kind of entry.
export const WAYS = [
  ["gauge", "Spring gauge in line", "what the gauge shows at the anchor"],
  ["pulse", "Count returns of a pulse", "strike the guy near the anchor, count the returns felt there"],
  ["swing", "Count swings of the guy", "push it sideways at its middle, count full swings"],
  ["pitch", "Pitch of the plucked guy", "frequency of the tone"],
  ["sag", "Sag at half span", "vertical, from the straight line"],
  ["tangent", "Tangent at the anchor", "how far below the guy's pin it meets the mast"],
];

export const STATES = [["good", "✓ Good"], ["watch", "! To be watched"], ["bad", "✕ Bad"], ["not-seen", "– Not seen"]];

const counted = way => way === "pulse" || way === "swing";

// The numbers a way to read asks for.
export const numbersOf = (way, units) => ({
  gauge: [["value", "Gauge shows", units.force]],
  pulse: [["count", "Returns counted", ""], ["time", "in", "s"]],
  swing: [["count", "Swings counted", ""], ["time", "in", "s"]],
  pitch: [["value", "Pitch", "Hz"]],
  sag: [["value", "Sag", units.small]],
  tangent: [["value", "Below the pin", units.length]],
})[way] ?? [];

const mast = card => card.masts.length > 1 ? ["mast"] : [];

// The steps of a draft; they depend on what was chosen before.
export const stepsOf = (draft, card) => ({
  tension: [...mast(card), "guy", "way", ...(counted(draft.values.way) ? ["tap"] : []), "reading", "temperature", "check"],
  inspection: [...mast(card), "items", "check"],
  storm: ["when", "gust", "ice", "lightning", "check"],
  photo: ["file", "place", "check"],
  note: ["text", "check"],
})[draft.kind];

export const KINDS = [
  ["tension", "Tension of a guy", "gauge, pulse, swing, pitch, sag or tangent"],
  ["inspection", "Inspection", "the checklist of this station, one item at a time"],
  ["storm", "Storm, ice, lightning", "what blew, what froze, what struck"],
  ["photo", "Photo", "noted by its name; the picture stays on this phone"],
  ["note", "Words", "anything else worth keeping"],
];

const withUnit = (text, unit) => String(text ?? "").trim() === "" ? null : `${String(text).trim().replace(",", ".").replace(/[−–]/, "-")} ${unit}`.trim();

// The tension the table expects at a temperature, between its rows; null outside it.
export const expected = (card, mastName, guyName, degrees) => {
  const found = card.masts.find(m => m.name === mastName);
  const guy = found?.guys.find(g => g.name === guyName);
  const at = found?.temperatures ?? [];
  for (let i = 1; guy && i < guy.shouldBe.length; i++) {
    if (degrees >= at[i - 1] && degrees <= at[i]) {
      const part = (degrees - at[i - 1]) / (at[i] - at[i - 1]);
      return guy.shouldBe[i - 1] + part * (guy.shouldBe[i] - guy.shouldBe[i - 1]);
    }
  }
  return null;
};

// What is sent: words and units as typed; the workbench works out the rest.
export const noteOf = (draft, card, author) => {
  const { values: v, kind } = draft;
  const note = { id: draft.id, kind, at: draft.at, author: author || null, text: (v.text ?? "").trim() || null, mast: v.mast ?? null };
  if (kind === "tension") {
    note.guy = v.guy;
    note.way = v.way;
    note.temperature = withUnit(v.temperature, card.units.temperature);
    note.reading = counted(v.way) ? `${String(v.count ?? "").trim()} in ${withUnit(v.time, "s")}` : withUnit(v.value, numbersOf(v.way, card.units)[0]?.[2] ?? "");
  } else if (kind === "inspection") {
    note.items = Object.entries(v.items ?? {}).filter(([, i]) => i.state).map(([key, i]) => ({ key, state: i.state, remark: (i.remark ?? "").trim() }));
  } else if (kind === "storm") {
    note.gust = withUnit(v.gust, card.units.speed);
    note.ice = withUnit(v.ice, card.units.small);
    note.lightning = v.lightning === "yes";
  } else if (kind === "photo") {
    note.path = v.path;
    note.sha256 = v.sha256 ?? null;
  }
  return note;
};

export const titleOf = draft => {
  const v = draft.values;
  return ({
    tension: v.guy ? `Tension of guy ${v.guy}` : "Tension", inspection: `Inspection, ${Object.values(v.items ?? {}).filter(i => i.state).length} items`, storm: "Storm", photo: `Photo ${v.path ?? ""}`, note: "Words",
  })[draft.kind];
};
