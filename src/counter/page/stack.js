/* SPDX-License-Identifier: MIT */
/* Find a stack: the ask, alternatives side by side, and the one that is looked at. */
import { ask } from "./ask.js";
import { by, fill, h, later, number, plural, price } from "./dom.js";
import { clearFaults, reading as understood, tellFaults, withPoint } from "./fields.js";
import { oilPiece } from "./oil.js";
import { paperIs } from "./paper.js";
import { billOf, countFindings, drawing, findingList, findingsOf, joinFindings, jointTable, linkButton, placeNames, printButton, saveButton, say, section, sheetLink, toAnswer } from "./result.js";
import { Many } from "./typed.js";

const PLAIN = ["hose", "oil", "bore", "best", "circuit", "bearing", "flexible", "closing", "restrictor", "orifice", "rating", "temperature", "fluid", "without", "explain"];
const FLAGS = ["tolerate", "remote-switch"];
const OIL = (name) => name === "oil";
const NOT_OIL = (name) => name !== "oil";
const LIMITS = PLAIN.slice(4).concat(FLAGS);

const groups = {};
let form, remember, chosen = 0, reading = 0;

export function openStack(remembers) {
  form = by("stack-form");
  remember = remembers;
  const askLater = later(find, 150);
  for (const box of form.querySelectorAll(".many"))
    groups[box.dataset.many] = new Many(box, { changed: askLater, holds: box.dataset.many === "from" ? offerSwitch : null });
  form.addEventListener("submit", (event) => { event.preventDefault(); toAnswer("stack"); find(); });
  form.addEventListener("input", (event) => { if (!event.target.closest(".many")) askLater(); });
  for (const oil of ["0W-30", "5W-30", "5W-40", "10W-40", "15W-40", "20W-50", "SAE 30"]) by("oils").append(h("option", { value: oil }));
}

/* Takes an ask from a link. */
export function showStack(parameters) {
  for (const [name, group] of Object.entries(groups)) group.set(parameters.getAll(name));
  for (const name of PLAIN) form.elements[name].value = parameters.get(name) ?? (name === "best" ? "3" : "");
  form.elements.without.value = form.elements.without.value.split(/[\s,]+/).filter(Boolean).join(", ");
  for (const name of FLAGS) form.elements[name].checked = parameters.get(name) === "yes";
  by("limits").open = LIMITS.some((name) => parameters.get(name));
  chosen = Math.max(0, Number(parameters.get("show") || 1) - 1);
  reading = Math.max(0, Number(parameters.get("reading") || 1) - 1);
  find();
}

/* The same ask of a catalogue that was changed; what is being typed is left alone. */
export const againStack = () => find();

/* The ask as pairs, as the API takes them and a link holds them. */
function askPairs() {
  const pairs = [];
  for (const [name, group] of Object.entries(groups)) for (const value of group.values) pairs.push([name, value]);
  for (const name of PLAIN) {
    const value = withPoint(form.elements[name].value.trim());
    if (value === "") continue;
    if (name === "without") for (const id of value.split(/[\s,]+/).filter(Boolean)) pairs.push([name, id]);
    else pairs.push([name, value]);
  }
  for (const name of FLAGS) if (form.elements[name].checked) pairs.push([name, "yes"]);
  return pairs;
}

/* What the search takes: not the oil, which is reckoned apart. */
const askOnly = (pairs) => pairs.filter(([name]) => name !== "oil");

function keepLink(pairs) {
  const link = pairs.filter(([name, value]) => !(name === "best" && value === "3"));
  const without = link.filter(([name]) => name === "without").map(([, id]) => id);
  const rest = link.filter(([name]) => name !== "without");
  if (without.length > 0) rest.push(["without", without.join(", ")]);
  if (chosen > 0) rest.push(["show", String(chosen + 1)]);
  if (reading > 0) rest.push(["reading", String(reading + 1)]);
  remember("stack", rest);
}

/* A port that holds a switch: one button keeps it. */
function offerSwitch(field, typed) {
  if (!typed.holds || groups.keep.values.includes(typed.holds)) return;
  field.querySelector(".reading").append(" ", h("button", { type: "button", class: "small", click: (event) => {
    groups.keep.add(typed.holds, false);
    event.target.remove();
    form.querySelector('.many[data-many="keep"] input:last-of-type')?.focus();
    find();
  } }, "Keep " + typed.holds));
}

