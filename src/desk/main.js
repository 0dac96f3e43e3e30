// The page at the boat: a walk round her, place by place, with the answer at the edge of the screen.

/** @import { Said } from "./answer.js" */
/** @import { Field, Form } from "./walk.js" */
import * as answer from "./answer.js";
import * as beside from "./beside.js";
import { capital, drawn, make, shape, taking } from "./dom.js";
import { Newest, held, start } from "./engine.js";
import { boxes, everything } from "./fields.js";
import * as files from "./files.js";
import { Job } from "./job.js";
import { fieldAt, settle, stops } from "./walk.js";

/** First and last step of the walk, which are no place at the boat. */
const FIRST = "the job";
const NEXT = "ten minutes";
const ANSWER = "the answer";
/** Drawings that are shown where what they draw is measured, by the beginning of their names. @type {[RegExp, string[]][]} */
const DRAWN = [[/transom|bolt/, ["transom"]], [/hull|afloat|aboard/, ["hull", "profile", "sections"]], [/engine|bracket/, ["side", "after"]], [/trailer|inside/, ["swing"]]];

/** @template {HTMLElement} T @param {string} id @returns {T} */
const part = (id) => /** @type {T} */ (document.getElementById(id));
/** What keeps the page from running is told, in place of waiting for ever. @param {unknown} why */
function stopped(why) {
  const waiting = document.getElementById("waiting");
  if (waiting) waiting.textContent = `This page cannot run here (${why}). A browser of the last two years will do.`;
}
addEventListener("error", (event) => stopped(event.message));
addEventListener("unhandledrejection", (event) => stopped(event.reason));

/** @param {string} words */
const say = (words) => { part("say").textContent = words; };

const settings = { metric: false };
const { quick, whole } = await start();
const [described, catalog, { demos }] = await Promise.all([{ ask: "describe" }, { ask: "catalog" }, { ask: "demos" }].map((question) => quick.ask(question)));
/** @type {Form} */
const form = described.form;
settle(form, described.stops[0]);
let walk = [FIRST, NEXT, ANSWER];
let here = 0;
/** @type {Said} */
let said = { faults: [] };

const job = new Job(quick, judge, say);
const desk = { job, helper: quick, names: catalog.names, redraw, seen, isWanted, isJudged: () => answer.known() !== undefined, isHere: (/** @type {string} */ name) => beside.known(name) !== undefined, attach, get metric() { return settings.metric; } };

const quickly = new Newest(quick, (reply, about) => heard(reply, about));
const wholly = new Newest(whole, (reply, about) => heard(reply, about));

/** Asks what is to be said of the job as it now stands. */
function judge() {
  document.documentElement.dataset.waiting = "yes";
  handOver();
  const question = { ask: "judge", name: job.name, text: job.text, units: settings.metric ? "si" : "us" };
  void quickly.ask({ ...question, quickly: true });
  void wholly.ask(question);
}

/** Names of the files that the job names. */
const named = () => [...job.entries].filter(([path]) => fieldAt(form, path)?.files).map(([path]) => job.value(path));
let handedOver = "";

/** Gives the engine the files that the job names, where they are others than it has. */
function handOver(again = false) {
  const files = beside.forEngine(named());
  const now = Object.keys(files).sort().join("\n");
  if (now === handedOver && !again) return;
  handedOver = now;
  for (const helper of [quick, whole]) helper.give(files);
}

/** Lets a person choose the file of a field, which then lies beside the job. @param {Field} field @param {string} path */
function attach(field, path) {
  const kinds = (field.files ?? []).join(",");
  files.choose(kinds, async ([file]) => {
    const isPhotograph = file.type.startsWith("image/");
    const name = isPhotograph ? photographName() : file.name;
    const isKept = await beside.put(name, await beside.addressOf(file));
    handOver(true);
    await job.sayAt(path, name);
    judge();
    redraw(path);
    say(isKept ? `${file.name} lies beside the job now.` : `${file.name} lies beside the job until this page is closed; this browser keeps no files.`);
  });
}

