/* SPDX-License-Identifier: MIT */
/*
 * What is printed: the counter sheet of what is looked at, the same that the server writes for a tab of its own. It lies
 * unseen in a shadow tree, where its style and its names do not meet the page's, ready for the print button and for the
 * browser's own command.
 */
import { by, later } from "./dom.js";

const SETTLES = 300;
const style = new CSSStyleSheet();
/* A sheet's margins are no matter of a shadow tree: they go to the document. */
const margins = new CSSStyleSheet();
let begun = null, wanted = null, running = null, title = "";

/* Names the sheet: { parameters } of /sheet, or { text } of a layout or job; null where the page prints itself. */
export function paperIs(want) {
  if (JSON.stringify(want) === JSON.stringify(wanted)) return;
  wanted = want;
  running = null;
  document.documentElement.classList.remove("has-paper");
  if (want !== null) fetchLater();
}

/* The catalogue was changed: the same words make another sheet. */
export function paperIsOld() {
  const want = wanted;
  paperIs(null);
  paperIs(want);
}

function request({ parameters, text }) {
  return new Promise((done, failed) => {
    const asked = new XMLHttpRequest();
    asked.open(text === undefined ? "GET" : "POST", "/sheet?" + new URLSearchParams([...(parameters ?? []), ["bare", "yes"]]));
    if (text !== undefined) asked.setRequestHeader("Content-Type", "application/yaml");
    asked.responseType = "document";
    asked.onload = () => (asked.status === 200 && asked.response?.body ? done(asked.response) : failed(new Error("no sheet")));
    asked.onerror = () => failed(new Error("no answer"));
    asked.send(text);
  });
}

async function begin() {
  const answer = await fetch("/sheet.css");
  if (!answer.ok) throw new Error("no style");
  style.replaceSync(await answer.text());
  margins.replaceSync(Array.from(style.cssRules).filter((rule) => rule instanceof CSSPageRule).map((rule) => rule.cssText).join("\n"));
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, margins];
  const shadow = by("paper").attachShadow({ mode: "closed" });
  shadow.adoptedStyleSheets = [style];
  return shadow;
}

/* Read as a document of its own, of which only elements come here: nothing in it can become a script. */
function lay(sheet, root) {
  root.replaceChildren(document.importNode(sheet.body, true));
  title = sheet.title;
  document.documentElement.classList.add("has-paper");
}

function fetchNow() {
  const want = wanted;
  begun ??= begin().catch((error) => { begun = null; throw error; });
  running ??= Promise.all([request(want), begun]).then(([sheet, shadow]) => {
    if (want === wanted) lay(sheet, shadow);
  }).catch(() => { if (want === wanted) running = null; });
  return running;
}

const fetchLater = later(() => { if (wanted !== null) fetchNow(); }, SETTLES);

/* Prints once the sheet is there; without one, the page. */
export async function printPaper() {
  if (wanted !== null) await fetchNow();
  window.print();
}

/* The paper's own title is what a printer writes above it, and what a file is called. */
let pageTitle = "";
window.addEventListener("beforeprint", () => {
  pageTitle = document.title;
  if (document.documentElement.classList.contains("has-paper")) document.title = title;
});
window.addEventListener("afterprint", () => { document.title = pageTitle; });
