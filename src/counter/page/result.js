/* SPDX-License-Identifier: MIT */
/* A layout shown: drawing, parts and joints, bill, findings. What several views share. */
import { ask, draw } from "./ask.js";
import { by, fill, h, number, plural, price, scrolls, table } from "./dom.js";
import { plain } from "./fields.js";
import { printPaper } from "./paper.js";

const SIGNS = { error: "✕", warning: "▲", note: "•" };

/* The name of each part as messages call it: its id, id#2 for the second. */
export function placeNames(parts) {
  const seen = new Map();
  return parts.map((part) => {
    const count = (seen.get(part.id) || 0) + 1;
    seen.set(part.id, count);
    return count > 1 ? `${part.id}#${count}` : part.id;
  });
}

/* A, B, … Z, AA: as the drawing letters joints. */
export function letter(index) {
  return (index >= 26 ? letter(Math.floor(index / 26) - 1) : "") + String.fromCharCode(65 + (index % 26));
}

export function findingList(findings) {
  if (findings.length === 0) return h("p", null, "Nothing to complain of.");
  return h("ol", { class: "findings" }, findings.map((finding) => h("li", { class: finding.severity },
    h("p", null, h("b", { class: "severity" }, h("span", { "aria-hidden": "true" }, SIGNS[finding.severity] + " "), finding.severity),
      finding.where ? [" ", h("code", null, finding.where)] : null, ": ", plain(finding.message)),
    finding.mend ? h("p", { class: "mend" }, "To mend: " + plain(finding.mend)) : null,
    h("p", { class: "source" }, "Source: " + finding.source))));
}

/* Each once: what an ask brings up and what its layout is found to have may be the same. */
export function joinFindings(...lists) {
  const seen = new Set();
  return lists.flat().filter((finding) => {
    const key = JSON.stringify(finding);
    return seen.has(key) ? false : seen.add(key);
  });
}

/* Findings of a layout in the order in which its drawing numbers them, then those that the ask alone brought up. */
export function findingsOf(kind, text, own) {
  const box = h("div", { "aria-busy": "true" }, findingList(own));
  ask(kind, "/api/check", null, text).then((came) => {
    if (came === null) return;
    box.removeAttribute("aria-busy");
    fill(box, findingList(joinFindings(came.answer.layouts.flatMap((one) => one.findings), own)));
  }, () => box.removeAttribute("aria-busy"));
  return box;
}

export function countFindings(findings) {
  const count = (severity) => findings.filter((finding) => finding.severity === severity).length;
  return [["error", "errors"], ["warning", "warnings"], ["note", "notes"]]
    .map(([one, more]) => [count(one), one, more]).filter(([many]) => many > 0)
    .map(([many, one, more]) => plural(many, one, more)).join(", ") || "no findings";
}

const range = (pair) => (pair[0] === pair[1] ? String(pair[0]) : pair.join(" to "));

/* A taper thread is tightened by turns; its torque, where one is printed, comes second. */
function tightening(card) {
  if (!card) return "";
  const turns = card.tightening.find((one) => one.turns_from_finger_tight);
  const words = [turns ? range(turns.turns_from_finger_tight) + " turns from finger tight" : "", card.torque_nm ? range(card.torque_nm) + "\u00a0N\u00a0m" : ""];
  return words.filter(Boolean).join("; ") || card.torque_note || "";
}

/* A joint's figures have other sources than its seal has. */
function figureSources(card) {
  const sources = [...new Set((card ? card.tightening : []).map((one) => one.source))];
  return sources.length > 1 ? `${sources.length} sources, below` : sources.join("");
}

function needs(joint) {
  const used = joint.card ? joint.card.consumables : [];
  const words = used.map((one) => [one.count ? `${one.count} × ` : "", one.what, one.size ? ` ${one.size}` : ""].join(""));
  return words.length > 0 ? words.join("; ") : (joint.needs || []).join("; ") || "nothing";
}

function cardWords(card) {
  const lines = [["Seals", card.face], ["Sealant", card.sealant], ["Rings", card.rings], ["Used again", card.reuse], ["Mind", card.remark]];
  return h("dl", null,
    lines.filter(([, words]) => words).map(([name, words]) => [h("dt", null, name), h("dd", null, words)]),
    card.engagement?.length_mm ? [h("dt", null, "Engages"), h("dd", null, card.engagement.length_mm.join(" to ") + " mm" +
      (card.engagement.needed_mm ? `, wanted ${card.engagement.needed_mm} mm (${card.engagement.needed_why})` : ""))] : null,
    card.tightening.map((one) => [h("dt", null, "Tighten"), h("dd", null,
      one.torque_nm ? range(one.torque_nm) + "\u00a0N\u00a0m" : range(one.turns_from_finger_tight) + " turns from finger tight",
      ` (${[one.for, one.material, one.condition].filter(Boolean).join("; ")}: ${one.source})`)]),
    card.cautions.map((words) => [h("dt", null, "Caution"), h("dd", null, words)]));
}

/* One side of a joint: whose end, and what end. */
const side = (joint, at) => h("span", { class: "side" }, h("b", null, joint.between[at]), " ", joint.ends[at]);

