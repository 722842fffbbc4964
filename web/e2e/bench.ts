import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, type Page, test as base } from "@playwright/test";
import WebSocket from "ws";

export const ADDRESS = (): URL => new URL(process.env["RODWORK_ADDRESS"]!);

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

/** A real arch for tests, beside the repository or where RODWORK_SHARED says; null where absent. */
export function arch(name: string): string | null {
  const folder = process.env["RODWORK_SHARED"] ?? resolve(ROOT, "../shared");
  const file = resolve(folder, "arches", name);
  return existsSync(file) ? file : null;
}

/** The test, with a page on which any error that reached the browser's log fails it. */
export const test = base.extend<{ page: Page }>({
  page: async ({ page }, use) => {
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    page.on("console", (message) => {
      // A refused request is logged by the browser itself; the bench tells it to the person.
      if (message.type() === "error" && !/Failed to load resource/.test(message.text())) errors.push(message.text());
    });
    await use(page);
    await clear(page);
    expect(errors).toEqual([]);
  },
});

/** Closes the scans that a test opened: the program holds so many at once, and the next test may bring its own. */
export async function clear(page: Page): Promise<void> {
  await page.goto("about:blank");
  const { casts } = await api<{ casts: { id: string; name: string }[] }>("casts");
  const { origin, hash } = ADDRESS();
  for (const { id, name } of casts) {
    if (!/demo/i.test(name)) await fetch(`${origin}/api/casts/${id}`, { method: "DELETE", headers: { Authorization: `Bearer ${hash.slice(1)}` } });
  }
}

/** Opens the bench and waits until its first cast was surveyed. */
export async function openBench(page: Page, address = ADDRESS().href): Promise<void> {
  await page.goto(address);
  await surveyed(page, 0, 0);
}

/** Waits until the survey of a tilt is drawn. */
export async function surveyed(page: Page, anterior: number, right: number): Promise<void> {
  await expect(page.locator("main.table")).toHaveAttribute("data-surveyed", `${anterior} ${right}`, { timeout: 90_000 });
}

export async function openDemo(page: Page, jaw: "lower" | "upper"): Promise<void> {
  await page.keyboard.press("?");
  await page.getByRole("button", { name: `${jaw === "lower" ? "Lower" : "Upper"} demo cast` }).click();
  await expect(page.locator("header .keep").first()).toHaveText(jaw, { timeout: 90_000 });
  await surveyed(page, 0, 0);
}

export interface TagReading {
  readonly point: readonly [number, number, number];
  readonly depth: number;
}

export async function tagReading(page: Page): Promise<TagReading> {
  const tag = page.getByTestId("tag");
  await expect(tag).toBeVisible();
  const point = (await tag.getAttribute("data-point"))!.split(" ").map(Number) as [number, number, number];
  return { point, depth: Number(await tag.getAttribute("data-depth")) };
}

/** Moves the pointer over the cast and waits until the rod has read the new place. */
export async function carryTo(page: Page, x: number, y: number): Promise<TagReading> {
  const tag = page.getByTestId("tag");
  const before = (await tag.count()) ? await tag.getAttribute("data-point") : null;
  await page.mouse.move(x, y);
  await expect.poll(async () => ((await tag.count()) ? await tag.getAttribute("data-point") : null)).not.toBe(before);
  await page.waitForTimeout(150);
  return tagReading(page);
}

/** Asks the program itself, past the bench: survey a tilt, then read a place. */
export async function serverDepth(cast: string, tilt: readonly [number, number], point: readonly number[], triangle: number): Promise<number> {
  const { host, hash } = ADDRESS();
  const line = new WebSocket(`ws://${host}/api/casts/${cast}/survey?token=${hash.slice(1)}`);
  try {
    return await new Promise<number>((resolve, reject) => {
      line.on("error", reject);
      line.on("open", () => line.send(JSON.stringify({ kind: "survey", seq: 1, tilt, gauges: [0.25, 0.5, 0.75] })));
      line.on("message", (data: Buffer, binary: boolean) => {
        if (binary) line.send(JSON.stringify({ kind: "read", seq: 2, point, triangle, gauge: null }));
        else resolve((JSON.parse(data.toString()) as { reading: { depthMm: number } }).reading.depthMm);
      });
    });
  } finally {
    line.close();
  }
}

export async function api<T>(path: string): Promise<T> {
  const { origin, hash } = ADDRESS();
  const answer = await fetch(`${origin}/api/${path}`, { headers: { Authorization: `Bearer ${hash.slice(1)}` } });
  return (await answer.json()) as T;
}
