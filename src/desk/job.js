// The job: its text is the truth. A change alters one entry of the text, all else in it stays; the page keeps it on the
// device.

/** @import { Change, Entry } from "./engine.js" */
import { Helper } from "./engine.js";

const JOB = "sternknee-job";

/** Says what the device would not do. @typedef {(words: string) => void} Say */

export class Job {
  /** @param {Helper} helper @param {() => void} altered @param {Say} say */
  constructor(helper, altered, say) {
    this.helper = helper;
    this.altered = altered;
    this.say = say;
    this.name = "job.ron";
    this.text = "";
    /** The text that came in the page, where the job began with it. @type {string | undefined} */
    this.begun = undefined;
    /** @type {Map<string, Entry>} */
    this.entries = new Map();
    /** @type {Change[]} */
    this.pending = [];
    /** @type {Promise<void> | undefined} */
    this.working = undefined;
    this.busy = 0;
    /** The text as it was last in a file, or as it was begun. */
    this.saved = "";
    /** Whether it came from a file: then its remarks are somebody's. */
    this.isOfFile = false;
    /** What went with entries that were taken out: remarks, and fields that this version does not know. @type {string[]} */
    this.lost = [];
    /** Paths of fields that this version does not know. @type {string[]} */
    this.unknown = [];
  }

  /** Takes another text. @param {string} name @param {string} text @param {{ isOfFile: boolean, saved?: string }} how */
  async open(name, text, { isOfFile, saved = text }) {
    await this.working;
    this.name = name;
    this.isOfFile = isOfFile;
    this.saved = saved;
    this.lost = [];
    this.unknown = [];
    const said = await this.helper.ask({ ask: "entries", text });
    this.take(text, said.entries ?? []);
  }

  /** Alters entries, in order; resolves when the text has them. @param {Change[]} changes @returns {Promise<void>} */
  alter(...changes) {
    this.pending.push(...changes);
    this.working ??= this.work().finally(() => (this.working = undefined));
    return this.working;
  }

  /** Something is under way that will alter the job. */
  begin() {
    this.busy += 1;
    document.documentElement.dataset.busy = "yes";
  }

  end() {
    this.busy -= 1;
    // What the end of one thing begins is under way by then.
    queueMicrotask(() => { if (this.busy === 0) document.documentElement.dataset.busy = "no"; });
  }

  async work() {
    this.begin();
    while (this.pending.length > 0) {
      // Of several changes to one entry that wait, the last counts.
      const all = this.pending.splice(0);
      const changes = all.filter((change, i) => all[i + 1]?.path !== change.path);
      const said = await this.helper.ask({ ask: "alter", text: this.text, changes });
      if (said.cannot) this.say(said.cannot);
      else {
        const before = this.entries;
        this.take(said.text, said.entries);
        this.mourn(before, said.lost_remarks);
      }
    }
    this.end();
  }

  /** Tells what went with what was taken out, of that which a person cannot see in the boxes. @param {Map<string, Entry>} before @param {string[]} remarks */
  mourn(before, remarks) {
    const fields = this.unknown.filter((path) => before.has(path) && !this.entries.has(path)).map((path) => `${path}: ${before.get(path)?.value}`);
    const lost = [...(this.isOfFile ? remarks : []), ...fields];
    if (lost.length === 0) return;
    this.lost.push(...lost);
    this.say(`With it went out of the file: ${lost.join("; ")}`);
  }

  /** @param {string} text @param {Entry[]} entries */
  take(text, entries) {
    this.text = text;
    this.entries = new Map();
    for (const entry of entries) if (!this.entries.has(entry.path)) this.entries.set(entry.path, entry);
    this.keep();
    this.altered();
  }

  keep() {
    try {
      localStorage.setItem(JOB, JSON.stringify({ name: this.name, text: this.text, begun: this.begun, isOfFile: this.isOfFile, saved: this.saved }));
    } catch {
      this.say("This browser keeps nothing between visits: save the job before you close the page.");
    }
  }

  /** What was kept at an earlier visit. @returns {{ name: string, text: string, begun?: string, isOfFile?: boolean, saved?: string } | undefined} */
  static kept() {
    try {
      const kept = JSON.parse(localStorage.getItem(JOB) ?? "null");
      return typeof kept?.text === "string" && typeof kept?.name === "string" ? kept : undefined;
    } catch {
      return undefined;
    }
  }

  static forget() {
    try {
      localStorage.removeItem(JOB);
    } catch {
      // Nothing was kept.
    }
  }

  /** The words or the text of an entry. @param {string} path */
  value(path) {
    const entry = this.entries.get(path);
    return entry ? entry.words ?? entry.value : "";
  }

  /** @param {string} path */
  has(path) {
    return this.entries.has(path);
  }

  /** How many entries the list at this path has. @param {string} path */
  count(path) {
    let count = 0;
    while (this.entries.has(`${path}[${count}]`)) count += 1;
    return count;
  }

  /** The word that an entry begins with, such as `port` of `port("14 in")`. @param {string} path */
  word(path) {
    return /^[a-zA-Z_][a-zA-Z_0-9]*/.exec(this.entries.get(path)?.value ?? "")?.[0] ?? "";
  }

  /** Puts a word and what it needs behind it. @param {string} path @param {string} value */
  put(path, value) {
    return this.alter({ path, value });
  }

  /** @param {string} path @param {string} words */
  sayAt(path, words) {
    return this.alter({ path, words });
  }

  /** @param {string} path */
  drop(path) {
    return this.alter({ path });
  }
}
