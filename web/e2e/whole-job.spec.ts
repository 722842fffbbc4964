import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { arch, openBench, surveyed, test } from "./bench";
import { type Program, started } from "./start-rodwork";

/** A program of the test's own, for it is ended in the middle. */
let program: Program | null = null;
let store = "";

test.beforeEach(async () => {
  store = mkdtempSync(join(tmpdir(), "rodwork-whole-"));
  program = await started(store);
});

test.afterEach(async ({ page }) => {
  await page.goto("about:blank"); // else the bench asks for a program that is gone
  await program?.end();
  rmSync(store, { recursive: true, force: true });
});

async function fresh(page: Page, which: "plan" | "ledger"): Promise<void> {
  await page.getByRole("tab", { name: which === "plan" ? "Plan" : "Ledger" }).click();
  await page.waitForTimeout(300);
  await expect(page.locator(`.${which}`)).toHaveAttribute("data-fresh", "true", { timeout: 110_000 });
}

async function keep(page: Page, code: string): Promise<void> {
  await page.locator(".caselist summary").click();
  await page.getByLabel("Code of a new case").fill(code);
  await page.getByRole("button", { name: "keep this cast in a case" }).click();
  await saved(page, code);
}

async function saved(page: Page, code: string): Promise<void> {
  await page.waitForTimeout(1200); // an edit is saved when the hand rests
  await expect(page.locator(".caselist summary")).toContainText(`case ${code} saved`, { timeout: 60_000 });
}

/** Chooses the second family of the first row that has one to choose; what was chosen. */
async function anotherClasp(page: Page): Promise<string> {
  await fresh(page, "ledger");
  const row = page.locator("article.abutment").first();
  await row.locator(".abuthead").click();
  const tooth = (await row.getAttribute("aria-label"))!.split(" ")[1]!;
  const family = row.locator(".family").nth(1);
  const id = (await family.getAttribute("data-family"))!;
  await family.locator(".familyhead").click();
  await family.getByRole("button", { name: /choose it/ }).click();
  return `${tooth} ${id}`;
}

const clasps = async (page: Page): Promise<string> => (await page.locator(".plan").getAttribute("data-clasps"))!;

/** The rest of the job: a clasp changed, saved, the program ended and started, the case opened, a border moved, written. */
async function goOn(page: Page, code: string): Promise<void> {
  const chosen = await anotherClasp(page);
  await fresh(page, "plan");
  expect(await clasps(page)).toContain(chosen);
  await saved(page, code);
  const tilt = (await page.locator("main.table").getAttribute("data-surveyed"))!;

  await page.evaluate(() => sessionStorage.clear());
  await page.goto("about:blank"); // a bench that lies open would ask for the program that is gone
  await program?.end();
  program = await started(store);
  await page.goto(program.address);
  await expect(page.locator("main.table")).toHaveAttribute("data-surveyed", /.+/, { timeout: 90_000 });
  await page.locator(".caselist summary").click();
  await page.locator(".caselist li button", { hasText: code }).click();
  await expect(page.locator(".caselist summary")).toContainText(`case ${code}`, { timeout: 60_000 });
  await surveyed(page, Number(tilt.split(" ")[0]), Number(tilt.split(" ")[1]));
  await fresh(page, "plan");
  expect(await clasps(page)).toContain(chosen);

  const connector = page.locator(".plandrawing path.connector");
  if ((await connector.count()) > 0) {
    await page.locator("main canvas").focus();
    await page.keyboard.press("o");
    await page.waitForTimeout(500);
    const before = await connector.first().getAttribute("d");
    const knots = (await page.locator(".over").getAttribute("data-knots"))!.split(", ").map((each) => each.split(" ").map(Number));
    const [x, y] = knots.reduce((lowest, each) => (each[1]! < lowest[1]! ? each : lowest));
    const box = (await page.locator("main canvas").boundingBox())!;
    await page.mouse.move(box.x + x!, box.y + y!);
    await page.mouse.down();
    await page.mouse.move(box.x + x! + 3, box.y + y! + 10, { steps: 4 });
    await page.mouse.move(box.x + x! + 6, box.y + y! + 20, { steps: 4 });
    await page.mouse.up();
    await fresh(page, "plan");
    expect(await connector.first().getAttribute("d")).not.toBe(before);
  }
  // What was done before the program ended can still be undone, and done again.
  await saved(page, code);

  await page.locator(".handover details summary").click();
  await page.getByLabel("shade, guide").fill("A2");
  await page.getByLabel("shade, guide").blur();
  const folder = page.waitForEvent("download", { timeout: 110_000 });
  await page.getByRole("button", { name: "all for the laboratory (zip)" }).click();
  const zip = await (await folder).path();
  expect(readFileSync(zip).subarray(0, 2).toString()).toBe("PK");
  const names = execFileSync("unzip", ["-Z1", zip]).toString();
  for (const name of ["prescription.pdf", "prescription.json", "plan.json", "cast-at-path/"]) expect(names).toContain(name);
  const prescription = execFileSync("unzip", ["-p", zip, "prescription.json"], { maxBuffer: 1 << 26 }).toString();
  expect(prescription).toContain(code);
  expect(prescription).toContain("A2");
  await saved(page, code);
}

test("the whole job on an imported arch, over an end of the program", async ({ page }) => {
  test.setTimeout(600_000);
  const file = arch("upper-16-23.ply");
  test.skip(file === null, "skipped: ../shared/arches/upper-16-23.ply is not here (RODWORK_SHARED)");
  await openBench(page, program!.address);
  await page.setInputFiles("input[type=file]", { name: "upper-16-23.ply", mimeType: "model/ply", buffer: readFileSync(file!) });
  await expect(page.locator(".castname")).toHaveText("upper-16-23.ply", { timeout: 60_000 });
  await keep(page, "ARCH-16-23");
  await page.getByRole("tab", { name: "Arch" }).click();
  await page.getByRole("button", { name: "upper", exact: true }).first().click();
  await surveyed(page, 0, 0);
  for (const tooth of [16, 23]) {
    await page.locator(`.place[data-fdi="${tooth}"] .number`).click();
    await page.waitForTimeout(200);
  }
  await expect(page.locator(".archpage")).toHaveAttribute("data-busy", "false", { timeout: 60_000 });
  await goOn(page, "ARCH-16-23");
});
