// The owner's road: one question a screen, from the first screen to an answer, by touch and by keyboard.

import assert from "node:assert/strict";
import { browserTest, eventually, settled } from "./harness.mjs";
import { tabTo } from "./keyboard.mjs";

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };
const MOST_TAPS = 12;
const MOST_SCROLL_PX = 2_500;

/** What an owner with a worn teapot would press; a question that is not listed gets "Not sure". */
const HONEST = {
  "bare-metal": "Red, like copper",
  letters: "No marks that I can find",
  magnet: "It does not pull",
  "where-bare": "Spout",
  "how-bare": "A trace, about 1\u00a0%",
  damage: "Something is missing",
  missing: "Finial or knob",
  "more-damage": "It is dented",
  dented: "Body",
  use: "Eat or drink from it",
  offer: "Plate it again",
  price: "I do not know the price",
  seam: "Yes",
};

const here = (page) => new URL(page.url()).hash.replace("#/road/", "");
const onTheRoad = (page) => page.url().includes("#/road/");

/** The heading of the question in the address, once it is drawn and has the focus. */
async function question(page) {
  await page.waitForFunction(() => document.activeElement?.tagName === "H1" && document.querySelector(".road"));
  return page.getByRole("heading", { level: 1 }).innerText();
}

/** Waits until the address has moved on from `before`. */
const moved = (page, before) => page.waitForFunction((hash) => location.hash !== hash, before);

/** Presses the answer with this name and waits for the next screen. */
async function press(page, name) {
  const before = new URL(page.url()).hash;
  await page.locator(".road").getByRole("button", { name, exact: true }).click();
  await moved(page, before);
}

/** Opens the first screen and taps the teapot. */
async function begin(page, go) {
  await go("#/");
  await page.locator("main").getByRole("button", { name: "Teapot", exact: true }).click();
  await page.waitForURL(/#\/road\/letters/);
}

/** The answer for the question in the address. */
const answerFor = (page) => HONEST[here(page)] ?? "Not sure";

browserTest("a first answer takes at most twelve taps, little scrolling and no typing", PHONE, async ({ page, go }) => {
  await go("#/");
  const measured = { taps: 0, scroll: 0, questions: [] };
  const tap = async (button) => {
    const bottom = await button.evaluate((e) => e.getBoundingClientRect().bottom + window.scrollY);
    measured.scroll += Math.max(0, Math.ceil(bottom - 844));
    measured.taps += 1;
    const before = new URL(page.url()).hash;
    await button.tap();
    await moved(page, before);
  };
  await tap(page.locator("main").getByRole("button", { name: "Teapot", exact: true }));
  await page.waitForURL(/#\/road\/letters/);
  let stood = 0;
  while (onTheRoad(page)) {
    const title = await question(page);
    assert.ok(!measured.questions.includes(title), `${title} is asked twice`);
    measured.questions.push(title);
    if (await page.getByRole("link", { name: "See the whole answer" }).isVisible()) stood ||= measured.taps;
    const { wide, room } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      room: document.documentElement.clientWidth,
    }));
    assert.ok(wide <= room, `${title} scrolls sideways: ${wide} > ${room}`);
    await tap(page.locator(".road").getByRole("button", { name: answerFor(page), exact: true }));
  }
  await page.waitForURL(/#\/counsel/);
  console.log(`taps ${measured.taps}, scrolling ${measured.scroll} px, first answer after ${stood} taps`);
  assert.ok(measured.taps <= MOST_TAPS, `${measured.taps} taps: ${measured.questions.join(" ")}`);
  assert.ok(measured.scroll < MOST_SCROLL_PX, `${measured.scroll} px of scrolling`);
  assert.equal(stood, 5, "a first answer stands after the fifth question");
  // Damage twice and an offer with its price leave room for how much is bare.
  for (const asked of ["Where is the dent?", "What would it cost?", "How much of that part is bare?"]) {
    assert.ok(measured.questions.includes(asked), asked);
  }
  await page.getByRole("heading", { name: /leave|wash|clean|test|part/i }).first().waitFor();
});

