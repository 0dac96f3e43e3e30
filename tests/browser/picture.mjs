// Prints the first sheet of a page. Usage: node picture.mjs PAGE PDF
import { resolve } from "node:path";
import puppeteer from "puppeteer-core";

const [page, pdf] = process.argv.slice(2);
const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  headless: true,
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"],
});
const tab = await browser.newPage();
await tab.goto(`file://${resolve(page)}`, { waitUntil: "load" });
await tab.pdf({ path: pdf, format: "A4", printBackground: true, pageRanges: "1" });
await browser.close();
