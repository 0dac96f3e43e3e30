// A box for every field, whatever it takes: made from the description of the job, filled from its text.

/** @import { Field, Form } from "./walk.js" */
import { capital, make, taking, unique } from "./dom.js";
import { Job } from "./job.js";
import { Helper } from "./engine.js";
import { stopsOf } from "./walk.js";

/** Choices that are buttons; more become a list to pick from. */
const MOST_BUTTONS = 7;

/**
 * What boxes need to know.
 * @typedef {{ job: Job, helper: Helper, names: Record<string, string[]>, redraw: (focus?: string) => void,
 *   seen: (field: Field) => void, isWanted: (path: string) => boolean, isJudged: () => boolean, isHere: (name: string) => boolean,
 *   attach: (field: Field, path: string) => void, metric: boolean }} Desk
 */

/** Units of a metric tape, scale and gauge, where a field offers them. */
const METRIC = new Map([["in", "mm"], ["ft", "m"], ["lb", "kg"], ["hp", "kW"], ["gal", "L"], ["mph", "km/h"], ["lbf", "N"],
  ["lbf·ft", "N·m"]]);
/** Units that were picked, by path. @type {Map<string, string>} */
const picked = new Map();

/** @param {Desk} desk @param {Field} field @param {string} path */
function unitOf(desk, field, path) {
  const units = field.units ?? [];
  const usual = field.unit ?? units[0] ?? "";
  const metric = METRIC.get(usual);
  return picked.get(path) ?? (desk.metric && metric && units.includes(metric) ? metric : usual);
}

/** Everything that is asked for of this field at this stop. @param {Desk} desk @param {Field} field @param {string} path @param {string} stop @returns {Node[]} */
export function boxes(desk, field, path, stop) {
  if (!stopsOf(field).has(stop)) return [];
  const here = field.stop === stop;
  if (field.takes === "list") return here || desk.job.count(path) > 0 ? [list(desk, field, path, stop, here)] : [];
  if (field.takes === "fields") return group(desk, field, path, stop);
  if (field.takes === "choice") return here ? [choice(desk, field, path, stop)] : behind(desk, field, path, stop);
  return here ? [single(desk, field, path)] : [];
}

/** The boxes of a group of fields. @param {Desk} desk @param {Form} form @param {string} path @param {string} stop */
function inside(desk, form, path, stop) {
  const { near, far } = sorted(desk, form, path, stop);
  return [...near, ...further(path, far)];
}

/** Everything that is asked for at a stop. @param {Desk} desk @param {Form} form @param {string} stop */
export function everything(desk, form, stop) {
  const { near, far } = sorted(desk, form, "", stop);
  return near.length > 0 ? [...near, ...further("", far)] : far;
}

/**
 * The boxes of a group of fields: near are those that are known, that a check waits for and that must be there; far is what
 * else can be told.
 * @param {Desk} desk @param {Form} form @param {string} path @param {string} stop
 */
function sorted(desk, form, path, stop) {
  /** @type {{ near: Node[], far: Node[] }} */
  const { near, far } = { near: [], far: [] };
  for (const field of form.fields ?? []) {
    const at = path ? `${path}.${field.field}` : field.field;
    const isNear = !field.optional || !desk.isJudged() || desk.job.has(at) || desk.isWanted(at);
    const made = boxes(desk, field, at, stop);
    // What is known of a group may stand at other stops.
    (isNear && !made.some((box) => box instanceof HTMLElement && box.hasAttribute("data-far")) ? near : far).push(...made);
  }
  return { near, far };
}

/** What else can be told, folded away. @param {string} path @param {Node[]} far */
function further(path, far) {
  if (far.length === 0) return [];
  const words = path ? "More of it" : "More that can be told here";
  return [make("details", { class: "group further", "data-path": `${path}+` }, make("summary", {}, `${words} (${far.length})`), ...far)];
}

/** Fields that belong together; folded away where nothing of them is known here and no check waits for them. @param {Desk} desk @param {Field} field @param {string} path @param {string} stop */
function group(desk, field, path, stop) {
  const { near, far } = sorted(desk, field, path, stop);
  if (near.length + far.length === 0) return [];
  const open = near.length > 0 && (!field.optional || desk.job.has(path) || desk.isWanted(path));
  const all = open ? [...near, ...further(path, far)] : [...near, ...far];
  return [make("details", { class: "group", "data-path": path, "data-far": !open, open }, make("summary", {}, make("h2", {}, capital(field.name))), ...all, fault(path))];
}

/** What stands behind a choice that was made at another stop. @param {Desk} desk @param {Field} field @param {string} path @param {string} stop */
function behind(desk, field, path, stop) {
  const chosen = (field.choices ?? []).find((choice) => choice.word === desk.job.word(path));
  return chosen?.with ? insideOf(desk, field, chosen.with, path, stop) : [];
}

