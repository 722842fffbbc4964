import { expect, type Page } from "@playwright/test";
import { openBench, openDemo, surveyed, test } from "./bench";
import { fresh, open } from "./job-steps";

async function read(page: Page, button: string): Promise<Page> {
  await page.keyboard.press("?");
  const opened = page.context().waitForEvent("page");
  await page.getByRole("button", { name: button }).click();
  const beside = await opened;
  await beside.waitForLoadState();
  // The token stands in no address.
  expect(beside.url()).toMatch(/^blob:/);
  await page.keyboard.press("Escape");
  return beside;
}

test("help opens the page of rules beside the bench", async ({ page }) => {
  await openBench(page);
  const rules = await read(page, "every formula, rule and source");
  await expect(rules.getByRole("heading", { name: "Formulas and rules" })).toBeVisible();
  await rules.getByRole("link", { name: "Formulas: load on a base" }).click();
  await expect(rules.getByText("F = k·A·cos²γ·max(0, s)")).toBeInViewport();
});

test("every step of the tutorial does what it says", async ({ page }) => {
  test.setTimeout(400_000);
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openBench(page);
  const tutorial = await read(page, "ten-minute tutorial");
  await expect(tutorial.locator("ol.steps > li")).toHaveCount(11);
  await tutorial.close();

  // 1: the cast on the table
  await openDemo(page, "upper");
  // 2: rod, gauge, its curve, a mark, undo
  const stage = (await page.locator("main canvas").boundingBox())!;
  // A hand looks for a place on the cast until the rod stands there.
  await expect(async () => {
    for (const across of [0.71, 0.68, 0.65, 0.35, 0.32]) {
      await page.mouse.move(stage.x + stage.width * across, stage.y + stage.height * 0.43, { steps: 4 });
      await page.waitForTimeout(300);
      if (await page.getByTestId("tag").isVisible()) break;
    }
    await expect(page.getByTestId("tag")).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  await page.keyboard.press("1");
  // A pointer still on its way may take the rod along once more.
  await expect(async () => {
    await page.keyboard.press("c");
    await expect(page.getByTestId("tag")).toContainText("0.25 mm", { timeout: 5000 });
  }).toPass({ timeout: 30_000 });
  await expect(page.getByTestId("tag")).toContainText("±");
  await page.keyboard.press("m");
  await page.keyboard.press("Control+z");
  // 3: the tilt, and back
  await page.locator("main canvas").focus();
  for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowUp");
  await surveyed(page, 2, 0);
  await page.keyboard.press("Home");
  await surveyed(page, 0, 0);
  // 4: the teeth
  await page.getByRole("tab", { name: "Arch" }).click();
  await expect(page.locator(".archpage")).toContainText("class III modification 1");
  // 5: every tilt
  await page.getByTestId("try-tilts").click();
  const found = page.getByTestId("path-found");
  await expect(found).toBeVisible({ timeout: 120_000 });
  await expect(found).toContainText("Against the reference orientation gets better");
  await found.getByRole("button", { name: "tilts that no other beats" }).click();
  await found.getByRole("button", { name: "choice 2" }).click();
  await expect(page.getByRole("application", { name: /Tilt map/ })).not.toHaveAttribute("data-tilt", "0 0");
  await page.locator("main canvas").focus();
  await page.keyboard.press("p");
  await page.keyboard.press("Home");
  await surveyed(page, 0, 0);
  // 6: the ledger
  await open(page, "ledger");
  const row = page.locator('article.abutment[aria-label^="Abutment 24"]');
  await row.locator(".abuthead").click();
  await expect(row).toContainText("Not known");
  await row.locator(".unknowns button", { hasText: "yes" }).first().click();
  await fresh(page, "ledger");
  await page.keyboard.press("Control+z");
  await fresh(page, "ledger");
  // 7: the plan
  await open(page, "plan");
  const sixteen = page.locator('.planpart[data-plantooth="16"]');
  await sixteen.getByRole("combobox").nth(1).selectOption("distal");
  await fresh(page, "plan");
  await page.getByLabel("Kind of major connector").selectOption("palatal-plate");
  await fresh(page, "plan");
  await page.getByRole("button", { name: "back to what is proposed" }).click();
  await fresh(page, "plan");
  await expect(page.getByRole("button", { name: "back to what is proposed" })).toHaveCount(0);
  expect((await page.locator(".over").getAttribute("data-knots")) ?? "").not.toBe("");
  // 8: the preparation
  await page.locator(".preparation .cutpicture:has(svg)").first().click();
  await expect(page.locator(".over")).toHaveAttribute("data-cut", /\d+/);
  // 9: another plan
  await page.getByLabel("Plan to hold against").selectOption({ label: "without 27" });
  await expect(page.locator(".planbeside")).toHaveAttribute("data-holds", "true", { timeout: 110_000 });
  await expect(page.locator(".planbeside .loads")).toHaveCount(2);
  await expect(page.locator(".planbeside")).toContainText("not separable");
  // 11: the prescription
  const pages = page.waitForEvent("download", { timeout: 110_000 });
  await page.getByRole("button", { name: "pages (PDF)" }).click();
  expect((await pages).suggestedFilename()).toMatch(/\.pdf$/);
});
