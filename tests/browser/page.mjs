/* SPDX-License-Identifier: MIT */
/*
 * The counter page in a real browser:   node tests/browser/page.mjs BINARY [FOLDER for pictures]
 *
 * The three main jobs are clicked through and done by keyboard alone; bad input, paper, zoom and the rules of WCAG 2.2
 * (level AA, as axe-core checks them) are looked at. The names of the tests are the sentences that they prove.
 */
import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const require = createRequire(import.meta.url);
const AXE = fs.readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const SOURCE = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const BINARY = path.resolve(process.argv[2]);
const PICTURES = process.argv[3] ? path.resolve(process.argv[3]) : null;
const SCRATCH = fs.mkdtempSync(path.join(os.tmpdir(), "oilway-browser-"));
const CHROMIUM = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((each) => fs.existsSync(each));
const FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync"];
const DESK = { width: 1280, height: 900 };
const PHONE = { width: 360, height: 740 };

/* A counter on a free port. */
function openCounter(...options) {
  const child = spawn(BINARY, ["counter", "--port", "0", ...options], { cwd: SOURCE, stdio: ["ignore", "pipe", "ignore"] });
  return new Promise((done, failed) => {
    child.stdout.on("data", (bytes) => {
      const found = /http:\/\/[\d.:]+\//.exec(bytes);
      if (found) done({ url: found[0], close: () => child.kill("SIGTERM") });
    });
    child.on("exit", (code) => failed(new Error(`the counter ended with ${code}`)));
  });
}

let context, home;
const complaints = [];

async function openBrowser() {
  context = await chromium.launchPersistentContext(path.join(SCRATCH, "profile"), {
    executablePath: CHROMIUM, headless: true, args: FLAGS, viewport: DESK, acceptDownloads: true, permissions: ["clipboard-read", "clipboard-write"],
  });
  context.setDefaultTimeout(20000);
  context.on("request", (request) => {
    const { protocol, host } = new URL(request.url());
    if (protocol !== "blob:" && !/^127\.0\.0\.1:\d+$/.test(host)) complaints.push("asked elsewhere: " + request.url());
  });
}

/* A page at a link, whose complaints are remembered. */
async function open(link, size = DESK, url = home) {
  const page = await context.newPage();
  await page.setViewportSize(size);
  page.on("pageerror", (error) => complaints.push(`${link}: ${error.message}`));
  page.on("console", (message) => {
    /* A refused ask is told to the person; the browser also notes its status. */
    if (["error", "warning"].includes(message.type()) && !/status of 40\d/.test(message.text())) complaints.push(`${link}: ${message.text()}`);
  });
  await page.goto(url + link);
  return page;
}

const link = (parameters) => "?" + new URLSearchParams(parameters);
const FOUND = link([["view", "stack"], ["from", "brockle-4:gallery"], ["to", "curlew-8b:oil-in"], ["keep", "sw-2"]]);
const status = (page, id) => page.locator(`#${id}-status`);
const says = (page, id, words) => page.waitForFunction(([name, part]) => document.getElementById(name).textContent.includes(part), [`${id}-status`, words]);
const quiet = (page) => page.waitForFunction(() => document.querySelectorAll('[aria-busy="true"]').length === 0);

function command(...words) {
  return execFileSync(BINARY, words, { cwd: SOURCE, encoding: "utf8" });
}

const LAYOUT = command("stack", "--from", "brockle-4:gallery", "--to", "curlew-8b:oil-in", "--keep", "sw-2", "--format", "yaml");
const JOB = fs.readFileSync(path.join(SOURCE, "examples/tractor-pull.yaml"), "utf8");
const FILLED = {
  stack: FOUND,
  readings: link({ view: "stack", from: "M10 female", to: "-4 flare37 male" }),
  none: link({ view: "stack", from: "M13x1.25 female washer", to: "plover-41:oil-in" }),
  wrong: link({ view: "stack", from: "brockle-4:galery", to: "1/8 NPT femle" }),
  check: link({ view: "check", layout: LAYOUT }),
  unreadable: link({ view: "check", layout: LAYOUT.replace("curlew-8b:oil-in]", "curlew-8b:oil-inn]") }),
  limits: link([["view", "stack"], ["from", "brockle-4:gallery"], ["to", "plover-41:oil-in"], ["rating", "9 bar"], ["explain", "x-2"]]),
  astray: link([["view", "stack"], ["from", "brockle-4:gallery"], ["to", "plover-41:oil-in"], ["bore", "3"], ["oil", "mud"]]),
  mates: link([["view", "thread"], ["end", "M10 female"]]),
  misread: link([["view", "thread"], ["diameter", "abc"], ["pitch", "1"], ["tpi", "2"], ["end", "M10x9 male"]]),
  failing: link({ view: "job", job: fs.readFileSync(path.join(SOURCE, "examples/must-fail.yaml"), "utf8") }),
  unplanned: link({ view: "job", job: JOB.replace("turbo: plover-41", "turbo: plover-4") }),
  unwritten: link({ view: "job" }),
  thread: link([["view", "thread"], ["diameter", "9.7"], ["side", "male"], ["end", "R1/8 male"], ["end", "1/8-27 NPT female"]]),
  job: link({ view: "job", job: JOB }),
  empty: "",
};

