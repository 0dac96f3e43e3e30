// Opens every page of a folder in a real browser and holds it against what a page must be: no script error,
// no request, no lettering that overlaps or leaves its box at three widths, whole sheets of paper, nothing
// serious from axe-core. Usage: node check.mjs FOLDER [PICTURES]
import { readdirSync, readFileSync, mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { execFile, execFileSync } from "node:child_process";
import { join, resolve } from "node:path";
import { availableParallelism, tmpdir } from "node:os";
import { promisify } from "node:util";
import puppeteer from "puppeteer-core";
import { lettering } from "./lettering.mjs";

const execute = promisify(execFile);
const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const folder = resolve(process.argv[2]);
const pictures = process.argv[3] && resolve(process.argv[3]);
if (pictures) mkdirSync(pictures, { recursive: true });
const scratch = execFileSync("mktemp", ["-d", join(tmpdir(), "sternknee-browser-XXXXXX")]).toString().trim();

const WIDTHS = [360, 768, 1280];
// A report that is handed over on paper: the first sheet alone, and all of it.
// In both units every figure stands twice.
const MOST_SHEETS = 12, MOST_IN_BOTH = 13;
const lengths = [];
const complaints = [];
const complain = (page, what) => complaints.push(`${page}: ${what}`);

const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  headless: true,
  userDataDir: join(scratch, "profile"),
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync"],
});
const names = readdirSync(folder).filter((name) => name.endsWith(".html")).sort();
if (names.length === 0) complain(folder, "holds no page");
// One page at every width, folded and unfolded.
async function onScreen(page, name) {
  const box = await page.$("#unfold");
  const fold = async () => { if (box) await page.evaluate((box) => box.click(), box); };
  for (const width of WIDTHS) {
    await page.setViewport({ width, height: 900 });
    for (const what of await page.evaluate(lettering)) complain(name, `${width} px: ${what}`);
    await fold();
    if (box) for (const what of await page.evaluate(lettering)) complain(name, `${width} px, unfolded: ${what}`);
    const start = performance.now();
    const result = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ["violations"] }));
    spent.axe += performance.now() - start;
    for (const violation of result.violations)
      if (["serious", "critical", "moderate"].includes(violation.impact))
        complain(name, `${width} px: axe ${violation.impact} ${violation.id}: ${violation.help} (${violation.nodes[0].html.slice(0, 120)})`);
    await fold();
    if (pictures) await page.screenshot({ path: join(pictures, `${name}-${width}.png`), fullPage: true });
    checked += 1;
  }
}

// One page on paper.
async function onPaper(page, name) {
  for (const format of ["A4", "Letter"]) {
    const file = join(scratch, `${name}-${format}.pdf`);
    await page.pdf({ path: file, format, printBackground: true });
    const { stdout } = await execute("pdftotext", ["-layout", file, "-"], { maxBuffer: 1 << 26 });
    const sheets = stdout.split("\f").slice(0, -1);
    if (await page.$("main > .first")) {
      const most = name.endsWith("-both.html") ? MOST_IN_BOTH : MOST_SHEETS;
      if (sheets.length > most) complain(name, `${format}: ${sheets.length} sheets, ${most} at most`);
      if (sheets.findIndex((words) => words.includes("Contents")) !== 1) complain(name, `${format}: the first sheet is not one sheet`);
      lengths.push(`${name} ${format} ${sheets.length}`);
    }
    sheets.forEach((words, i) => {
      if (!words.includes(`page ${i + 1} of ${sheets.length}`)) complain(name, `${format}: sheet ${i + 1} has no page number`);
      if (!words.includes("Advice, not approval")) complain(name, `${format}: sheet ${i + 1} has no foot`);
      const lines = words.trim().split(/\n+/);
      if (lines.length < 4) complain(name, `${format}: sheet ${i + 1} is all but empty`);
      // The last line is the foot; a heading before it has lost what it heads.
      if (headings.get(name)?.has(lines.at(-2)?.trim())) complain(name, `${format}: sheet ${i + 1} ends with the heading "${lines.at(-2).trim()}"`);
    });
    if (pictures) await execute("pdftoppm", ["-r", "60", "-png", file, join(pictures, `${name}-${format}`)]);
  }
}

let checked = 0;
const headings = new Map();
const spent = { screen: 0, axe: 0, paper: 0 };
async function look(name) {
  const address = `file://${join(folder, name)}`;
  const page = await browser.newPage();
  page.on("console", (message) => { if (["error", "warn"].includes(message.type())) complain(name, `console: ${message.text()}`); });
  page.on("pageerror", (error) => complain(name, `script error: ${error.message}`));
  page.on("request", (request) => {
    if (request.url() !== address && !request.url().startsWith("data:")) complain(name, `asks for ${request.url()}`);
  });
  await page.goto(address, { waitUntil: "load" });
  headings.set(name, new Set(await page.$$eval("h2, h3", (all) => all.map((h) => h.textContent.trim()))));
  let start = performance.now();
  await onPaper(page, name);
  spent.paper += performance.now() - start;
  await page.evaluate(axe);
  start = performance.now();
  await onScreen(page, name);
  spent.screen += performance.now() - start;
  await page.close();
}

// As many at a time as there are processors.
const queue = [...names];
await Promise.all(Array.from({ length: availableParallelism() }, async () => {
  for (let name = queue.shift(); name; name = queue.shift()) await look(name);
}));
await browser.close();
execFileSync("rm", ["-rf", scratch]);
console.log(`${names.length} pages, ${checked} views, ${complaints.length} complaints`);
console.log(`${(spent.screen / 1e3).toFixed(0)} s on screen (${(spent.axe / 1e3).toFixed(0)} s of it axe-core), ${(spent.paper / 1e3).toFixed(0)} s on paper`);
console.log(`sheets: ${lengths.sort().join(", ")}`);
for (const complaint of [...new Set(complaints)]) console.log(complaint);
process.exit(complaints.length === 0 ? 0 : 1);
