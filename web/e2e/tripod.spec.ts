import { expect, type Page } from "@playwright/test";
import { type CastMesh, decodeMesh } from "../src/wire/mesh";
import { scan, type ScanVec, turned, unit } from "../src/values/vec";
import type { CastInfo } from "../src/wire/types";
import { ADDRESS, api, openBench, openDemo, surveyed, test } from "./bench";

const TURN_AXIS = unit(scan(0.4, -0.7, 0.6));
const TURN = 1.9;

async function meshOf(id: string): Promise<CastMesh> {
  const { origin, hash } = ADDRESS();
  const answer = await fetch(`${origin}/api/casts/${id}/mesh`, { headers: { Authorization: `Bearer ${hash.slice(1)}` } });
  return decodeMesh(await answer.arrayBuffer());
}

/** The same surface in another pose, as a scanner would give it: a binary STL. */
function turnedStl({ positions, corners }: CastMesh): Buffer {
  const bytes = Buffer.alloc(84 + (50 * corners.length) / 3);
  bytes.writeUInt32LE(corners.length / 3, 80);
  corners.forEach((v, k) => {
    const place = turned(scan(positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!), TURN_AXIS, TURN);
    place.forEach((value, i) => bytes.writeFloatLE(value + 20 * i, 84 + 50 * Math.floor(k / 3) + 12 + 12 * (k % 3) + 4 * i));
  });
  return bytes;
}

/** The withdrawal axis of a cast at a tilt, in its scan's own frame, as rodwork.survey.Tilt has it. */
function axisOf({ frame, jaw }: CastInfo, [anterior, right]: readonly [number, number]): ScanVec {
  const rad = Math.PI / 180;
  const x = (jaw === "upper" ? 1 : -1) * Math.tan(right * rad);
  const y = -Math.tan(anterior * rad);
  const { x: ex, y: ey, z: ez } = frame!;
  return unit(scan(x * ex[0] + y * ey[0] + ez[0], x * ex[1] + y * ey[1] + ez[1], x * ex[2] + y * ey[2] + ez[2]));
}

const tiltOf = async (page: Page): Promise<[number, number]> =>
  (await page.locator(".tiltmap").getAttribute("data-tilt"))!.split(" ").map(Number) as [number, number];

const castNow = async (name: string): Promise<CastInfo> => {
  const { casts } = await api<{ casts: { id: string; name: string }[] }>("casts");
  return api<CastInfo>(`casts/${casts.findLast((card) => card.name.startsWith(name))!.id}`);
};

test("tripod marks are set, moved and undone; the cast goes back where it was on this scan and on a turned one", async ({ page }) => {
  test.setTimeout(240_000);
  await openBench(page);
  await openDemo(page, "lower");
  const map = page.getByRole("application", { name: /Tilt map/ });
  for (let i = 0; i < 6; i++) await page.keyboard.press("ArrowDown");
  await surveyed(page, 3, 0);
  const panel = page.getByRole("region", { name: "Tripod marks" });
  await panel.getByTestId("set-tripod").click();
  const labels = page.locator("[data-tripod]");
  await expect(labels).toHaveCount(3, { timeout: 60_000 });
  await expect(panel.getByTestId("tripod-error")).toContainText("95 times in 100");
  await expect(panel.locator("tr")).toHaveCount(3);

  // A mark is dragged along its level, and the drag taken back.
  const distances = panel.locator("table");
  const before = (await distances.textContent())!;
  // A mark stays at its height, and a place beside the cast is none: of a few ways at right angles one leads along it.
  for (const which of [0, 1, 2]) {
    if ((await distances.textContent()) !== before) break;
    for (const [dx, dy] of [[26, 0], [0, 26], [-26, 0], [0, -26]] as const) {
      const box = (await labels.nth(which).boundingBox())!;
      const [x, y] = [box.x - 11, box.y + 20];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 });
      await page.mouse.move(x + dx, y + dy, { steps: 4 });
      const answered = page.waitForResponse(/tripod\/move/, { timeout: 5000 }).catch(() => null);
      await page.mouse.up();
      await answered;
      await page.waitForTimeout(300);
      if ((await distances.textContent()) !== before) break;
    }
  }
  await expect(distances).not.toHaveText(before);
  while ((await distances.textContent()) !== before) await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await expect(labels).toHaveCount(0);
  await page.keyboard.press("Control+Shift+z");
  await expect(labels).toHaveCount(3);

  // Back where it was on the same scan: one action, one step to undo.
  await page.keyboard.press("Home");
  await surveyed(page, 0, 0);
  await panel.getByTestId("put-back").click();
  await expect(map).toHaveAttribute("data-tilt", "3 0");
  await page.keyboard.press("Control+z");
  await expect(map).toHaveAttribute("data-tilt", "0 0");
  await page.keyboard.press("Control+Shift+z");
  await surveyed(page, 3, 0);

  const kept = await castNow("demo-lower");
  const buffer = turnedStl(await meshOf(kept.id));
  await page.setInputFiles("input[type=file]", { name: "again.stl", mimeType: "model/stl", buffer });
  await expect(page.locator(".castname")).toHaveText("again.stl", { timeout: 90_000 });
  await page.getByRole("button", { name: "lower", exact: true }).first().click();
  await surveyed(page, 0, 0);
  await panel.getByRole("button", { name: "lay the scans" }).first().click();
  await expect(page.getByRole("status").filter({ hasText: "of this scan lies on it" })).toBeVisible({ timeout: 90_000 });
  const again = await castNow("again.stl");
  const found = axisOf(again, await tiltOf(page));
  const wanted = turned(axisOf(kept, [3, 0]), TURN_AXIS, TURN);
  const off = Math.acos(Math.min(1, found[0] * wanted[0] + found[1] * wanted[1] + found[2] * wanted[2]));
  expect((off * 180) / Math.PI).toBeLessThan(0.1);
  await page.keyboard.press("Control+z");
  await expect(map).toHaveAttribute("data-tilt", "0 0");

  // Three places that are no marks are refused, with both sets of distances.
  await panel.getByRole("button", { name: "pick its marks" }).first().click();
  await expect(panel.getByTestId("picking")).toContainText("0 of 3");
  const canvas = (await page.locator("main.table canvas").first().boundingBox())!;
  for (const [dx, dy] of [[0, -120], [-90, 40], [90, 60]] as const) {
    await page.mouse.click(canvas.x + canvas.width / 2 + dx, canvas.y + canvas.height / 2 + dy);
  }
  await expect(page.getByText(/distances of the picked points disagree/)).toBeVisible();
});
