// The page at the boat in a real browser, opened from disk with the network off: jobs typed from nothing get the command
// line's findings, and are found again; nothing is asked of any network; every step can be used on a telephone, with a
// keyboard alone, and with a screen reader. Usage: node desk.mjs PAGE PROGRAM JOBS [PICTURES]
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import puppeteer from "puppeteer-core";
import { lettering } from "./lettering.mjs";
import { Typist } from "./typist.mjs";

const [page_file, program, jobs, pictures] = process.argv.slice(2).map((path) => resolve(path));
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const scratch = mkdtempSync(join(tmpdir(), "sternknee-desk-"));
if (pictures) mkdirSync(pictures, { recursive: true });

const WIDTHS = [360, 768, 1280];
/** Least side of what a finger has to hit, in pixels. */
const FINGER = 44;
/** How much slower a telephone is than this machine. */
const SLOWER = 4;
/** What a page may weigh, in bytes. */
const HEAVIEST = 3e6;
/** High enough for every step, in pixels. */
const TALLEST = 16_000;
const complaints = [];
const complain = (what) => complaints.push(what);
const address = `file://${page_file}`;
const browser = await puppeteer.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", headless: true,
  args: ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"] });

let requests = 0;
/** The page, opened anew in a profile of its own, with the network off. */
async function opened(where = address) {
  const context = await browser.createBrowserContext({ downloadBehavior: { policy: "allow", downloadPath: scratch } });
  const page = await context.newPage();
  page.on("console", (message) => { if (["error", "warn"].includes(message.type())) complain(`console: ${message.text()}`); });
  page.on("pageerror", (error) => complain(`script error: ${error.message}`));
  page.on("dialog", (dialog) => { if (!page.expects?.(dialog.message())) complain(`a dialog: ${dialog.message()}`); void dialog.dismiss(); });
  page.on("request", (request) => {
    // The page itself, what it made itself, and nothing else.
    if (request.url() === where || request.url().startsWith("blob:") || request.url().startsWith("data:")) return;
    requests += 1;
    complain(`asks for ${request.url()}`);
  });
  await page.setOfflineMode(true);
  await page.setViewport({ width: 360, height: 740 });
  await load(page, where);
  return page;
}

async function load(page, where = address) {
  await page.goto(where);
  await page.waitForFunction(() => document.documentElement.dataset.ready === "yes", { timeout: 60_000 });
}

const answered = (page) => page.waitForFunction(() => document.documentElement.dataset.busy !== "yes" && document.documentElement.dataset.waiting === "no", { timeout: 60_000 });

/** What the command line says of a job: its findings, by rule. */
function told(job) {
  const read = (out) => JSON.parse(out).findings;
  try {
    return read(execFileSync(program, ["check", "--format", "json", job], { maxBuffer: 1 << 28 }));
  } catch (error) {
    if (error.status !== 1) throw error;
    return read(error.stdout);
  }
}

/** The findings that the page shows, as a person reads them. */
async function shown(page) {
  const steps = await page.$$eval("#where option", (all) => all.map((one) => one.value));
  await page.select("#where", steps.at(-1));
  await answered(page);
  return page.$$eval("#live li[data-rule]", (all) => all.map((one) => ({ rule: one.dataset.rule, verdict: one.dataset.verdict, words: [...one.querySelectorAll("p")].slice(0, -1).map((p) => p.textContent) })));
}

/** A finding of the command line as the page should show it. */
function expected({ rule, verdict, summary, found, limit, margin, remedy }) {
  const bounds = limit && [limit.at_least && `at least ${limit.at_least.text}`, limit.at_most && `at most ${limit.at_most.text}`].filter(Boolean).join(", ");
  const figures = [found && `found ${found.text}`, bounds && `limit ${bounds}`, margin && `margin ${margin.text}`].filter(Boolean).join(" · ");
  return { rule, verdict, words: [summary, figures, remedy && `Do: ${remedy}`].filter(Boolean) };
}

