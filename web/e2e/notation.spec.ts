import { expect, type Page } from "@playwright/test";
import { openBench, openDemo, test } from "./bench";
import { open, tryTilts } from "./job-steps";

/**
 * Lower teeth are 31 to 48 in FDI and 17 to 32 in the universal system of the American Dental Association, so that a number from
 * 33 on that names a tooth was not put into the notation.
 */
const NOT_PUT_IN = /(?:tooth|teeth|at|of|on|from|to|beside|between|base|abutments) (?:3[3-8]|4[1-8])\b(?![.°]| ?(?:mm|MPa|N|%|cm|teeth|rules|tilts))/i;

async function spokenInUniversal(page: Page): Promise<void> {
  const text = await page.evaluate(() => {
    const { body } = document;
    const named = [...body.querySelectorAll("[aria-label], [title]")].map((each) => `${each.getAttribute("aria-label") ?? ""}\n${each.getAttribute("title") ?? ""}`);
    return [body.innerText, ...named].join("\n");
  });
  for (const line of text.split("\n")) expect(line).not.toMatch(NOT_PUT_IN);
}

test("tooth numbers follow the notation chosen on every page, in warnings and in what is refused", async ({ page }) => {
  test.setTimeout(300_000);
  await openBench(page);
  await openDemo(page, "lower");
  await page.getByRole("tab", { name: "Arch" }).click();
  await page.getByRole("radio", { name: "Universal" }).click();
  await expect(page.locator(".archpage")).toHaveAttribute("data-busy", "false", { timeout: 60_000 });
  await spokenInUniversal(page);
  await open(page, "ledger");
  await expect(page.locator(".ledger")).toContainText("20"); // 35 is 20: the base ends free there, 34 is 21
  await page.locator("article.abutment .abuthead").first().click();
  await spokenInUniversal(page);
  await open(page, "plan");
  await spokenInUniversal(page);
  await expect(page.locator('.plandrawing text[data-tooth="34"]').first()).toHaveText("21");
  await tryTilts(page);
  await spokenInUniversal(page);

  // A refusal, in the form in which the program answers one: it names the tooth as the person does.
  await page.route("**/plan", (route) =>
    route.fulfill({
      status: 422,
      json: { code: "plan-tooth-not-standing", message: "A choice names tooth 35.", advice: "", pieces: ["A choice names tooth ", 35, "."] },
    }),
  );
  await page.getByLabel("Kind of major connector").selectOption("lingual-plate");
  await expect(page.locator(".plan")).toContainText("A choice names tooth 20.", { timeout: 60_000 });
});