/* What is known of the oil typed; told at once, whether or not the ports let its way be reckoned. */
let oilSaid = "";
async function readOil() {
  const grade = form.elements.oil.value.trim();
  if (grade === oilSaid) return;
  oilSaid = grade;
  clearFaults(form, OIL);
  if (grade === "") {
    understood(form.elements.oil, "");
    return;
  }
  try {
    const came = await ask("oil", "/api/oil", { oil: grade, at: "100 C" });
    if (came !== null) understood(form.elements.oil, `${number(came.answer.viscosity_mm2s, "mm²/s", 1)} at 100\u00a0C`);
  } catch (refusal) {
    understood(form.elements.oil, "");
    tellFaults(form, { faults: refusal.faults.map((fault) => ({ ...fault, in: "oil", text: grade, mend: null })), message: refusal.message }, OIL);
  }
}

async function find() {
  const pairs = askPairs();
  readOil();
  const result = by("stack-result");
  if (groups.from.values.length === 0 || groups.to.values.length === 0) {
    keepLink(pairs);
    paperIs(null);
    clearFaults(form, NOT_OIL);
    say("stack-status", "");
    fill(result, await example());
    return;
  }
  keepLink(pairs);
  result.setAttribute("aria-busy", "true");
  try {
    const came = await ask("stack", "/api/stack", askOnly(pairs));
    if (came === null) return;
    clearFaults(form, NOT_OIL);
    showAnswer(came.answer, came.milliseconds, pairs);
  } catch (refusal) {
    paperIs(null);
    say("stack-status", "This cannot be looked for yet.");
    fill(result, tellFaults(form, refusal, NOT_OIL));
  } finally {
    result.removeAttribute("aria-busy");
  }
}

/* What one could ask, from the catalogue in use. */
async function example() {
  try {
    const from = await ask("example-from", "/api/read", { words: "", for: "from" });
    const to = await ask("example-to", "/api/read", { words: "", for: "to" });
    if (from === null || to === null || !from.answer.offers[0] || !to.answer.offers[0]) return null;
    const pair = { from: from.answer.offers[0].words, to: to.answer.offers[0].words };
    const link = "/?" + new URLSearchParams({ view: "stack", ...pair });
    return h("p", { class: "hint" }, "Say where the oil comes from and where it goes. For example: ",
      h("a", { href: link, "data-inside": true }, `${pair.from} to ${pair.to}`), ".");
  } catch {
    return null;
  }
}

function showAnswer(answer, milliseconds, pairs) {
  const several = answer.asks;
  if (several) reading = Math.min(reading, several.length - 1);
  const one = several ? several[reading] : answer;
  chosen = Math.min(chosen, Math.max(0, one.stacks.length - 1));
  const found = one.stacks.length;
  paperIs(paperOf(one, pairs, several));
  const best = found > 0 ? `; the best has ${plural(one.stacks[0].part_count, "part", "parts")}` : "";
  say("stack-status", (several ? `${several.length} readings. ` : "") +
    (found > 0 ? plural(found, "layout", "layouts") + best : "There is no such stack in this catalogue") +
    (milliseconds === null ? "." : `. Answered in ${milliseconds < 10 ? milliseconds.toFixed(1) : Math.round(milliseconds)} ms.`));
  /* The link holds what stands in the form now, which may be newer than this answer. */
  keepLink(askPairs());
  const again = () => showAnswer(answer, milliseconds, pairs);
  fill(by("stack-result"),
    several ? readings(answer, again) : null,
    one.explanation?.words ? h("p", null, one.explanation.words) : null,
    found > 0 ? alternatives(one, again) : missing(one, pairs),
    found > 0 ? oneStack(one, one.stacks[chosen], pairs)
      : [section("Findings", findingList(one.findings || [])), h("p", { class: "acts" }, several ? null : [printButton(), " ", sheetLink(sheetOf(askOnly(pairs))), " "], linkButton())]);
  by("stack-result").querySelector(".was-focused")?.focus();
}

