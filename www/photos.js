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

/** Every photo of a case, as stored. */
export function photosOf(caseId) {
  return within(caseId, "readonly", (store) => store.getAll());
}

/** The photo under a key; undefined where there is none. */
export function photoAt(caseId, key) {
  return within(caseId, "readonly", (store) => store.get(key));
}

/** Stores a photo from elsewhere: {key, blob, width, height, on}. */
export function putPhoto(caseId, photo) {
  return within(caseId, "readwrite", (store) => store.put(photo));
}

export function photosUnder(caseId, part) {
  return within(caseId, "readonly", (store) => store.getAll(IDBKeyRange.bound(`${part}/`, `${part}0`, false, true)));
}

/** Stores a photo and reads it back: on a full disk some browsers say it is stored and drop it. */
export async function keepPhoto(caseId, part, { at, ...photo }) {
  const key = `${part}/${at.toString(36)}`;
  await within(caseId, "readwrite", (store) => store.put({ key, ...photo }));
  const held = await within(caseId, "readonly", (store) => store.get(key));
  if (held?.blob?.size !== photo.blob.size) throw new Error("the photo was not stored");
}

export function removePhoto(caseId, key) {
  return within(caseId, "readwrite", (store) => store.delete(key));
}
