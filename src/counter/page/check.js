/* SPDX-License-Identifier: MIT */
/* Check a layout that somebody drew, and swap its parts one by one. */
import { ask } from "./ask.js";
import { by, fill, h, later, number, plural, price, table } from "./dom.js";
import { textFaults } from "./fields.js";
import { oilPiece } from "./oil.js";
import { paperIs } from "./paper.js";
import { billOf, countFindings, drawing, findingList, jointTable, linkButton, placeNames, printButton, saveButton, say, section, sheetLink, toAnswer, under } from "./result.js";

const LINK_MOST = 16000;
let text, remember, back = [];

export function openCheck(remembers) {
  text = by("layout-text");
  remember = remembers;
  const checkLater = later(check, 250);
  text.addEventListener("input", () => { back = []; checkLater(); });
  by("check-form").addEventListener("submit", (event) => { event.preventDefault(); toAnswer("check"); check(); });
  by("undo").addEventListener("click", () => {
    text.value = back.pop();
    check("The swap is undone. ");
  });
  by("layout-file").addEventListener("change", async (event) => {
    const file = event.target.files[0];
    if (file && file.size <= 1024 * 1024) text.value = await file.text();
    event.target.value = "";
    back = [];
    check();
  });
  by("swap-close").addEventListener("click", () => by("swap-dialog").close());
}

export function showCheck(parameters) {
  const layout = parameters.get("layout") ?? "";
  if (layout !== text.value) {
    if (layout === back.at(-1)) back.pop();
    else back = [];
    text.value = layout;
  }
  check();
}

export const againCheck = () => check();

/* `before` is said ahead of the verdict; `step`: going back leads to what was there before. */
async function check(before = "", step = false) {
  const layout = text.value;
  const lead = typeof before === "string" ? before : "";
  if (layout.length <= LINK_MOST) remember("check", layout ? [["layout", layout]] : [], { step });
  else remember("check", [], { beside: { layout }, step });
  by("undo").disabled = back.length === 0;
  if (layout.trim() === "") {
    paperIs(null);
    text.removeAttribute("aria-invalid");
    say("check-status", "");
    fill(by("check-faults"));
    fill(by("check-result"), h("p", { class: "hint" }, "Write a layout or open its file. A stack that was found comes here by its button “Swap a part”."));
    return;
  }
  by("check-result").setAttribute("aria-busy", "true");
  try {
    const came = await ask("check", "/api/check", null, layout);
    if (came === null) return;
    text.removeAttribute("aria-invalid");
    fill(by("check-faults"));
    paperIs({ text: layout });
    say("check-status", lead + (came.answer.ok ? "It holds: " : "It does not hold: ") + countFindings(came.answer.findings) + ".");
    fill(by("check-result"), acts(layout), section("Drawing", drawing("check-drawing", layout)),
      came.answer.layouts.map((one) => oneLayout(one)), oilPiece("check-oil", layout), section("Bill", billOf("check-bill", layout)));
  } catch (refusal) {
    paperIs(null);
    text.setAttribute("aria-invalid", "true");
    say("check-status", "The layout cannot be read as it stands.");
    fill(by("check-faults"), textFaults(text, refusal));
    fill(by("check-result"));
  } finally {
    by("check-result").removeAttribute("aria-busy");
  }
}

const acts = (layout) => h("p", { class: "acts" }, printButton(), " ", layout.length <= LINK_MOST ? sheetLink("/sheet?" + new URLSearchParams({ layout })) : null, " ", linkButton(layout.length > LINK_MOST), " ", saveButton("Save the layout", "layout.yaml", layout));

function oneLayout(one) {
  const names = placeNames(one.parts);
  return h("div", null, h("h2", null, one.title || "Layout"),
    under("Findings", findingList(one.findings)),
    under("Parts", table("Parts", ["", "Part", "What it is", ""], one.parts.map((part, index) => h("tr", null,
      h("td", null, String(index + 1)), h("th", { scope: "row" }, names[index]), h("td", null, part.title),
      h("td", { class: "act" }, h("button", { type: "button", class: "small swap", click: () => openSwap(names[index]) }, "Swap", h("span", { class: "hidden" }, " " + names[index])))))), ),
    under("Joint by joint", jointTable(one.joints)),
    one.passed ? h("details", { class: "passed" }, h("summary", null, `${one.passed.length} things that are right`),
      h("ul", null, one.passed.map((each) => h("li", null, each.where ? [h("code", null, each.where), ": "] : null, each.message)))) : null);
}

async function openSwap(place) {
  const layout = text.value;
  by("swap-title").textContent = "In the place of " + place;
  say("swap-status", "Looking …");
  fill(by("swap-list"));
  by("swap-dialog").showModal();
  try {
    const came = await ask("swap", "/api/swap", { place }, layout);
    if (came === null) return;
    const { answer } = came;
    say("swap-status", answer.count === 0 ? "Nothing else in the catalogue fits there." :
      plural(answer.count, "part fits", "parts fit") + (answer.count > answer.swaps.length ? `; the first ${answer.swaps.length}` : "") + ".");
    fill(by("swap-list"), answer.count > 0 ? table("Parts that fit", ["Part", "What it is", "Bore", "Price", "Then", ""],
      answer.swaps.map((swap) => swapRow(place, swap, layout)), { hideCaption: true }) : null);
  } catch (refusal) {
    say("swap-status", refusal.message);
  }
}

function swapRow(place, swap, layout) {
  const traits = [swap.angle_deg ? `${swap.angle_deg}°` : "", swap.material || "", swap.orifice_mm ? `hole ${swap.orifice_mm} mm` : "",
    swap.tolerated ? "tolerated only" : "", swap.stock === 0 ? "none in the drawer" : ""].filter(Boolean).join(", ");
  const then = swap.errors > 0 ? plural(swap.errors, "error", "errors") : swap.warnings > 0 ? plural(swap.warnings, "warning", "warnings") : "holds";
  return h("tr", null, h("th", { scope: "row" }, swap.id), h("td", null, swap.title, traits ? `, ${traits}` : ""),
    h("td", { class: "figure" }, number(swap.bore_mm, "mm")), h("td", { class: "figure" }, price(swap.price)),
    h("td", null, swap.errors > 0 ? h("strong", null, then) : then),
    h("td", { class: "act" }, h("button", { type: "button", class: "small", click: () => use(place, swap, layout) }, "Use", h("span", { class: "hidden" }, " " + swap.id))));
}

async function use(place, swap, layout) {
  back.push(layout);
  text.value = swap.layout;
  by("swap-dialog").close();
  await check(`${place} is now ${swap.id}. `, true);
  by("undo").focus();
}