browserTest("the answers stand on the long screens, and what they answer is not asked again", async ({ page, go }) => {
  await begin(page, go);
  while (onTheRoad(page)) {
    await question(page);
    await press(page, answerFor(page));
  }
  await go("#/piece");
  await eventually(async () => assert.equal(await page.getByLabel("What is it?").inputValue(), "teapot"));
  await eventually(async () => assert.ok(await page.getByRole("radio", { name: "Keep it and use it", exact: true }).isChecked()));
  await go("#/look");
  await page.locator("summary").filter({ hasText: "Where it has worn" }).click();
  const copper = page.locator("details[open]").getByRole("group", { name: "Copper showing through", exact: true });
  await eventually(async () => assert.ok(await copper.getByRole("radio", { name: "Seen", exact: true }).isChecked()));
  await go("#/condition");
  await page.getByRole("button", { name: /^Finial.*missing/ }).waitFor();

  // A piece whose form and aim are known is asked neither.
  await go("#/");
  await page.getByLabel("What is it?").selectOption("tray");
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  await page.getByRole("radio", { name: "Sell it", exact: true }).check();
  await settled(page);
  await page.evaluate(() => (location.hash = "#/road/letters"));
  const asked = [];
  while (onTheRoad(page)) {
    asked.push(await question(page));
    await press(page, page.url().includes("price") ? "I do not know the price" : "Not sure");
  }
  assert.ok(asked.length >= 6, asked.join(" "));
  assert.ok(!asked.includes("What have you got?") && !asked.includes("What will you do with it?"), asked.join(" "));
});

