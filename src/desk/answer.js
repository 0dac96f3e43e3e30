// The answer at the edge of the screen: the verdict in a word, what stops it, what to measure next and what that decides.

/** @import { Fault, Finding, Missing, Question } from "./engine.js" */
import { capital, drawn, make, mark, taking } from "./dom.js";

/**
 * @typedef {{ faults: Fault[], verdict?: string, answer?: string, headline?: string, counts?: { verdict: string, count: number }[],
 *   questions?: Question[], findings?: Finding[], missing?: Missing[], assumed?: string[], cautions?: string[], deferral?: string,
 *   drawings?: { name: string, html: string }[], quickly?: boolean, title?: string, made_up?: boolean, cannot?: string }} Said
 */

/** Readings to take next that the edge shows. */
const MOST_NEXT = 5;

/** What the whole judgement said last; a quick one leaves its swing and strength as they were. @type {Said | undefined} */
let judgedWhole;
/** @type {Said | undefined} */
let judgedQuick;

/** The newest that is known. @returns {Said | undefined} */
export const known = () => judgedWhole ?? judgedQuick;

/** @param {Said} said */
export function keep(said) {
  if (said.quickly) judgedQuick = said;
  else if (said.faults?.length === 0) judgedWhole = said;
}

export function forget() {
  judgedWhole = judgedQuick = undefined;
}

/**
 * Writes the edge.
 * @param {HTMLElement} edge @param {Said} said @param {{ go: (path: string) => void, name: (path: string) => string, stands: (entry: string) => void, stale: boolean }} ways
 */
export function edge(edge, said, { go, name, stands, stale }) {
  const bar = /** @type {HTMLElement} */ (edge.querySelector(".bar"));
  const more = /** @type {HTMLElement} */ (edge.querySelector(".open"));
  const faults = said.faults ?? [];
  const told = faults.length > 0 ? known() : said;
  const verdict = faults.length > 0 ? "faulty" : told?.verdict ?? "unmeasured";
  bar.className = `bar ${verdict} ${stale || faults.length > 0 ? "stale" : ""}`;
  const words = faults.length === 1 ? "One entry cannot be read; nothing is judged until it can." : `${faults.length} entries cannot be read; nothing is judged until they can.`;
  bar.replaceChildren(
    mark(faults.length > 0 ? "unmeasured" : verdict),
    make("span", { class: "words" },
      make("b", {}, faults.length > 0 ? "Look here" : told?.answer ?? "Reading…"),
      make("span", {}, faults.length > 0 ? words : told?.headline ?? "")),
  );
  const of = (/** @type {string} */ verdict) => (told?.findings ?? []).filter((finding) => finding.verdict === verdict);
  const unknown = faults.filter((fault) => fault.unknown_field).length;
  more.replaceChildren(
    ...(unknown > 0 ? [make("p", {}, `The job holds ${unknown === 1 ? "a field" : `${unknown} fields`} that this version does not know: a slip, or a job of another version. Nothing is lost: what is not known is kept and saved as it stands.`)] : []),
    ...(faults.length > 0 ? [make("h2", {}, "What cannot be read"), make("ul", { class: "faults" }, ...faults.map((fault) => make("li", {},
      make("button", { type: "button", class: "link", onclick: () => go(fault.path) }, capital(name(fault.path))), make("p", {}, `${capital(fault.message)}${fault.help ? `; ${fault.help}` : ""}.`), make("p", { class: "soft" }, `${fault.path || "The file"}, line ${fault.line}`))))] : []),
    faults.length > 0 && told?.findings ? make("p", { class: "soft" }, "What follows was said before that.") : "",
    ...section("Asked back", (told?.questions ?? []).map((question) => asked(question, go, name, stands))),
    ...section("What stops it", of("fail").map(brief)),
    ...section("To mind", of("warn").map(brief)),
    ...section("What to measure next", (told?.missing ?? []).slice(0, MOST_NEXT).map((missing) => next(missing, go))),
  );
}

