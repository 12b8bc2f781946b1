/* SPDX-License-Identifier: MIT */
/* What the oil does in the feed that is looked at, thick and cold, thin and hot. */
import { ask } from "./ask.js";
import { fill, h, number, table } from "./dom.js";
import { drawing, findingList, section } from "./result.js";

export function feedTable(feed) {
  const rows = feed.states.flatMap((state) => state.loads.filter((load) => !load.dead).map((load) => h("tr", null,
    h("th", { scope: "row" }, state.name), h("td", null, load.name), h("td", { class: "figure" }, number(state.oil_temperature_c, "C", 0)),
    h("td", { class: "figure" }, number(state.source_pressure_bar, "bar")), h("td", { class: "figure" }, number(load.pressure_bar, "bar")),
    h("td", { class: "figure" }, number(load.flow_lpm, "L/min")),
    h("td", { class: "figure" }, number(state.first_oil_s, "s", 1)), h("td", null, state.verdict), h("td", null, state.assumed ? "assumed" : "given"))));
  return [table("The oil in the feed", ["State", "At", "Oil", "Pressure at the source", "Pressure there", "Flow", "First oil after", "It is", "State is"], rows),
    feed.costs_most ? h("p", null, "Costs most: " + feed.costs_most + ".") : null,
    [feed.hose_verdict, feed.restrictor_verdict, feed.drain_verdict].some(Boolean) ? h("ul", null,
      [["Hose", feed.hose_verdict], ["Restrictor", feed.restrictor_verdict], ["Drain", feed.drain_verdict]].filter(([, words]) => words).map(([name, words]) => h("li", null, h("b", null, name), `: ${words}.`))) : null];
}

/* The piece of the page: the layout reckoned as it stands. Empty where it is no feed. */
export function oilPiece(kind, layout, grade) {
  const box = h("div", { "aria-busy": "true" });
  const oil = grade ? { oil: grade } : {};
  ask(kind, "/api/flow", oil, layout).then((came) => {
    if (came === null) return;
    box.removeAttribute("aria-busy");
    const { feed, findings, assumptions } = came.answer;
    fill(box, section("The oil", feed.states.length > 0 ? [feedTable(feed), drawing(kind + "-pressure", layout, { of: "pressure", ...oil })] : null,
      findings.length > 0 ? findingList(findings) : null,
      assumptions.length > 0 ? h("details", null, h("summary", null, `${assumptions.length} figures are assumed`),
        h("ul", null, assumptions.map((one) => h("li", null, `${one.what}: ${one.value} `, h("span", { class: "source" }, `(${one.source})`))))) : null));
  }, (refusal) => {
    box.removeAttribute("aria-busy");
    /* A drain or a coolant leg has no feed to reckon; a wrong oil is told at its field. */
    if (refusal.status !== 404 && !refusal.faults.some((fault) => fault.in === "oil")) fill(box, section("The oil", h("p", null, "Not reckoned: " + (refusal.faults[0]?.message ?? refusal.message) + ".")));
  });
  return box;
}