browserTest("the browser's own buttons go back and forward, and a second answer replaces the first", async ({ page, go }) => {
  await begin(page, go);
  await press(page, "Letters such as EPNS");
  await page.waitForURL(/#\/road\/bare-metal/);
  await question(page);
  const titles = new Set([await page.title()]);
  await page.goBack();
  await page.waitForURL(/#\/road\/letters/);
  await eventually(async () => assert.equal(await question(page), "Are there letters or marks on it?"));
  titles.add(await page.title());
  assert.equal(titles.size, 2, "each question has a title");
  const given = page.getByRole("button", { name: "Letters such as EPNS", exact: true });
  assert.equal(await given.getAttribute("aria-pressed"), "true");
  await page.goForward();
  await page.waitForURL(/#\/road\/bare-metal/);
  await page.goBack();
  await page.waitForURL(/#\/road\/letters/);
  await press(page, "No marks that I can find");
  await page.waitForURL(/#\/road\/bare-metal/);
  await page.goBack();
  await eventually(async () => {
    assert.equal(await given.getAttribute("aria-pressed"), "false");
    const none = page.getByRole("button", { name: "No marks that I can find", exact: true });
    assert.equal(await none.getAttribute("aria-pressed"), "true");
  });
});

browserTest("a reload comes back to the same question, and nothing answered is asked again", PHONE, async ({ page, go }) => {
  await begin(page, go);
  const asked = [];
  while (here(page) !== "offer") {
    asked.push(await question(page));
    await press(page, here(page) === "letters" ? "Not sure" : answerFor(page));
  }
  assert.ok(asked.length >= 7, asked.join(" "));
  const before = await page.locator(".road-progress").innerText();
  await page.reload();
  await page.locator(".road").waitFor();
  assert.match(page.url(), /#\/road\/offer/);
  await eventually(async () => assert.equal(await page.locator(".road-progress").innerText(), before));
  // The browser's own Back still goes through the questions, and each shows its answer.
  await page.goBack();
  await page.waitForURL(/#\/road\/use/);
  const given = page.getByRole("button", { name: "Eat or drink from it", exact: true });
  await eventually(async () => assert.equal(await given.getAttribute("aria-pressed"), "true"));
  await page.goForward();
  await page.waitForURL(/#\/road\/offer/);
  while (onTheRoad(page)) {
    const title = await page.locator(".road h1").innerText();
    assert.ok(!asked.includes(title), `${title} is asked again`);
    asked.push(title);
    await press(page, answerFor(page));
  }
  // Opened again from the shelf, the piece goes on where it was.
  await go("#/");
  await page.getByRole("button", { name: "Open: Teapot", exact: true }).first().click();
  await page.waitForURL(/#\/counsel/);
  await page.evaluate(() => (location.hash = "#/road/use"));
  await page.locator(".road").waitFor();
  await eventually(async () => assert.equal(await given.getAttribute("aria-pressed"), "true"));
});

browserTest("an undo takes an answer back on the road too", async ({ page, go }) => {
  await begin(page, go);
  await question(page);
  await press(page, "Letters such as EPNS");
  await page.waitForURL(/#\/road\/bare-metal/);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.goBack();
  await page.waitForURL(/#\/road\/letters/);
  const given = page.getByRole("button", { name: "Letters such as EPNS", exact: true });
  await eventually(async () => assert.equal(await given.getAttribute("aria-pressed"), "false"));
});

browserTest("a name typed before starting is still there after a reload, and the piece gets it", async ({ page, go }) => {
  await go("#/");
  await page.getByLabel("What do you call it?").fill("Sunday pot");
  await page.getByLabel("What is it?").selectOption("coffee_pot");
  await page.reload();
  await page.getByLabel("What do you call it?").waitFor();
  assert.equal(await page.getByLabel("What do you call it?").inputValue(), "Sunday pot");
  assert.equal(await page.getByLabel("What is it?").inputValue(), "coffee_pot");
  await page.getByRole("button", { name: "I have a piece and a question" }).click();
  // The form is known, so the first question is the next one.
  await page.waitForURL(/#\/road\/letters/);
  await go("#/");
  await page.getByRole("heading", { name: "Sunday pot" }).waitFor();
  assert.equal(await page.getByLabel("What do you call it?").inputValue(), "");
});

browserTest("the restorer's road opens at condition and leads to a proposal on the client's sheet", { viewport: { width: 820, height: 1180 } }, async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: "I work on a client\u2019s piece" }).click();
  await page.waitForURL(/#\/condition/);
  await page.locator("main").getByRole("button", { name: "Teapot", exact: true }).click();
  await page.locator(".part-button").filter({ hasText: "Spout" }).first().click();
  await page.locator("#spout-dents").selectOption("minor");
  await page.getByRole("link", { name: "Next: our advice and your proposal" }).click();
  await page.waitForURL(/#\/counsel/);
  await page.getByRole("button", { name: "Add a step" }).click();
  await page.getByLabel("What is done").selectOption("T12");
  await page.getByRole("group", { name: "Step 1" }).getByLabel("Price").fill("120");
  await page.getByRole("link", { name: "Show it on the client\u2019s sheet" }).click();
  await page.waitForURL(/#\/sheet\/client/);
  await page.getByText(/120/).first().waitFor();
});

browserTest("the dealer's road opens at the stock", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: "I buy and sell" }).click();
  await eventually(async () => assert.equal(await page.evaluate(() => document.activeElement.id), "quick-name"));
  await page.keyboard.type("Oval tray");
  await page.getByLabel("Paid").fill("40");
  await page.getByLabel("Asking").fill("120");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Oval tray" }).or(page.getByRole("button", { name: "Oval tray" })).first().waitFor();
});

browserTest("the road is walked by keyboard from the first screen to the answer", async ({ page, go }) => {
  await go("#/");
  await tabTo(page, page.getByRole("button", { name: "I have a piece and a question" }));
  await page.keyboard.press("Enter");
  await page.waitForURL(/#\/road\/form/);
  await question(page);
  await tabTo(page, page.locator(".road").getByRole("button", { name: "Tray or salver", exact: true }));
  await page.keyboard.press("Enter");
  await page.waitForURL(/#\/road\/letters/);
  while (onTheRoad(page)) {
    await question(page);
    const before = new URL(page.url()).hash;
    const wanted = answerFor(page).replace("Spout", "Handle").replace("Finial or knob", "Handle");
    await tabTo(page, page.locator(".road").getByRole("button", { name: wanted, exact: true }));
    await page.keyboard.press("Enter");
    await moved(page, before);
  }
  await page.waitForURL(/#\/counsel/);
});

browserTest("a price can be typed, with its currency", async ({ page, go }) => {
  await begin(page, go);
  while (onTheRoad(page) && here(page) !== "price") {
    await question(page);
    await press(page, answerFor(page));
  }
  await page.getByLabel("Price asked").fill("180");
  await page.getByLabel("Currency").selectOption("GBP");
  await press(page, "Go on with this price");
  await go("#/money");
  await eventually(async () => assert.equal(await page.getByRole("group", { name: "Full replating" }).getByLabel("Price asked").inputValue(), "180"));
});

browserTest("something loose is on the answer and on the long screen, also where the owner cannot say which part", PHONE, async ({ page, go }) => {
  await begin(page, go);
  const answers = { damage: "Something is loose", "more-damage": "No, nothing else" };
  while (onTheRoad(page)) {
    await question(page);
    await press(page, answers[here(page)] ?? "Not sure");
  }
  await page.waitForURL(/#\/counsel/);
  const found = page.locator(".found-labels");
  await found.getByText("Loose", { exact: true }).waitFor();
  await found.getByText("part not known", { exact: true }).waitFor();
  await page.getByText(/have the loose part fixed/i).first().waitFor();
  await go("#/condition");
  await page.getByText("Something is loose. Which part is not known.").first().waitFor({ state: "attached" });
});

browserTest("a part can be tapped in the drawing", async ({ page, go }) => {
  await begin(page, go);
  while (here(page) !== "damage") {
    await question(page);
    await press(page, answerFor(page));
  }
  await press(page, "It is dented");
  await page.waitForURL(/#\/road\/dented/);
  await question(page);
  const box = await page.locator(".to-tap").boundingBox();
  // The middle of the pot.
  await page.mouse.click(box.x + box.width * 0.36, box.y + box.height * 0.6);
  await page.waitForURL((url) => !url.hash.includes("dented"));
  await go("#/condition");
  await page.getByText(/dent/i).first().waitFor();
});

for (const [name, options] of [
  ["light", { colorScheme: "light", viewport: { width: 390, height: 844 } }],
  ["dark", { colorScheme: "dark", viewport: { width: 1280, height: 900 } }],
  ["at 320 px", { viewport: { width: 320, height: 568 } }],
]) {
  browserTest(`every question is accessible (${name})`, { ...options, timeout: 300_000 }, async ({ page, go, checkAccess }) => {
    await begin(page, go);
    await page.goBack();
    await page.waitForURL(/#\/road\/form/);
    while (onTheRoad(page)) {
      const title = await question(page);
      await settled(page).catch(() => {});
      await checkAccess(`${title} (${name})`);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll(".road button, .road input, .road select, .road summary")]
          .filter((e) => e.getClientRects().length)
          .map((e) => ({ e, box: e.getBoundingClientRect() }))
          .filter(({ box }) => box.width < 44 || box.height < 44)
          .map(({ e, box }) => `${e.outerHTML.slice(0, 60)} ${box.width}x${box.height}`),
      );
      assert.deepEqual(small, [], `targets under 44 px: ${title}`);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(over <= 0, `${title} scrolls sideways`);
      await press(page, here(page) === "form" ? "Teapot" : answerFor(page));
    }
  });
}
