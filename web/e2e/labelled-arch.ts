import { readFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";
import { fitted, legendShare } from "../src/scene/fit";
import { poseOf, toWorld } from "../src/values/pose";
import { dot, length, scan, type ScanVec, sub, unit, world } from "../src/values/vec";
import { onScreen, sideView } from "../src/values/view";
import { decodeMesh } from "../src/wire/mesh";
import type { CastInfo } from "../src/wire/types";
import { ADDRESS, api, arch, openBench, surveyed, test } from "./bench";

/** A labelled arch of the shared folder on the bench, and where its teeth stand on the screen. */
export class LabelledArch {
  /** Clicks that a person needed, jaw and page among them not. */
  clicks = 0;

  private constructor(
    readonly page: Page,
    readonly id: string,
    readonly labels: readonly number[],
    private readonly screen: (point: ScanVec) => readonly [number, number],
    private readonly middles: ReadonlyMap<number, ScanVec>,
    private readonly corners: Uint32Array,
  ) {}

  static async open(page: Page, name: string, jaw: "upper" | "lower"): Promise<LabelledArch> {
    const file = arch(`${name}.ply`);
    test.skip(file === null, `skipped: ../shared/arches/${name}.ply is not here (RODWORK_SHARED)`);
    await openBench(page);
    await page.keyboard.press("t");
    await page.setInputFiles("input[type=file]", { name: `${name}.ply`, mimeType: "model/ply", buffer: readFileSync(file!) });
    await expect(page.locator(".castname")).toHaveText(`${name}.ply`, { timeout: 60_000 });
    await page.getByRole("button", { name: jaw, exact: true }).first().click();
    await expect(page.locator("header .keep").first()).toHaveText(jaw);
    await surveyed(page, 0, 0);
    const { casts } = await api<{ casts: { id: string; name: string }[] }>("casts");
    const { id } = casts.findLast((cast) => cast.name === `${name}.ply`)!;
    const info = await api<CastInfo>(`casts/${id}`);
    const { origin, hash } = ADDRESS();
    const answer = await fetch(`${origin}/api/casts/${id}/mesh`, { headers: { Authorization: `Bearer ${hash.slice(1)}` } });
    const { positions, corners } = decodeMesh(await answer.arrayBuffer());
    const labels = JSON.parse(readFileSync(arch(`${name}.labels.json`)!, "utf8")) as number[];
    const vertex = (v: number): ScanVec => scan(positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!);

    // What the bench shows first: the whole cast from above, at the reference.
    const box = (await page.locator("main canvas").boundingBox())!;
    const pose = poseOf(info.frame!.z, info.frame!.y, scan(0, 0, 0));
    const view = fitted(sideView("above", jaw, world(0, 0, 0), 1), positions, pose, box.width / box.height, legendShare(box.height));
    const mmPerPx = (2 * view.half) / box.height;
    const screen = (point: ScanVec): readonly [number, number] => {
      const [right, up] = onScreen(view, toWorld(pose, point));
      return [box.x + box.width / 2 + right / mmPerPx, box.y + box.height / 2 - up / mmPerPx];
    };

    const sums = new Map<number, number[]>();
    labels.forEach((tooth, t) => {
      if (tooth === 0) return;
      const sum = sums.get(tooth) ?? sums.set(tooth, [0, 0, 0, 0]).get(tooth)!;
      for (let k = 0; k < 3; k++) {
        const p = vertex(corners[3 * t + k]!);
        for (let c = 0; c < 3; c++) sum[c]! += p[c as 0];
        sum[3]!++;
      }
    });
    const middles = new Map([...sums].map(([tooth, [x, y, z, n]]) => [tooth, scan(x! / n!, y! / n!, z! / n!)]));
    return new LabelledArch(page, id, labels, screen, middles, corners);
  }

  /**
   * The deepest of some known depths on each tooth, facial and lingual surfaces: vertices amid triangles of one label that do not
   * face a neighbour.
   *
   * @param known rows of vertex, x, y, z, depth, capped
   */
  deepestOf(known: readonly number[][]): Map<number, number> {
    const owner = new Map<number, number>();
    this.labels.forEach((tooth, t) => {
      for (let k = 0; k < 3; k++) {
        const v = this.corners[3 * t + k]!;
        owner.set(v, owner.has(v) && owner.get(v) !== tooth ? 0 : tooth);
      }
    });
    const deepest = new Map<number, number>();
    for (const [vertex, x, y, z, depth, capped] of known) {
      const tooth = owner.get(vertex!) ?? 0;
      if (!tooth || capped || this.proximal(tooth, scan(x!, y!, z!))) continue;
      deepest.set(tooth, Math.max(deepest.get(tooth) ?? 0, depth!));
    }
    return deepest;
  }

  /** Whether a place of a tooth lies along the row rather than across it: on a proximal surface, beside a neighbour or a space. */
  private proximal(tooth: number, place: ScanVec): boolean {
    const middle = this.middles.get(tooth)!;
    const to = (other: ScanVec): ScanVec => unit(sub(other, middle));
    const out = sub(place, middle);
    return [...this.middles].some(([other, at]) => other !== tooth && length(sub(at, middle)) < 14 && Math.abs(dot(to(at), out)) > 0.5 * length(out));
  }

  get teeth(): number[] {
    return [...this.middles.keys()].sort((a, b) => a - b);
  }

  async found(): Promise<number[]> {
    const page = this.page.locator(".archpage");
    await expect(page).toHaveAttribute("data-busy", "false", { timeout: 60_000 });
    return ((await page.getAttribute("data-teeth")) ?? "").split(" ").filter(Boolean).map(Number).sort((a, b) => a - b);
  }

  async missing(tooth: number): Promise<void> {
    this.clicks++;
    await this.page.locator(`.place[data-fdi="${tooth}"] .number`).click();
    await this.page.waitForTimeout(200);
  }

  /** Clicks a tooth that was not found, and adds it under its number. */
  async add(tooth: number): Promise<void> {
    this.clicks++;
    await this.page.mouse.click(...this.screen(this.middles.get(tooth)!));
    const number = this.page.getByLabel("Tooth here").getByRole("combobox");
    await expect(number).toBeVisible();
    if ((await number.inputValue()) !== String(tooth)) {
      this.clicks++;
      await number.selectOption(String(tooth));
    }
    await this.page.getByLabel("Tooth here").getByRole("button", { name: "add" }).press("Enter");
    await this.page.waitForTimeout(200);
  }

  async choose(tooth: number): Promise<void> {
    await this.page.mouse.click(...this.screen(this.middles.get(tooth)!));
    await expect(this.page.getByLabel("Tooth", { exact: true })).toHaveAttribute("data-tooth", String(tooth));
  }

  /** Dice by triangles of each tooth against the labels. */
  async dice(): Promise<number[]> {
    const { origin, hash } = ADDRESS();
    const answer = await fetch(`${origin}/api/casts/${this.id}/teeth/labels`, { headers: { Authorization: `Bearer ${hash.slice(1)}` } });
    const told = new Uint8Array(await answer.arrayBuffer());
    return this.teeth.map((tooth) => {
      let [both, sum] = [0, 0];
      this.labels.forEach((label, t) => {
        if (label === tooth && told[t] === tooth) both++;
        sum += Number(label === tooth) + Number(told[t] === tooth);
      });
      return (2 * both) / sum;
    });
  }
}
