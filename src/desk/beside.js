// Files that the job names: photographs, a log, a hull. They lie beside the job on the device, each under its name.

/** Longest side of a photograph in pixels: all that a report shows. */
const PIXELS = 1600;
const QUALITY = 0.8;
const SHELF = "files";

/** The files as data addresses, by name. @type {Map<string, string>} */
const files = new Map();
/** Where the device keeps them, if it does. @type {IDBDatabase | undefined} */
let device;

/** What the device's keeping says to one request. @template T @param {IDBRequest<T>} asked @returns {Promise<T>} */
const reply = (asked) => new Promise((done, fail) => {
  asked.onsuccess = () => done(asked.result);
  asked.onerror = () => fail(asked.error);
});

/** Finds again what was kept at an earlier visit. */
export async function find() {
  try {
    const asked = indexedDB.open("sternknee", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(SHELF);
    device = await reply(asked);
    const shelf = device.transaction(SHELF).objectStore(SHELF);
    const [names, kept] = await Promise.all([reply(shelf.getAllKeys()), reply(shelf.getAll())]);
    names.forEach((name, i) => files.set(String(name), kept[i]));
  } catch {
    // A browser that keeps nothing has them until the page is closed.
    device = undefined;
  }
}

/** Puts a file beside the job; false where the device does not keep it beyond this visit. @param {string} name @param {string} address */
export async function put(name, address) {
  files.set(name, address);
  try {
    if (!device) return false;
    await reply(device.transaction(SHELF, "readwrite").objectStore(SHELF).put(address, name));
    return true;
  } catch {
    return false;
  }
}

/** Takes all of them away. */
export async function clear() {
  files.clear();
  if (device) await reply(device.transaction(SHELF, "readwrite").objectStore(SHELF).clear());
}

/** The file that the job means by this name: in a folder of its own it may be here without it. @param {string} name */
export const known = (name) => files.get(name) ?? files.get(name.split("/").pop() ?? name);

/** Those of these names that are no pictures, in base64, as the engine takes them. @param {string[]} names */
export function forEngine(names) {
  /** @type {Record<string, string>} */
  const all = {};
  for (const name of names) {
    const address = known(name);
    if (address && !isPicture(address)) all[name] = address.slice(address.indexOf(",") + 1);
  }
  return all;
}

/** The pictures among these names. @param {string[]} names */
export function pictures(names) {
  /** @type {Record<string, string>} */
  const all = {};
  for (const name of names) {
    const address = known(name);
    if (address && isPicture(address)) all[name] = address;
  }
  return all;
}

/** @param {string} address */
const isPicture = (address) => address.startsWith("data:image/");

/** A file's address; of a photograph, one that was made smaller. @param {File} file @returns {Promise<string>} */
export async function addressOf(file) {
  if (file.type.startsWith("image/")) return smaller(file);
  const reader = new FileReader();
  return new Promise((done, fail) => {
    reader.onload = () => done(/** @type {string} */ (reader.result));
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(file);
  });
}

/** @param {File} file @returns {Promise<string>} */
async function smaller(file) {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, PIXELS / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/jpeg", QUALITY);
}
