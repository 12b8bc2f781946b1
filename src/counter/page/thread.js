/* SPDX-License-Identifier: MIT */
/* Name a thread from caliper figures; say what goes on an end. */
import { ask } from "./ask.js";
import { by, fill, h, later, table } from "./dom.js";
import { clearFaults, plain, tellFaults, withPoint } from "./fields.js";
import { paperIs } from "./paper.js";
import { printButton, say, section, toAnswer } from "./result.js";
import { Many } from "./typed.js";

const NAMES = ["diameter", "pitch", "tpi", "taper", "accuracy"];
let form, ends, remember;

export function openThread(remembers) {
  form = by("thread-form");
  remember = remembers;
  const changed = later(() => { keepLink(); showMates(); }, 150);
  ends = new Many(form.querySelector(".many"), { changed });
  const nameLater = later(() => { keepLink(); name(); }, 150);
  form.addEventListener("input", (event) => { if (!event.target.closest(".many")) nameLater(); });
  form.addEventListener("submit", (event) => { event.preventDefault(); toAnswer("thread"); name(); showMates(); });
}

export function showThread(parameters) {
  for (const each of NAMES) form.elements[each].value = parameters.get(each) || "";
  form.elements.side.value = parameters.get("side") || "";
  ends.set(parameters.getAll("end"));
  keepLink();
  paperIs(null);
  name();
  showMates();
}

export const againThread = () => showMates();

function keepLink() {
  const pairs = NAMES.map((each) => [each, form.elements[each].value.trim()]).filter(([, value]) => value !== "");
  if (form.elements.side.value) pairs.push(["side", form.elements.side.value]);
  for (const value of ends.values) pairs.push(["end", value]);
  remember("thread", pairs);
}

function caliperPairs() {
  const pairs = [];
  for (const each of NAMES) {
    let value = withPoint(form.elements[each].value.trim());
    if (each === "diameter" && /^[\d.]+$/.test(value)) value += " mm";
    if (value !== "") pairs.push([each, value]);
  }
  if (form.elements.side.value) pairs.push([form.elements.side.value, "yes"]);
  return pairs;
}

async function name() {
  const result = by("thread-result");
  if (form.elements.diameter.value.trim() === "") {
    say("thread-status", "");
    clearFaults(form);
    fill(result, h("p", { class: "hint" }, "Measure a diameter. A pitch, and whether it tapers, help; the page says which measurement to take next."));
    return;
  }
  try {
    const came = await ask("caliper", "/api/caliper", caliperPairs());
    if (came === null) return;
    clearFaults(form);
    showCandidates(came.answer, result);
  } catch (refusal) {
    say("thread-status", "This cannot be reckoned yet.");
    fill(result, tellFaults(form, refusal));
  }
}

const share = (likelihood) => (likelihood >= 0.0995 ? Math.round(100 * likelihood) : (100 * likelihood).toFixed(1)) + " %";

function showCandidates(answer, result) {
  const first = answer.candidates[0];
  say("thread-status", first ? `Likeliest: ${first.thread} ${first.gender}, ${share(first.likelihood)}.` : "No thread known reads like that.");
  const decide = answer.decide.measure === "confirm by hand" ? null : section("What decides", h("p", null, h("b", null, answer.decide.measure), ": ", answer.decide.how));
  if (!first) {
    fill(result, section("Measure again", h("p", null, answer.decide.how)));
    return;
  }
  fill(result, measured(), decide ?? section("Confirm", h("p", null, answer.decide.how)),
    section("Candidates", table("Candidates", ["Thread", "Likelihood", "It should measure", "Taken for the first, it"], answer.candidates.map((one) => h("tr", null,
      h("th", { scope: "row" }, h("a", { href: "/?" + new URLSearchParams({ view: "thread", end: `${one.thread} ${one.gender}` }), click: (event) => go(event, one) }, `${one.thread} ${one.gender}`)),
      h("td", null, h("meter", { min: 0, max: 1, value: one.likelihood, "aria-hidden": "true" }), " ", share(one.likelihood)),
      h("td", { class: "figure" }, `${one.least_mm} to ${one.most_mm} mm`),
      h("td", null, one.mistaken ? [h("b", null, one.mistaken.verdict), ": ", one.mistaken.why] : ""))))),
    section("Where the jaws go", h("p", null, plain(answer.jaws))), h("p", { class: "acts" }, printButton()));
}

/* On paper the form is not printed: what was measured is said in words. */
function measured() {
  const words = caliperPairs().map(([name, value]) => (value === "yes" && name !== "taper" ? name : `${name} ${value}`));
  return h("p", { class: "paper-only" }, "Measured: " + words.join(", ") + ".");
}

/* A candidate becomes the end that mates are looked for. */
function go(event, one) {
  event.preventDefault();
  ends.set([`${one.thread} ${one.gender}`]);
  keepLink();
  showMates();
  by("mates-status").scrollIntoView({ block: "start" });
}

const VERDICTS = {
  seals: "seals", tolerated: "tolerated: no standard blesses it", leaks: "fits, wedges and leaks", binds: "starts and jams",
  weak: "goes home and can strip", "no-start": "does not start", "wrong-seat": "screws in; the seats do not meet",
};

const SEALING = new Set(["seals", "tolerated"]);

function matesTable(name, list) {
  const several = new Set(list.map((one) => one.reading)).size > 1;
  return table(name, [...(several ? ["Its reading"] : []), "The other end", "Verdict", "Why", "Source"], list.map((one) => h("tr", { class: one.verdict === "seals" ? "right" : null },
    several ? h("td", null, one.reading) : null, h("th", { scope: "row" }, one.end), h("td", null, one.verdict === "seals" ? h("b", null, "✓ seals") : VERDICTS[one.verdict]),
    h("td", null, one.why), h("td", { class: "source" }, one.source))));
}

async function showMates() {
  const result = by("mates-result");
  const wanted = ends.values;
  if (wanted.length === 0) {
    say("mates-status", "");
    fill(result);
    return;
  }
  try {
    const came = await ask("mates", "/api/mates", wanted.map((end) => ["end", end]));
    if (came === null) return;
    const list = came.answer;
    const count = (...verdicts) => list.filter((one) => verdicts.includes(one.verdict)).length;
    const seals = count("seals"), others = count(...SEALING) - seals, looks = list.length - seals - others;
    say("mates-status", wanted.length === 2 ? `${wanted[0]} and ${wanted[1]}: ${[...new Set(list.map((one) => VERDICTS[one.verdict]))].join("; ")}.`
      : `${seals === 1 ? "1 kind of end seals" : `${seals} kinds of end seal`} on ${wanted[0]}; ${others > 0 ? `${others} tolerated; ` : ""}${looks} only ${looks === 1 ? "looks" : "look"} as if.`);
    const right = wanted.length === 2 ? list : list.filter((one) => SEALING.has(one.verdict));
    const wrong = list.filter((one) => !right.includes(one));
    fill(result, section("What goes on it", right.length > 0 ? matesTable("What goes on it", right) : h("p", null, "Nothing in use seals on it."),
      wrong.length > 0 ? h("details", { class: "wrong" }, h("summary", null, `${wrong.length} that only look as if`), matesTable("What only looks as if", wrong)) : null));
  } catch (refusal) {
    say("mates-status", "What goes on it cannot be said yet.");
    fill(result, tellFaults(form, refusal, (name) => name === "end"));
  }
}