/* ---- the main jobs, by mouse ---------------------------------------------------------------- */

async function a_stack_is_found_and_its_switch_kept() {
  const page = await open("");
  await page.getByLabel("From").fill("brockle-4");
  await page.getByRole("option", { name: /^brockle-4:gallery/ }).click();
  await page.getByLabel("To", { exact: true }).fill("curl");
  await page.getByRole("option", { name: /^curlew-8b:oil-in/ }).click();
  await page.getByRole("button", { name: "Keep sw-2" }).click();
  await says(page, "stack", "the best has 5 parts");
  await quiet(page);
  const best = JSON.parse(command("stack", "--from", "brockle-4:gallery", "--to", "curlew-8b:oil-in", "--keep", "sw-2", "--best", "3", "--json"));
  assert.equal(await page.getByRole("radio").count(), best.stacks.length);
  for (const part of best.stacks[0].parts) assert.ok(await page.locator(".chosen").getByText(part.id).count() > 0, part.id);
  assert.match(await page.locator(".drawing svg title").first().textContent(), /keeping sw-2/);
  assert.equal(await page.locator(".joints tbody tr").count(), best.stacks[0].joint_count);
  assert.match(await page.locator(".total").textContent(), new RegExp(best.stacks[0].price.toFixed(2)));
  await page.getByRole("radio").nth(1).check();
  await page.waitForFunction(() => location.search.includes("show=2"));
  assert.match(await page.locator(".chosen").textContent(), /^ ?2\./);
  /* The link holds the whole ask. */
  const again = await open(new URL(page.url()).search);
  await says(again, "stack", "the best has 5 parts");
  assert.equal(await again.getByRole("combobox", { name: "Keep" }).inputValue(), "sw-2");
  assert.match(await again.locator(".chosen").textContent(), /^ ?2\./);
  await again.getByRole("button", { name: "Copy the link" }).click();
  assert.equal(await again.evaluate(() => navigator.clipboard.readText()), again.url());
  await Promise.all([page.close(), again.close()]);
}

/* The figures are those of the layout that is looked at, not of the best; without ports of machines too. */
async function the_oil_is_reckoned_in_the_layout_that_is_looked_at() {
  const page = await open(FOUND + "&oil=20W-50");
  const hotOf = async (yaml) => (await (await fetch(home + "api/flow?oil=20W-50", { method: "POST", body: yaml })).json()).feed.states.find((state) => state.name === "hot rev").turbo_pressure_bar;
  const shown = () => page.locator("#stack-result tr:has(th:text-is('hot rev')) td").nth(3).textContent();
  await says(page, "stack", "5 parts");
  await quiet(page);
  const stacks = JSON.parse(command("stack", "--from", "brockle-4:gallery", "--to", "curlew-8b:oil-in", "--keep", "sw-2", "--best", "3", "--json")).stacks;
  const wanted = [await hotOf(stacks[0].layout), await hotOf(stacks[1].layout)];
  assert.ok(Math.abs(wanted[0] - wanted[1]) > 0.05, "the two layouts differ");
  assert.equal(parseFloat(await shown()), Number(wanted[0].toFixed(2)));
  await page.getByRole("radio", { name: /^ ?2\./ }).check();
  await page.waitForFunction(() => location.search.includes("show=2"));
  await quiet(page);
  assert.equal(parseFloat(await shown()), Number(wanted[1].toFixed(2)));
  await page.close();
  const bare = await open(link({ view: "stack", from: "1/8-27 NPT female", to: "-4 flare37 male", circuit: "feed" }));
  await bare.waitForSelector("#stack-result tr:has(th:text-is('hot rev'))");
  assert.match(await bare.locator("#stack-result").textContent(), /oil that to takes at 3 bar/);
  await bare.close();
  const drain = await open(link({ view: "stack", from: "dunlin-63:oil-out", to: "brockle-6:side-plate" }));
  await says(drain, "stack", "layout");
  await quiet(drain);
  assert.equal(await drain.getByRole("heading", { name: "The oil" }).count(), 0);
  await drain.close();
}

async function limits_are_held() {
  const page = await open(FOUND);
  await says(page, "stack", "5 parts");
  await page.getByLabel("Least bore").fill("4 mm");
  await page.waitForFunction(() => location.search.includes("bore=4"));
  await quiet(page);
  const bores = await page.locator(".alternative .sub").allTextContents();
  for (const words of bores) assert.ok(Number(/bore ([\d.]+)\smm/.exec(words)[1]) >= 4, words);
  await page.getByText("More limits").click();
  await page.getByLabel("Leave out").fill("hose-4-ptfe, hose-4-ptfe-cv");
  await page.waitForFunction(() => location.search.includes("without="));
  await page.waitForFunction(() => !/hose-4-ptfe/.test(document.querySelector(".chain")?.textContent ?? "hose-4-ptfe"));
  await page.close();
}

async function a_thread_is_named_and_what_goes_on_it() {
  const page = await open(link({ view: "thread" }));
  await page.getByLabel("Diameter").fill("10.2");
  await page.getByLabel("male, over its crests", { exact: true }).check();
  await page.getByLabel("or threads per inch").fill("27");
  await says(page, "thread", "1/8-27 NPT male");
  assert.ok(await page.getByRole("heading", { name: /What decides|Confirm/ }).count() > 0);
  await page.getByRole("link", { name: "1/8-27 NPT male" }).click();
  await says(page, "mates", "seal on 1/8-27 NPT male");
  assert.ok(await page.locator("#mates-result tr.right").count() > 0);
  assert.match(await page.locator("#mates-result").textContent(), /starts and jams/);
  await page.close();
}

