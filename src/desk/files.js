// Files in and out: the job, the report, the measuring sheet, photographs. Nothing leaves the device but what a person saves
// or shares.

import { make } from "./dom.js";

/** Longest side of a photograph in pixels: all that a report shows. */
const PIXELS = 1600;
const QUALITY = 0.8;

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

/** Lets a person choose a file. @param {string} accept @param {(file: File) => void} take @param {boolean} [camera] */
export function choose(accept, take, camera = false) {
  const input = make("input", { type: "file", accept, capture: camera ? "environment" : undefined });
  input.addEventListener("change", () => input.files?.[0] && take(input.files[0]));
  input.click();
}

/** A photograph, made smaller, as a data address. @param {File} file @returns {Promise<string>} */
export async function smaller(file) {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, PIXELS / Math.max(picture.width, picture.height));
  const canvas = make("canvas", { width: Math.round(picture.width * scale), height: Math.round(picture.height * scale) });
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/jpeg", QUALITY);
}

const PICTURES = "sternknee-pictures";

/** Pictures by the file's name. @returns {Record<string, string>} */
export function pictures() {
  try {
    return JSON.parse(localStorage.getItem(PICTURES) ?? "{}");
  } catch {
    return {};
  }
}

/** Keeps a picture on the device; false where there is no room for it. @param {string} name @param {string} address */
export function keepPicture(name, address) {
  try {
    localStorage.setItem(PICTURES, JSON.stringify({ ...pictures(), [name]: address }));
    return true;
  } catch {
    return false;
  }
}

export function forgetPictures() {
  try {
    localStorage.removeItem(PICTURES);
  } catch {
    // Nothing was kept.
  }
}
