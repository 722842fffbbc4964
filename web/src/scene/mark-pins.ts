import { Group, Mesh, MeshBasicMaterial, PlaneGeometry, RingGeometry, CircleGeometry, type Quaternion } from "three";
import type { Look } from "../values/look";
import type { WorldVec } from "../values/vec";

export interface Pin {
  readonly id: string;
  readonly at: WorldVec;
  readonly selected: boolean;
  /** False when the mark is no longer where its gauge fits. */
  readonly seated: boolean;
  /** A tripod mark is crossed and ringed in lead, as on plaster. */
  readonly tripod?: boolean;
}

const RING_PX = 6;
const TRIPOD_PX = 9;
/** They lie on slopes of up to 70°: their whole ring stands before the surface. */
const TRIPOD_LIFT_MM = 4;
const LIFT_MM = 0.35;

/**
 * A person's marks: small brass rings that face the viewer at a constant size, an open ring once off its gauge; tripod marks are
 * crosses in a ring.
 */
export class MarkPins {
  readonly group = new Group();
  private readonly ring = new RingGeometry(0.68, 1, 28);
  private readonly dot = new CircleGeometry(0.34, 16);
  private readonly casing = new CircleGeometry(1.3, 28);
  private readonly halo = new RingGeometry(0.78, 1.14, 36);
  private readonly thin = new RingGeometry(0.88, 1.02, 36);
  private readonly wide = new PlaneGeometry(1.76, 0.34);
  private readonly bar = new PlaneGeometry(1.76, 0.13);
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
      const size = mmPerPx * (pin.tripod ? TRIPOD_PX : RING_PX * (pin.selected ? 1.35 : 1));
      const parts = pin.tripod ? this.crossed() : this.ringed(pin);
      parts.forEach((part, order) => {
        const lift = (pin.tripod ? TRIPOD_LIFT_MM : LIFT_MM) + 0.02 * order;
        part.position.set(pin.at[0] + lift * towards[0], pin.at[1] + lift * towards[1], pin.at[2] + lift * towards[2]);
        part.quaternion.premultiply(facing);
        part.scale.setScalar(size);
        this.group.add(part);
      });
    }
  }

  private ringed(pin: Pin): Mesh[] {
    const ring = new Mesh(this.ring, pin.selected ? this.dark : this.brass);
    return [new Mesh(this.casing, this.pale), ring, ...(pin.seated ? [new Mesh(this.dot, this.brass)] : [])];
  }

  private crossed(): Mesh[] {
    const upright = (of: PlaneGeometry, material: MeshBasicMaterial): Mesh => {
      const bar = new Mesh(of, material);
      bar.rotation.z = Math.PI / 2;
      return bar;
    };
    return [
      new Mesh(this.halo, this.pale),
      new Mesh(this.wide, this.pale),
      upright(this.wide, this.pale),
      new Mesh(this.thin, this.dark),
      new Mesh(this.bar, this.dark),
      upright(this.bar, this.dark),
    ];
  }

  dispose(): void {
    for (const each of [this.halo, this.thin, this.wide, this.bar, this.ring, this.dot, this.casing, this.brass, this.pale, this.dark]) each.dispose();
  }
}