async function a_part_is_swapped_and_the_layout_checked_again() {
  const page = await open(FOUND);
  await says(page, "stack", "5 parts");
  await page.getByRole("link", { name: "Swap a part" }).click();
  await says(page, "check", "It holds");
  await page.getByRole("button", { name: "Swap he-4-s#2" }).click();
  await says(page, "swap", "fit");
  assert.equal(await page.locator("#swap-list").getByText("he-6-s", { exact: true }).count(), 0);
  await page.getByRole("button", { name: "Use he-4-90", exact: true }).click();
  await says(page, "check", "he-4-s#2 is now he-4-90. It holds");
  assert.match(await page.getByLabel("Layout", { exact: true }).inputValue(), /he-4-s, hose-4-ptfe, he-4-90/);
  await page.getByRole("button", { name: "Undo the swap" }).click();
  await says(page, "check", "undone");
  assert.match(await page.getByLabel("Layout", { exact: true }).inputValue(), /he-4-s, hose-4-ptfe, he-4-s/);
  await page.close();
}

async function a_layout_that_does_not_hold_says_why() {
  const page = await open(link({ view: "check", layout: LAYOUT.replace(/asked:.*\n/, "").replace("rs-m11x1-f4-1.0, ", "") }));
  await says(page, "check", "It does not hold");
  assert.ok(await page.locator(".findings .error").count() > 0);
  assert.match(await page.locator(".findings .error").first().textContent(), /To mend: .*Source: /s);
  await page.close();
}

async function a_job_is_written_and_planned() {
  const page = await open(link({ view: "job" }));
  await page.getByRole("button", { name: "Write this job" }).click();
  assert.equal(await page.locator("#job-begin .fault").count(), 2);
  await page.locator("#job-engine").selectOption("brockle-4");
  assert.equal(await page.locator("#job-keep").inputValue(), "sw-2");
  await page.locator("#job-hose").fill("650 mm");
  await page.locator("#job-turbo").selectOption("plover-41");
  await page.getByRole("button", { name: "Write this job" }).click();
  await says(page, "job", "hold");
  for (const name of [/^Feed/, /^Drain of plover-41.*taken/, /^Coolant/, /^Bill/, /^Assumed/, /^In order of work/])
    assert.ok(await page.getByRole("heading", { name }).count() > 0, String(name));
  assert.match(await page.locator("#job-part-feed").textContent(), /hot rev/);
  assert.match(await page.locator("#job-text").inputValue(), /^feed: \{hose: 650 mm\}$/m);
  assert.equal(await page.locator(".fault").count(), 0);
  await page.close();
}

async function findings_stand_in_the_order_of_the_drawing() {
  const page = await open(link({ view: "stack", from: "dunlin-63:oil-out", to: "brockle-6:side-plate" }));
  await says(page, "stack", "layouts");
  await quiet(page);
  const shown = await page.locator("#stack-result .findings li").allTextContents();
  assert.match(shown[0], /warning.*narrower than the outlet/s); /* 1 in the drawing */
  assert.ok(shown.some((words) => /pressure is not given/.test(words)), "what the ask brought up stands behind");
  assert.equal(new Set(shown).size, shown.length, "each once");
  await page.close();
  const bare = await open(link([["view", "stack"], ["from", "brockle-4:gallery"], ["to", "plover-41:oil-in"], ["to", "dunlin-63:oil-in"]]));
  await says(bare, "stack", "layout");
  await quiet(bare);
  const lost = await bare.locator("#stack-result section:has(h2:text-is('Findings')), #stack-result .piece:has(h2:text-is('Findings'))").first().locator(".findings li").allTextContents();
  assert.equal(lost.filter((words) => /loses its place/.test(words)).length, 1);
  await bare.close();
}

async function a_bill_has_each_length_as_it_is_cut() {
  const job = fs.readFileSync(path.join(SOURCE, "examples/twin-feed.yaml"), "utf8");
  const bill = JSON.parse(command("bill", path.join(SOURCE, "examples/twin-feed.yaml"), "--json"));
  const hoses = bill.lines.filter((line) => line.length_mm !== null);
  assert.ok(hoses.some((line) => line.cuts.length > 1), "a hose that is cut to two lengths");
  const page = await open(link({ view: "job", job }));
  await says(page, "job", "hold");
  await quiet(page);
  for (const line of hoses) {
    const row = await page.locator(`.bill tr:has(th:text-is("${line.id}"))`).last().textContent();
    for (const cut of line.cuts) assert.ok(row.replaceAll("\u00a0", " ").includes(`${cut.count} × ${cut.length_mm} mm`), `${line.id}: ${row}`);
  }
  await page.close();
}

