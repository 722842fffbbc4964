import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { openBench, openDemo, test } from "./bench";
import { anotherClasp, bring, clasps, keepInCase, moveBorder, open, outline, savedIn, setTripod, takeTilt, tellTeeth, tryTilts } from "./job-steps";
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

interface Job {
  readonly code: string;
  /** Whose clasp is changed. */
  readonly abutment: string;
  readonly missing: readonly number[];
}

/** The job from teeth to plan, the program ended and started, and on to the prescription. */
async function wholeJob(page: Page, job: Job): Promise<void> {
  const { code } = job;
  await expect(page.locator(".archpage")).toHaveAttribute("data-busy", "false", { timeout: 60_000 });
  for (const tooth of job.missing) await expect(page.locator(`.place[data-fdi="${tooth}"]`)).toHaveClass(/ (missing|gap)\b/);

  await tryTilts(page);
  const best = await takeTilt(page, "best");
  expect(best).not.toEqual([0, 0]);
  const tilt = (await page.locator("main.table").getAttribute("data-surveyed"))!;
  await setTripod(page);
  const chosen = await anotherClasp(page, job.abutment);
  await open(page, "plan");
  expect(await clasps(page)).toContain(chosen);
  await savedIn(page, code);

  await page.evaluate(() => sessionStorage.clear());
  await page.goto("about:blank"); // a bench that lies open would ask for the program that is gone
  await program?.end();
  program = await started(store);
  await page.goto(program.address);
  await expect(page.locator("main.table")).toHaveAttribute("data-surveyed", /.+/, { timeout: 90_000 });
  await page.locator(".caselist summary").click();
  await page.locator(".caselist li button", { hasText: code }).click();
  await expect(page.locator(".caselist summary")).toContainText(`case ${code}`, { timeout: 60_000 });
  await expect(page.locator("main.table")).toHaveAttribute("data-surveyed", tilt, { timeout: 90_000 });
  await expect(page.locator("[data-tripod]")).toHaveCount(3);
  await open(page, "plan");
  expect(await clasps(page)).toContain(chosen);

  await expect(page.locator(".plandrawing path.connector")).toHaveCount(1);
  const was = await moveBorder(page);
  const moved = await outline(page);
  expect(moved).not.toBe(was);
  await savedIn(page, code);

  // The preparation list: a click on a cut turns the stage there and lays the cut on the cast.
  const steps = page.locator(".preparation [data-step]");
  const count = await steps.count();
  expect(count).toBeGreaterThan(0);
  for (const step of await steps.all()) await expect(step.locator(".findings li").first()).toContainText(/wanted at (most|least)/);
  await steps.locator(".cutpicture:has(svg)").first().click();
  await expect(page.locator(".over")).toHaveAttribute("data-cut", /\d+/);

  await page.locator(".handover details summary").click();
  await page.getByLabel("shade, guide").fill("A2");
  await page.getByLabel("shade, guide").blur();
  const folder = page.waitForEvent("download", { timeout: 110_000 });
  await page.getByRole("button", { name: "all for the laboratory (zip)" }).click();
  const zip = await (await folder).path();
  const names = execFileSync("unzip", ["-Z1", zip]).toString();
  for (const name of ["prescription.pdf", "prescription.json", "plan.json", "cast-at-path/"]) expect(names).toContain(name);
  const unzipped = (name: string): string => execFileSync("unzip", ["-p", zip, name], { maxBuffer: 1 << 26 }).toString();
  expect(unzipped("prescription.pdf").slice(0, 5)).toBe("%PDF-");
  const prescription = unzipped("prescription.json");
  expect(prescription).toContain(code);
  expect(prescription).toContain("A2");
  // What the laboratory gets is what lies on the bench: the clasp that was chosen, each step of the preparation, the moved border.
  const plan = JSON.parse(unzipped("plan.json")) as { clasps: { tooth: number; family: string }[]; preparation?: { steps: object[] } };
  expect(plan.clasps.map(({ tooth, family }) => `${tooth} ${family}`)).toContain(chosen);
  expect(plan.preparation?.steps).toHaveLength(count);
  expect(unzipped("plan.svg")).toContain(moved);
  await savedIn(page, code);
}

test("the whole job on an imported arch, over an end of the program", async ({ page }) => {
  test.setTimeout(600_000);
  await openBench(page, program!.address);
  await bring(page, "upper-14.ply");
  await keepInCase(page, "ARCH-14");
  await tellTeeth(page, "upper", [14]);
  await wholeJob(page, { code: "ARCH-14", abutment: "", missing: [14] });
});

test("the whole job on the upper demo cast, over an end of the program", async ({ page }) => {
  test.setTimeout(600_000);
  await openBench(page, program!.address);
  await openDemo(page, "upper");
  await keepInCase(page, "DEMO-UPPER");
  await page.getByRole("tab", { name: "Arch" }).click();
  await wholeJob(page, { code: "DEMO-UPPER", abutment: "24", missing: [14, 15, 25, 26] });
});