const byRule = (a, b) => a.rule.localeCompare(b.rule);
/** Twins are mirror images of each other: which of two poses equally near is named, the last bit decides; the figures stay. */
const apartFromTwins = (finding) => finding.rule === "swing/neighbour" ? { ...finding, words: finding.words.slice(1) } : finding;
function compare(what, page, job) {
  const wanted = told(job).map(expected).map(apartFromTwins).sort(byRule);
  const seen = page.map(apartFromTwins).sort(byRule);
  if (JSON.stringify(seen) !== JSON.stringify(wanted)) {
    const first = wanted.find((finding, i) => JSON.stringify(finding) !== JSON.stringify(seen[i]));
    complain(`${what}: ${seen.length} findings shown, ${wanted.length} told; ${JSON.stringify(first)} is shown as ${JSON.stringify(seen.find((one) => one.rule === first?.rule))}`);
  }
  return wanted.length;
}

/** The entries of a job, as the engine tells them. */
async function entries(page, text) {
  return page.evaluate((text) => globalThis.sternknee.ask({ ask: "entries", text }), text).then((said) => said.entries);
}

/** Presses a button of the first step. */
async function press(page, words) {
  await page.select("#where", "0");
  await page.evaluate((words) => [...document.querySelectorAll("#step button")].find((button) => button.textContent.startsWith(words)).click(), words);
}

/** Takes a job that the first step offers. */
async function begin(page, words, file) {
  await press(page, words);
  await page.waitForFunction((file) => document.getElementById("say").textContent === `${file} is open.`, {}, file);
  await answered(page);
}

/** Chooses files where a button asks for them. */
async function choose(page, button, ...files) {
  const [chooser] = await Promise.all([page.waitForFileChooser(), page.evaluate((words) => [...document.querySelectorAll("#step button")].find((button) => button.textContent === words && button.checkVisibility()).click(), button)]);
  await chooser.accept(files.map((file) => join(scratch, file)));
}

/** Opens a job of the scratch folder, with the files that it names. */
async function open(page, file, ...more) {
  await page.select("#where", "0");
  await choose(page, "Open a file", ...more, file);
  await page.waitForFunction((file) => document.getElementById("say").textContent.startsWith(file), {}, file);
  await answered(page);
}

/** Presses a button that saves a file, and gives the file. */
async function saved(page, name, words = "Save the job") {
  rmSync(join(scratch, name), { force: true });
  await press(page, words);
  for (let i = 0; i < 100; i++) {
    await new Promise((done) => setTimeout(done, 50));
    if (readdirSync(scratch).includes(name)) return join(scratch, name);
  }
  throw new Error(`${name} was not saved`);
}

/** A job typed from nothing, with slips, then found again and saved. */
async function typed(name) {
  const page = await opened();
  const job = join(jobs, name);
  await begin(page, "Before engines", "job.ron");
  const typist = new Typist(page, { slips: true });
  await typist.job(await entries(page, readFileSync(job, "utf8")));
  const count = compare(`${name}, typed`, await shown(page), job);
  await load(page);
  compare(`${name}, after a reload`, await shown(page), job);
  const file = await saved(page, "job.ron");
  compare(`${name}, saved and checked by the command line`, told(file).map(expected), job);
  if (!readFileSync(file, "utf8").includes("// Fill in what you know")) complain(`${name}: the remarks of the job were lost`);
  console.log(`${name}: typed, ${count} findings as the command line's; found again; saved and checked again`);
  await page.browserContext().close();
}