/* What stands in every field of the view that is open, and what is shown. */
const same = (one, other, what) => {
  assert.deepEqual(one.said, other.said, what);
  const at = Array.from(one.shown).findIndex((letter, index) => letter !== other.shown[index]);
  assert.ok(one.shown === other.shown, `${what}: ${one.shown.slice(Math.max(0, at - 60), at + 100)} / ${other.shown.slice(Math.max(0, at - 60), at + 100)}`);
};
const fieldsOf = (page) => page.evaluate(() => {
  const said = [];
  for (const field of document.querySelectorAll(".view:not([hidden]) :is(input, select, textarea)")) {
    if (field.type === "file" || field.name === "alternative" || field.name === "reading") continue;
    said.push([field.name || field.id, field.type === "checkbox" || field.type === "radio" ? `${field.value} ${field.checked}` : field.value]);
  }
  return { said, shown: document.querySelector(".view:not([hidden]) .answer").textContent.replace(/Answered in.*?ms/, "") };
});

async function the_link_holds_every_field() {
  /* Everything that the stack's form takes, none at its first value. */
  const page = await open("");
  await page.getByLabel("From", { exact: true }).fill("brockle-4:gallery");
  await page.getByLabel("To", { exact: true }).fill("plover-41:oil-in");
  await page.getByRole("button", { name: "Another port to reach" }).click();
  await page.getByLabel("To 2").fill("dunlin-63:oil-in");
  for (const [name, value] of [["Keep", "sw-2"], ["Keep 2", "1/8-27 NPT male"]]) {
    await page.getByRole("button", { name: "Keep a switch or sender" }).click();
    await page.locator("#stack-form").getByLabel(name, { exact: true }).fill(value);
  }
  await page.getByText("More limits").click();
  const form = page.locator("#stack-form");
  for (const [name, value] of Object.entries({ hose: "700 mm", oil: "20W-50", bore: "2.5 mm", orifice: "0.5..3 mm", rating: "7 bar", temperature: "120 C", without: "tee-1, tee-2", explain: "x-2" }))
    await form.locator(`[name="${name}"]`).fill(value);
  for (const [name, value] of Object.entries({ best: "8", circuit: "feed", bearing: "journal", flexible: "any", closing: "no", restrictor: "any", fluid: "oil" }))
    await form.locator(`[name="${name}"]`).selectOption(value);
  for (const name of ["tolerate", "remote-switch"]) await form.locator(`[name="${name}"]`).check();
  await page.waitForFunction(() => location.search.includes("remote-switch=yes"));
  await says(page, "stack", "layouts");
  await page.getByRole("radio", { name: /^ ?3\./ }).check();
  await quiet(page);
  const before = await fieldsOf(page);
  for (const [name, value] of before.said) assert.ok(value !== "" && !/ false$/.test(value), `${name} is not filled in`);
  await page.reload();
  await says(page, "stack", "layouts");
  await quiet(page);
  same(await fieldsOf(page), before, "after reloading");
  const elsewhere = await open(new URL(page.url()).search);
  await says(elsewhere, "stack", "layouts");
  await quiet(elsewhere);
  same(await fieldsOf(elsewhere), before, "on another page");
  await Promise.all([page.close(), elsewhere.close()]);
  /* The other views. */
  const thread = link([["view", "thread"], ["diameter", "10,2"], ["pitch", "0.94"], ["taper", "yes"], ["accuracy", "0.1"], ["side", "male"], ["end", "R1/8 male"], ["end", "1/8-27 NPT female"]]);
  for (const [where, wanted] of [[thread, ["10,2", "0.94", "yes", "0.1", "R1/8 male"]], [FILLED.job, [JOB]], [FILLED.check, [LAYOUT]]]) {
    const other = await open(where);
    await quiet(other);
    await other.waitForFunction(() => document.querySelector(".view:not([hidden]) .piece"));
    await quiet(other);
    const one = await fieldsOf(other);
    for (const value of wanted) assert.ok(one.said.some(([, there]) => there === value), value);
    await other.reload();
    await other.waitForFunction(() => document.querySelector(".view:not([hidden]) .piece"));
    await quiet(other);
    same(await fieldsOf(other), one, where.slice(0, 20));
    await other.close();
  }
}

async function going_back_and_forward_loses_nothing() {
  const page = await open(FOUND);
  await says(page, "stack", "5 parts");
  await page.getByRole("link", { name: "Swap a part" }).click();
  await says(page, "check", "It holds");
  const first = await page.getByLabel("Layout", { exact: true }).inputValue();
  await page.getByRole("button", { name: "Swap he-4-s#2" }).click();
  await says(page, "swap", "fit");
  await page.getByRole("button", { name: "Use he-4-90", exact: true }).click();
  await says(page, "check", "is now");
  const second = await page.getByLabel("Layout", { exact: true }).inputValue();
  await page.goBack();
  await page.waitForFunction((words) => document.getElementById("layout-text").value === words, first);
  await page.goForward();
  await page.waitForFunction((words) => document.getElementById("layout-text").value === words, second);
  await page.goBack();
  await page.goBack();
  await page.waitForFunction(() => !document.getElementById("view-stack").hidden);
  assert.equal(await page.getByLabel("From", { exact: true }).inputValue(), "brockle-4:gallery");
  await says(page, "stack", "5 parts");
  await page.getByRole("link", { name: "Name a thread" }).click();
  await page.getByLabel("Diameter").fill("9.7");
  await says(page, "thread", "Likeliest");
  await page.getByRole("link", { name: "Find a stack" }).click();
  await says(page, "stack", "5 parts");
  await page.goBack();
  await says(page, "thread", "Likeliest");
  assert.equal(await page.getByLabel("Diameter").inputValue(), "9.7");
  await page.close();
}