/** @param {Said} reply @param {any} about */
function heard(reply, about) {
  if (reply.cannot) return say(reply.cannot);
  // What was overtaken while it ran would flicker.
  if (about.text !== job.text) return;
  answer.keep(reply);
  if (reply.quickly && reply.faults.length === 0) {
    const before = answer.known();
    // The dear families stand as they were until they are judged anew; the words of the whole wait for them.
    said = before && !before.quickly ? { ...before, faults: [], findings: merged(before, reply), missing: before.missing } : { ...reply, answer: "Reading…", headline: "Swing, strength and running are being worked out." };
    show(true);
  } else {
    said = reply;
    job.unknown = reply.faults.filter((fault) => fault.unknown_field).map((fault) => fault.path);
    show(false);
    if (!reply.quickly) document.documentElement.dataset.waiting = "no";
  }
}

/** @param {Said} before @param {Said} now */
function merged(before, now) {
  const fresh = new Map((now.findings ?? []).map((finding) => [finding.rule, finding]));
  return (before.findings ?? []).map((finding) => fresh.get(finding.rule) ?? finding);
}

/** @param {boolean} stale */
function show(stale) {
  // Said aloud when it changes, not at every key.
  if (!stale && said.answer && part("heard").textContent !== said.answer) part("heard").textContent = said.answer;
  answer.edge(part("edge"), said, { go, name: (path) => fieldAt(form, path)?.name ?? "the file", stands, stale });
  faults();
  const live = part("live");
  if (walk[here] === ANSWER) live.replaceChildren(...answer.everything(answer.known()));
  else if (!stale && said.faults.length === 0) {
    const names = DRAWN.find(([pattern]) => pattern.test(walk[here]))?.[1];
    live.replaceChildren(...(names ? answer.drawings(said, names) : []));
  }
  if (walk[here] === NEXT && !stale && !part("step").contains(document.activeElement)) redraw();
}

