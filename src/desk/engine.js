// The engine: unpacked from the page itself, run by two workers: one for what must be quick, one for the whole judgement.

/**
 * @typedef {{ path: string, line: number, column: number, message: string, help: string | null, unknown_field: boolean }} Fault
 * @typedef {{ rule: string, verdict: string, summary: string, remedy: string | null, found: Measure | null,
 *   limit: { at_most?: Measure, at_least?: Measure } | null, margin: Measure | null, sources: string[] }} Finding
 * @typedef {{ value: number, unit: string, text: string }} Measure
 * @typedef {{ reading: string, field: string, where: string, how: string, within: string, decides: string[],
 *   questions: string[] }} Missing
 * @typedef {{ question: string, entries: string[], why: string }} Question
 * @typedef {{ path: string, value: string, words?: string }} Entry
 * @typedef {{ path: string, value?: string, words?: string }} Change
 */

/** A question with the one who waits for its answer. @typedef {{ question: object, settle: (said: any) => void }} Waiting */

/** One worker with its questions in order. */
export class Helper {
  /** @param {string} source @param {WebAssembly.Module} module */
  constructor(source, module) {
    this.worker = new Worker(source);
    this.worker.postMessage({ module });
    /** @type {Map<number, (said: any) => void>} */
    this.waiting = new Map();
    this.count = 0;
    /** Bytes that its engine holds. */
    this.memory = 0;
    this.worker.onmessage = ({ data }) => {
      this.memory = data.memory ?? this.memory;
      this.waiting.get(data.number)?.(data.said);
      this.waiting.delete(data.number);
    };
  }

  /** @param {object} question @returns {Promise<any>} */
  ask(question) {
    const number = ++this.count;
    return new Promise((settle) => {
      this.waiting.set(number, settle);
      this.worker.postMessage({ number, question });
    });
  }

  /** Hands over the files that the job names, for every question after this. @param {Record<string, string>} files */
  give(files) {
    this.worker.postMessage({ files });
  }
}

/** Asks for the newest of several questions alone: one that was overtaken while another ran is never asked. */
export class Newest {
  /** @param {Helper} helper @param {(said: any, about: object) => void} tell */
  constructor(helper, tell) {
    this.helper = helper;
    this.tell = tell;
    /** @type {object | undefined} */
    this.next = undefined;
    this.busy = false;
  }

  /** @param {object} question */
  async ask(question) {
    this.next = question;
    if (this.busy) return;
    this.busy = true;
    while (this.next) {
      const about = this.next;
      this.next = undefined;
      this.tell(await this.helper.ask(about), about);
    }
    this.busy = false;
  }
}

/** @param {string} id */
export const held = (id) => document.getElementById(id)?.textContent ?? "";

/** Unpacks the engine and starts its workers. */
export async function start() {
  const packed = Uint8Array.from(atob(held("engine")), (letter) => letter.charCodeAt(0));
  const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  const module = await WebAssembly.compile(await new Response(unpacked).arrayBuffer());
  const source = URL.createObjectURL(new Blob([JSON.parse(held("worker"))], { type: "text/javascript" }));
  return { quick: new Helper(source, module), whole: new Helper(source, module) };
}