/* A link has its limits; what does not fit is kept beside it, and said. */
async function a_text_too_long_for_a_link_is_still_there_after_reloading() {
  const page = await open(link({ view: "job" }));
  const long = JOB + "# " + "a remark that goes on and on ".repeat(700) + "\n";
  await page.getByLabel("Job", { exact: true }).fill(long);
  await says(page, "job", "hold");
  assert.ok(page.url().length < 200, page.url().slice(0, 300));
  assert.equal(await page.getByText("Too long for a link").count(), 1);
  await page.reload();
  await says(page, "job", "hold");
  assert.equal(await page.getByLabel("Job", { exact: true }).inputValue(), long);
  await hasPaper(page);
  await page.getByRole("link", { name: "Find a stack" }).click();
  await page.goBack();
  await says(page, "job", "hold");
  assert.equal(await page.getByLabel("Job", { exact: true }).inputValue(), long);
  await page.close();
}

/* ---- by keyboard alone ---------------------------------------------------------------------- */

/* Tabs until the focus is where it is wanted. */
async function tabTo(page, wanted, most = 60) {
  for (let steps = 0; steps < most; steps++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((words) => {
      const at = document.activeElement;
      const name = at.getAttribute("aria-label") || at.labels?.[0]?.textContent || at.textContent;
      return new RegExp(words).test(name.trim());
    }, wanted)) return;
  }
  assert.fail(`the Tab key never comes to ${wanted}`);
}

async function the_keyboard_alone_suffices() {
  const page = await open("");
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement.textContent), "To the work");
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement.id), "main");
  await tabTo(page, "^From");
  await page.keyboard.type("brockle-4:g");
  await page.waitForSelector('[role="option"]');
  await page.keyboard.press("ArrowDown");
  assert.match(await page.evaluate(() => document.getElementById(document.activeElement.getAttribute("aria-activedescendant")).textContent), /^brockle-4:gallery/);
  await page.keyboard.press("Enter");
  await page.waitForSelector(".reading:has-text('holds sw-2')");
  await tabTo(page, "^Keep sw-2");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement.value === "sw-2");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.type("curlew-8b:oil-in");
  await page.waitForFunction(() => document.querySelector(".offers:not([hidden])") || document.querySelector("#stack-status").textContent !== "");
  await page.keyboard.press("Escape");
  await says(page, "stack", "the best has 5 parts");
  await quiet(page);
  await tabTo(page, "^ ?1\\. 5 parts");
  await page.keyboard.press("ArrowDown");
  await page.waitForFunction(() => location.search.includes("show=2"));
  await page.waitForFunction(() => document.activeElement.name === "alternative");
  await tabTo(page, "^Swap a part");
  await page.keyboard.press("Enter");
  await says(page, "check", "It holds");
  await quiet(page);
  await tabTo(page, "^Swap he-3-f4s$");
  await page.keyboard.press("Enter");
  await says(page, "swap", "fit");
  await page.keyboard.press("Escape");
  assert.equal(await page.locator("#swap-dialog").evaluate((dialog) => dialog.open), false);
  assert.equal(await page.evaluate(() => document.activeElement.textContent), "Swap he-3-f4s");
  await page.keyboard.press("Enter");
  await says(page, "swap", "fit");
  await tabTo(page, "^Use ", 5);
  await page.keyboard.press("Enter");
  await says(page, "check", "is now");
  await page.waitForFunction(() => document.activeElement.id === "undo");
  await page.close();
}

async function threads_and_jobs_need_no_mouse_either() {
  const page = await open("");
  await tabTo(page, "^Name a thread");
  await page.keyboard.press("Enter");
  await tabTo(page, "^Diameter");
  await page.keyboard.type("9.7");
  await tabTo(page, "^not said");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  await says(page, "thread", "Likeliest: R1/8 male");
  await tabTo(page, "^R1/8 male");
  await page.keyboard.press("Enter");
  await says(page, "mates", "seal on R1/8 male");
  /* Back to the top by the skip link's way, then the job. */
  await page.goto(home + "?view=job");
  await page.waitForFunction(() => document.getElementById("job-engine").options.length > 3);
  await tabTo(page, "^Engine");
  await page.keyboard.type("brockle-4");
  await tabTo(page, "^Turbo");
  await page.keyboard.type("plover-41");
  await tabTo(page, "^Oil");
  await page.keyboard.type("20W-50");
  await page.keyboard.press("Enter");
  await says(page, "job", "hold");
  assert.match(await page.locator("#job-text").inputValue(), /^engine: brockle-4\nturbo: plover-41\nkeep: \[sw-2\]\noil: 20W-50$/m);
  await quiet(page);
  await tabTo(page, "^What is assumed");
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement.textContent), "Assumed");
  await page.close();
}