/** The same job typed in Firefox, where there is one, its network led nowhere. */
async function inFirefox(name) {
  const program = ["/usr/bin/firefox-esr", "/usr/bin/firefox"].find(existsSync);
  if (!program) return console.log("no Firefox here: not looked at in it");
  const nowhere = { "network.proxy.type": 1, "network.proxy.http": "127.0.0.1", "network.proxy.http_port": 1, "network.proxy.ssl": "127.0.0.1", "network.proxy.ssl_port": 1 };
  const firefox = await puppeteer.launch({ browser: "firefox", executablePath: program, headless: true, extraPrefsFirefox: nowhere });
  try {
    const page = await firefox.newPage();
    page.on("pageerror", (error) => complain(`Firefox: script error: ${error.message}`));
    await page.setViewport({ width: 360, height: 740 });
    await load(page);
    await begin(page, "Before engines", "job.ron");
    await new Typist(page, { slips: true }).job(await entries(page, readFileSync(join(jobs, name), "utf8")));
    const count = compare(`${name}, typed in Firefox`, await shown(page), join(jobs, name));
    await load(page);
    compare(`${name}, after a reload in Firefox`, await shown(page), join(jobs, name));
    console.log(`${name}: typed in Firefox, ${count} findings as the command line's; found again`);
  } finally {
    await firefox.close();
  }
}

/** A job with markup in every field does nothing. */
async function hostile() {
  const page = await opened();
  const markup = "</script><img src=x onerror=alert(1)><svg onload=alert(2)>{{7*7}}";
  const text = readFileSync(join(jobs, "tiller_skiff.ron"), "utf8").replace(/"(?=[A-Za-z])[^"]*"/g, (words) => (/class|material/.test(words) ? words : JSON.stringify(markup)));
  writeFileSync(join(scratch, "hostile.ron"), `(title: ${JSON.stringify(markup)}, date: ${JSON.stringify(markup)}, by: ${JSON.stringify(markup)}, notes: ${JSON.stringify(markup)},
    boat: (name: ${JSON.stringify(markup)}, length: ${JSON.stringify(markup)}), edges: [(name: ${JSON.stringify(markup)}, kind: sheer, up: "20 in")],
    goes_on: [(what: ${JSON.stringify(markup)}, weight: "10 lb")], ${markup}: 3)`);
  writeFileSync(join(scratch, "hostile-2.ron"), text);
  writeFileSync(join(scratch, "hostile-3.ron"), `(title: ${JSON.stringify(markup)}, boat: (name: ${JSON.stringify(markup)}), goes_on: [(what: ${JSON.stringify(markup)}, weight: "10 lb", on_transom: true)],
    engines_on: [(class: "four-stroke 40 hp inline-3", shaft: "20 in")])`);
  for (const file of ["hostile.ron", "hostile-2.ron", "hostile-3.ron"]) {
    await page.select("#where", "0");
    await open(page, file);
    for (const step of await page.$$eval("#where option", (all) => all.map((one) => one.value))) {
      await page.select("#where", step);
      const strange = await page.evaluate(() => document.querySelectorAll("img, iframe, object, [onerror], [onload], script:not([type])").length);
      if (strange > 0) complain(`${file}: markup of the job became elements`);
    }
  }
  console.log("a job with markup in every field does nothing");
  await page.browserContext().close();
}

