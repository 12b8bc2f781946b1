/* SPDX-License-Identifier: MIT */
/* A whole job: feed, drain and coolant. */
import { ask } from "./ask.js";
import { by, fill, h, later, number, table } from "./dom.js";
import { tellFaults, textFaults, withPoint } from "./fields.js";
import { feedTable } from "./oil.js";
import { paperIs } from "./paper.js";
import { billTable, countFindings, drawing, findingList, jointTable, linkButton, printButton, saveButton, say, section, sheetLink, toAnswer, under } from "./result.js";

const LINK_MOST = 16000;
let text, remember, machines = null;

export function openJob(remembers) {
  text = by("job-text");
  remember = remembers;
  const planLater = later(() => plan(), 300);
  text.addEventListener("input", planLater);
  by("job-form").addEventListener("submit", (event) => {
    event.preventDefault();
    toAnswer("job");
    if (by("job-begin").contains(document.activeElement)) writeJob();
    else plan();
  });
  by("job-write").addEventListener("click", writeJob);
  by("job-engine").addEventListener("change", offerKeep);
  by("job-file").addEventListener("change", async (event) => {
    const file = event.target.files[0];
    if (file && file.size <= 1024 * 1024) text.value = await file.text();
    event.target.value = "";
    plan();
  });
}

export function showJob(parameters) {
  text.value = parameters.get("job") ?? "";
  plan();
  offerMachines();
}

async function offerMachines() {
  if (machines !== null) return;
  try {
    const came = await ask("machines", "/api/catalog", { only: "given" });
    if (came === null) return;
    machines = came.answer.machines;
  } catch {
    return;
  }
  const options = (kind) => [h("option", { value: "" }, "choose one")].concat(machines.filter((one) => one.kind === kind).map((one) => h("option", { value: one.id }, `${one.id}: ${one.title}`)));
  fill(by("job-engine"), options("engine"));
  fill(by("job-turbo"), options("turbo"));
  if (text.value.trim() === "") offerKeep();
  else showBegin();
}

export function againJob() {
  machines = null;
  offerMachines();
  plan();
}

/* Where the short fields stand in a job's text. */
const BEGIN = {
  "job-engine": /^engine:[ \t]*([^\s#{[]+)/m, "job-turbo": /^turbo:[ \t]*([^\s#{[]+)/m, "job-keep": /^keep:[ \t]*\[(.*)\]/m, "job-oil": /^oil:[ \t]*([^\s#{][^#\n]*)/m,
  "job-hose": /^feed:.*\bhose:[ \t]*([^,}]+)/m, "job-level": /^drain:.*\boil-level:[ \t]*([^,}]+)/m, "job-angle": /^coolant:.*\bangle:[ \t]*([^,}]+)/m,
};

/* The short fields say what the text says, as far as they can. */
function showBegin() {
  if (text.value.trim() === "") return;
  for (const [id, place] of Object.entries(BEGIN)) {
    const found = place.exec(text.value)?.[1].trim() ?? "";
    const field = by(id);
    if (field.localName === "input" || Array.from(field.options).some((option) => option.value === found)) field.value = found;
  }
}

/* What the engine holds now keeps its place unless it is said otherwise. */
function offerKeep() {
  const engine = machines?.find((one) => one.id === by("job-engine").value);
  by("job-keep").value = engine ? [...new Set(engine.ports.map((port) => port.holds).filter(Boolean))].join(", ") : "";
}

/* The shortest job of what was chosen: what is not said is assumed. */
function writeJob() {
  const engine = machines?.find((one) => one.id === by("job-engine").value);
  const turbo = machines?.find((one) => one.id === by("job-turbo").value);
  const lacking = [["engine", engine], ["turbo", turbo]].filter(([, there]) => !there).map(([name]) => ({ in: name, message: `no ${name} is chosen`, expected: `one of the list`, text: "" }));
  tellFaults(by("job-form"), { faults: lacking });
  if (lacking.length > 0) {
    by("job-" + lacking[0].in).focus();
    return;
  }
  const said = (id) => withPoint(by(id).value.trim());
  const block = (name, key, words, empty) => (words ? `${name}: {${key}: ${words}}` : empty);
  const cooled = turbo.ports.some((port) => port.circuit === "coolant");
  text.value = [`job: ${turbo.id} on a ${engine.id}`, `engine: ${engine.id}`, `turbo: ${turbo.id}`, `keep: [${by("job-keep").value.trim()}]`,
    said("job-oil") ? `oil: ${said("job-oil")}` : "", block("feed", "hose", said("job-hose"), "feed: {}"), block("drain", "oil-level", said("job-level"), "drain: {}"),
    cooled ? block("coolant", "angle", said("job-angle"), "coolant: {}") : "", ""].filter((line, index, all) => line !== "" || index === all.length - 1).join("\n");
  plan({ step: true });
}

/* `step`: going back leads to what was there before. */
async function plan({ step = false } = {}) {
  const job = text.value;
  if (job.length <= LINK_MOST) remember("job", job ? [["job", job]] : [], { step });
  else remember("job", [], { beside: { job }, step });
  showBegin();
  if (job.trim() === "") {
    paperIs(null);
    text.removeAttribute("aria-invalid");
    say("job-status", "");
    fill(by("job-faults"));
    fill(by("job-result"), h("p", { class: "hint" }, "Choose an engine and a turbo and let the job be written, or write it yourself."));
    return;
  }
  by("job-result").setAttribute("aria-busy", "true");
  try {
    const came = await ask("plan", "/api/plan", null, job);
    if (came === null) return;
    text.removeAttribute("aria-invalid");
    fill(by("job-faults"));
    paperIs({ text: job });
    showPlan(came.answer);
  } catch (refusal) {
    paperIs(null);
    text.setAttribute("aria-invalid", "true");
    say("job-status", "The job cannot be read as it stands.");
    fill(by("job-faults"), textFaults(text, refusal));
    fill(by("job-result"));
  } finally {
    by("job-result").removeAttribute("aria-busy");
  }
}