async function a_named_thread_prints_on_one_or_two_pages() {
  for (const where of [FILLED.thread, FILLED.mates]) {
    const page = await open(where);
    await page.waitForSelector("#mates-result tbody tr");
    await page.waitForFunction(() => document.getElementById("thread-status").textContent || !document.querySelector('[name="diameter"]').value);
    for (const format of ["A4", "Letter"]) {
      const file = path.join(SCRATCH, "thread.pdf");
      await page.pdf({ path: file, format });
      assert.ok(pagesOf(file) <= 2, `${where} on ${format}: ${pagesOf(file)} pages`);
      assert.match(wordsOf(file), /What goes on it/);
      if (where === FILLED.thread) assert.match(wordsOf(file), /Measured: diameter 9\.7 mm, male\./);
    }
    await page.close();
  }
}

/* ---- bad input ------------------------------------------------------------------------------ */

async function bad_input_is_marked_and_mended() {
  const page = await open(FILLED.wrong);
  await says(page, "stack", "cannot be looked for");
  assert.equal(await page.locator('input[aria-invalid="true"]').count(), 2);
  assert.equal(await page.locator(".typed mark").first().textContent(), "galery");
  assert.match(await page.locator("#stack-result").textContent(), /From: the machine has no port of that name.*To: "femle" is no word of an end/);
  await page.getByRole("button", { name: "write gallery" }).click();
  assert.equal(await page.getByLabel("From").inputValue(), "brockle-4:gallery");
  await page.getByRole("button", { name: "write female" }).click();
  assert.equal(await page.getByLabel("To", { exact: true }).inputValue(), "1/8 NPT female");
  await page.getByLabel("From").fill("brockle-4:gallery");
  await page.getByLabel("To", { exact: true }).fill("plover-41:oil-in");
  await page.getByLabel("Least bore").fill("3");
  /* At the field, tied to it for those who listen, and mended by its button. */
  const bore = page.getByLabel("Least bore");
  await page.waitForSelector('input[name="bore"][aria-invalid="true"]');
  assert.match(await bore.evaluate((input) => document.getElementById(input.getAttribute("aria-describedby")).textContent), /cannot be read.*with its unit/s);
  await page.getByRole("link", { name: "Least bore" }).click();
  assert.equal(await page.evaluate(() => document.activeElement.name), "bore");
  await page.getByRole("button", { name: "write 3 mm" }).click();
  await says(page, "stack", "layout");
  assert.equal(await page.locator(".fault").count(), 0);
  await page.locator("input[name=oil]").fill("mud");
  await page.waitForSelector('.fault:has-text("no SAE grade")');
  await says(page, "stack", "layout");
  await page.locator("input[name=oil]").fill("20W-50");
  await page.waitForSelector('.field .reading:has-text("at 100")');
  assert.equal(await page.locator(".fault").count(), 0);
  await page.close();
}

async function markup_typed_in_stays_text() {
  const nasty = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
  for (const parameters of [{ view: "stack", from: nasty, to: nasty }, { view: "check", layout: `layout: ${JSON.stringify(nasty)}\nfrom: 1/8-27 NPT female\nparts: [1/8-27 NPT male]\n` },
    { view: "job", job: nasty }, { view: "thread", diameter: nasty, end: nasty }]) {
    const page = await open(link(parameters));
    await page.waitForTimeout(600);
    assert.match(await page.title(), /oilway counter$/);
    assert.equal(await page.locator("main img").count(), 0);
    await page.close();
  }
}

async function an_unreadable_layout_names_its_line() {
  const page = await open(FILLED.unreadable);
  await says(page, "check", "cannot be read");
  assert.match(await page.locator("#check-faults").textContent(), /line \d+ /);
  assert.equal(await page.locator("#check-faults mark").count(), 1);
  assert.equal(await page.getByLabel("Layout", { exact: true }).getAttribute("aria-invalid"), "true");
  await page.close();
}

async function where_there_is_no_stack_the_missing_part_is_named() {
  const page = await open(FILLED.none);
  await says(page, "stack", "There is no such stack");
  assert.match(await page.locator("#stack-result").textContent(), /One made part would complete it.*M13x1.25 male/s);
  await page.waitForSelector(".drawing svg");
  await page.close();
}

async function a_bad_catalogue_is_told_and_the_page_goes_on() {
  const folder = path.join(SCRATCH, "catalog");
  fs.cpSync(path.join(SOURCE, "catalog"), folder, { recursive: true });
  const counter = await openCounter("--catalog", folder);
  const page = await open(FOUND, DESK, counter.url);
  await says(page, "stack", "5 parts");
  fs.writeFileSync(path.join(folder, "zz.yaml"), "page: zz\nkind: adaptor\n");
  await page.waitForSelector("#shop-says:has-text('has faults')", { timeout: 30000 });
  assert.match(await page.locator("#shop-says").textContent(), /zz\.yaml:2/);
  await page.getByLabel("Least bore").fill("3 mm");
  await page.waitForFunction(() => location.search.includes("bore=3"));
  await says(page, "stack", "layouts");
  fs.rmSync(path.join(folder, "zz.yaml"));
  await page.waitForFunction(() => document.querySelector("#shop-says").textContent === "", null, { timeout: 30000 });
  counter.close();
  await page.close();
}

/* ---- paper, width, zoom, rules -------------------------------------------------------------- */

