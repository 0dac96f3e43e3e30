// The walk round the boat: which field is asked for at which stop, from the description of the job alone.

/**
 * @typedef {{ text: string, si: number }} Amount
 * @typedef {{ takes: string, kind?: string, units?: string[], choices?: Choice[], fields?: Field[], of?: any }} Form
 * @typedef {{ word: string, words: string, about: string, with: Form | null }} Choice
 * @typedef {Form & { field: string, name: string, about: string, optional: boolean, bounds?: { least: any, most: any },
 *   stop?: string, default?: string, where?: string, how?: string, closely?: Amount, spot?: [number, number], label?: boolean, empty_is_none?: boolean, unit?: string, files?: string[] }} Field
 * @typedef {{ name: string, fields: { path: string, field: Field }[] }} Stop
 */

/** What a form holds inside: fields, through lists and choices. @param {Form} form @returns {Field[]} */
function inner(form) {
  if (form.takes === "fields") return form.fields ?? [];
  if (form.takes === "list") return inner(form.of);
  if (form.takes === "choice") return (form.choices ?? []).flatMap((choice) => (choice.with ? inner(choice.with) : []));
  return [];
}

/** Gives every field the stop where it is asked for: its own, or that of what it stands with. @param {Form} form @param {string} stop */
export function settle(form, stop) {
  const fields = inner(form);
  const first = fields.find((field) => field.stop)?.stop;
  for (const field of fields) {
    field.stop ??= firstInside(field) ?? first ?? stop;
    settle(field, field.stop);
  }
}

/** @param {Form} form @returns {string | undefined} */
function firstInside(form) {
  for (const field of inner(form)) {
    const found = field.stop ?? firstInside(field);
    if (found) return found;
  }
  return undefined;
}

/** Every stop of a field and of what is inside it. @param {Field} field @returns {Set<string>} */
export function stopsOf(field) {
  const stops = new Set([field.stop ?? ""]);
  for (const each of inner(field)) for (const stop of stopsOf(each)) stops.add(stop);
  return stops;
}

/** The stops in the order of the walk. @param {{ form: Form, stops: string[] }} description @returns {string[]} */
export function stops({ form, stops }) {
  const used = new Set();
  for (const field of form.fields ?? []) for (const stop of stopsOf(field)) used.add(stop);
  return stops.filter((stop) => used.has(stop));
}

/** Steps of a path: names and numbers. @param {string} path @returns {(string | number)[]} */
export function steps(path) {
  return path.split(/[.[]/).filter(Boolean).map((step) => (step.endsWith("]") ? Number.parseInt(step) || 0 : step));
}

/**
 * The field that a path leads to, or the last one on the way.
 * @param {Form} form @param {string} path @returns {Field | undefined}
 */
export function fieldAt(form, path) {
  let found;
  let here = form;
  for (const step of steps(path)) {
    if (typeof step === "number") continue;
    const next = inner(here).find((field) => field.field === step);
    if (!next) break;
    found = here = next;
  }
  return found;
}
