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
  private readonly brass = new MeshBasicMaterial();
  private readonly dark = new MeshBasicMaterial();

  setLook(look: Look): void {
    this.brass.color.setStyle(look.brass);
    this.dark.color.setStyle(look.lead);
  }

  set(pins: readonly Pin[], facing: Quaternion, towards: WorldVec, mmPerPx: number): void {
    this.group.clear();
    for (const pin of pins) {
      const size = mmPerPx * RING_PX * (pin.selected ? 1.35 : 1);
      const ring = new Mesh(this.ring, pin.selected ? this.dark : this.brass);
      const parts = pin.seated ? [ring, new Mesh(this.dot, this.brass)] : [ring];
      for (const part of parts) {
        part.position.set(pin.at[0] + LIFT_MM * towards[0], pin.at[1] + LIFT_MM * towards[1], pin.at[2] + LIFT_MM * towards[2]);
        part.quaternion.copy(facing);
        part.scale.setScalar(size);
        this.group.add(part);
      }
    }
  }

  dispose(): void {
    for (const each of [this.ring, this.dot, this.brass, this.dark]) each.dispose();
  }
}
