// What the scripts of the page add to the browser's own names, for the check of their types.

interface Window {
  leavewell: { weigh: (text: string) => Promise<unknown>; weigh_json: (text: string) => Promise<string> };
  trustedTypes?: { createPolicy(name: string, rules: object): { createScriptURL(url: string): string } };
  leavewellCarried?: { program: any; wasm(): unknown; worker(): string };
}

declare var trustedTypes: Window["trustedTypes"];
declare var leavewellLocale: object;
declare var leavewellCarried: Window["leavewellCarried"];

interface WindowEventMap {
  "leavewell-answer": CustomEvent;
  "leavewell-ask": CustomEvent;
  "leavewell-crash": CustomEvent;
  "leavewell-question": CustomEvent;
  "leavewell-removed": CustomEvent;
  "leavewell-save": CustomEvent;
  "leavewell-store": CustomEvent;
  "leavewell-told": CustomEvent;
}