/* Joint by joint. */
export function jointTable(joints) {
  return table("Joint by joint", ["Joint", "What is joined", "Seals by", "Wants", "Tighten"], joints.map((joint, index) =>
    h("tr", null,
      h("th", { scope: "row" }, letter(index)),
      h("td", null, side(joint, 0), side(joint, 1)),
      h("td", null, joint.verdict !== "seals" ? h("strong", null, joint.verdict || "does not join", joint.seals_by ? ": " : "") : null, joint.seals_by || "",
        h("span", { class: "source" }, joint.source || "")),
      h("td", null, needs(joint)),
      h("td", null, tightening(joint.card), h("span", { class: "source" }, figureSources(joint.card)),
        joint.card ? h("details", { class: "card" }, h("summary", null, "more", h("span", { class: "hidden" }, ` on joint ${letter(index)}`)), cardWords(joint.card)) : null))), { class: "joints" });
}

/* Lengths as they are cut: two pieces of one hose seldom are of one length. */
const cutWords = (cuts) => cuts.map((cut) => `${cut.count} × ${number(cut.length_mm, "mm", 0)}${cut.assumed ? " (assumed)" : ""}`).join(", ");

export function billTable(bill) {
  const counted = bill.lines.some((line) => line.short_by !== null);
  const rows = bill.lines.map((line) => h("tr", null,
    h("td", { class: "tickbox" }, h("span", { "aria-hidden": "true" }, "☐")),
    h("th", { scope: "row" }, line.id), h("td", null, line.title),
    h("td", { class: "figure" }, line.length_mm === null ? String(line.count) : cutWords(line.cuts)),
    h("td", { class: "figure" }, price(line.price)),
    !counted ? null : h("td", null, line.short_by ? h("strong", null, "short by " + number(line.short_by)) : line.short_by === 0 ? "there" : "")));
  const used = bill.consumables.map((one) => h("tr", null,
    h("td", { class: "tickbox" }, h("span", { "aria-hidden": "true" }, "☐")),
    h("th", { scope: "row" }, one.what), h("td", null, [one.size, one.note].filter(Boolean).join("; ")),
    h("td", { class: "figure" }, one.count > 0 ? String(one.count) : "by need"), h("td"), counted ? h("td") : null));
  return h("div", null,
    table("Bill of fittings", ["", "Part", "What it is", "Count", "Price", ...(counted ? ["Drawer"] : [])], [...rows, ...used], { class: "bill" }),
    h("p", { class: "total" }, `${plural(bill.part_count, "part", "parts")}, together ${price(bill.total)}`,
      bill.unpriced > 0 ? `, and ${plural(bill.unpriced, "part", "parts")} without a price` : ""));
}

let drawings = 0;

/* A drawing of a layout or of a job. */
export function drawing(kind, text, parameters = {}, path = "/api/draw") {
  const box = h("figure", { class: parameters.of ? "drawing graph" : "drawing", "aria-busy": "true" }, h("p", { class: "hint" }, "Drawing …"));
  draw(kind, text, parameters, path).then((svg) => {
    if (svg === null) return;
    drawings++;
    /* Names inside a drawing must not meet those of another on the page. */
    for (const element of [svg, ...svg.querySelectorAll("[id]")]) if (element.id) element.id = `d${drawings}-${element.id}`;
    for (const name of ["aria-labelledby", "aria-describedby"]) {
      const words = svg.getAttribute(name);
      if (words) svg.setAttribute(name, words.split(" ").map((word) => `d${drawings}-${word}`).join(" "));
    }
    svg.removeAttribute("width");
    svg.removeAttribute("height");
    box.removeAttribute("aria-busy");
    fill(box, scrolls(h("div", { class: "scroll" }, svg), "Drawing"));
  }, (refusal) => fill(box, h("p", null, refusal.message)));
  return box;
}

export function section(title, ...content) {
  return h("section", { class: "piece" }, h("h2", null, title), content);
}

/* The same below a heading of its own. */
export function under(title, ...content) {
  return h("section", { class: "piece" }, h("h3", null, title), content);
}

/* The bill of a layout or job, fetched. */
export function billOf(kind, text) {
  const box = h("div", { "aria-busy": "true" });
  ask(kind, "/api/bill", null, text).then((came) => {
    if (came === null) return;
    box.removeAttribute("aria-busy");
    fill(box, billTable(came.answer));
  }, (refusal) => fill(box, h("p", null, refusal.message)));
  return box;
}

/* A small button that writes a text to a file of the person's own. */
export function saveButton(words, name, text) {
  return h("button", { type: "button", click: () => {
    const link = h("a", { href: URL.createObjectURL(new Blob([text], { type: "application/yaml" })), download: name });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  } }, words);
}

/* `tooLong`: the address line does not hold all of it. */
export function linkButton(tooLong = false) {
  if (tooLong) return h("span", { class: "hint" }, "Too long for a link: save it instead.");
  const button = h("button", { type: "button", click: async () => {
    try {
      await navigator.clipboard.writeText(location.href);
      button.textContent = "Link copied";
    } catch {
      button.textContent = "The address line holds the link";
    }
    setTimeout(() => { button.textContent = "Copy the link"; }, 3000);
  } }, "Copy the link");
  return button;
}

/* The counter sheet opens beside this page. */
export const sheetLink = (href) => h("a", { class: "button", href, target: "_blank", rel: "noopener" }, "Counter sheet", h("span", { class: "hidden" }, " in a new tab"));

export const printButton = () => h("button", { type: "button", click: printPaper }, "Print");

/* On a narrow page the answer stands below the form: who asks for it is led there. */
export function toAnswer(view) {
  const status = by(view + "-status");
  const { top } = status.getBoundingClientRect();
  if (top < 0 || top > 0.4 * window.innerHeight) status.scrollIntoView({ block: "start" });
}

/* Status words for a person and for those who listen. */
export const say = (id, words) => { by(id).textContent = words; };
