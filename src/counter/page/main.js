/* SPDX-License-Identifier: MIT */
/* Which job is open, the link that holds it, and what is to be said of the catalogue. */
import { ask } from "./ask.js";
import { againCheck, openCheck, showCheck } from "./check.js";
import { by, fill, h } from "./dom.js";
import { againJob, openJob, showJob } from "./job.js";
import { paperIsOld } from "./paper.js";
import { againStack, openStack, showStack } from "./stack.js";
import { againThread, openThread, showThread } from "./thread.js";

const VIEWS = {
  stack: { open: openStack, show: showStack, again: againStack, title: "Find a stack" },
  check: { open: openCheck, show: showCheck, again: againCheck, title: "Check and swap" },
  thread: { open: openThread, show: showThread, again: againThread, title: "Name a thread" },
  job: { open: openJob, show: showJob, again: againJob, title: "Plan a job" },
};
const LOOK_EVERY = 5000;

let view = null;
const opened = new Set();
/* The last link of each job and what it could not hold, so that going to and fro loses nothing. */
const links = new Map();

function address(name, pairs) {
  return "/?" + new URLSearchParams([["view", name], ...pairs]);
}

/* Keeps the ask in the address line, as a step of its own where `step` says so. A text too long for a link goes
 * into `beside`, by name: going back and reloading finds it there, another machine does not. */
function remember(name, pairs, { beside = null, step = false } = {}) {
  const link = address(name, pairs);
  links.set(link, beside);
  document.querySelector(`nav a[data-view="${name}"]`).href = link;
  if (name !== view) return;
  const same = link === location.pathname + location.search && JSON.stringify(history.state) === JSON.stringify(beside);
  if (same) return;
  if (step) history.pushState(beside, "", link);
  else history.replaceState(beside, "", link);
}

function show() {
  const parameters = new URLSearchParams(location.search);
  for (const [name, text] of Object.entries(history.state ?? {})) parameters.set(name, text);
  view = VIEWS[parameters.get("view")] ? parameters.get("view") : "stack";
  for (const section of document.querySelectorAll(".view")) section.hidden = section.id !== `view-${view}`;
  for (const link of document.querySelectorAll("nav a")) {
    if (link.dataset.view === view) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  document.title = `${VIEWS[view].title}: oilway counter`;
  if (!opened.has(view)) VIEWS[view].open(remember);
  opened.add(view);
  VIEWS[view].show(parameters);
}

function go(href) {
  history.pushState(links.get(href) ?? null, "", href);
  show();
  by("main").focus();
  window.scrollTo(0, 0);
}

document.addEventListener("click", (event) => {
  const link = event.target.closest("a");
  if (!link || event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
  if (!link.dataset.view && !("inside" in link.dataset) && !("clear" in link.dataset)) return;
  event.preventDefault();
  go(link.getAttribute("href"));
});
window.addEventListener("popstate", show);

/* What is to be known of the catalogue; asked now and then while somebody looks. */
let generation = null;

function faultWords(fault) {
  return `${fault.in ? fault.in.split("/").pop() : ""}${fault.line ? ":" + fault.line : ""}: ${fault.message}`;
}

async function lookAtShop() {
  if (document.hidden) return;
  const box = by("shop-says");
  try {
    const came = await ask("shop", "/api/shop");
    if (came === null) return;
    const shop = came.answer;
    if (generation !== null && generation !== shop.generation) {
      paperIsOld();
      VIEWS[view].again();
    }
    generation = shop.generation;
    box.classList.toggle("bad", shop.stale);
    if (!shop.stale) fill(box);
    else if (box.dataset.told !== JSON.stringify(shop.faults))
      fill(box, h("p", null, "The catalogue was changed and has faults. This page goes on with the one before."),
        h("ul", null, shop.faults.slice(0, 5).map((fault) => h("li", null, faultWords(fault)))));
    box.dataset.told = shop.stale ? JSON.stringify(shop.faults) : "";
  } catch (refusal) {
    box.classList.add("bad");
    box.dataset.told = "";
    if (box.textContent !== refusal.message) fill(box, refusal.message);
  }
}

show();
lookAtShop();
setInterval(lookAtShop, LOOK_EVERY);
document.addEventListener("visibilitychange", lookAtShop);
