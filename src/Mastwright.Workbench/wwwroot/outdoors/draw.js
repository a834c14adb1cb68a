// Elements from words. Text goes in as text, never as markup.
export const make = (tag, attributes = {}, ...children) => {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) {
      element.addEventListener(name.slice(2), value);
    } else if (value === true) {
      element.setAttribute(name, "");
    } else if (value !== false && value !== null && value !== undefined) {
      element.setAttribute(name, value);
    }
  }
  element.append(...children.flat().filter(c => c !== null && c !== undefined && c !== false));
  return element;
};

export const big = (words, under, act, more = {}) => make("button", { type: "button", class: `big ${more.class ?? ""}`, onclick: act, "aria-pressed": more.pressed === undefined ? null : String(more.pressed) },
  make("span", { class: "words" }, words), under ? make("span", { class: "under" }, under) : null);

export const number = (id, label, unit, value, changed, more = {}) => make("div", { class: "number" },
  make("label", { for: id }, label),
  make("span", { class: "line" },
    make("input", {
      id, type: "text", inputmode: more.whole ? "numeric" : "decimal", autocomplete: "off", value: value ?? "", "aria-describedby": `${id}-p`,
      oninput: e => changed(e.target.value),
    }),
    unit ? make("span", { class: "unit" }, unit) : null),
  make("p", { id: `${id}-p`, class: "problem", role: "alert" }));

export const words = (id, label, value, changed, rows = 3) => make("div", { class: "text" },
  make("label", { for: id }, label),
  make("textarea", { id, rows, maxlength: 4000, oninput: e => changed(e.target.value) }, value ?? ""));

// A number as people type it: a comma is a point, a sign may be any dash.
export const parse = text => {
  const plain = String(text ?? "").trim().replace(",", ".").replace(/[−–]/, "-");
  return /^-?\d+(\.\d+)?$|^-?\.\d+$/.test(plain) ? Number(plain) : NaN;
};

export const problem = (id, words) => {
  document.getElementById(`${id}-p`).textContent = words;
  document.getElementById(id).setAttribute("aria-invalid", words ? "true" : "false");
  if (words) {
    document.getElementById(id).focus();
  }
};
