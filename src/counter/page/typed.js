/* SPDX-License-Identifier: MIT */
/*
 * Fields where a port or an end is typed: what was understood stands below while one types, and a list offers what it
 * could become. Keys: down and up go through the list, Enter takes, Escape closes.
 */
import { ask, marked, sentence } from "./ask.js";
import { h, later } from "./dom.js";

let numbers = 0;

/* The list's state and its element for one field. */
class Offers {
  constructor(input, take) {
    this.input = input;
    this.take = take;
    this.at = -1;
    this.list = h("ul", { class: "offers", role: "listbox", id: input.id + "-offers", "aria-label": "Offers", hidden: true });
    input.setAttribute("aria-controls", this.list.id);
  }

  show(offers) {
    this.offers = offers;
    this.at = -1;
    this.list.replaceChildren(...offers.map((offer, index) =>
      h("li", { role: "option", id: `${this.list.id}-${index}`, "aria-selected": "false",
        mousedown: (event) => { event.preventDefault(); this.pick(index); } },
      h("b", null, offer.words), " ", h("span", null, offer.says))));
    this.toggle(offers.length > 0);
  }

  toggle(open) {
    this.list.hidden = !open;
    this.input.setAttribute("aria-expanded", String(open));
    if (!open) this.move(-1);
  }

  get open() {
    return !this.list.hidden;
  }

  move(to) {
    const items = this.list.children;
    if (this.at >= 0) items[this.at]?.setAttribute("aria-selected", "false");
    this.at = items.length === 0 ? -1 : to;
    if (this.at >= 0) {
      items[this.at].setAttribute("aria-selected", "true");
      items[this.at].scrollIntoView({ block: "nearest" });
      this.input.setAttribute("aria-activedescendant", items[this.at].id);
    } else {
      this.input.removeAttribute("aria-activedescendant");
    }
  }

  pick(index) {
    this.toggle(false);
    this.take(this.offers[index].words);
  }

  key(event) {
    const count = this.list.children.length;
    if (event.key === "Escape" && this.open) this.toggle(false);
    else if (event.key === "Enter" && this.open && this.at >= 0) this.pick(this.at);
    else if (event.key === "ArrowDown" && this.open) this.move((this.at + 1) % count);
    else if (event.key === "ArrowUp" && this.open) this.move((this.at + count - (this.at < 0 ? 0 : 1)) % count);
    else return false;
    event.preventDefault();
    return true;
  }
}

/* One field. `changed` is called when its words were settled; `holds` when a port was read that holds a switch. */
export function typedField({ name, wanted, label, help, value, changed, holds }) {
  const id = `typed-${++numbers}`;
  const input = h("input", { id, name, value, role: "combobox", "aria-autocomplete": "list", "aria-expanded": "false",
    "aria-describedby": `${id}-reading`, autocomplete: "off", autocapitalize: "off", spellcheck: "false" });
  const reading = h("div", { class: "reading", id: `${id}-reading`, "aria-live": "polite" });
  const offers = new Offers(input, (words) => {
    input.value = words;
    read(false);
    changed();
  });

  async function read(open) {
    if (input.value.trim() === "" && !open) {
      input.removeAttribute("aria-invalid");
      reading.replaceChildren(h("span", { class: "hint" }, help));
      return;
    }
    let came;
    try {
      came = await ask(id, "/api/read", { words: input.value, for: wanted });
    } catch (refusal) {
      reading.replaceChildren(refusal.message);
      return;
    }
    if (came === null) return;
    if (open && document.activeElement === input) offers.show(came.answer.offers);
    tell(came.answer);
  }

  function tell(typed) {
    const empty = typed.words.trim() === "";
    const wrong = typed.fault !== null && !empty;
    const half = wrong && typed.offers.length > 0;
    input.toggleAttribute("aria-invalid", wrong && !half);
    if (wrong && !half) input.setAttribute("aria-invalid", "true");
    if (empty) reading.replaceChildren(h("span", { class: "hint" }, help));
    else if (wrong) reading.replaceChildren(...faultWords(typed, half));
    else reading.replaceChildren(...understood(typed));
    holds?.(typed);
  }

  function understood(typed) {
    return [h("span", { class: "good", "aria-hidden": "true" }, "✓ "),
      typed.end && typed.end !== typed.words ? h("b", null, typed.end + ": ") : "", typed.says,
      typed.decide ? h("p", null, `${typed.readings.length} readings. What tells them apart: ${typed.decide}`) : "",
      typed.end && typed.meaning === "end" && typed.readings.length === 0 ? h("p", null, "Nothing in use reads like that.") : ""];
  }

  function faultWords(typed, half) {
    const { fault } = typed;
    if (half) return [h("span", { class: "hint" }, "Go on: " + (fault.expected || fault.message))];
    return [marked(typed.words, fault.column, fault.width), " ", fault.message,
      fault.expected ? h("p", null, "Expected " + fault.expected + ".") : "",
      fault.mend ? h("p", null, "To mend: ", mendButton(typed) ?? sentence(fault.mend)) : ""];
  }

  /* A mend that is only another word is one button. */
  function mendButton({ words, fault }) {
    const word = /^(?:did you mean|write) ([^ ]+?)\??$/.exec(fault.mend)?.[1];
    if (!word) return null;
    return h("button", { type: "button", class: "small", click: () => {
      const letters = Array.from(words);
      letters.splice(fault.column - 1, fault.width, word);
      input.value = letters.join("");
      input.focus();
      read(false);
      changed();
    } }, "write " + word);
  }

  const readLater = later(() => read(true), 60);
  input.addEventListener("input", () => { readLater(); changed(); });
  input.addEventListener("keydown", (event) => {
    if (offers.key(event)) return;
    if (event.key === "ArrowDown") { event.preventDefault(); read(true); }
  });
  input.addEventListener("click", () => { if (input.value.trim() === "") read(true); });
  input.addEventListener("blur", () => offers.toggle(false));
  read(false);
  return h("div", { class: "typed" }, h("label", { for: id }, label), h("div", { class: "combo" }, input, offers.list), reading);
}

/* A group of such fields, of which a person may add more. */
export class Many {
  constructor(box, { changed, holds }) {
    this.box = box;
    this.name = box.dataset.many;
    this.most = Number(box.dataset.most);
    this.changed = changed;
    this.holds = holds;
    this.fields = h("div");
    this.more = h("button", { type: "button", class: "small", click: () => this.add("", true) });
    box.append(this.fields, this.more);
    this.set([]);
  }

  get values() {
    return Array.from(this.fields.querySelectorAll("input"), (input) => input.value.trim()).filter(Boolean);
  }

  set(values) {
    this.fields.replaceChildren();
    const least = this.box.dataset.optional ? 0 : 1;
    const wanted = values.slice(0, this.most);
    while (wanted.length < least) wanted.push("");
    for (const value of wanted) this.add(value, false);
    this.showMore();
  }

  add(value, focus) {
    if (this.fields.childElementCount >= this.most) return;
    const count = this.fields.childElementCount;
    const field = typedField({
      name: this.name, wanted: this.name, value, help: this.box.dataset.help, changed: this.changed,
      label: this.box.dataset.label + (count > 0 ? " " + (count + 1) : ""),
      holds: this.holds && ((typed) => this.holds(field, typed)),
    });
    this.fields.append(field);
    this.showMore();
    if (focus) field.querySelector("input").focus();
  }

  showMore() {
    const count = this.fields.childElementCount;
    this.more.hidden = this.most === 1 || count >= this.most;
    this.more.textContent = "+ " + (this.box.dataset.add || this.box.dataset.label);
  }
}