/** Where faults of this very entry are written. @param {string} path */
function fault(path) {
  return make("p", { class: "fault", "data-fault": path, role: "status", hidden: true });
}

/** How a reading is taken. @param {Field} field */
function how(field) {
  const closely = field.closely ? ` To within ${field.closely.text}.` : "";
  const words = field.how ? taking(field.where ?? "", field.how) + closely : taking("", field.about.replace(/\.$/, ""));
  return words ? make("p", { class: "how" }, words) : null;
}

/** A box with its label, and behind it how it is taken. @param {Desk} desk @param {Field} field @param {string} path @returns {HTMLElement} */
function single(desk, field, path) {
  if (field.takes === "flag" && field.default !== undefined) return flag(desk, field, path);
  // Where no is an answer too.
  if (field.takes === "flag") return choice(desk, { ...field, takes: "choice", choices: [["true", "yes"], ["false", "no"]].map(([word, words]) => ({ word, words, about: "", with: null })) }, path, field.stop ?? "");
  if (field.takes === "number") return number(desk, field, path);
  if (field.takes === "range") return parts(desk, field, path, ["from", "to"].map((end) => [`${path}.${end}`, end]));
  if (field.takes === "several") return parts(desk, field, path, field.of.map((/** @type {Form} */ _, /** @type {number} */ i) => [`${path}[${i}]`, ["first", "second", "third"][i]]));
  return plain(desk, field, path);
}

/** Several numbers of one field. @param {Desk} desk @param {Field} field @param {string} path @param {string[][]} ends */
function parts(desk, field, path, ends) {
  const inner = field.takes === "range" ? { takes: "number", kind: field.kind, units: field.units } : null;
  const all = ends.map(([at, name], i) => {
    const part = /** @type {Field} */ ({ ...(inner ?? field.of[i]), field: name, name, about: "", optional: false, stop: field.stop });
    return part.takes === "choice" ? choice(desk, part, at, field.stop ?? "", whole) : number(desk, part, at, whole);
  });
  // Both stand in one entry, which is put in as a whole when the first of them is typed.
  function whole() {
    if (!desk.job.has(path)) void desk.job.put(path, field.takes === "range" ? '(from: "", to: "")' : `(${ends.map(() => '""').join(", ")})`);
  }
  return make("fieldset", { class: "group", "data-path": path }, make("legend", {}, capital(field.name)), how(field), ...all, fault(path));
}

/** A number with its unit. @param {Desk} desk @param {Field} field @param {string} path @param {() => void} [before] @returns {HTMLElement} */
function number(desk, field, path, before = () => {}) {
  const { job } = desk;
  const [id, saidId, howId] = [unique(), unique(), unique()];
  const at = () => (job.has(`${path}.value`) ? `${path}.value` : path);
  const said = make("output", { id: saidId, class: "read", for: id });
  const units = field.units ?? [];
  // In a list many numbers stand side by side: the usual unit stands in the label there.
  const short = path.includes("[");
  const usual = () => (short ? unitOf(desk, field, path) : unit.value);
  const unit = make("select", { "aria-label": `unit of ${field.name}, where none is typed`, class: "unit",
    onchange: () => { picked.set(path, unit.value); void typed(); } },
    ...units.map((each) => make("option", { value: each, selected: each === unitOf(desk, field, path) }, each)));
  const input = make("input", { id, type: "text", value: job.value(at()), autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "next",
    placeholder: "not taken", "data-path": path, "aria-describedby": `${saidId} ${howId}`, oninput: () => void typed(true), onfocus: () => desk.seen(field) });
  // In a list what was typed with its unit need not be said again.
  const heard = (/** @type {any} */ read) => (!read.shown || (short && read.shown.startsWith(input.value.trim())) ? "" : `read as ${read.shown}`);
  let turn = 0;
  async function typed(alter = false) {
    const mine = ++turn;
    const words = input.value.trim();
    if (words === "") {
      said.textContent = "";
      // A reading that was taken back takes its basis and note with it.
      if (alter && job.has(path)) await (field.optional ? job.drop(path) : job.sayAt(at(), ""));
      return;
    }
    job.begin();
    const read = await desk.helper.ask({ ask: "read", kind: field.kind, typed: words, unit: usual() });
    job.end();
    if (mine !== turn) return;
    said.textContent = heard(read);
    if (alter || job.value(at()) !== read.written) {
      before();
      await job.sayAt(at(), read.written);
    }
  }
  if (input.value) void desk.helper.ask({ ask: "read", kind: field.kind, typed: input.value, unit: usual() }).then((read) => { said.textContent = heard(read); });
  const taken = make("div", { id: howId }, how(field));
  return make("div", { class: short ? "field short" : "field", "data-path": path },
    make("label", { for: id }, capital(field.name), short && make("span", { class: "soft" }, ` ${unitOf(desk, field, path)}`)),
    make("div", { class: "typed" }, input, ...(short ? [] : [units.length > 1 && unit, basis(desk, field, path)].filter((each) => each !== false))),
    short && basis(desk, field, path, taken), said, fault(path), !short && taken);
}