/** A job of another version: remarks and fields that nobody knows survive, and the page says so; faults stand at their fields. */
async function keeps() {
  const page = await opened();
  const text = '(\n    // mine\n    odd_field: (a: 1), /* of it */ title: "old",\n    boat: (length: "16 ft"), // by tape\n)\n';
  writeFileSync(join(scratch, "other.ron"), text);
  await open(page, "other.ron");
  const typist = new Typist(page);
  await typist.find("title");
  await typist.words("title", "new");
  await typist.find("boat.length");
  await typist.words("boat.length", "16 elbows");
  await answered(page);
  const told = await page.$eval('#step [data-fault="boat.length"]', (fault) => fault.textContent);
  if (!told.includes("elbows")) complain(`the fault at the length says "${told}"`);
  if (!(await page.$eval("#open", (edge) => edge.textContent)).includes("does not know")) complain("a field of another version is not told");
  await typist.words("boat.length", "17");
  await answered(page);
  const kept = readFileSync(await saved(page, "other.ron"), "utf8");
  if (kept !== text.replace("old", "new").replace("16 ft", "17 ft")) complain(`the other version's job became ${kept}`);
  // What cannot stay is told before anything is saved.
  const more = "(\n    plate: capacity(persons: 6 /* as riveted */, odd: 3),\n    // hers\n    boat: (length: \"16 ft\"),\n)\n";
  writeFileSync(join(scratch, "remarks.ron"), more);
  await open(page, "remarks.ron");
  await typist.find("plate");
  await typist.choose("plate", "none");
  await answered(page);
  const said = await page.$eval("#say", (say) => say.textContent);
  if (!said.includes("/* as riveted */") || !said.includes("plate.odd: 3")) complain(`what went out of the file is not told: "${said}"`);
  await page.select("#where", "0");
  const lost = await page.$eval("#lost", (lost) => lost.textContent);
  if (!lost.includes("/* as riveted */") || !lost.includes("plate.odd: 3") || lost.includes("hers")) complain(`what went out of the file is not told where it is saved: "${lost}"`);
  // What is in no file yet is not left without a word.
  let asked = 0;
  page.expects = (words) => { asked += 1; return words.includes("remarks.ron is in no file yet"); };
  await press(page, "Before engines");
  await page.waitForFunction(() => document.documentElement.dataset.busy !== "yes");
  page.expects = undefined;
  if (asked !== 1 || !(await page.$eval("#step pre", (text) => text.textContent)).includes("plate: none")) complain("a job that is in no file was left without a word");
  const after = readFileSync(await saved(page, "remarks.ron"), "utf8");
  if (after !== more.replace(/capacity\(.*\)/, "none")) complain(`the job with remarks became ${after}`);
  await begin(page, "Before engines", "job.ron");
  console.log("remarks and fields of another version survive, and are told");
  await page.browserContext().close();
}

/** What hardly can be is asked back at the edge, and can be said to stand. */
async function askedBack() {
  const page = await opened();
  writeFileSync(join(scratch, "kilowatts.ron"), readFileSync(join(jobs, "tiller_skiff.ron"), "utf8").replace('power: "50 hp"', 'power: "50 kW"'));
  await open(page, "kilowatts.ron");
  await page.click("#edge .bar");
  const edge = () => page.$eval("#open", (open) => open.textContent);
  if (!(await edge()).includes("Asked back")) complain("kilowatts on a US plate are not asked back");
  await page.evaluate(() => [...document.querySelectorAll("#open button")].find((button) => button.textContent.startsWith("It was looked at again")).click());
  await answered(page);
  if ((await edge()).includes("Asked back")) complain("what was looked at again is asked back again");
  await page.keyboard.press("Escape");
  const text = readFileSync(await saved(page, "kilowatts.ron"), "utf8");
  if (!text.includes('sure: ["plate.power"]')) complain(`what was looked at again is not in the job: ${text}`);
  console.log("what hardly can be is asked back, and stands where it is said to");
  await page.browserContext().close();
}

/** A trial's log beside the job: opened with it, asked for at its field, found again, taken along in a page. */
async function logs() {
  const page = await opened();
  const rows = "rpm,speed (mph),back (mph),fuel (gal/h)\n2500,14.2,13.8,4.4\n3500,25.1,24.5,6.6\n4500,33.0,32.2,9.8\n5600,41.2,40.4,14.6\n";
  writeFileSync(join(scratch, "after.csv"), rows);
  const guide = readFileSync(join(jobs, "guide_boat.ron"), "utf8");
  const at = guide.indexOf("runs: [", guide.indexOf("after: ("));
  const job = join(scratch, "logged.ron");
  writeFileSync(job, `${guide.slice(0, at)}file: "after.csv", ${guide.slice(guide.indexOf("],", at) + 2)}`);
  await open(page, "logged.ron", "after.csv");
  compare("a job with its log", await shown(page), job);
  await load(page);
  compare("a job with its log, after a reload", await shown(page), job);
  // Alone it is a fault at the field, where the file is asked for.
  await open(page, "logged.ron");
  const typist = new Typist(page);
  await typist.find("trial.after.file");
  const fault = await page.$eval('#step [data-fault="trial.after.file"]', (fault) => (fault.hidden ? "" : fault.textContent));
  if (!fault.includes("did not come with the job")) complain(`a log that is not there is told as "${fault}"`);
  const field = await page.$eval('#step .field[data-path="trial.after.file"]', (field) => field.textContent);
  if (!field.includes("not on this device yet")) complain(`the field of the log says "${field}"`);
  await page.evaluate(() => { for (const button of document.querySelectorAll("#step .beside button")) button.closest('[data-path="trial.after.file"]') || (button.textContent += " "); });
  await choose(page, "Attach the file", "after.csv");
  await page.waitForFunction(() => document.getElementById("say").textContent.includes("after.csv lies beside"));
  await answered(page);
  compare("a job whose log was attached", await shown(page), job);
  const file = join(scratch, "with-a-log.html");
  execFileSync(program, ["desk", job, "--out", file]);
  const context = await browser.createBrowserContext();
  const other = await context.newPage();
  await other.goto(`file://${file}`);
  await other.waitForFunction(() => document.documentElement.dataset.ready === "yes", { timeout: 60_000 });
  compare("a page with a job and its log in it", await shown(other), job);
  await context.close();
  console.log("a log lies beside its job: opened with it, attached at its field, found again, taken along in a page");
  await page.browserContext().close();
}