function readings(answer, again) {
  return h("fieldset", { class: "choices" }, h("legend", null, "Which end is it?"),
    h("p", null, answer.decide),
    answer.asks.map((one, index) => h("label", null,
      h("input", { type: "radio", name: "reading", checked: index === reading, class: index === reading && document.activeElement?.name === "reading" ? "was-focused" : null,
        change: () => { reading = index; chosen = 0; again(); } }),
      ` ${one.reading}: `, one.stacks.length > 0 ? plural(one.stacks[0].part_count, "part", "parts") : "no stack")));
}

/* What the ask brings up, and what this layout of it is found to have. */
const allFindings = (one, stack) => joinFindings(one.findings || [], stack.findings || []);

/* Side by side; parts that the best does not have are marked. */
function alternatives(one, again) {
  const { stacks } = one;
  const best = new Set(stacks[0].parts.map((part) => part.id));
  const focused = document.activeElement?.name === "alternative";
  return h("fieldset", { class: "alternatives" }, h("legend", null, stacks.length > 1 ? "Side by side" : "The layout"),
    stacks.map((stack, index) => h("label", { class: index === chosen ? "alternative chosen" : "alternative" },
      h("span", { class: "head" },
        h("input", { type: "radio", name: "alternative", checked: index === chosen, class: focused && index === chosen ? "was-focused" : null,
          change: () => { chosen = index; again(); } }),
        h("b", null, ` ${index + 1}. ${plural(stack.part_count, "part", "parts")}`), h("span", null, price(stack.price))),
      h("span", { class: "sub" }, `bore ${number(stack.narrowest_bore_mm, "mm")}; ${countFindings(allFindings(one, stack))}`),
      h("span", { class: "chain" }, stack.parts.map((part, at) => [at > 0 ? " · " : "",
        index > 0 && !best.has(part.id) ? h("mark", null, part.id) : part.id])))));
}

function missing(one, pairs) {
  const made = one.missing || [];
  const lifted = one.lifted || [];
  return h("div", { class: "piece" },
    lifted.length > 0 ? [h("h2", null, "Or without one of the limits"),
      h("ul", null, lifted.map((limit) => h("li", null, "without ", h("b", null, limit.limit), ": ", limit.words)))] : null,
    made.length > 0 ? [h("h2", null, "One made part would complete it"),
      h("ul", null, made.map((part) => h("li", null, h("b", null, part.from), part.to ? [" to ", h("b", null, part.to)] : ", a plug", ": ", part.why))),
      drawing("stack-sketch", null, askOnly(pairs), "/api/sketch")] : null,
    one.reach ? h("p", null, typeof one.reach === "string" ? one.reach : one.reach.words || "") : null);
}

const sheetOf = (parameters) => "/sheet?" + new URLSearchParams(parameters);

/* The ask with the layout that is looked at, so that its sheet tells what the ask brought up and which reading it holds for. */
const looked = (pairs) => [...askOnly(pairs), ["reading", String(reading + 1)], ["show", String(chosen + 1)]];

function paperOf(one, pairs, several) {
  if (one.stacks.length > 0) return { parameters: looked(pairs) };
  return several ? null : { parameters: askOnly(pairs) };
}

function oneStack(one, stack, pairs) {
  const name = (pairs.find(([key]) => key === "to")?.[1] || "layout").replace(/[^A-Za-z0-9.-]+/g, "-");
  const check = "/?" + new URLSearchParams({ view: "check", layout: stack.layout });
  const sheet = sheetOf(looked(pairs));
  return [
    h("p", { class: "acts" }, h("a", { class: "button", href: check, "data-inside": true }, "Swap a part"), " ", printButton(), " ", sheetLink(sheet), " ",
      linkButton(), " ", saveButton("Save the layout", name + ".yaml", stack.layout)),
    section("Drawing", drawing("stack-drawing", stack.layout)),
    section("Findings", findingsOf("stack-findings", stack.layout, allFindings(one, stack))),
    oilPiece("stack-oil", stack.layout, pairs.find(([key]) => key === "oil")?.[1]),
    section("Joint by joint", jointTable(stack.joints)),
    section("Bill", billOf("stack-bill", stack.layout)),
    section("Why each part", whyList(stack)),
  ];
}

function whyList(stack) {
  const names = placeNames(stack.parts);
  return h("ol", { class: "why" }, stack.parts.map((part, index) => h("li", null, h("b", null, names[index]), `, ${part.title}: ${part.why}`)));
}
