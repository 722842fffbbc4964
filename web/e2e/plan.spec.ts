import { readFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";
import { arch, openBench, openDemo, surveyed, test } from "./bench";

/** Waits until the page that lies open holds for what lies on the table. */
async function fresh(page: Page, which: "plan" | "ledger"): Promise<void> {
  await page.waitForTimeout(300);
  await expect(page.locator(`.${which}`)).toHaveAttribute("data-fresh", "true", { timeout: 110_000 });
}

async function openPlan(page: Page): Promise<void> {
  await page.getByRole("tab", { name: "Plan" }).click();
  await fresh(page, "plan");
}

const clasps = async (page: Page): Promise<string> => (await page.locator(".plan").getAttribute("data-clasps"))!;
const outline = async (page: Page): Promise<string> => (await page.locator(".plandrawing path.connector").first().getAttribute("d"))!;

test("the upper demo cast: a plan, one clasp changed in the ledger, a border moved, undone, kept over a reload", async ({ page }) => {
  test.setTimeout(300_000);
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openBench(page);
  await openDemo(page, "upper");
  await openPlan(page);
  const proposed = await clasps(page);
  // The demo cast lacks 14, 15 and 25, 26: two bounded spaces, each with an abutment before and behind it.
  for (const tooth of [16, 13, 24, 27]) expect(proposed).toContain(`${tooth} `);
  await expect(page.locator(".planpart .replaced button[aria-pressed=true]")).toHaveCount(4);
  await expect(page.locator(".plandrawing path.connector")).toHaveCount(1);
  for (const finding of await page.locator(".plan .findings li").all()) await expect(finding).toContainText(/wanted/);
  const before = await page.getByTestId("tag").count();
  await page.locator(".plan .findings .there").first().click();
  await expect(page.getByTestId("tag")).toBeVisible(); // the rod stands at the place of the finding
  expect(before).toBe(0);

  // Another clasp for 24, in the ledger.
  await page.getByRole("tab", { name: "Ledger" }).click();
  await fresh(page, "ledger");
  const row = page.locator('article.abutment[aria-label^="Abutment 24"]');
  await row.locator(".abuthead").click();
  const other = row.locator(".family").nth(1);
  const family = (await other.getAttribute("data-family"))!;
  expect(proposed).not.toContain(`24 ${family}`);
  await other.locator(".familyhead").click();
  await other.getByRole("button", { name: /choose it/ }).click();
  await openPlan(page);
  expect(await clasps(page)).toContain(`24 ${family}`);

  // The connector's border is taken hold of by a knot and let go farther back.
  await page.locator("main canvas").focus();
  await page.keyboard.press("o");
  await page.keyboard.press("w");
  await page.waitForTimeout(500);
  const was = await outline(page);
  const knots = (await page.locator(".over").getAttribute("data-knots"))!.split(", ").map((each) => each.split(" ").map(Number));
  const [x, y] = knots.reduce((lowest, each) => (each[1]! < lowest[1]! ? each : lowest));
  const box = (await page.locator("main canvas").boundingBox())!;
  await page.mouse.move(box.x + x!, box.y + y!);
  await page.mouse.down();
  await page.mouse.move(box.x + x! + 6, box.y + y! + 15, { steps: 4 });
  await page.mouse.move(box.x + x! + 8, box.y + y! + 30, { steps: 4 });
  await page.mouse.up();
  await fresh(page, "plan");
  await expect(page.locator(".planpart", { hasText: "Moved once" })).toBeVisible();
  const moved = await outline(page);
  expect(moved).not.toBe(was);
  await page.keyboard.press("Control+z");
  await fresh(page, "plan");
  expect(await outline(page)).toBe(was);
  await page.keyboard.press("Control+Shift+z");
  await fresh(page, "plan");
  expect(await outline(page)).toBe(moved);

  await page.reload();
  await surveyed(page, 0, 0);
  await fresh(page, "plan");
  expect(await outline(page)).toBe(moved);
  expect(await clasps(page)).toContain(`24 ${family}`);

  // A tooth left unreplaced, and back.
  await page.locator(".planpart .replaced button[aria-pressed=true]").first().click();
  await expect(page.locator(".planpart .replaced button[aria-pressed=false]")).toHaveCount(1, { timeout: 60_000 });
  await page.keyboard.press("Control+z");
  await expect(page.locator(".planpart .replaced button[aria-pressed=false]")).toHaveCount(0, { timeout: 60_000 });
});

test("a real arch is planned once its missing teeth are told; another kind of connector is chosen and taken back", async ({ page }) => {
  test.setTimeout(300_000);
  const file = arch("upper-14.ply");
  test.skip(file === null, "skipped: ../shared/arches/upper-14.ply is not here (RODWORK_SHARED)");
  await page.emulateMedia({ colorScheme: "dark" });
  await openBench(page);
  await page.setInputFiles("input[type=file]", { name: "upper-14.ply", mimeType: "model/ply", buffer: readFileSync(file!) });
  await expect(page.locator(".castname")).toHaveText("upper-14.ply", { timeout: 60_000 });
  await page.getByRole("tab", { name: "Plan" }).click();
  await expect(page.locator(".plan")).toContainText("once orientation and jaw of the cast are known");
  await page.getByRole("button", { name: "to the arch page" }).click();
  await page.getByRole("button", { name: "upper", exact: true }).first().click();
  await surveyed(page, 0, 0);
  await page.locator('.place[data-fdi="14"] .number').click();
  await expect(page.locator(".archpage")).toHaveAttribute("data-busy", "false", { timeout: 60_000 });
  await openPlan(page);
  const proposed = await outline(page);
  await expect(page.locator(".plan .findings")).toContainText(["border of the palatal strap"]);
  await page.getByLabel("Kind of major connector").selectOption("palatal-plate");
  await fresh(page, "plan");
  await expect(page.locator(".plan .findings")).toContainText(["border of the palatal plate"]);
  await expect(page.locator(".plan")).toContainText("One thing changed by hand");
  await page.getByRole("button", { name: "back to what is proposed" }).click();
  await fresh(page, "plan");
  expect(await outline(page)).toBe(proposed);
});
