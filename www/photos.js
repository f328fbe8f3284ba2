// The photos of a piece: one database for each case, kept in this browser and never sent anywhere.

export function databaseOf(caseId) {
  return `leavewell-photos-${caseId}`;
}

// ---- the database of a case: one store, keys "part/number" ------------------------------------------

function open(caseId) {
  const asked = indexedDB.open(databaseOf(caseId), 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("photos", { keyPath: "key" });
  return answer(asked);
}

function answer(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("blocked"));
  });
}

async function within(caseId, mode, work) {
  const database = await open(caseId);
  try {
    const transaction = database.transaction("photos", mode);
    const done = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error ?? new Error("stopped"));
    });
    const [found] = await Promise.all([answer(work(transaction.objectStore("photos"))), done]);
    return found;
  } finally {
    database.close();
  }
}

/** Every photo of a case. */
export async function photosOf(caseId) {
  return (await within(caseId, "readonly", (store) => store.getAll())).map(asBlob);
}

/** The photo under a key; undefined where there is none. */
export async function photoAt(caseId, key) {
  return asBlob(await within(caseId, "readonly", (store) => store.get(key)));
}

export async function photosUnder(caseId, part) {
  return (await within(caseId, "readonly", (store) => store.getAll(IDBKeyRange.bound(`${part}/`, `${part}0`, false, true)))).map(asBlob);
}

/** Stores a new photo of a part. */
export function keepPhoto(caseId, part, { at, ...photo }) {
  return putPhoto(caseId, { key: `${part}/${at.toString(36)}`, ...photo });
}

/** Stores a photo: {key, blob, width, height, on}. Some browsers take no blobs in a private window, but take bytes. */
export async function putPhoto(caseId, photo) {
  const { blob, ...rest } = photo;
  try {
    await stored(caseId, photo, blob.size).catch(async () => stored(caseId, { ...rest, type: blob.type, bytes: await blob.arrayBuffer() }, blob.size));
  } catch (reason) {
    window.dispatchEvent(new CustomEvent("leavewell-unkept"));
    throw reason;
  }
}

/** Stores a photo and reads it back: on a full disk some browsers say it is stored and drop it. */
async function stored(caseId, photo, size) {
  await within(caseId, "readwrite", (store) => store.put(photo));
  const held = await photoAt(caseId, photo.key);
  if (held?.blob?.size !== size) throw new Error("the photo was not stored");
}

function asBlob(photo) {
  return photo?.bytes ? { ...photo, blob: new Blob([photo.bytes], { type: photo.type }) } : photo;
}

export function removePhoto(caseId, key) {
  return within(caseId, "readwrite", (store) => store.delete(key));
}