/** @param {string} title @param {HTMLElement[]} entries */
function section(title, entries) {
  return entries.length === 0 ? [] : [make("h2", {}, title), make("ul", { class: "brief" }, ...entries)];
}

/** @param {Finding} finding */
function brief(finding) {
  return make("li", {}, mark(finding.verdict), make("div", {}, make("p", { class: "said" }, finding.summary),
    finding.remedy && make("p", {}, make("b", {}, "Do: "), finding.remedy)));
}

/**
 * What hardly can be: put right at its box, or said to stand.
 * @param {Question} question @param {(path: string) => void} go @param {(path: string) => string} name @param {(entry: string) => void} stands
 */
function asked({ question, entries, why }, go, name, stands) {
  return make("li", {}, mark("unmeasured"), make("div", {}, make("p", { class: "said" }, question), make("p", { class: "soft" }, why),
    make("div", { class: "buttons" }, ...entries.map((entry) => make("button", { type: "button", onclick: () => go(entry) }, `Put right: ${name(entry)}`)),
      make("button", { type: "button", class: "quiet", onclick: () => stands(entries[0]) }, "It was looked at again and stands"))));
}

/** What a reading would decide. @param {Missing} missing */
export function decides({ questions }) {
  const more = questions.length - 1;
  return `Decides: ${questions[0] ?? ""}${more > 0 ? ` And ${more} more ${more === 1 ? "check" : "checks"}.` : ""}`;
}

/** @param {Missing} missing @param {(path: string) => void} go */
function next(missing, go) {
  return make("li", {}, mark("unmeasured"), make("div", {},
    make("button", { type: "button", class: "link", onclick: () => go(missing.field) }, capital(missing.reading)),
    make("p", {}, taking(missing.where, missing.how)),
    make("p", { class: "soft" }, decides(missing))));
}

/** Everything that was said, with the drawings. @param {Said | undefined} said @returns {Node[]} */
export function everything(said) {
  if (!said) return [make("p", {}, "Nothing was judged yet.")];
  const findings = said.findings ?? [];
  const group = (/** @type {string} */ verdict, /** @type {string} */ title, folded = false) => {
    const all = findings.filter((finding) => finding.verdict === verdict);
    if (all.length === 0) return [];
    const [head, list] = [make("h2", {}, `${title} (${all.length})`), make("ul", { class: "brief" }, ...all.map(full))];
    return folded ? [make("details", { class: "group" }, make("summary", {}, head), list)] : [head, list];
  };
  return [
    ...group("fail", "Fails"), ...group("warn", "Warns"), ...group("unmeasured", "Waits for readings"),
    ...drawings(said), ...group("pass", "Passes", true), ...group("not applicable", "Does not apply", true),
    ...section("Assumed", (said.assumed ?? []).map((words) => make("li", {}, mark("not applicable"), words))),
    ...section("Cautions", (said.cautions ?? []).map((words) => make("li", {}, mark("warn"), words))),
    make("p", { class: "deferral" }, said.deferral ?? ""),
  ];
}

/** @param {Said} said @param {string[]} [names] of those alone */
export function drawings(said, names) {
  const all = (said.drawings ?? []).filter(({ name }) => !names || names.some((start) => name.startsWith(start)));
  return all.map(({ html }) => drawn(html));
}

/** @param {Finding} finding */
function full(finding) {
  const limit = finding.limit ? [["at least", finding.limit.at_least], ["at most", finding.limit.at_most]].flatMap(([word, measure]) => (measure ? [`${word} ${/** @type {any} */ (measure).text}`] : [])).join(", ") : "";
  const figures = [finding.found && `found ${finding.found.text}`, limit && `limit ${limit}`, finding.margin && `margin ${finding.margin.text}`].filter(Boolean).join(" · ");
  return make("li", { "data-rule": finding.rule, "data-verdict": finding.verdict }, mark(finding.verdict), make("div", {}, make("p", { class: "said" }, finding.summary),
    figures && make("p", {}, figures), finding.remedy && make("p", {}, make("b", {}, "Do: "), finding.remedy),
    make("p", { class: "soft" }, `${finding.rule} · ${finding.sources.join("; ")}`)));
}
