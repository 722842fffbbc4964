import { expect } from "@playwright/test";
import { openBench, test } from "./bench";
import { bring, tellTeeth } from "./job-steps";

test("every tilt is tried on a real arch, the best is taken and taken back", async ({ page }) => {
  await openBench(page);
  await page.keyboard.press("t");
  await bring(page, "upper-16-23.ply");
  await tellTeeth(page, "upper", [16, 23]);

  // It can be stopped, and leaves nothing behind.
  await page.getByTestId("try-tilts").click();
  await page.getByTestId("searching").getByRole("button", { name: "stop" }).click();
  await expect(page.getByTestId("shading")).toHaveCount(0);
  await page.getByTestId("try-tilts").click();
  await expect(page.getByTestId("searching").getByRole("progressbar")).toBeVisible();
  // A coarse map comes first, the whole one after it.
  await expect(page.getByTestId("shading")).toBeVisible({ timeout: 30_000 });
  const found = page.getByTestId("path-found");
  await expect(found).toBeVisible({ timeout: 90_000 });
  expect(Number(await page.getByTestId("shading").getAttribute("data-tilts"))).toBeGreaterThanOrEqual(1000);
  await expect(page.getByTestId("best")).toBeVisible();

  // The pointer reads the numbers of a tilt; without it they are the dot's own.
  const numbers = page.getByTestId("tilt-numbers");
  await expect(numbers).toHaveAttribute("data-pointed", "false");
  expect(await page.locator(".shading .contour").count()).toBeGreaterThan(3);
  const box = (await page.locator(".tiltmap").boundingBox())!;
  await page.mouse.move(box.x + 0.5 * box.width, box.y + 0.3 * box.height);
  await expect(numbers).toHaveAttribute("data-pointed", "true");
  await expect(numbers).toContainText("enamel for planes");
  await page.mouse.move(box.x + 0.5 * box.width, box.y - 40);
  await expect(numbers).toHaveAttribute("data-pointed", "false");

  // What counts as in the way can be left out; the map of before says so until it is made anew.
  await expect(page.getByTestId("way-out")).toContainText("the opening of the mouth is not known");
  const inTheWay = page.getByTestId("in-the-way");
  await expect(inTheWay).toHaveAttribute("data-by", "anatomy");
  const measured = page.getByTestId("tilt-numbers");
  await expect(measured).not.toContainText("in the way0.00 mm");
  for (const kind of ["bases", "palate", "facial strips"]) await inTheWay.getByLabel(kind).uncheck();
  await inTheWay.getByRole("button", { name: "try every tilt again" }).click();
  await expect(found).toHaveCount(0);
  await expect(found).toBeVisible({ timeout: 90_000 });
  await expect(measured).toContainText("in the way0.00 mm"); // at the dot, with nothing counted
  await expect(inTheWay.getByRole("button")).toHaveCount(0);

  await found.getByRole("combobox").selectOption("retention");
  await found.getByRole("button", { name: "tilts that no other beats" }).click();
  await found.getByRole("button", { name: "choice 2" }).click();
  await expect(page.getByRole("application", { name: /Tilt map/ })).not.toHaveAttribute("data-tilt", "0 0");
  await page.keyboard.press("Control+z");
  await expect(page.getByRole("application", { name: /Tilt map/ })).toHaveAttribute("data-tilt", "0 0");

  // Other teeth make the search void.
  await page.locator('.place[data-fdi="16"] .number').click();
  await expect(found).toHaveCount(0, { timeout: 60_000 });
});