/** Writes each fault at its field, or at the nearest that is shown. */
function faults() {
  for (const place of document.querySelectorAll("[data-fault]")) place.toggleAttribute("hidden", true);
  for (const box of document.querySelectorAll("[aria-invalid]")) box.removeAttribute("aria-invalid");
  for (const fault of said.faults) {
    let path = fault.path;
    /** @type {Element | null} */
    let place = null;
    while (path && !(place = document.querySelector(`[data-fault="${CSS.escape(path)}"]`))) path = path.replace(/(\.[^.[]*|\[\d+\]|^[^.[]*)$/, "");
    if (!place) continue;
    const words = `${fault.message}${fault.help ? `; ${fault.help}` : ""}`;
    place.textContent = place.hasAttribute("hidden") ? capital(words) : `${place.textContent} ${capital(words)}`;
    place.removeAttribute("hidden");
    document.querySelector(`input[data-path="${CSS.escape(path)}"]`)?.setAttribute("aria-invalid", "true");
  }
}

/** Goes to the field of this path. @param {string} path */
function go(path) {
  const field = fieldAt(form, path);
  lay();
  const at = walk.indexOf(field?.stop ?? FIRST);
  closeEdge();
  visit(at < 0 ? 0 : at);
  const wanted = path.replaceAll("[]", "[0]");
  for (let near = wanted; near; near = near.replace(/(\.[^.[]*|\[\d+\]|^[^.[]*)$/, "")) {
    const found = document.querySelector(`#step [data-path="${CSS.escape(near)}"]`);
    if (!found) continue;
    for (let fold = found.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) fold.open = true;
    found.scrollIntoView({ block: "center" });
    const box = found.matches("input, select, button") ? found : found.querySelector("input, select, button");
    /** @type {HTMLElement | null} */ (box)?.focus({ preventScroll: true });
    return;
  }
}

/** Notes that this entry was looked at again. @param {string} entry */
function stands(entry) {
  void job.sayAt(`sure[${job.count("sure")}]`, entry);
}

function closeEdge() {
  part("edge").classList.remove("up");
  part("edge").querySelector(".bar")?.setAttribute("aria-expanded", "false");
}

/** @param {number} step */
function visit(step) {
  say("");
  here = Math.max(0, Math.min(walk.length - 1, step));
  redraw();
  show(false);
  part("paper").scrollTo({ top: 0 });
  part("title").focus({ preventScroll: true });
}

/** The field that is being filled in: its place is marked on the sketch. @param {Field} field */
function seen(field) {
  for (const mark of document.querySelectorAll("#sketch .spot")) mark.classList.toggle("now", mark.getAttribute("data-spot") === String(field.spot));
}

/** Whether a check waits for something of this part of the job. @param {string} path */
function isWanted(path) {
  const field = path.replaceAll(/\[\d+\]/g, "[]");
  return (answer.known()?.missing ?? []).some((missing) => missing.field === field || missing.field.startsWith(`${field}.`) || missing.field.startsWith(`${field}[`));
}

/** The walk, as the job's sitting has it: what a study gives outright is asked for in a study alone. */
function lay() {
  const study = job.word("sitting") === "study";
  const now = walk[here];
  walk = [FIRST, NEXT, ...stops({ form, stops: described.stops }).filter((stop) => study || stop !== (described.study ?? "at the desk")), ANSWER];
  here = Math.max(0, walk.indexOf(now));
  const where = /** @type {HTMLSelectElement} */ (part("where"));
  if (where.options.length !== walk.length) where.replaceChildren(...walk.map((stop, i) => make("option", { value: i }, `${i + 1}. ${capital(stop)}`)));
}

/** Draws the step anew, the cursor staying where it was. @param {string} [focus] path of the box to go to */
function redraw(focus) {
  lay();
  const active = document.activeElement;
  const path = focus ?? (active && part("step").contains(active) ? active.getAttribute("data-path") : null);
  const stop = walk[here];
  part("title").textContent = capital(stop);
  part("count").textContent = `${here + 1} of ${walk.length}`;
  part("back").toggleAttribute("disabled", here === 0);
  part("next").toggleAttribute("disabled", here === walk.length - 1);
  const choose = /** @type {HTMLSelectElement} */ (part("where"));
  choose.value = String(here);
  const all = stop === FIRST ? beginning() : stop === NEXT ? shortWay() : stop === ANSWER ? [] : place(stop);
  part("step").replaceChildren(...all);
  part("live").replaceChildren();
  faults();
  if (path) /** @type {HTMLElement | null} */ (document.querySelector(`#step input[data-path="${CSS.escape(path)}"], #step select[data-path="${CSS.escape(path)}"], #step [data-path="${CSS.escape(path)}"] :is(input, select, button)`))?.focus({ preventScroll: focus === undefined });
}

/** The fields of one stop, with the sketch. @param {string} stop */
function place(stop) {
  const all = everything(desk, form, stop);
  if (all.length === 0) return [make("p", {}, "Nothing is asked for here yet: it comes with what is told at other places.")];
  return [sketch(stop), ...all].filter((each) => each !== null);
}

/** The sketch with the places of this stop marked. @param {string} stop */
function sketch(stop) {
  /** @type {Map<string, [number, number]>} */
  const spots = new Map();
  /** @param {Form | null} inner */
  const gather = (inner) => {
    for (const field of inner?.fields ?? []) {
      if (field.stop === stop && field.spot) spots.set(String(field.spot), field.spot);
      gather(field);
    }
    if (inner?.of && !Array.isArray(inner.of)) gather(inner.of);
    for (const choice of inner?.choices ?? []) gather(choice.with);
  };
  gather(form);
  if (spots.size === 0) return null;
  const svg = drawn(described.sketch);
  for (const [name, [cx, cy]] of spots) svg.append(shape("circle", { class: "spot", cx, cy, r: 9, "data-spot": name }));
  return make("figure", { id: "sketch" }, svg);
}

/** The first step: another job, and what is said of this one. */
function beginning() {
  const kinds = [["before_ordering", "Before engines are ordered"], ["as_fitted", "A finished install"], ["study", "A question at the desk"]];
  return [
    make("p", {}, "Walk round the boat and write down what the tape says. Leave out what you do not know: what is missing is named, and the answer at the edge of the screen says what to measure next."),
    make("p", { class: "soft" }, "The job is kept in this browser, on this device, until you press Forget. Nothing is sent anywhere."),
    make("h2", {}, "A new job"),
    make("div", { class: "buttons" }, ...kinds.map(([sitting, words]) => make("button", { type: "button", onclick: async () => take("job.ron", (await quick.ask({ ask: "start", sitting })).text, false) }, words))),
    make("h2", {}, "A job that is there"),
    make("div", { class: "buttons" },
      make("button", { type: "button", onclick: () => files.choose("", (chosen) => void open(chosen), { several: true }) }, "Open a file")),
    make("details", { class: "more" }, make("summary", {}, "Invented boats to look at"), make("div", { class: "buttons" },
      ...demos.map((/** @type {{ name: string, text: string }} */ demo) => make("button", { type: "button", class: "quiet", onclick: () => take(demo.name, demo.text, false) }, `Invented: ${demo.name.replace(".ron", "").replaceAll("_", " ")}`)))),
    make("h2", {}, "This job"),
    ...(form.fields ?? []).flatMap((field) => boxes(desk, field, field.field, described.stops[0]).slice(0, ["title", "sitting"].includes(field.field) ? 1 : 0)),
    ...(job.lost.length > 0 ? [make("p", { id: "lost" }, "With what was taken out there went out of the file: ", ...job.lost.map((words) => make("code", {}, words)))] : []),
    make("div", { class: "buttons" },
      make("button", { type: "button", onclick: save }, "Save the job"),
      files.canShare(job.name, job.text) && make("button", { type: "button", onclick: () => files.share(job.name, job.text) }, "Share the job"),
      make("button", { type: "button", onclick: () => paper("page", "report") }, "Save the report"),
      make("button", { type: "button", onclick: () => paper("sheet", "measuring-sheet") }, "Save the measuring sheet"),
      make("button", { type: "button", onclick: photograph }, "Take a photograph"),
      make("button", { type: "button", class: "quiet", onclick: forget }, "Forget this job")),
    make("label", { class: "flag" }, make("input", { type: "checkbox", checked: settings.metric, onchange: (/** @type {Event} */ event) => { settings.metric = /** @type {HTMLInputElement} */ (event.target).checked; judge(); } }), "Metric units"),
    make("details", { class: "more" }, make("summary", {}, "The job as a file"), make("pre", { class: "scroll", tabindex: "0" }, job.text)),
  ];
}

/** Readings of the short way. */
const SHORT_WAY = 10;

/** The ten-minute visit: what most checks wait for, in one list, the most telling first. */
function shortWay() {
  const wanted = (answer.known()?.missing ?? []).slice(0, SHORT_WAY);
  if (wanted.length === 0) return [make("p", {}, "No reading is missing.")];
  return [
    make("p", {}, "Little time? These readings decide most, the most telling first."),
    make("ol", { class: "wanted" }, ...wanted.map((one) => {
      const field = fieldAt(form, one.field);
      // What has more behind it is told at its own place.
      const isPlain = field && !one.field.includes("[]") && !["list", "fields"].includes(field.takes) && !field.choices?.some((choice) => choice.with);
      const here = isPlain ? boxes(desk, field, one.field, field.stop ?? "") : [];
      const away = [make("button", { type: "button", onclick: () => go(one.field) }, capital(one.reading)), make("p", { class: "how" }, taking(one.where, one.how))];
      return make("li", {}, ...(here.length === 1 ? here : away), make("p", { class: "soft" }, answer.decides(one)));
    })),
  ];
}

/** Whether the job that is open may be left. */
const mayLeave = () => job.text === job.saved || confirm(`What was written into ${job.name} is in no file yet. Leave it?`);

/** Takes another job, with the files that it names. @param {string} name @param {string} text @param {boolean} isOfFile @param {File[]} [more] */
async function take(name, text, isOfFile, more = []) {
  if (!mayLeave()) return;
  answer.forget();
  await beside.clear();
  for (const file of more) await beside.put(file.name, await beside.addressOf(file));
  await job.open(name, text, { isOfFile });
  visit(0);
  say(`${name} is open.`);
}

/** Opens the job among these files; the others lie beside it. @param {File[]} chosen */
async function open(chosen) {
  const at = chosen.length === 1 ? 0 : chosen.findIndex((file) => file.name.endsWith(".ron"));
  if (at < 0) return say("None of these files is a job: its name ends in .ron.");
  await take(chosen[at].name, await chosen[at].text(), true, chosen.filter((_, i) => i !== at));
}

function save() {
  files.save(job.name, job.text, "application/octet-stream");
  job.saved = job.text;
  job.keep();
  say(`${job.name} saved.`);
}

/** @param {string} ask @param {string} suffix */
async function paper(ask, suffix) {
  const pictures = ask === "page" ? { pictures: beside.pictures(named()) } : {};
  const reply = await whole.ask({ ask, name: job.name, text: job.text, units: settings.metric ? "si" : "us", ...pictures });
  if (reply.faults?.length > 0) return say("The job has entries that cannot be read; mend them first.");
  const name = `${job.name.replace(/\.ron$/, "")}-${suffix}.html`;
  files.save(name, reply.html, "text/html");
  say(`${name} saved: open it to read or to print.`);
}

const photographName = () => `photographs/${Date.now()}.jpg`;

function photograph() {
  files.choose("image/*", async ([file]) => {
    const name = photographName();
    const isKept = await beside.put(name, await beside.addressOf(file));
    const at = `photographs[${job.count("photographs")}]`;
    await job.alter({ path: at, value: "()" }, { path: `${at}.file`, words: name }, { path: `${at}.caption`, words: file.name });
    say(isKept ? "The photograph is kept, and goes into the report." : "The photograph goes into the report; this browser keeps it until the page is closed.");
  }, { camera: true });
}

async function forget() {
  if (!confirm("Forget this job and its photographs on this device?")) return;
  job.saved = job.text;
  await take("job.ron", (await quick.ask({ ask: "start", sitting: "before_ordering" })).text, false);
  Job.forget();
  say("Forgotten.");
}

const bar = /** @type {HTMLElement} */ (part("edge").querySelector(".bar"));
bar.addEventListener("click", () => bar.setAttribute("aria-expanded", String(part("edge").classList.toggle("up"))));
part("back").addEventListener("click", () => visit(here - 1));
part("next").addEventListener("click", () => visit(here + 1));
const where = /** @type {HTMLSelectElement} */ (part("where"));
where.addEventListener("change", () => visit(Number(where.value)));
addEventListener("keydown", (event) => {
  if (event.key === "Escape") closeEdge();
  // A telephone's keyboard has no Tab: its Next goes to the next box.
  if (event.key !== "Enter" || !(event.target instanceof HTMLInputElement) || event.target.type !== "text") return;
  const all = [...document.querySelectorAll("#step input[type=text]")].filter((box) => box.checkVisibility());
  /** @type {HTMLElement | undefined} */ (all[all.indexOf(event.target) + 1])?.focus();
});

// For whoever wants to ask the engine from the browser's console, and for the page's own checks.
Object.assign(globalThis, { sternknee: { ask: (/** @type {object} */ question) => quick.ask(question), memory: () => quick.memory + whole.memory } });

const given = JSON.parse(held("given"));
const kept = Job.kept();
// A job that came in the page goes on where it was left.
const isNew = given && kept?.begun !== given.text;
const first = (isNew ? { ...given, isOfFile: true } : kept) ?? { name: "job.ron", text: (await quick.ask({ ask: "start", sitting: "before_ordering" })).text };
await beside.find();
if (isNew) {
  await beside.clear();
  for (const [name, bytes] of Object.entries(given.files)) await beside.put(name, `data:application/octet-stream;base64,${bytes}`);
}
job.begun = given?.text;
await job.open(first.name, first.text, { isOfFile: first.isOfFile ?? false, saved: first.saved });
visit(0);
part("waiting").remove();
document.documentElement.dataset.ready = "yes";
