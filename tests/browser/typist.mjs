// Types a job into the page as a person would: goes from place to place, presses what is to be pressed, types what is to be
// typed, slips now and then and mends it.

/** What a person does wrong before it is right. */
const SLIPS = ["12-", "7 ohms", "1/0 in", "-"];

export class Typist {
  constructor(page, { slips = false } = {}) {
    this.page = page;
    this.slips = slips;
    this.count = 0;
  }

  /** Goes to the step at which a box of this path stands. */
  async find(path) {
    const there = () => this.page.evaluate((path) => {
      const box = document.querySelector(`#step [data-path="${CSS.escape(path)}"]`);
      for (let fold = box?.closest("details"); fold; fold = fold.parentElement?.closest("details")) fold.open = true;
      return box !== null;
    }, path);
    if (await there()) return;
    const steps = await this.page.$$eval("#where option", (all) => all.map((one) => one.value));
    for (const step of steps) {
      await this.page.select("#where", step);
      if (await there()) return;
    }
    throw new Error(`no box for ${path}`);
  }

  /** The job's text as the page has it, once it has stood still. */
  async settled() {
    await this.page.waitForFunction(() => document.documentElement.dataset.busy !== "yes", { timeout: 20_000 });
  }

  async words(path, words, tries = 3) {
    try {
      await this.into(path, words);
    } catch (error) {
      // The step was drawn anew under the hand.
      if (tries === 0 || !String(error.message).includes("detached")) throw error;
      await this.words(path, words, tries - 1);
    }
  }

  async into(path, words) {
    const selector = `#step :is(input, select)[data-path="${path}"]`;
    const box = await this.page.waitForSelector(selector, { timeout: 5000 });
    if (await box.evaluate((box) => box.tagName === "SELECT")) return void (await this.page.select(selector, words));
    await box.evaluate((box) => box.scrollIntoView({ block: "center" }));
    await box.click();
    if (this.slips && /\d/.test(words) && this.count++ % 3 === 0) await this.over(SLIPS[this.count % SLIPS.length]);
    await this.over(words);
  }

  /** Types over what stands in the box that has the cursor. */
  async over(words) {
    const { keyboard } = this.page;
    await keyboard.down("Control");
    await keyboard.press("a");
    await keyboard.up("Control");
    await keyboard.type(words);
  }

  async choose(path, word) {
    const chosen = await this.page.evaluate((path, word) => {
      const set = document.querySelector(`#step fieldset[data-path="${CSS.escape(path)}"]`);
      const box = set?.querySelector(`input[value="${word}"]`);
      if (box) { box.click(); return true; }
      return false;
    }, path, word);
    if (!chosen) await this.page.select(`#step select[data-path="${path}"]`, word);
    await this.settled();
  }

  async add(path) {
    await this.page.evaluate((path) => document.querySelector(`#step button.add[data-path="${CSS.escape(path)}"]`).click(), path);
    await this.page.waitForFunction((path) => document.querySelector(`#step [data-path^="${CSS.escape(path)}["]`) !== null, {}, path);
    await this.settled();
  }

  async tick(path) {
    await this.page.evaluate((path) => document.querySelector(`#step input[type=checkbox][data-path="${CSS.escape(path)}"]`).click(), path);
  }

  /** Types every entry of a job, in its order. */
  async job(entries) {
    const has = (path) => entries.some((entry) => entry.path.startsWith(`${path}.`) || entry.path.startsWith(`${path}[`));
    for (const { path: at, value, words } of entries) {
      // A number with its basis is typed into the box of the number.
      const path = at.replace(/\.value$/, "");
      const list = /^(.*)\[\d+\]$/.exec(path)?.[1];
      const of = list && entries.find((entry) => entry.path === list);
      if (list && of?.value.startsWith("[")) {
        await this.find(list);
        await this.add(list);
      }
      const isNone = value === "none" || value === "[]";
      if ((value.startsWith("[") && !isNone) || (value.startsWith("(") && has(path))) continue;
      await this.find(path);
      const word = /^[a-z_]+/i.exec(value)?.[0];
      if (words !== undefined) await this.words(path, words);
      // A list that is empty because somebody looked.
      else if ((isNone || value === "true") && (await this.page.$(`#step input[type=checkbox][data-path="${path}"]`))) await this.tick(path);
      else if (word) await this.choose(path, word);
      else await this.words(path, value);
      await this.settled();
    }
  }
}