/** The report and the measuring sheet as files, with a photograph of the job in the report. */
async function papers() {
  const page = await opened();
  await begin(page, "Invented: tiller skiff", "tiller_skiff.ron");
  const point = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
  writeFileSync(join(scratch, "transom.png"), Buffer.from(point, "base64"));
  await page.select("#where", "0");
  const [chooser] = await Promise.all([page.waitForFileChooser(), press(page, "Take a photograph")]);
  await chooser.accept([join(scratch, "transom.png")]);
  await page.waitForFunction(() => document.getElementById("say").textContent.includes("photograph"));
  await answered(page);
  const report = readFileSync(await saved(page, "tiller_skiff-report.html", "Save the report"), "utf8");
  if (!report.includes("data:image/jpeg;base64,") || !report.includes("transom.png")) complain("the report lacks the photograph");
  const sheet = readFileSync(await saved(page, "tiller_skiff-measuring-sheet.html", "Save the measuring sheet"), "utf8");
  if (!sheet.includes("Measuring sheet")) complain("the measuring sheet is none");
  console.log("report with a photograph, and measuring sheet: saved");
  await page.browserContext().close();
}

/** A page that was written with a job in it begins with it, and goes on where it was left. */
async function given() {
  const file = join(scratch, "with-a-job.html");
  try {
    execFileSync(program, ["desk", join(jobs, "creek_boat.ron"), "--out", file]);
  } catch (error) {
    if (!String(error.stderr).includes("built without the page")) throw error;
    return console.log("this program was built without the page: no page with a job in it");
  }
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  const begin = async () => {
    await page.goto(`file://${file}`);
    await page.waitForFunction(() => document.documentElement.dataset.ready === "yes", { timeout: 60_000 });
  };
  await begin();
  compare("a page with a job in it", await shown(page), join(jobs, "creek_boat.ron"));
  const typist = new Typist(page);
  await typist.find("title");
  await typist.words("title", "mine now");
  await answered(page);
  await begin();
  await typist.find("title");
  const title = await page.$eval('#step [data-path="title"] input, #step input[data-path="title"]', (box) => box.value);
  if (title !== "mine now") complain(`a page with a job in it forgot what was typed: ${title}`);
  console.log("a page with a job in it begins with it, and goes on where it was left");
  await context.close();
}

/** Runs in the page: what a finger has to hit and is too small for it. */
function small(finger) {
  const found = [];
  for (const element of document.querySelectorAll("button, select, summary, a[href], input")) {
    if (!element.checkVisibility({ visibilityProperty: true })) continue;
    // A box in a label is hit by its label.
    const target = element.closest("label:not(:has(input[type=text]))") ?? element;
    const { width, height } = target.getBoundingClientRect();
    if (width < finger - 0.5 || height < finger - 0.5) found.push(`${element.tagName.toLowerCase()} "${(target.textContent || element.getAttribute("data-path") || "").slice(0, 30)}" is ${width.toFixed(0)} by ${height.toFixed(0)} px`);
  }
  return found;
}

