// Files in and out: the job, the report, the measuring sheet. Nothing leaves the device but what a person saves or shares.

import { make } from "./dom.js";

/** Hands a text to the device's own keeping. @param {string} name @param {string} text @param {string} type */
export function save(name, text, type) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  make("a", { href: address, download: name }).click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Whether the system has a sheet to share a file by. @param {string} name @param {string} text */
export function canShare(name, text) {
  const file = new File([text], name, { type: "text/plain" });
  return typeof navigator.canShare === "function" && navigator.canShare({ files: [file] });
}

/** @param {string} name @param {string} text */
export async function share(name, text) {
  try {
    await navigator.share({ files: [new File([text], name, { type: "text/plain" })], title: name });
  } catch (error) {
    if (/** @type {Error} */ (error).name !== "AbortError") throw error;
  }
}

/** Lets a person choose files. @param {string} accept @param {(files: File[]) => void} take @param {{ camera?: boolean, several?: boolean }} [how] */
export function choose(accept, take, { camera = false, several = false } = {}) {
  const input = make("input", { type: "file", accept, multiple: several, capture: camera ? "environment" : undefined });
  input.addEventListener("change", () => input.files?.[0] && take([...input.files]));
  // It stands in the page while the question is open: what stands nowhere may be thrown away before it is answered.
  input.hidden = true;
  document.body.append(input);
  for (const end of ["change", "cancel"]) input.addEventListener(end, () => input.remove());
  input.click();
}