/** Where a number is from, and how closely it was taken. @param {Desk} desk @param {Field} field @param {string} path @param {HTMLElement} [taken] how, where there is no room for it elsewhere */
function basis({ job }, field, path, taken) {
  const words = ["measured", "builder", "catalog", "assumed"];
  // Whatever more is known of a number stands in its long form.
  async function put(/** @type {string} */ part, /** @type {import("./engine.js").Change} */ change) {
    if (!job.has(path)) return;
    if (!job.has(`${path}.value`)) await job.put(path, `(value: ${job.entries.get(path)?.value})`);
    await job.alter({ ...change, path: `${path}.${part}` });
  }
  const select = make("select", { "data-path": `${path}.basis`, onchange: () => void put("basis", { path, value: select.value }) },
    ...words.map((word) => make("option", { value: word, selected: (job.word(`${path}.basis`) || "measured") === word }, word)));
  const line = (/** @type {string} */ part, /** @type {string} */ name, /** @type {string} */ hint) => {
    const input = make("input", { type: "text", value: job.value(`${path}.${part}`), placeholder: hint, "data-path": `${path}.${part}`,
      autocomplete: "off", oninput: () => void put(part, input.value.trim() ? { path, words: input.value } : { path }) });
    return make("label", {}, name, input);
  };
  return make("details", { class: "more" }, make("summary", { "aria-label": `more of ${field.name}: where it is from, how closely it was taken` }, "\u22ef"), taken,
    make("label", {}, "From", select), line("tolerance", "Within", field.closely?.text ?? "1/8 in"), line("note", "Note", "from the drawing"));
}

/** The catalog's names that a field takes: by the longest end of its path. @param {Desk} desk @param {string} path */
function namesFor({ names }, path) {
  const ends = Object.keys(names).filter((end) => path === end || path.endsWith(`.${end}`));
  return names[ends.sort((a, b) => b.length - a.length)[0]];
}

/** Words, a name of the catalog, or a count. @param {Desk} desk @param {Field} field @param {string} path @returns {HTMLElement} */
function plain(desk, field, path) {
  const { job } = desk;
  const [id, howId] = [unique(), unique()];
  const names = namesFor(desk, path);
  const counts = field.takes === "count" || field.takes === "plain number";
  /** @param {string} value */
  const put = (value) => {
    if (value.trim() === "" && field.optional) return void (job.has(path) && job.drop(path));
    const isNumber = counts && /^-?[\d.]+$/.test(value.trim());
    void (isNumber ? job.put(path, value.trim()) : job.sayAt(path, value));
  };
  const about = { id, "data-path": path, "aria-describedby": howId, onfocus: () => desk.seen(field) };
  const now = job.value(path);
  const known = names && (now === "" || names.includes(now));
  const box = known
    ? make("select", { ...about, onchange: () => put(select().value) }, make("option", { value: "" }, "not known"),
        ...names.map((name) => make("option", { value: name, selected: name === now }, name)))
    : make("input", { ...about, type: "text", value: now, inputmode: counts ? "numeric" : undefined, autocomplete: "off",
        placeholder: counts ? "not taken" : "", oninput: () => put(select().value) });
  const select = () => /** @type {HTMLInputElement | HTMLSelectElement} */ (box);
  const beside = field.files && make("div", { class: "beside" },
    make("button", { type: "button", onclick: () => desk.attach(field, path) }, now && desk.isHere(now) ? "Attach another file" : "Attach the file"),
    make("span", { class: "soft" }, now === "" ? "" : desk.isHere(now) ? "It lies beside the job on this device." : "It is not on this device yet."));
  return make("div", { class: "field", "data-path": path }, make("label", { for: id }, capital(field.name)), box, beside, fault(path), make("div", { id: howId }, how(field)));
}

/** @param {Desk} desk @param {Field} field @param {string} path */
function flag({ job }, field, path) {
  const box = make("input", { type: "checkbox", checked: job.value(path) === "true", "data-path": path, onchange: () => void (box.checked ? job.put(path, "true") : job.drop(path)) });
  return make("div", { class: "field", "data-path": path }, make("label", { class: "flag" }, box, capital(field.name)), fault(path), how(field));
}