/** Runs in the page: how something is taken, said as if a file were written. */
function notation() {
  const how = [...document.querySelectorAll("#step .how")].map((how) => how.textContent);
  return how.filter((words) => /\w_\w|\w\("|[:,] \w+: \(|\bone of \w+,|`|\[\]/.test(words)).map((words) => `"${words}" speaks of the file`);
}

/** Every step at three widths. */
async function looks(name) {
  const page = await opened();
  await begin(page, `Invented: ${name}`, `${name.replaceAll(" ", "_")}.ron`);
  await page.evaluate(axe);
  const steps = await page.$$eval("#where option", (all) => all.map((one) => one.value));
  let views = 0;
  for (const width of WIDTHS) {
    const tall = width < 500 ? 740 : 900;
    await page.setViewport({ width, height: tall });
    for (const step of [...steps, "edge"]) {
      if (step === "edge") await page.click("#edge .bar");
      else await page.select("#where", step);
      await answered(page);
      if (step !== "edge") await page.evaluate(() => { for (const more of document.querySelectorAll("#step details")) more.open = true; });
      // All of a step at once, so that nothing of it is scrolled away.
      await page.setViewport({ width, height: step === "edge" ? tall : TALLEST });
      for (const what of await page.evaluate(lettering)) if (step !== "edge") complain(`${name}, step ${step}, ${width} px: ${what}`);
      for (const what of await page.evaluate(notation)) complain(`${name}, step ${step}, ${width} px: ${what}`);
      for (const what of await page.evaluate(small, FINGER)) complain(`${name}, step ${step}, ${width} px: ${what}`);
      const { violations } = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ["violations"] }));
      for (const { impact, id, help, nodes } of violations)
        // The sheet of the answer lies over the walk; whether a step has a heading is seen on the step.
        if (["serious", "critical", ...(step === "edge" ? [] : ["moderate"])].includes(impact)) complain(`${name}, step ${step}, ${width} px: axe ${impact} ${id}: ${help} (${nodes[0].html.slice(0, 120)})`);
      if (step !== "edge") await page.evaluate(() => { for (const more of document.querySelectorAll("#step details")) more.open = false; });
      await page.setViewport({ width, height: tall });
      if (pictures) await page.screenshot({ path: join(pictures, `desk-${name}-${step}-${width}.png`), fullPage: false });
      views += 1;
    }
    await page.keyboard.press("Escape");
  }
  console.log(`${name}: ${views} views looked at`);
  await page.browserContext().close();
}

