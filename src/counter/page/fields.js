/* SPDX-License-Identifier: MIT */
/* Faults told where they are: under the field, with a button for a mend that is plain, and in short beside the answer. */
import { marked, sentence } from "./ask.js";
import { by, h } from "./dom.js";

/* The command's options are fields here: "--rating" is rating. */
export const plain = (words) => words.replace(/(^|[ (])--([a-z])/g, "$1$2");

const labelOf = (input) => Array.from(input.labels?.[0]?.childNodes ?? []).filter((node) => node.nodeType === Node.TEXT_NODE).map((node) => node.data).join("").trim();

/* Every element of a form that has this name, those of a list of ports among them. */
const named = (form, name) => Array.from(form.elements).filter((element) => element.name === name && element.type !== "hidden");

function describe(input, id, there) {
  const ids = new Set((input.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean));
  if (there) ids.add(id);
  else ids.delete(id);
  if (ids.size > 0) input.setAttribute("aria-describedby", [...ids].join(" "));
  else input.removeAttribute("aria-describedby");
}

/* What a button writes: the word that the fault offers, or the unit that a bare number lacks. */
function mendOf(input, fault) {
  const word = /^(?:did you mean|write) ([^ ]+?)\??$/.exec(fault.mend ?? "")?.[1];
  if (word) return fault.text === input.value.trim() ? word : input.value.replace(fault.text, word);
  if (input.dataset.unit && /^[\d.]+$/.test(input.value.trim())) return `${input.value.trim()} ${input.dataset.unit}`;
  return null;
}

function mendButton(input, words) {
  return h("button", { type: "button", class: "small", click: () => {
    input.value = words;
    input.focus();
    input.dispatchEvent(new Event("input", { bubbles: true }));
  } }, "write " + words);
}

function tell(input, fault) {
  const box = input.closest(".field");
  const id = `fault-${input.form.id}-${input.name}`;
  const mend = mendOf(input, fault);
  box.querySelector(".fault")?.remove();
  box.append(h("div", { class: "fault", id }, h("p", null, sentence(capital(plain(fault.message)))),
    fault.expected ? h("p", null, "Expected " + sentence(plain(fault.expected))) : null,
    mend ? h("p", null, mendButton(input, mend)) : fault.mend ? h("p", null, "To mend: " + sentence(plain(fault.mend))) : null));
  input.setAttribute("aria-invalid", "true");
  describe(input, id, true);
}

const capital = (words) => words.charAt(0).toUpperCase() + words.slice(1);

const ALL = () => true;

/* Takes back what was told at the fields of a form, of those whose names are `mine`. */
export function clearFaults(form, mine = ALL) {
  for (const box of form.querySelectorAll(".field .fault")) {
    const input = box.parentElement.querySelector("input, select");
    if (!mine(input.name)) continue;
    input.removeAttribute("aria-invalid");
    describe(input, box.id, false);
    box.remove();
  }
}

/* Tells each fault at its field and returns the list of all: where, and in a few words what. */
export function tellFaults(form, refusal, mine = ALL) {
  clearFaults(form, mine);
  const faults = refusal.faults.length > 0 || !refusal.message ? refusal.faults : [{ message: refusal.message }];
  return h("ul", { class: "faults" }, faults.map((fault) => {
    const inputs = fault.in ? named(form, fault.in) : [];
    const input = inputs.find((each) => each.value.trim() === fault.text) ?? inputs[0];
    if (!input) return h("li", null, sentence(capital(plain(fault.message))), fault.expected ? " Expected " + sentence(plain(fault.expected)) : "");
    if (input.closest(".field")) tell(input, fault);
    return h("li", null, h("a", { href: "#" + (input.id ||= `at-${form.id}-${input.name}`), click: (event) => {
      event.preventDefault();
      for (let box = input.closest("details"); box; box = box.parentElement.closest("details")) box.open = true;
      input.focus();
    } }, labelOf(input) || fault.in), ": ", plain(fault.message), fault.text ? [": ", h("q", null, fault.text)] : "", ".");
  }));
}

/* Faults of a text, each with its line marked; the line is a button that leads to it. */
export function textFaults(area, refusal) {
  const faults = refusal.faults.length > 0 ? refusal.faults : [{ severity: "error", message: refusal.message }];
  return h("ul", { class: "faults" }, faults.map((fault) => h("li", null,
    h("strong", null, fault.severity + ": "),
    fault.line > 0 ? [h("button", { type: "button", class: "small", click: () => lead(area, fault) }, "line " + fault.line), " "] : null,
    fault.message,
    fault.text ? marked(fault.text, fault.column, fault.width) : null,
    fault.expected ? h("p", null, "Expected " + sentence(fault.expected)) : null,
    fault.mend ? h("p", null, "To mend: " + sentence(fault.mend)) : null)));
}

/* Columns count characters, a text area's selection counts units of UTF-16. */
function lead(area, fault) {
  const lines = area.value.split(/\r?\n/);
  const units = (words, count) => Array.from(words).slice(0, count).join("").length;
  const line = lines[fault.line - 1] ?? "";
  const begin = lines.slice(0, fault.line - 1).reduce((sum, each) => sum + each.length + 1, 0);
  area.focus();
  area.setSelectionRange(begin + units(line, fault.column - 1), begin + units(line, fault.column - 1 + fault.width));
  area.scrollTop = Math.max(0, (fault.line - 3) / lines.length * area.scrollHeight);
}

/* What a bare number means in a field whose figures have but one unit, and a comma for a point. */
export const withPoint = (words) => words.replace(/(\d),(\d)/g, "$1.$2");

/* Shows below a field what was understood of it. */
export function reading(input, words) {
  const id = `reading-${input.form.id}-${input.name}`;
  const box = by(id) ?? input.closest(".field").appendChild(h("div", { class: "reading", id, "aria-live": "polite" }));
  box.hidden = words === "";
  box.replaceChildren(...(words ? [h("span", { class: "good", "aria-hidden": "true" }, "✓ "), words] : []));
  describe(input, id, words !== "");
}
