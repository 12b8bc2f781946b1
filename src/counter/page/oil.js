/* SPDX-License-Identifier: MIT */
/* What the oil does in a feed: the plan of that feed alone, thick and cold, thin and hot. */
import { ask } from "./ask.js";
import { fill, h, number, table } from "./dom.js";
import { drawing, section } from "./result.js";

const value = (pairs, name) => pairs.find(([key]) => key === name)?.[1];
const values = (pairs, name) => pairs.filter(([key]) => key === name).map(([, words]) => words);

/* A plan assumes things of the drain too, which is not looked at here. */
const OF_THE_FEED = /^(oil |gallery|length of the feed|turbo inlet|the oil|viscosit)/;

const quoted = (words) => JSON.stringify(words);

/* A job of the feed alone, or null where the ports are not those of one engine and of turbos. */
function jobOf(pairs) {
  const [engine, from] = (value(pairs, "from") || "").split(":");
  const to = values(pairs, "to").map((words) => words.split(":"));
  if (!from || to.some(([, port]) => !port)) return null;
  const feed = [`from: ${quoted(from)}`, `to: ${quoted(to[0][1])}`];
  if (value(pairs, "hose")) feed.push(`hose: ${quoted(value(pairs, "hose"))}`);
  if (value(pairs, "bore")) feed.push(`bore: ${quoted(value(pairs, "bore"))}`);
  return [
    "job: the oil in this feed", `engine: ${quoted(engine)}`,
    `turbo: ${to.length > 1 ? "[" + to.map(([id]) => quoted(id)).join(", ") + "]" : quoted(to[0][0])}`,
    `keep: [${values(pairs, "keep").map(quoted).join(", ")}]`,
    value(pairs, "oil") ? `oil: ${quoted(value(pairs, "oil"))}` : "", `feed: {${feed.join(", ")}}`, "",
  ].filter((line, index, all) => line !== "" || index === all.length - 1).join("\n");
}

export function feedTable(feed) {
  const rows = feed.states.flatMap((state) => state.loads.filter((load) => !load.dead).map((load) => h("tr", null,
    h("th", { scope: "row" }, state.name), h("td", null, load.name), h("td", { class: "figure" }, number(state.oil_temperature_c, "C", 0)),
    h("td", { class: "figure" }, number(state.source_pressure_bar, "bar")), h("td", { class: "figure" }, number(load.pressure_bar, "bar")),
    h("td", { class: "figure" }, number(load.flow_lpm, "L/min")),
    h("td", { class: "figure" }, number(state.first_oil_s, "s", 1)), h("td", null, state.assumed ? "assumed" : "given"))));
  return [table("The oil in the feed", ["State", "At", "Oil", "Pressure at the source", "Pressure there", "Flow", "First oil after", "State is"], rows),
    feed.costs_most ? h("p", null, "Costs most: " + feed.costs_most + ".") : null,
    [feed.hose_verdict, feed.restrictor_verdict, feed.drain_verdict].some(Boolean) ? h("ul", null,
      [["Hose", feed.hose_verdict], ["Restrictor", feed.restrictor_verdict], ["Drain", feed.drain_verdict]].filter(([, words]) => words).map(([name, words]) => h("li", null, h("b", null, name), `: ${words}.`))) : null,
    feed.restrictor_wanted_mm ? h("p", null, `A restrictor of ${number(feed.restrictor_wanted_mm, "mm")} would hold the pressure wanted.`) : null];
}

/* The piece of the page; empty where nothing can be reckoned. */
export function oilPiece(stack, pairs) {
  const job = jobOf(pairs);
  if (job === null) return value(pairs, "oil") ? h("p", { class: "hint" }, "What the oil does is reckoned where the ports are those of an engine and of turbos.") : null;
  const box = h("div", { "aria-busy": "true" });
  ask("stack-oil", "/api/plan", null, job).then((came) => {
    box.removeAttribute("aria-busy");
    const feed = came?.answer.circuits.feed;
    if (!feed?.stack || feed.states.length === 0) return;
    const same = feed.stack.parts.map((part) => part.id).join() === stack.parts.map((part) => part.id).join();
    const findings = came.answer.findings.filter((one) => /^(feed|oil-cold|oil-hot|first-oil)/.test(one.rule));
    fill(box, section("The oil",
      same ? null : h("p", { class: "hint" }, "Reckoned for the circuit's own best layout, which is not the one looked at: " +
        feed.stack.parts.map((part) => part.id).join(" · ") + "."),
      feedTable(feed),
      drawing("stack-pressure", job, { of: "pressure" }),
      findings.length > 0 ? h("ul", null, findings.map((one) => h("li", null, h("b", null, one.severity), ": ", one.message))) : null,
      h("p", { class: "hint" }, came.answer.assumptions.filter((one) => OF_THE_FEED.test(one.what)).map((one) => `${one.what}: ${one.value}`).join("; ") + ".")));
  }, (refusal) => {
    box.removeAttribute("aria-busy");
    fill(box, section("The oil", h("p", null, "Not reckoned: " + (refusal.faults[0]?.message ?? refusal.message) + ".")));
  });
  return box;
}
