// Pieces of the page, made of what is given as words: nothing that a person typed becomes markup.

/**
 * An element with its attributes and what stands in it; an attribute that is false or undefined is left out.
 * @template {keyof HTMLElementTagNameMap} N
 * @param {N} name
 * @param {Record<string, any>} [attributes] `on…` are listeners
 * @param {...(Node | string | null | undefined | false)} inside
 * @returns {HTMLElementTagNameMap[N]}
 */
export function make(name, attributes = {}, ...inside) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else element.setAttribute(key, value === true ? "" : String(value));
  }
  element.append(...inside.filter((each) => each !== null && each !== undefined && each !== false));
  return element;
}

/** @param {string} words */
export const capital = (words) => words.charAt(0).toUpperCase() + words.slice(1);

/** What is written in a file only: words with a stroke below, a name with its value, a call, a command. */
const NOTATION = /[a-z]_[a-z]|\w\((?!s\))|\b[a-z]\w*\.[a-z]|\bone of\b|(?<=^|[:,] )\w+: (?=[("[]|none\b|true\b|tape\b|\w+$)|\bwrite \w+: |\[\]|`/;

/** How something is taken, without what is said there of writing it into a file: here it is picked or typed. @param {string} how */
export function spoken(how) {
  const clauses = how.split("; ").map((clause, i) => {
    const at = NOTATION.exec(clause)?.index;
    if (at === undefined) return clause;
    const colon = clause.lastIndexOf(": ", at);
    const comma = i === 0 ? clause.lastIndexOf(", ", at) : -1;
    const left = clause.slice(0, colon >= 0 ? colon : Math.max(comma, 0));
    // One word alone was the name of a field.
    return /^\w*$/.test(left) ? "" : left;
  });
  return clauses.filter(Boolean).join("; ");
}

/** Where and how something is taken, as a sentence. @param {string} where @param {string} how */
export function taking(where, how) {
  const words = [capital(where), spoken(how)].filter(Boolean).join(": ");
  return words && `${words}.`;
}

/** A drawing of the engine's own, whose words were escaped there; a script in it would not run. @param {string} html */
export function drawn(html) {
  const read = new DOMParser().parseFromString(html, "text/html").body.firstElementChild;
  return /** @type {HTMLElement} */ (document.importNode(/** @type {Element} */ (read), true));
}

const SVG = "http://www.w3.org/2000/svg";

/** An element of a drawing. @param {string} name @param {Record<string, string | number>} attributes */
export function shape(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

/** The mark of a verdict, as the report has it. @param {string} verdict */
export function mark(verdict) {
  const svg = shape("svg", { class: "mark", "aria-hidden": "true", focusable: "false" });
  svg.append(shape("use", { href: `#mark-${verdict.replace(" ", "-")}` }));
  return svg;
}

let count = 0;
/** A name that no other element has. */
export const unique = () => `e${++count}`;
