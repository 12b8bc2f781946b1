/* SPDX-License-Identifier: MIT */
/* Asking the counter: one question of a kind at a time, the newest wins. */
import { h } from "./dom.js";

const running = new Map();

/* What came back is not what was asked for: the words to show, and the faults with their places. */
export class Refusal extends Error {
  constructor(words, faults, status = 0) {
    super(words);
    this.status = status;
    this.faults = faults || [];
  }
}

/* Fetches JSON. `kind` names the question: a newer one of the same kind drops the older, whose promise then gives
 * null. */
export async function ask(kind, path, parameters, body) {
  running.get(kind)?.abort();
  const control = new AbortController();
  running.set(kind, control);
  try {
    const query = parameters ? "?" + new URLSearchParams(parameters) : "";
    const response = await fetch(path + query, {
      method: body === undefined ? "GET" : "POST",
      body,
      headers: body === undefined ? {} : { "Content-Type": "application/yaml" },
      signal: control.signal,
      cache: "no-store",
    });
    const answer = await response.json();
    if (!response.ok) throw new Refusal(answer.error, answer.faults, response.status);
    return { answer, milliseconds: timing(response) };
  } catch (error) {
    if (error.name === "AbortError") return null;
    if (error instanceof Refusal) throw error;
    throw new Refusal("The counter does not answer. Is it still running?", []);
  } finally {
    if (running.get(kind) === control) running.delete(kind);
  }
}

function timing(response) {
  const found = /dur=([\d.]+)/.exec(response.headers.get("Server-Timing") || "");
  return found ? Number(found[1]) : null;
}

/* A drawing as an element of this page; null if a newer one was asked for meanwhile. It is read as a document of
 * its own, so nothing in it can become a script here. */
export function draw(kind, text, parameters, path) {
  running.get(kind)?.abort();
  return new Promise((done, failed) => {
    const request = new XMLHttpRequest();
    running.set(kind, { abort: () => request.abort() });
    if (text === null) {
      request.open("GET", path + "?" + new URLSearchParams(parameters));
    } else {
      request.open("POST", path + "?" + new URLSearchParams({ bare: "yes", ...parameters }));
      request.setRequestHeader("Content-Type", "application/yaml");
    }
    request.responseType = "document";
    request.onabort = () => done(null);
    request.onerror = () => failed(new Refusal("The drawing did not come.", []));
    request.onload = () => {
      const root = request.response?.documentElement;
      if (request.status === 200 && root?.localName === "svg") done(document.importNode(root, true));
      else failed(new Refusal("The drawing did not come.", []));
    };
    request.send(text);
  });
}

/* Words with a full stop, unless they end with a mark of their own. */
export const sentence = (words) => (/[.?!]$/.test(words) ? words : words + ".");

/* A line with `width` characters from `column` on marked. */
export function marked(line, column, width) {
  const letters = Array.from(line);
  const start = Math.max(0, column - 1);
  return h("code", { class: "line" }, letters.slice(0, start).join(""),
    h("mark", null, letters.slice(start, start + width).join("") || " "), letters.slice(start + width).join(""));
}
