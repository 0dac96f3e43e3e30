// Runs the engine beside the page, so that no key waits for it. Gets the compiled module once, the files that the job names
// whenever they change, and questions, each with a number; replies with the same number. A question that breaks the engine
// gets a fresh one behind it.

/** @type {WebAssembly.Module | undefined} */
let module;
/** @type {any} */
let engine;

/** In base64, by name. @type {Record<string, string>} */
let files = {};

/** @param {any} question */
function reply(question) {
  engine ??= new WebAssembly.Instance(/** @type {WebAssembly.Module} */ (module)).exports;
  // Of a job all is asked in some units.
  const bytes = new TextEncoder().encode(JSON.stringify(question.units ? { ...question, files } : question));
  const place = engine.room(bytes.length);
  new Uint8Array(engine.memory.buffer, place, bytes.length).set(bytes);
  const packed = BigInt.asUintN(64, engine.ask(place, bytes.length));
  const from = Number(packed >> 32n);
  const length = Number(packed & 0xffffffffn);
  const said = new TextDecoder().decode(new Uint8Array(engine.memory.buffer, from, length));
  engine.give_back(from, length);
  return JSON.parse(said);
}

onmessage = ({ data }) => {
  if (data.module) {
    module = data.module;
    return;
  }
  if (data.files) {
    files = data.files;
    return;
  }
  try {
    postMessage({ number: data.number, said: reply(data.question), memory: engine.memory.buffer.byteLength });
  } catch (error) {
    engine = undefined;
    postMessage({ number: data.number, said: { cannot: `the engine stopped: ${error}` } });
  }
};