const pagesOf = (file) => Number(/Pages:\s+(\d+)/.exec(execFileSync("pdfinfo", [file], { encoding: "utf8" }))[1]);
const wordsOf = (file) => execFileSync("pdftotext", [file, "-"], { encoding: "utf8" });
const hasPaper = (page) => page.waitForSelector("html.has-paper");

/* What a sheet says must come out of the printer, whole and nothing else, as when the sheet is printed from its own tab. */
async function what_is_printed_is_the_sheet_on_one_or_two_pages() {
  const wanted = { stack: ["curlew-8b:oil-in", "sw-2", "Bill"], second: ["curlew-8b:oil-in", "sw-2", "he-3-f4s"], check: ["curlew-8b:oil-in", "sw-2", "Bill"],
    job: ["plover-41", "side-plate", "Order of work", "clocked 15 deg"], none: ["M13x1.25 male", "Drawing checked by"], reading: ["Only if it is M10x1 female washer."], other: ["Only if it is M10x1.25 female washer.", "12.5 mm is M10x1.25"] };
  const open10 = link({ view: "stack", from: "M10 female washer", to: "-4 flare37 male" });
  const where = { ...FILLED, second: FOUND + "&show=2", reading: open10, other: open10 + "&reading=2" };
  for (const [name, all] of Object.entries(wanted)) {
    const page = await open(where[name]);
    await hasPaper(page);
    await quiet(page);
    const alone = await open("sheet" + new URL(await page.getByRole("link", { name: "Counter sheet" }).getAttribute("href"), home).search);
    for (const format of ["A4", "Letter"]) {
      const file = path.join(PICTURES ?? SCRATCH, `paper-${name}-${format}.pdf`);
      const own = path.join(SCRATCH, "sheet.pdf");
      await page.pdf({ path: file, format });
      await alone.pdf({ path: own, format });
      const pages = pagesOf(file);
      assert.ok(pages >= 1 && pages <= 2, `${name} on ${format}: ${pages} pages`);
      assert.equal(pages, pagesOf(own), `${name} on ${format}: as many pages as the sheet alone`);
      assert.equal(wordsOf(file), wordsOf(own), `${name} on ${format}: the words of the sheet`);
      for (const words of [...all, ...(name === "none" ? [] : ["Fitted by"]), "Hot oil"]) assert.ok(wordsOf(file).includes(words), `${name}: ${words}`);
    }
    await Promise.all([page.close(), alone.close()]);
  }
}

async function the_print_button_prints_the_newest_sheet_under_its_own_name() {
  const page = await open(FOUND);
  await page.evaluate(() => {
    globalThis.printed = [];
    globalThis.print = () => {
      globalThis.dispatchEvent(new Event("beforeprint"));
      globalThis.printed.push(document.title);
      globalThis.dispatchEvent(new Event("afterprint"));
    };
  });
  await says(page, "stack", "5 parts");
  await page.getByRole("radio", { name: /^ ?2\./ }).check();
  await page.getByRole("button", { name: "Print", exact: true }).click();
  await page.waitForFunction(() => globalThis.printed.length === 1);
  assert.match((await page.evaluate(() => globalThis.printed))[0], /curlew-8b:oil-in/);
  const file = path.join(SCRATCH, "printed.pdf");
  await page.pdf({ path: file });
  assert.match(wordsOf(file), /he-3-f4s/);
  assert.match(await page.title(), /oilway counter$/);
  /* What cannot be asked leaves no old sheet behind. */
  await page.getByLabel("From", { exact: true }).fill("nowhere:at-all");
  await page.waitForFunction(() => !document.documentElement.classList.contains("has-paper"));
  await page.close();
}

async function the_counter_sheet_opens_with_its_own_style() {
  for (const [name, parameters] of [["stack", FOUND], ["check", FILLED.check], ["job", FILLED.job]]) {
    const page = await open(parameters);
    await quiet(page);
    const [sheet] = await Promise.all([context.waitForEvent("page"), page.getByRole("link", { name: "Counter sheet" }).click()]);
    sheet.on("console", (message) => complaints.push(`sheet: ${message.text()}`));
    await sheet.waitForLoadState();
    assert.match(sheet.url(), /\/sheet\?/);
    assert.equal(await sheet.evaluate(() => getComputedStyle(document.body).marginTop), "0px", `${name}: the style is held back`);
    assert.ok(await sheet.locator("svg").count() > 0, name);
    if (PICTURES) await sheet.screenshot({ path: path.join(PICTURES, `sheet-${name}.png`), fullPage: true });
    await Promise.all([sheet.close(), page.close()]);
  }
}

async function on_a_phone_who_asks_is_led_to_the_answer() {
  const page = await open(FOUND, PHONE);
  await says(page, "stack", "5 parts");
  assert.ok(await status(page, "stack").evaluate((element) => element.getBoundingClientRect().top > innerHeight), "the form is longer than a phone");
  await page.getByRole("button", { name: "Find", exact: true }).click();
  await page.waitForFunction(() => { const { top } = document.getElementById("stack-status").getBoundingClientRect(); return top > -5 && top < 200; });
  await page.close();
}

