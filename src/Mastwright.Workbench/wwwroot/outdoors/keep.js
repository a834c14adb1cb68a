// What was entered and not yet taken by the journal. An entry leaves this store only when the workbench says it has it.
const SENT = "mastwright-outdoors-sent";
const SENT_KEPT = 20;
const TOGETHER = 25;
const PATIENCE = 20000;

let base = null;
const database = () => base ??= new Promise((resolve, reject) => {
  const asked = indexedDB.open("mastwright-outdoors", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("notes", { keyPath: "id" });
  asked.onsuccess = () => resolve(asked.result);
  asked.onerror = () => reject(asked.error);
});

const work = async (mode, act) => {
  const open = await database();
  return new Promise((resolve, reject) => {
    // Strict: an entry counts as kept only when it is on the disk.
    const transaction = open.transaction("notes", mode, { durability: "strict" });
    const asked = act(transaction.objectStore("notes"));
    transaction.oncomplete = () => resolve(asked.result);
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
};

export const newId = () => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map(b => b.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
};

// A moment with the offset of this phone's clock.
export const moment = (date = new Date()) => {
  const two = n => String(n).padStart(2, "0");
  const offset = -date.getTimezoneOffset();
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`
    + `${offset < 0 ? "-" : "+"}${two(Math.floor(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`;
};

export const all = async () => (await work("readonly", s => s.getAll())).sort((a, b) => a.note.at.localeCompare(b.note.at));
export const put = entry => work("readwrite", s => s.put(entry));
export const drop = id => work("readwrite", s => s.delete(id));

export const sent = () => {
  try {
    return JSON.parse(localStorage.getItem(SENT) ?? "[]");
  } catch {
    return [];
  }
};

const remember = entry => localStorage.setItem(SENT, JSON.stringify([entry, ...sent().filter(s => s.id !== entry.id)].slice(0, SENT_KEPT)));

const sendAll = async () => {
  const waiting = (await all()).filter(e => !e.refused);
  let later = null;
  for (let i = 0; i < waiting.length; i += TOGETHER) {
    const part = waiting.slice(i, i + TOGETHER);
    let response;
    try {
      response = await fetch("/api/journal/entries", {
        method: "POST", headers: { "Content-Type": "application/json" }, cache: "no-store",
        body: JSON.stringify(part.map(e => e.note)), signal: AbortSignal.timeout(PATIENCE),
      });
    } catch {
      return { state: "away" };
    }
    if (response.status === 401) {
      return { state: "key" };
    }
    if (!response.ok) {
      return { state: "trouble", words: (await response.text()).slice(0, 300) };
    }
    for (const answer of await response.json()) {
      const entry = part.find(e => e.id === answer.id);
      if (!entry) {
        continue;
      }
      if (answer.state === "later") {
        later = answer.says;
      } else if (answer.state === "refused") {
        await put({ ...entry, refused: answer.says, field: answer.field });
      } else {
        remember({ id: entry.id, title: entry.title, at: entry.note.at, says: answer.says });
        await drop(entry.id);
      }
    }
  }
  return later ? { state: "trouble", words: later } : { state: waiting.length ? "fine" : "nothing" };
};

// One sending at a time; a second one would only be answered with "already".
let sending = null;
export const send = () => sending ??= sendAll().finally(() => {
  sending = null;
});