/** The tiller skiff's readings by keyboard alone: no click, no tap, no focus that a script sets. */
async function byKeyboard() {
  const page = await opened();
  const keys = page.keyboard;
  const at = () => page.evaluate(() => {
    const here = document.activeElement;
    return { path: here?.getAttribute("data-path") ?? here?.closest("fieldset")?.getAttribute("data-path") ?? "", id: here?.id ?? "", value: here?.value ?? "", words: here?.textContent ?? "", fold: here?.parentElement?.getAttribute("data-path") ?? "", name: here?.tagName ?? "" };
  });
  /** Goes on by Tab until something is reached. */
  async function tab(reached, what) {
    for (let i = 0; i < 400; i++) {
      if (reached(await at())) return;
      await keys.press("Tab");
    }
    throw new Error(`by keyboard, ${what} cannot be reached`);
  }
  const job = await entries(page, readFileSync(join(jobs, "tiller_skiff.ron"), "utf8"));
  const wanted = new Map(job.map((entry) => [entry.path, entry]));
  const lists = new Map();
  const steps = await page.$$eval("#where option", (all) => all.length);
  await tab(({ words, name }) => name === "BUTTON" && words.startsWith("Before engines"), "the first button");
  await keys.press("Enter");
  await answered(page);
  for (let step = 0; step < steps; step++) {
    for (let round = 0; round < 60; round++) {
      // What this step asks for and is not there yet, in the order of the page.
      const next = await page.evaluate((paths) => {
        for (const box of document.querySelectorAll("#step input[data-path], #step select[data-path], #step fieldset[data-path], #step button.add[data-path]")) {
          const path = box.getAttribute("data-path");
          if (!paths.includes(path)) continue;
          let folded = null;
          for (let fold = box.closest("details"); fold; fold = fold.parentElement?.closest("details")) if (!fold.open) folded = fold.getAttribute("data-path");
          return { path, name: box.tagName, type: box.type, folded };
        }
        return null;
      }, [...wanted.keys()].filter((path) => !lists.has(path)));
      if (!next) break;
      if (next.folded !== null) {
        await tab((here) => here.name === "SUMMARY" && here.fold === next.folded, `the fold of ${next.folded}`);
        await keys.press("Enter");
        continue;
      }
      const { value, words } = wanted.get(next.path);
      if (next.name === "BUTTON") {
        const count = lists.get(`${next.path}#`) ?? 0;
        if (!wanted.has(`${next.path}[${count}]`)) { lists.set(next.path, true); continue; }
        await tab((here) => here.path === next.path && here.name === "BUTTON", next.path);
        await keys.press("Enter");
        lists.set(`${next.path}#`, count + 1);
        await page.waitForFunction((path) => document.querySelector(`#step [data-path^="${CSS.escape(path)}"]`), {}, `${next.path}[${count}]`);
      } else if (next.name === "FIELDSET") {
        const word = /^[a-z_]+/i.exec(value)[0];
        await tab((here) => here.path === next.path, next.path);
        for (let i = 0; i < 10 && (await at()).value !== word; i++) {
          await keys.press("ArrowRight");
          await answered(page);
        }
        if ((await at()).value !== word) complain(`by keyboard, ${word} cannot be chosen`);
        lists.set(next.path, true);
      } else if (next.name === "SELECT") {
        await tab((here) => here.path === next.path, next.path);
        const text = words ?? /^[a-z_]+/i.exec(value)[0].replaceAll("_", " ");
        for (let i = 0; i < 60 && (await at()).value !== (words ?? value); i++) await keys.press("ArrowDown");
        if ((await at()).value !== (words ?? value)) complain(`by keyboard, ${text} cannot be picked`);
        lists.set(next.path, true);
      } else {
        await tab((here) => here.path === next.path, next.path);
        if (next.type === "checkbox") await keys.press("Space");
        else {
          await keys.down("Control"); await keys.press("a"); await keys.up("Control");
          await keys.type(words ?? value);
        }
        lists.set(next.path, true);
      }
      await answered(page);
    }
    await tab(({ id }) => id === "next" || id === "back", "the button to the next place");
    await tab(({ id }) => id === "next" || step === steps - 1, "the button to the next place");
    if (step < steps - 1) await keys.press("Enter");
  }
  await page.select("#where", "0");
  const written = new Map((await entries(page, await page.$eval("#step pre", (text) => text.textContent))).map((entry) => [entry.path, entry.value]));
  const isPlain = (value) => !/^[a-z_]*[([]/i.test(value);
  for (const { path, value } of job) if (!written.has(path) || (isPlain(value) && written.get(path) !== value)) complain(`by keyboard, ${path} is ${written.get(path)} in place of ${value}`);
  compare("by keyboard alone", await shown(page), join(jobs, "tiller_skiff.ron"));
  console.log("the tiller skiff by keyboard alone: done");
  await page.browserContext().close();
}

/** The page with workers that take so many times as long: the browser's own throttle slows the page alone. */
function slowed(slower) {
  const file = join(scratch, `slowed-${slower}.html`);
  const brake = `
const send = self.postMessage.bind(self), answer = onmessage;
let began = 0;
self.postMessage = (said) => { const until = began + ${slower} * (performance.now() - began); while (performance.now() < until); send(said); };
onmessage = (event) => { began = performance.now(); answer(event); };
`;
  const worker = /(id="worker">)(.*?)(<\/script>)/s;
  const text = readFileSync(page_file, "utf8").replace(worker, (_, lead, source, end) => lead + JSON.stringify(JSON.parse(source) + brake).replaceAll("<", "\\u003c") + end);
  writeFileSync(file, text);
  return `file://${file}`;
}

/** Cold load, and from a key to the answer, as quick as this machine and slowed as a telephone. */
async function times() {
  for (const slower of [1, SLOWER]) {
    const where = slower === 1 ? address : slowed(slower);
    const cold = [];
    for (let i = 0; i < 5; i++) {
      const context = await browser.createBrowserContext();
      const page = await context.newPage();
      await page.emulateCPUThrottling(slower);
      const start = performance.now();
      await page.goto(where);
      await page.waitForFunction(() => document.documentElement.dataset.ready === "yes");
      cold.push(performance.now() - start);
      await context.close();
    }
    const page = await opened(where);
    await begin(page, "Invented: tiller skiff", "tiller_skiff.ron");
    await page.emulateCPUThrottling(slower);
    await new Typist(page).find("transom.height");
    const figures = await page.evaluate(async () => {
      const box = document.querySelector('#step input[data-path="transom.height"]');
      const waiting = () => document.documentElement.dataset.waiting === "yes" || document.documentElement.dataset.busy === "yes";
      const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      const all = { quick: [], whole: [], key: [] };
      for (let i = 0; i < 40; i++) {
        const edge = document.querySelector("#edge .bar");
        let quick = 0;
        const start = performance.now();
        const watch = new MutationObserver(() => { quick ||= performance.now() - start; });
        watch.observe(edge, { childList: true });
        box.value = `20-${1 + 2 * (i % 8)}/16 in`;
        box.dispatchEvent(new Event("input", { bubbles: true }));
        await painted();
        all.key.push(performance.now() - start);
        while (waiting() || quick === 0) await new Promise((done) => setTimeout(done, 1));
        await painted();
        watch.disconnect();
        all.quick.push(quick);
        all.whole.push(performance.now() - start);
      }
      return { ...all, memory: globalThis.sternknee.memory(), heap: performance.memory?.usedJSHeapSize };
    });
    const at = (all, part) => [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(all.length * part))].toFixed(0);
    console.log(`slowed ${slower} times: first field after ${at(cold, 0.5)} ms; a key is taken in ${at(figures.key, 0.5)} ms (95 %: ${at(figures.key, 0.95)}); quick answer after ${at(figures.quick, 0.5)} ms (${at(figures.quick, 0.95)}); whole answer after ${at(figures.whole, 0.5)} ms (${at(figures.whole, 0.95)}); engine ${(figures.memory / 2 ** 20).toFixed(0)} MB, page ${(figures.heap / 2 ** 20).toFixed(0)} MB`);
    await page.browserContext().close();
  }
}

const weight = statSync(page_file).size;
console.log(`the page is ${(weight / 1e6).toFixed(2)} MB`);
if (weight > HEAVIEST) complain(`the page weighs ${weight} bytes`);
const only = process.env.STERNKNEE_DESK;
const parts = { tiller: () => typed("tiller_skiff.ron"), creek: () => typed("creek_boat.ron"), guide: () => typed("guide_boat.ron"), oyster: () => typed("oyster_skiff.ron"), firefox: () => inFirefox("tiller_skiff.ron"), hostile, keeps, askedBack, logs, papers, given, looks: async () => { await looks("tiller skiff"); await looks("creek boat"); }, keyboard: byKeyboard, times };
for (const [name, part] of Object.entries(parts)) {
  if (only && !only.split(",").includes(name)) continue;
  try {
    await part();
  } catch (error) {
    complain(`${name}: ${error.stack}`);
  }
}
await browser.close();
rmSync(scratch, { recursive: true });
console.log(`${requests} requests to a network, ${complaints.length} complaints`);
for (const complaint of [...new Set(complaints)].slice(0, 60)) console.log(complaint);
process.exit(complaints.length === 0 ? 0 : 1);
