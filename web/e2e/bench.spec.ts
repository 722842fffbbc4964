import { readFileSync } from "node:fs";
import { expect } from "@playwright/test";
import { api, arch, carryTo, openBench, openDemo, serverDepth, surveyed, tagReading, test } from "./bench";
import { RADIUS_MM, sphereStl } from "./sphere";

/** What two careful readings of one place may differ by [mm]. */
const AGREE_MM = 0.03;

test("opens on the lower demo cast, and draws it", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  await expect(page.getByLabel("Legend")).toContainText("0.25–0.50");
  const { lines } = await page.locator("main canvas").evaluate(async (canvas: HTMLCanvasElement) => {
    const picture = await createImageBitmap(await new Promise<Blob>((done) => requestAnimationFrame(() => canvas.toBlob((blob) => done(blob!)))));
    return { lines: picture.width * picture.height };
  });
  expect(lines).toBeGreaterThan(300_000);
});

test("the dot follows the hand, the survey follows the dot, one undo takes the drag back", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  const map = (await page.locator(".tiltmap").boundingBox())!;
  const [cx, cy] = [map.x + map.width / 2, map.y + map.height / 2];
  await page.mouse.move(cx, cy);
  await page.mouse.down();
  await page.mouse.move(cx - 20, cy + 30, { steps: 8 });
  await page.mouse.up();
  const words = page.getByTestId("tilt-words");
  const angle = async (name: string): Promise<number> => Number(new RegExp(`${name} (−?[0-9.]+)°`).exec((await words.textContent())!)![1]!.replace("−", "-"));
  // A lower cast: front lies down on the map, the patient's right on the viewer's left.
  expect(await angle("anterior")).toBeGreaterThan(3);
  expect(await angle("right")).toBeGreaterThan(2);
  await expect(page.locator("main.table")).not.toHaveAttribute("data-surveyed", "0 0");
  await page.keyboard.press("Control+z");
  await surveyed(page, 0, 0);
  expect(await angle("anterior")).toBe(0);
});

test("arrow keys move the dot where they point, on both jaws", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "upper");
  await page.keyboard.press("ArrowUp");
  await surveyed(page, 0.5, 0); // front down: up on an upper cast
  await page.keyboard.press("Shift+ArrowLeft");
  await surveyed(page, 0.5, 0.1); // patient's right: left in both
  await page.keyboard.press("Home");
  await openDemo(page, "lower");
  await page.keyboard.press("ArrowUp");
  await surveyed(page, -0.5, 0); // back down: up on a lower cast
});

test("a mark is left on a gauge's curve, keeps its place under a new tilt, and is seated again", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  await page.keyboard.press("1");
  await page.keyboard.press("c");
  const on = await tagReading(page);
  expect(Math.abs(on.depth - 0.25)).toBeLessThanOrEqual(AGREE_MM);
  await page.keyboard.press("m");
  const row = page.locator(".mark").first();
  await expect(row).toContainText("0.25 mm");
  for (let i = 0; i < 6; i++) await page.keyboard.press("ArrowDown");
  await surveyed(page, 3, 0);
  await expect(row).not.toContainText(/^1?0\.25 mm/);
  const moved = await tagReading(page);
  expect(moved.point).toEqual(on.point.map((v) => expect.closeTo(v, 4)));
  expect(Math.abs(moved.depth - 0.25)).toBeGreaterThan(AGREE_MM);
  await row.getByRole("button", { name: /seat again/ }).click();
  await expect(row.getByRole("button", { name: /seat again/ })).toHaveCount(0);
  const seated = await tagReading(page);
  expect(Math.abs(seated.depth - 0.25)).toBeLessThanOrEqual(AGREE_MM);
});

test("a click leaves a mark on the curve, a drag slides it along", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  await page.keyboard.press("f");
  await page.keyboard.press("2");
  await page.keyboard.press("c");
  await page.keyboard.press("m");
  const label = page.locator(".pinlabel").first();
  const box = (await label.boundingBox())!;
  const [x, y] = [box.x - 9, box.y + 18]; // the label stands up and right of its mark
  await page.mouse.move(x, y);
  const before = await tagReading(page);
  await page.mouse.down();
  await page.mouse.move(x + 12, y, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => (await tagReading(page)).point).not.toEqual(before.point);
  await page.waitForTimeout(300);
  expect(Math.abs((await tagReading(page)).depth - 0.5)).toBeLessThanOrEqual(AGREE_MM);
  expect(await page.locator(".mark").count()).toBe(1);
});

