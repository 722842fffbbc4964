import { expect } from "@playwright/test";
import { test } from "./bench";
import { LabelledArch } from "./labelled-arch";

test("teeth are told by clicks, counted; class and thirds follow; undo takes each back", async ({ page }) => {
  const labelled = await LabelledArch.open(page, "upper-16-23", "upper");
  await labelled.missing(16);
  await labelled.missing(23);
  for (const tooth of labelled.teeth) if (!(await labelled.found()).includes(tooth)) await labelled.add(tooth);
  expect(await labelled.found()).toEqual(labelled.teeth);
  console.log(`upper-16-23: ${labelled.clicks} clicks for ${labelled.teeth.length} teeth and 2 missing`);
  expect(labelled.clicks).toBeLessThanOrEqual(2 * 2); // the mark: two a missing or odd tooth
  const dice = await labelled.dice();
  expect(dice.reduce((a, b) => a + b) / dice.length).toBeGreaterThan(0.9);
  await expect(page.getByTestId("kennedy")).toHaveText("class III modification 1");

  // Another notation: universal numbers of 15 and 24 are 4 and 12 (American Dental Association).
  await page.getByRole("radio", { name: "Universal" }).click();
  await expect(page.locator('.toothlabel[data-tooth="15"]')).toHaveText("4");
  await expect(page.locator('.toothlabel[data-tooth="24"]')).toHaveText("12");
  await page.getByRole("radio", { name: "FDI" }).click();

  await labelled.choose(15);
  const thirds = page.locator(".third");
  await expect(thirds).toHaveCount(6);

  // A click on a number says that the tooth is missing; undo takes that back, and the teeth follow both times.
  await labelled.missing(26);
  await expect.poll(() => labelled.found()).not.toEqual(labelled.teeth);
  await page.keyboard.press("Control+z");
  await expect.poll(() => labelled.found()).toEqual(labelled.teeth);
});

test("a complete arch needs no click", async ({ page }) => {
  const labelled = await LabelledArch.open(page, "upper-full", "upper");
  await expect.poll(() => labelled.found(), { timeout: 60_000 }).toEqual(labelled.teeth);
  expect(labelled.clicks).toBe(0);
  await expect(page.getByTestId("kennedy")).toHaveText("no space");
});
