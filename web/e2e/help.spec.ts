import { expect } from "@playwright/test";
import { openBench, test } from "./bench";

test("help opens the page of rules beside the bench, without the token in its address", async ({ page }) => {
  await openBench(page);
  await page.keyboard.press("?");
  const opened = page.context().waitForEvent("page");
  await page.getByRole("button", { name: "every formula, rule and source" }).click();
  const rules = await opened;
  await rules.waitForLoadState();
  expect(rules.url()).toMatch(/^blob:/);
  await expect(rules.getByRole("heading", { name: "Formulas and rules" })).toBeVisible();
  await rules.getByRole("link", { name: "Formulas: load on a base" }).click();
  await expect(rules.getByText("F = k·A·cos²γ·max(0, s)")).toBeInViewport();
});