function showPlan(answer) {
  const { feed, drain, coolant } = answer.circuits;
  say("job-status", (answer.ok ? "It holds: " : "It does not hold: ") + countFindings(answer.findings) + ".");
  fill(by("job-result"),
    h("p", { class: "acts" }, printButton(), " ", text.value.length <= LINK_MOST ? sheetLink("/sheet?" + new URLSearchParams({ job: text.value })) : null, " ", linkButton(text.value.length > LINK_MOST), " ", saveButton("Save the job", "job.yaml", text.value)),
    jumps([["job-part-feed", "Feed", feed], ["job-part-drain", "Drain", drain], ["job-part-coolant", "Coolant", coolant],
      ["job-part-bill", "Bill", true], ["job-part-assumed", "What is assumed", true], ["job-part-work", "Order of work", true]]),
    section("Findings", findingList(answer.findings)),
    feed ? part("feed", circuit("Feed", feed.stack, "job-feed", feed.stack ? [feedTable(feed), drawing("job-pressure", text.value, { of: "pressure" })] : null)) : null,
    drain ? part("drain", drain.returns.map((one, index) => oneReturn(one, index))) : null,
    coolant ? part("coolant", (Array.isArray(coolant) ? coolant : [coolant]).map((one, index) => oneLoop(one, index))) : null,
    part("bill", section("Bill", billTable(answer.bill))),
    part("assumed", section("Assumed", answer.assumptions.length === 0 ? h("p", null, "Nothing.") : table("Assumed", ["What", "Value", "It is", "From"], answer.assumptions.map((one) =>
      h("tr", null, h("th", { scope: "row" }, one.what), h("td", null, one.value), h("td", null, one.mark), h("td", { class: "source" }, one.source)))))),
    part("work", section("In order of work", h("ol", null, answer.notes.map((note) => h("li", null, note))))));
}

const part = (name, ...content) => h("div", { id: `job-part-${name}` }, content);

function jumps(parts) {
  return h("ul", { class: "jumps", "aria-label": "On this page" }, parts.filter(([, , there]) => there).map(([id, words]) =>
    h("li", null, h("a", { href: `#${id}`, click: (event) => { event.preventDefault(); by(id).scrollIntoView(); by(id).querySelector("h2, h3, summary")?.setAttribute("tabindex", "-1"); by(id).querySelector("h2, h3, summary")?.focus(); } }, words))));
}

function circuit(title, stack, kind, figures) {
  return h("div", { class: "circuit" }, h("h2", null, title),
    stack ? [under("Drawing", drawing(kind, stack.layout)), figures ? under("Figures", figures) : null, under("Joint by joint", jointTable(stack.joints))]
      : h("p", null, "Nothing in the catalogue joins these ports; the findings say what is missing."));
}

function oneReturn(one, index) {
  const figures = [table("The way home", ["Segment", "Slope", "Length", "Bore", "Full, hot", "Full, cold"], one.segments.map((each, at) => h("tr", null,
    h("th", { scope: "row" }, String(at + 1)), h("td", { class: "figure" }, number(each.slope_deg, "°", 0)), h("td", { class: "figure" }, number(each.length_mm, "mm", 0)),
    h("td", { class: "figure" }, number(each.bore_mm, "mm", 1)), h("td", { class: "figure" }, percent(each.fill_fraction)), h("td", { class: "figure" }, percent(each.fill_fraction_cold))))),
  h("p", null, `${number(one.flow_lpm, "L/min of oil")}; it stands ${number(one.pool_mm, "mm", 0)} over the outlet. Least bore that would do ${number(one.least_bore_mm, "mm", 1)}, least slope ${number(one.least_slope_deg, "°", 0)}.`),
  drawing(`job-return-${index}`, text.value, { of: "drain", number: index + 1 })];
  const title = `Drain of ${one.turbo} to ${one.port}${one.taken ? ", taken" : one.ok ? ", would do too" : ", does not do"}`;
  const shown = circuit(title, one.stack, `job-drain-${index}`, one.segments.length > 0 ? figures : null);
  return one.taken ? shown : h("details", { class: "other" }, h("summary", null, title), under("Findings", findingList(one.findings)), shown);
}

const percent = (share) => (share === null || share === undefined ? "not known" : Math.round(100 * share) + " %");

function oneLoop(one, index) {
  const figures = one.natural_flow_lpm === null || one.natural_flow_lpm === undefined ? null : h("p", null,
    `Clocked ${number(one.clocking_deg, "°", 0)} it goes round by itself at ${number(one.natural_flow_lpm, "L/min")}, ${number(one.hot_temperature_c, "C", 0)} at the hottest; it boils at ${number(one.boiling_c, "C", 0)}${one.boils ? ": it boils" : ""}. Engine running: ${number(one.forced_flow_lpm, "L/min", 1)} against ${number(one.forced_loss_kpa, "kPa", 1)}.`);
  return h("div", null, figures ? h("div", { class: "circuit" }, h("h2", null, `Coolant of ${one.turbo}`), under("Going round by itself", figures,
    drawing(`job-loop-${index}`, text.value, { of: "coolant", number: index + 1 }), drawing(`job-siphon-${index}`, text.value, { of: "siphon", number: index + 1 }))) : null,
    one.legs.map((leg, at) => circuit(`Coolant, ${leg.leg} leg of ${one.turbo}`, leg.stack, `job-coolant-${index}-${at}`, null)));
}