async function nothing_is_wider_than_the_page() {
  /* 640 wide is 1280 at 200 %, 320 is 1280 at 400 % (WCAG 2.2, 1.4.10). */
  for (const width of [1280, 640, 360, 320]) {
    for (const [name, where] of Object.entries(FILLED)) {
      const page = await open(where, { width, height: 700 });
      await quiet(page);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(over <= 0, `${name} at ${width}: ${over} too wide`);
      if (PICTURES) await page.screenshot({ path: path.join(PICTURES, `${name}-${width}.png`), fullPage: true });
      await page.close();
    }
  }
}

/* Text spacing as WCAG 2.2, 1.4.12 has it: nothing may be cut off. */
async function wider_text_still_fits() {
  const page = await open(FOUND, PHONE);
  await quiet(page);
  await page.evaluate(() => {
    for (const element of document.querySelectorAll("body *"))
      element.style.cssText += "line-height:1.5!important;letter-spacing:.12em!important;word-spacing:.16em!important";
  });
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth));
  const cut = await page.evaluate(() => Array.from(document.querySelectorAll("button, .button, label, td, th, p")).filter((element) =>
    element.offsetParent && !element.closest(".hidden, svg") && (element.scrollHeight > element.clientHeight + 2 && getComputedStyle(element).overflowY === "hidden")).length);
  assert.equal(cut, 0);
  await page.close();
}

async function axe(page, what) {
  await page.evaluate(AXE);
  const found = await page.evaluate(() => globalThis.axe.run(document, {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
  }));
  assert.ok(found.passes.length > 10, "axe looked at next to nothing");
  const faults = found.violations.map((one) => `${one.id}: ${one.help}: ${one.nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(" | ")}`);
  assert.deepEqual(faults, [], what);
}

async function the_rules_of_wcag_are_kept() {
  for (const size of [DESK, PHONE]) {
    for (const [name, where] of Object.entries(FILLED)) {
      const page = await open(where, size);
      await quiet(page);
      /* What is folded away is read too. */
      await page.evaluate(() => { for (const box of document.querySelectorAll("details")) box.open = true; });
      await axe(page, `${name} at ${size.width}`);
      await page.close();
    }
    const swap = await open(FILLED.check, size);
    await swap.getByRole("button", { name: "Swap he-4-s#2" }).click();
    await says(swap, "swap", "fit");
    await axe(swap, `the swap dialog at ${size.width}`);
    if (PICTURES) await swap.screenshot({ path: path.join(PICTURES, `swap-${size.width}.png`) });
    await swap.close();
    const offers = await open("", size);
    await offers.getByLabel("From").fill("bro");
    await offers.waitForSelector('[role="option"]');
    await offers.keyboard.press("ArrowDown");
    await axe(offers, `the offers at ${size.width}`);
    if (PICTURES) await offers.screenshot({ path: path.join(PICTURES, `offers-${size.width}.png`) });
    await offers.close();
  }
}

async function nothing_is_asked_elsewhere_and_nothing_complains() {
  assert.deepEqual(complaints.slice(0, 5).map((each) => each.slice(0, 300)), []);
}

const TESTS = [a_stack_is_found_and_its_switch_kept, the_oil_is_reckoned_in_the_layout_that_is_looked_at, limits_are_held, a_thread_is_named_and_what_goes_on_it, a_part_is_swapped_and_the_layout_checked_again,
  a_layout_that_does_not_hold_says_why, a_job_is_written_and_planned, a_bill_has_each_length_as_it_is_cut, findings_stand_in_the_order_of_the_drawing, the_link_holds_every_field, going_back_and_forward_loses_nothing,
  a_text_too_long_for_a_link_is_still_there_after_reloading, the_keyboard_alone_suffices, threads_and_jobs_need_no_mouse_either, bad_input_is_marked_and_mended,
  markup_typed_in_stays_text, an_unreadable_layout_names_its_line, where_there_is_no_stack_the_missing_part_is_named,
  a_bad_catalogue_is_told_and_the_page_goes_on, what_is_printed_is_the_sheet_on_one_or_two_pages, the_print_button_prints_the_newest_sheet_under_its_own_name, a_named_thread_prints_on_one_or_two_pages, the_counter_sheet_opens_with_its_own_style, on_a_phone_who_asks_is_led_to_the_answer, nothing_is_wider_than_the_page,
  the_rules_of_wcag_are_kept, wider_text_still_fits, nothing_is_asked_elsewhere_and_nothing_complains];

let failed = 0;
/* OW_ONLY=swap runs the tests that have it in their name. */
const named = TESTS.filter((each) => each.name.includes(process.env.OW_ONLY ?? ""));
/* OW_SHARE=1/2 runs every second test, 2/2 the others, so that two can run side by side; what looks back at all runs in each. */
const [share, shares] = (process.env.OW_SHARE ?? "1/1").split("/").map(Number);
const wanted = named.filter((each, index) => each === nothing_is_asked_elsewhere_and_nothing_complains || index % shares === share - 1);
const counter = await openCounter();
home = counter.url;
if (PICTURES) fs.mkdirSync(PICTURES, { recursive: true });
try {
  await openBrowser();
  for (const test of wanted) {
    try {
      await test();
    } catch (error) {
      failed++;
      console.log(`FAILED: ${test.name.replaceAll("_", " ")}\n${error.stack}`);
    }
  }
} finally {
  await context?.close();
  counter.close();
  fs.rmSync(SCRATCH, { recursive: true, force: true });
}
console.log(`browser: ${wanted.length - failed} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);
