// The design file as text: findings at their lines, completion and help from the file format's own description.
import { basicSetup } from "codemirror";
import { EditorView, keymap, hoverTooltip } from "@codemirror/view";
import { EditorState } from "@codemirror/state";
import { indentWithTab } from "@codemirror/commands";
import { autocompletion } from "@codemirror/autocomplete";
import { yaml } from "@codemirror/lang-yaml";
import { setDiagnostics, lintGutter } from "@codemirror/lint";
import { HighlightStyle, syntaxHighlighting } from "@codemirror/language";
import { tags } from "@lezer/highlight";

const paper = EditorView.theme({
  "&": { height: "100%", backgroundColor: "var(--sheet)", color: "var(--ink)", fontSize: "14px" },
  ".cm-scroller": { fontFamily: "var(--mono)", lineHeight: "1.55" },
  ".cm-gutters": { backgroundColor: "var(--sheet)", color: "var(--ink-soft)", borderRight: "1px solid var(--line)" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "var(--tint)" },
  ".cm-cursor": { borderLeftColor: "var(--ink)" },
  "&.cm-focused .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "var(--select) !important" },
  ".cm-tooltip": { backgroundColor: "var(--sheet)", color: "var(--ink)", border: "1px solid var(--line-strong)", maxWidth: "34rem" },
  ".cm-tooltip .help": { padding: "8px 12px", whiteSpace: "pre-wrap", font: "13px/1.5 var(--sans)" },
  ".cm-tooltip-autocomplete ul li[aria-selected]": { backgroundColor: "var(--accent)", color: "var(--on-accent)" },
  ".cm-panels": { backgroundColor: "var(--sheet)", color: "var(--ink)" },
});

const colours = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: "var(--accent)" },
  { tag: tags.comment, color: "var(--ink-soft)", fontStyle: "italic" },
]);

function diagnostics(state, findings) {
  return findings.map(f => {
    const line = state.doc.line(Math.min(Math.max(1, f.line || 1), state.doc.lines));
    const from = Math.min(line.from + Math.max(0, (f.column || 1) - 1), line.to);
    return { from, to: Math.max(from, line.to), severity: f.severity, message: f.message };
  });
}

const DRAFT = "mastwright-typed-";

// What was typed in this browser and never reached the program: the newest that says something else than the desk does.
export function left(now) {
  let newest = null;
  for (const key of Object.keys(localStorage).filter(k => k.startsWith(DRAFT))) {
    try {
      const draft = JSON.parse(localStorage.getItem(key));
      if (draft.text === now) {
        localStorage.removeItem(key);
      } else if (!newest || draft.at > newest.at) {
        newest = { ...draft, key };
      }
    } catch {
      localStorage.removeItem(key);
    }
  }
  return newest;
}

export const forget = key => localStorage.removeItem(key);

export function create(element, text, findings, page) {
  if (!element) {
    return { setText() { }, setFindings() { }, goTo() { }, drop: () => null };
  }
  let timer = 0;
  let unsent = false;

  // Until the program has it, what is typed lies in this browser: a tab closed in between, or a program that ended, loses nothing.
  const key = DRAFT + crypto.getRandomValues(new Uint32Array(2)).join("-");
  let known = text;
  const keep = () => {
    try {
      localStorage.setItem(key, JSON.stringify({ base: known, text: view.state.doc.toString(), at: Date.now() }));
    } catch {
      // A full store: the program gets the text all the same.
    }
  };
  const flush = () => {
    clearTimeout(timer);
    if (unsent) {
      unsent = false;
      const sent = view.state.doc.toString();
      page.invokeMethodAsync("Typed", sent).then(() => {
        known = sent;
        if (!unsent) {
          localStorage.removeItem(key);
        }
      }).catch(() => {
        unsent = true;
      });
    }
  };
  const send = () => {
    unsent = true;
    keep();
    clearTimeout(timer);
    timer = setTimeout(flush, 250);
  };
  const hidden = () => document.visibilityState === "hidden" && flush();
  const complete = async context => {
    const line = context.state.doc.lineAt(context.pos);
    const before = context.matchBefore(/[\p{L}\p{N}/.\- ]*$/u);
    if (!context.explicit && line.text.trim() === "") {
      return null;
    }
    const found = await page.invokeMethodAsync("Complete", context.state.doc.toString(), line.number, context.pos - line.from).catch(() => null);
    if (!found?.options.length) {
      return null;
    }
    return { from: line.from + found.from, options: found.options, validFor: /^[\p{L}\p{N}/.\- ]*$/u, before };
  };
  const help = hoverTooltip(async (view, pos) => {
    const line = view.state.doc.lineAt(pos);
    const words = await page.invokeMethodAsync("Help", view.state.doc.toString(), line.number, pos - line.from).catch(() => "");
    return words ? {
      pos, above: true, create: () => {
        const dom = document.createElement("div");
        dom.className = "help";
        dom.textContent = words;
        return { dom };
      },
    } : null;
  });
  const view = new EditorView({
    parent: element,
    state: EditorState.create({
      doc: text,
      extensions: [
        basicSetup, yaml(), paper, syntaxHighlighting(colours), lintGutter(), help,
        autocompletion({ override: [complete] }), keymap.of([indentWithTab]),
        EditorView.contentAttributes.of({ "aria-label": "Design file", tabindex: "0" }),
        EditorView.updateListener.of(u => { if (u.docChanged && !u.transactions.some(t => t.isUserEvent("outside"))) { send(); } }),
      ],
    }),
  });
  view.contentDOM.addEventListener("blur", flush);
  document.addEventListener("visibilitychange", hidden);
  const mark = list => view.dispatch(setDiagnostics(view.state, diagnostics(view.state, list)));
  mark(findings);
  return {
    // The text changed elsewhere (another page, undo): keep the reader's place.
    setText(other) {
      if (!unsent && view.state.doc.toString() !== other) {
        known = other;
        const at = Math.min(view.state.selection.main.head, other.length);
        view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: other }, selection: { anchor: at }, userEvent: "outside" });
      }
    },
    setFindings: mark,
    goTo(lineNumber, column) {
      const line = view.state.doc.line(Math.min(Math.max(1, lineNumber), view.state.doc.lines));
      const at = Math.min(line.from + Math.max(0, column - 1), line.to);
      view.dispatch({ selection: { anchor: at }, effects: EditorView.scrollIntoView(at, { y: "center" }) });
      view.focus();
    },
    // What was typed and not yet sent goes back with the farewell.
    drop() {
      clearTimeout(timer);
      document.removeEventListener("visibilitychange", hidden);
      const last = unsent ? view.state.doc.toString() : null;
      unsent = false;
      localStorage.removeItem(key);
      view.destroy();
      return last;
    },
  };
}
