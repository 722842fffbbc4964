import { expect } from "@playwright/test";
import { openBench, openDemo, surveyed, test } from "./bench";

test("the strip follows the dot; two pins stand side by side", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  const strip = page.getByRole("region", { name: "Parallel strip" });
  await expect(strip.locator(".stripone").first()).toBeVisible({ timeout: 90_000 });
  const proximal = strip.locator(".stripone:not(.facial)");
  const facial = strip.locator(".stripone.facial");
  expect(await proximal.count()).toBeGreaterThan(0);
  expect(await facial.count()).toBeGreaterThan(0);

  // The tilt changes what a section leans by: an angle follows the dot without a survey of its own.
  const distal = proximal.first();
  const before = Number(await distal.getAttribute("data-angle"));
  await page.keyboard.press("p");
  for (let i = 0; i < 8; i++) await page.keyboard.press("ArrowDown");
  await surveyed(page, 4, 0);
  await expect(distal).not.toHaveAttribute("data-angle", String(before));
  expect(Math.abs(Number(await distal.getAttribute("data-angle")) - before)).toBeLessThan(4.5);

  await distal.click();
  await expect(strip.getByRole("figure")).toContainText("to the path");
  await page.getByLabel("Put the section away").click();

  await page.keyboard.press("p");
  const pins = page.getByRole("region", { name: "Pins" });
  await expect(pins.locator("li")).toHaveCount(3);
  await expect(page.locator(".mappin")).toHaveCount(2);
  await pins.getByLabel("Compare Reference").check();
  await pins.getByLabel("Compare B").check();
  const table = page.getByTestId("pins-compared");
  await expect(table.locator("tr[data-turn]").first()).toBeVisible({ timeout: 60_000 });
  await expect(table).toContainText("total tilt");
  await expect(table).toContainText("0.0 °");
  await expect(table).toContainText("4.0 °");
  // Both on the cast, looked at from the same side.
  await table.getByRole("button", { name: "on the cast" }).click();
  await expect(page.getByTestId("beside")).toHaveAttribute("data-surveyed", "4 0", { timeout: 60_000 });
  await surveyed(page, 0, 0);
  await table.getByRole("button", { name: "numbers" }).click();
  await expect(page.getByTestId("beside")).toHaveCount(0);
  await page.keyboard.press("Control+z");
  await surveyed(page, 4, 0);
  await table.getByRole("button", { name: "Reference" }).click();
  await surveyed(page, 0, 0);
  await table.getByRole("button", { name: "close" }).click();
  await expect(table).toHaveCount(0);

  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await expect(pins.locator("li")).toHaveCount(2);
});
