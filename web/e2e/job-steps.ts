import { readFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";
import { arch, surveyed, test } from "./bench";

/** What a hand does at each step of the job; the tests put these together. */

/** Brings a scan of the shared folder to the table; skips the test where the folder is not here. */
export async function bring(page: Page, name: string): Promise<void> {
  const file = arch(name);
  test.skip(file === null, `skipped: ../shared/arches/${name} is not here (RODWORK_SHARED)`);
  await page.setInputFiles("input[type=file]", { name, mimeType: "model/ply", buffer: readFileSync(file!) });
  await expect(page.locator(".castname")).toHaveText(name, { timeout: 60_000 });
}

/** Says which jaw the cast is, and which of its teeth are missing. */
export async function tellTeeth(page: Page, jaw: "upper" | "lower", missing: readonly number[]): Promise<void> {
  await page.getByRole("tab", { name: "Arch" }).click();
  await page.getByRole("button", { name: jaw, exact: true }).first().click();
  await expect(page.locator("header .keep").first()).toHaveText(jaw);
  await surveyed(page, 0, 0);
  for (const tooth of missing) {
    await page.locator(`.place[data-fdi="${tooth}"] .number`).click();
    await page.waitForTimeout(200);
  }
  await expect(page.locator(".archpage")).toHaveAttribute("data-busy", "false", { timeout: 60_000 });
}

/** Waits until a page is written for what lies on the table. */
export async function fresh(page: Page, which: "plan" | "ledger"): Promise<void> {
  await page.waitForTimeout(300);
  await expect(page.locator(`.${which}`)).toHaveAttribute("data-fresh", "true", { timeout: 110_000 });
}

export async function open(page: Page, which: "plan" | "ledger"): Promise<void> {
  await page.getByRole("tab", { name: which === "plan" ? "Plan" : "Ledger" }).click();
  await fresh(page, which);
}

/** Tries every tilt, to the end. */
export async function tryTilts(page: Page): Promise<void> {
  await page.getByTestId("try-tilts").click();
  await expect(page.getByTestId("path-found")).toBeVisible({ timeout: 120_000 });
}

/** The tilt that a row of the search's table tells. */
async function told(page: Page, name: string): Promise<[number, number]> {
  const cells = await page.getByTestId("path-found").getByRole("row", { name: new RegExp(`^${name}`) }).getByRole("cell").allTextContents();
  return cells.slice(0, 2).map((each) => Number(each.replace("−", "-").replace("°", ""))) as [number, number];
}

/** Takes one of the tilts that were found: the cast is surveyed there. */
export async function takeTilt(page: Page, name: string): Promise<[number, number]> {
  const [anterior, right] = await told(page, name);
  await page.getByTestId("path-found").getByRole("button", { name, exact: true }).click();
  await expect
    .poll(async () => (await page.locator("main.table").getAttribute("data-surveyed"))!.split(" ").map((each) => Number(Number(each).toFixed(1)) + 0), { timeout: 60_000 })
    .toEqual([anterior + 0, right + 0]);
  return [anterior, right];
}

export async function setTripod(page: Page): Promise<void> {
  await page.getByTestId("set-tripod").click();
  await expect(page.locator("[data-tripod]")).toHaveCount(3, { timeout: 60_000 });
}

/** Chooses another family for an abutment than that which stands first; the tooth and the family. */
export async function anotherClasp(page: Page, abutment: string): Promise<string> {
  await open(page, "ledger");
  const row = page.locator(`article.abutment[aria-label^="Abutment ${abutment}"]`).first();
  await row.locator(".abuthead").click();
  const tooth = (await row.getAttribute("aria-label"))!.split(" ")[1]!;
  const family = row.locator(".family").nth(1);
  const id = (await family.getAttribute("data-family"))!;
  await family.locator(".familyhead").click();
  await family.getByRole("button", { name: /choose it/ }).click();
  return `${tooth} ${id}`;
}

export const clasps = async (page: Page): Promise<string> => (await page.locator(".plan").getAttribute("data-clasps"))!;
export const outline = async (page: Page): Promise<string> => (await page.locator(".plandrawing path.connector").first().getAttribute("d"))!;

/** Takes hold of the connector's hindmost knot and lets it go farther back; the outline before. */
export async function moveBorder(page: Page): Promise<string> {
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
  return was;
}

/** Keeps the cast on the table in a case. */
export async function keepInCase(page: Page, code: string): Promise<void> {
  await page.locator(".caselist summary").click();
  await page.getByLabel("Code of a new case").fill(code);
  await page.getByRole("button", { name: "keep this cast in a case" }).click();
  await savedIn(page, code);
}

export async function savedIn(page: Page, code: string): Promise<void> {
  await page.waitForTimeout(1200); // an edit is saved when the hand rests
  await expect(page.locator(".caselist summary")).toContainText(`case ${code} saved`, { timeout: 60_000 });
}