/** One of several words. @param {Desk} desk @param {Field} field @param {string} path @param {string} stop @param {() => void} [before] @returns {HTMLElement} */
function choice(desk, field, path, stop, before = () => {}) {
  const { job } = desk;
  const choices = field.choices ?? [];
  const now = job.word(path) || (field.default ?? "");
  let last = now;
  /** @param {string} word */
  const put = async (word) => {
    desk.seen(field);
    const more = [last, word].some((one) => choices.find((choice) => choice.word === one)?.with);
    last = word;
    if (word === "") await job.drop(path);
    else {
      before();
      await job.put(path, written(choices.find((choice) => choice.word === word)));
    }
    // Only where boxes come or go: the cursor stays where it is.
    if (more) desk.redraw(path);
  };
  const all = [...(field.optional && !field.default ? [["", "not taken"]] : []), ...choices.map((choice) => [choice.word, choice.words])];
  const name = unique();
  const picks = choices.length <= MOST_BUTTONS
    ? make("div", { class: "picks" }, ...all.map(([word, words]) => make("label", {},
        make("input", { type: "radio", name, value: word, checked: word === now, "data-path": word === now ? path : undefined, onchange: () => void put(word) }), make("span", {}, plainly(words)))))
    : make("select", { "aria-label": field.name, "data-path": path, onchange: (/** @type {Event} */ event) => void put(/** @type {HTMLSelectElement} */ (event.target).value) },
        ...all.map(([word, words]) => make("option", { value: word, selected: word === now }, plainly(words))));
  const chosen = choices.find((choice) => choice.word === now);
  return make("fieldset", { class: "field", "data-path": path }, make("legend", {}, capital(field.name)), picks, fault(path), how(field),
    ...(chosen?.with ? insideOf(desk, field, chosen.with, path, stop) : []));
}

/** @param {string} words */
const plainly = (words) => words.replaceAll("_", " ");

/** What stands behind a chosen word. @param {Desk} desk @param {Field} field @param {Form} form @param {string} path @param {string} stop */
function insideOf(desk, field, form, path, stop) {
  if (form.takes === "fields") return inside(desk, form, path, stop);
  const part = /** @type {Field} */ ({ ...field, choices: undefined, ...form, name: field.name, optional: false, stop });
  return boxes(desk, part, `${path}[0]`, stop);
}

/** What a choice looks like in the job before anything behind it is known. @param {import("./walk.js").Choice | undefined} choice */
function written(choice) {
  if (!choice) return "";
  if (!choice.with) return choice.word;
  return `${choice.word}(${choice.with.takes === "fields" ? "" : empty(choice.with)})`;
}

/** What stands in a new entry. @param {Form} form @returns {string} */
function empty(form) {
  if (form.takes === "fields") return "()";
  if (form.takes === "list") return "[]";
  if (form.takes === "choice") return written(form.choices?.[0]);
  if (form.takes === "several") return `(${form.of.map(empty).join(", ")})`;
  return '""';
}

/** Any number of entries. @param {Desk} desk @param {Field} field @param {string} path @param {string} stop @param {boolean} here */
function list(desk, field, path, stop, here) {
  const { job } = desk;
  const count = job.count(path);
  const none = job.has(path) && count === 0;
  const entries = Array.from({ length: count }, (_, i) => {
    const at = `${path}[${i}]`;
    const of = /** @type {Field} */ ({ ...field, takes: "", ...field.of, name: `${field.name} ${i + 1}`, where: undefined, how: undefined, about: "", optional: false, stop: here ? stop : field.stop });
    const own = field.of.takes === "fields" ? inside(desk, field.of, at, stop) : boxes(desk, of, at, stop);
    const remove = here && make("button", { type: "button", class: "remove", "aria-label": `Take out: ${field.name} ${i + 1}`, onclick: async () => { await job.drop(at); desk.redraw(path); } }, "Take out");
    return own.length === 0 && !here ? null : make("section", { class: "entry", "data-path": at },
      field.of.takes === "fields" ? make("h3", {}, title(job, field, at, i)) : null, ...own, fault(at), remove);
  });
  const add = here && make("button", { type: "button", class: "add", "data-path": path, onclick: async () => {
    await job.put(`${path}[${job.count(path)}]`, empty(field.of));
    desk.redraw(`${path}[${count}]`);
  } }, count === 0 ? `Add: ${field.name}` : "Add another");
  const nothing = here && field.empty_is_none && count === 0 && make("label", { class: "flag" },
    make("input", { type: "checkbox", checked: none, "data-path": path, onchange: async () => { await (none ? job.drop(path) : job.put(path, "[]")); desk.redraw(path); } }), "There is none");
  return make("section", { class: "list", "data-path": path }, make("h2", {}, capital(field.name)), here ? how(field) : null, ...entries, fault(path), add, nothing);
}

/** What an entry is called: by its label, its class, or its number. @param {Job} job @param {Field} field @param {string} at @param {number} i */
function title(job, field, at, i) {
  const label = (field.of.fields ?? []).find((/** @type {Field} */ each) => each.label || each.field === "class");
  return (label && job.value(`${at}.${label.field}`)) || `${capital(field.name)} ${i + 1}`;
}
