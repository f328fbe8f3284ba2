// Drives the app by keyboard alone.

import assert from "node:assert/strict";

import { eventually } from "./harness.mjs";

const MOST_TABS = 250;

/** Presses Tab until `locator` has the focus, and fails if it never does. */
export async function tabTo(page, locator) {
  const focused = () => locator.evaluate((element) => element === document.activeElement);
  for (let presses = 0; presses < MOST_TABS; presses += 1) {
    if (await focused()) return;
    await page.keyboard.press("Tab");
  }
  assert.fail(`Tab does not reach ${locator}`);
}

/** Tabs to a field and types into it. */
export async function typeInto(page, locator, text) {
  await tabTo(page, locator);
  await page.keyboard.type(text);
}

/** Tabs to a drop-down list and picks the option that starts with `text`. */
export async function choose(page, locator, text) {
  await tabTo(page, locator);
  await page.keyboard.type(text, { delay: 20 });
}

/** Tabs to a group of radio buttons and selects the one with this label. */
export async function check(page, group, label) {
  const wanted = group.getByRole("radio", { name: label, exact: true });
  const radios = group.getByRole("radio");
  // Tab enters a group at the checked button, or at the first one if none is checked.
  const isInGroup = () => group.evaluate((element) => element.contains(document.activeElement) && document.activeElement.type === "radio");
  for (let presses = 0; !(await isInGroup()); presses += 1) {
    assert.ok(presses < MOST_TABS, `Tab does not reach ${group}`);
    await page.keyboard.press("Tab");
  }
  // Counts the buttons only now, because the screen may not have been rendered at the start.
  const count = await radios.count();
  for (let presses = 0; presses <= count; presses += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement)) break;
    await page.keyboard.press("ArrowDown");
  }
  if (!(await wanted.isChecked())) await page.keyboard.press("Space");
  await eventually(async () => assert.ok(await wanted.isChecked(), `${label} can be checked by keyboard`));
}
