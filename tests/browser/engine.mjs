// Judges jobs in the WebAssembly module, and holds its reports against the command line's: the same words, the same
// verdicts, numbers to the last digits. Usage: node engine.mjs ENGINE.wasm PROGRAM JOB...
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";

// Sines and the like of two mathematical libraries differ in the last bit, and what a search settles to differs by more.
const SAME = 1e-9;
const [engine, program, ...jobs] = process.argv.slice(2);
const module = new WebAssembly.Module(readFileSync(engine));
if (WebAssembly.Module.imports(module).length > 0) throw new Error("the engine imports something");
const { room, ask, give_back, memory } = new WebAssembly.Instance(module).exports;

function reply(question) {
  const bytes = new TextEncoder().encode(JSON.stringify(question));
  const place = room(bytes.length);
  new Uint8Array(memory.buffer, place, bytes.length).set(bytes);
  const packed = BigInt.asUintN(64, ask(place, bytes.length));
  const [from, length] = [Number(packed >> 32n), Number(packed & 0xffffffffn)];
  const said = new TextDecoder().decode(new Uint8Array(memory.buffer, from, length));
  give_back(from, length);
  return JSON.parse(said);
}

// Where two values differ.
function differences(one, other, path = "") {
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(one)) ? [] : [`${path}: ${one}, ${other}`];
  if (one === null || other === null || typeof one !== "object" || typeof other !== "object")
    return one === other ? [] : [`${path}: ${JSON.stringify(one)}, ${JSON.stringify(other)}`];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) => differences(one[key], other[key], `${path}.${key}`));
}

// Twins are mirror images of each other: which of two poses equally near is named, the last bit decides.
const compared = (finding) => finding.rule === "swing/neighbour"
  ? { verdict: finding.verdict, found: finding.found, limit: finding.limit, margin: finding.margin }
  : { ...finding, working: finding.working.map((line) => ({ ...line, remark: mirrored(line.remark) })) };
// So on a transom that is loaded alike on both sides: where it moves most, it does so twice.
const mirrored = (remark) => remark?.startsWith("largest deflection") ? remark.replaceAll(/to (port|starboard)/g, "to one side") : remark;

// The command line's report; it ends with 1 where something fails.
function told(job) {
  try {
    return JSON.parse(execFileSync(program, ["check", "--format", "json", job], { maxBuffer: 1 << 28 }));
  } catch (error) {
    if (error.status !== 1) throw error;
    return JSON.parse(error.stdout);
  }
}

let wrong = 0;
for (const job of jobs) {
  const question = { ask: "check", name: job, text: readFileSync(job, "utf8") };
  const start = performance.now();
  const { report, faults } = reply(question);
  const spent = performance.now() - start;
  if (faults.length > 0) throw new Error(`${job}: ${JSON.stringify(faults)}`);
  const found = differences(report.findings.map(compared), told(job).findings.map(compared));
  console.log(`${job}: ${report.findings.length} findings, ${found.length} differences, ${spent.toFixed(0)} ms, ${(memory.buffer.byteLength / 2 ** 20).toFixed(0)} MB`);
  for (const difference of found.slice(0, 10)) console.log(`  ${difference}`);
  wrong += found.length;
}
process.exit(wrong === 0 ? 0 : 1);
