/* SPDX-License-Identifier: MIT */
/* Elements built by hand: words become text, never markup. */

/* An element: h("p", {class: "hint"}, "words", child, …). A function as a value is an event's listener. */
export function h(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes || {})) {
    if (value === null || value === undefined || value === false) continue;
    if (typeof value === "function") element.addEventListener(name, value);
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  append(element, children);
  return element;
}

function append(element, children) {
  for (const child of children) {
    if (child === null || child === undefined || child === false) continue;
    if (Array.isArray(child)) append(element, child);
    else element.append(child);
  }
}

export function fill(element, ...children) {
  element.replaceChildren();
  append(element, children);
  return element;
}

export const by = (id) => document.getElementById(id);

/* What overflows can be scrolled by keyboard too; what does not is no stop on the way. */
const overflow = new ResizeObserver((entries) => {
  for (const { target } of entries) {
    const wide = target.scrollWidth > target.clientWidth + 1;
    target.toggleAttribute("tabindex", wide);
    if (wide) target.setAttribute("tabindex", "0");
  }
});

/* Lets an element that may be wider than the page be scrolled. */
export function scrolls(element, name) {
  element.setAttribute("role", "group");
  element.setAttribute("aria-label", name);
  overflow.observe(element);
  return element;
}

/* A table. On a narrow page its style sets each row as a block, cells with their heads before them; the roles keep
 * it a table for those who listen. */
export function table(caption, heads, rows, options = {}) {
  for (const row of rows) {
    row.setAttribute("role", "row");
    Array.from(row.children).forEach((cell, index) => {
      cell.setAttribute("role", cell.localName === "th" ? "rowheader" : "cell");
      if (heads[index]) cell.dataset.head = heads[index];
    });
  }
  return scrolls(h("div", { class: "scroll" },
    h("table", { class: options.class, role: "table" },
      h("caption", options.hideCaption ? { class: "hidden" } : null, caption),
      h("thead", { role: "rowgroup" }, h("tr", { role: "row" }, heads.map((head) => head === "" ? h("td", { role: "cell" }) : h("th", { scope: "col", role: "columnheader" }, head)))),
      h("tbody", { role: "rowgroup" }, rows))), caption);
}

export const number = (value, unit, digits = 2) =>
  value === null || value === undefined ? "not known" : Number(value.toFixed(digits)) + (unit ? "\u00a0" + unit : "");

export const price = (value) => (value === null || value === undefined ? "no price" : value.toFixed(2));

export const plural = (count, one, more) => count + " " + (count === 1 ? one : more);

/* Calls `work` once, when nothing has come for a while. */
export function later(work, milliseconds) {
  let timer = 0;
  return (...words) => {
    clearTimeout(timer);
    timer = setTimeout(() => work(...words), milliseconds);
  };
}
