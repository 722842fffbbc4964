import { Group, Mesh, MeshBasicMaterial, RingGeometry, CircleGeometry, type Quaternion } from "three";
import type { Look } from "../values/look";
import type { WorldVec } from "../values/vec";

export interface Pin {
  readonly id: string;
  readonly at: WorldVec;
  readonly selected: boolean;
  /** False when the mark is no longer where its gauge fits. */
  readonly seated: boolean;
}

const RING_PX = 6;
const LIFT_MM = 0.35;

/** A person's marks: small brass rings that face the viewer at a constant size; an open ring once off its gauge. */
export class MarkPins {
  readonly group = new Group();
  private readonly ring = new RingGeometry(0.68, 1, 28);
  private readonly dot = new CircleGeometry(0.34, 16);
  private readonly casing = new CircleGeometry(1.3, 28);
  private readonly brass = new MeshBasicMaterial();
  private readonly pale = new MeshBasicMaterial();
  private readonly dark = new MeshBasicMaterial();

  setLook(look: Look): void {
    this.brass.color.setStyle(look.brass);
    this.pale.color.setStyle(look.casing);
    this.dark.color.setStyle(look.lead);
  }

  set(pins: readonly Pin[], facing: Quaternion, towards: WorldVec, mmPerPx: number): void {
    this.group.clear();
    for (const pin of pins) {
      const size = mmPerPx * RING_PX * (pin.selected ? 1.35 : 1);
      const ring = new Mesh(this.ring, pin.selected ? this.dark : this.brass);
      const parts = [new Mesh(this.casing, this.pale), ring, ...(pin.seated ? [new Mesh(this.dot, this.brass)] : [])];
      parts.forEach((part, order) => {
        const lift = LIFT_MM + 0.02 * order;
        part.position.set(pin.at[0] + lift * towards[0], pin.at[1] + lift * towards[1], pin.at[2] + lift * towards[2]);
        part.quaternion.copy(facing);
        part.scale.setScalar(size);
        this.group.add(part);
      });
    }
  }

  dispose(): void {
    for (const each of [this.ring, this.dot, this.casing, this.brass, this.pale, this.dark]) each.dispose();
  }
}
