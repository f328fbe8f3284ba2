// What the scripts here ask of a page of Leavewell. Each runs in the page.

/** Whether the app has started and drawn a screen. */
export const ready = () => document.documentElement.dataset.leavewell === "ready" && Boolean(document.querySelector("main h1"));

/** Every record, as it is stored. */
export const storedIn = () =>
  new Promise((resolve, reject) => {
    const asked = indexedDB.open("leavewell");
    asked.onerror = () => reject(asked.error);
    asked.onsuccess = () => {
      const all = asked.result.transaction("cases").objectStore("cases").getAll();
      all.onsuccess = () => {
        asked.result.close();
        resolve(all.result.map(({ id, revision, text }) => ({ id, revision, text })));
      };
    };
  });