test("on a sphere, shown its frame in two steps, the rod reads R − ρ", async ({ page }) => {
  await openBench(page);
  await page.setInputFiles("input[type=file]", { name: "sphere.stl", mimeType: "model/stl", buffer: sphereStl() });
  await expect(page.locator(".castname")).toHaveText("sphere.stl");
  const canvas = (await page.locator("main canvas").boundingBox())!;
  const [cx, cy] = [canvas.x + canvas.width / 2, canvas.y + canvas.height / 2];
  await page.getByRole("button", { name: "This is from above" }).click();
  await page.mouse.click(cx, cy - 150);
  await page.getByRole("button", { name: "upper", exact: true }).click();
  await expect(page.locator("header .keep").first()).toHaveText("upper"); // until then the survey is still that of no jaw
  await surveyed(page, 0, 0);
  // Truth: a closed form, on a sphere below its equator u = R − ρ, ρ the distance from the axis through its middle.
  const half = Math.min(canvas.width, canvas.height) / 2 / 1.12;
  // The new jaw turns the cast into its own pose; from the front it is seen once that has come through.
  let tries = 0;
  await expect
    .poll(async () => {
      await page.keyboard.press("f");
      return (await carryTo(page, cx + 0.2 * half - 3 * ++tries, cy + 0.3 * half)).point[2];
    })
    .toBeLessThan(0);
  let read = 0;
  for (const below of [0.15, 0.3, 0.45]) {
    const { point, depth } = await carryTo(page, cx + 0.2 * half, cy + below * half);
    const rho = Math.hypot(point[0], point[1]);
    expect(Math.hypot(...point)).toBeCloseTo(RADIUS_MM, 2);
    expect(point[2]).toBeLessThan(0);
    expect(Math.abs(depth - Math.min(4, RADIUS_MM - rho))).toBeLessThanOrEqual(AGREE_MM);
    if (depth > 0.2 && depth < 3.9) read++;
  }
  expect(read).toBeGreaterThanOrEqual(2); // real depths were read, not zeros
});

test("a broken file is refused with what to do, and the cast of before stays", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  const name = await page.locator(".castname").textContent();
  await page.evaluate(() => {
    const carried = new DataTransfer();
    carried.items.add(new File([new Uint8Array(3000).fill(77)], "broken.stl"));
    document.querySelector(".bench")!.dispatchEvent(new DragEvent("drop", { dataTransfer: carried, bubbles: true, cancelable: true }));
  });
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("broken.stl");
  expect((await alert.locator("p").count())).toBeGreaterThanOrEqual(2); // what happened, and what to do
  await expect(page.locator(".castname")).toHaveText(name!);
  await alert.getByRole("button", { name: "close" }).click();
  await expect(alert).toHaveCount(0);
});

test("a real arch of full density is read as the program reads it, and follows the dot", async ({ page }) => {
  const file = arch("lower-dense.stl");
  test.skip(file === null, "skipped: ../shared/arches/lower-dense.stl is not here (RODWORK_SHARED)");
  await openBench(page);
  await page.setInputFiles("input[type=file]", { name: "lower-dense.stl", mimeType: "model/stl", buffer: readFileSync(file!) });
  await expect(page.locator(".castname")).toHaveText("lower-dense.stl", { timeout: 60_000 });
  await page.getByRole("button", { name: "lower", exact: true }).click();
  await surveyed(page, 0, 0);
  await expect(page.getByLabel("Scan", { exact: true }).locator("li").first()).toBeVisible();
  await page.keyboard.press("1");
  await page.keyboard.press("c");
  const read = await tagReading(page);
  expect(Math.abs(read.depth - 0.25)).toBeLessThanOrEqual(AGREE_MM);
  const { casts } = await api<{ casts: { id: string; name: string }[] }>("casts");
  const { id } = casts.find((cast) => cast.name === "lower-dense.stl")!;
  const triangle = Number(await page.getByTestId("tag").getAttribute("data-triangle"));
  expect(Math.abs((await serverDepth(id, [0, 0], read.point, triangle)) - read.depth)).toBeLessThanOrEqual(AGREE_MM);

  // From the hand to the picture, told and not judged: it depends on the machine.
  const times: number[] = [];
  for (let i = 1; i <= 10; i++) {
    const began = Date.now();
    await page.keyboard.press("ArrowDown");
    await surveyed(page, i * 0.5, 0);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
    times.push(Date.now() - began);
  }
  console.log(`lower-dense.stl, key to drawn picture: median ${times.sort((a, b) => a - b)[5]!} ms of ${times.join(", ")}`);
});

test("a picture is saved with the cast's name and tilt", async ({ page }) => {
  await openBench(page);
  await openDemo(page, "lower");
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  expect(download.suggestedFilename()).toMatch(/a0\.0 r0\.0\.png$/);
  const bytes = readFileSync(await download.path());
  expect(bytes.subarray(1, 4).toString()).toBe("PNG");
  expect(bytes.length).toBeGreaterThan(40_000);
});
