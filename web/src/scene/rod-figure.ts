import { BoxGeometry, Color, CylinderGeometry, Group, Mesh, MeshBasicMaterial, ShaderMaterial, SphereGeometry } from "three";
import type { Look } from "../values/look";
import { add, times, type WorldVec } from "../values/vec";

const LIP_HEIGHT_MM = 0.35;
const SHANK_LENGTH_MM = 26;

/** What is needed to stand the rod against the cast (world frame). */
export interface RodStand {
  /** The place that is read. */
  readonly point: WorldVec;
  /** The free line at its level: the shank's near side stands there. */
  readonly free: WorldVec;
  /** Level unit direction from the cast to the rod. */
  readonly outward: WorldVec;
  /** Of the shank [mm]: the one that "no gauge reaches" is told for. */
  readonly shankRadiusMm: number;
  /** The gauge whose lip meets the place [mm]; null: the plain rod. */
  readonly gauge: number | null;
}

/** The upright rod: a brass shank, a gauge's round lip, and the thin line from the rod to the place that is read. */
export class RodFigure {
  readonly group = new Group();
  private readonly brass = brassMaterial();
  private readonly shank = new Mesh(new CylinderGeometry(1, 1, 1, 20).rotateX(Math.PI / 2), this.brass);
  private readonly lip = new Mesh(new CylinderGeometry(1, 1, LIP_HEIGHT_MM, 36).rotateX(Math.PI / 2), this.brass);
  private readonly tip = new Mesh(new SphereGeometry(1, 16, 12), this.brass);
  private readonly ink = new MeshBasicMaterial({ depthTest: false });
  /** From the place to the rod: a thin bar along x, turned to lie between them. */
  private readonly reach = new Mesh(new BoxGeometry(1, 1, 1).translate(0.5, 0, 0), this.ink);

  constructor() {
    this.reach.renderOrder = 5;
    this.group.add(this.shank, this.lip, this.tip, this.reach);
    this.group.visible = false;
  }

  setLook(look: Look): void {
    (this.brass.uniforms["brass"]!.value as Color).setStyle(look.brass);
    (this.brass.uniforms["shade"]!.value as Color).setStyle(look.brassShade);
    this.ink.color.setStyle(look.lead);
  }

  /** `mmPerPx`: the size of a screen pixel, for the dot at the place read. */
  stand(at: RodStand | null, mmPerPx: number): void {
    this.group.visible = at !== null;
    if (!at) return;
    const { point, free, outward, gauge, shankRadiusMm } = at;
    const middle = add(free, times(outward, shankRadiusMm));
    const foot = point[2] - (gauge === null ? 0.6 : LIP_HEIGHT_MM / 2);
    this.shank.scale.set(shankRadiusMm, shankRadiusMm, SHANK_LENGTH_MM);
    this.shank.position.set(middle[0], middle[1], foot + SHANK_LENGTH_MM / 2);
    this.lip.visible = gauge !== null;
    if (gauge !== null) {
      const radius = shankRadiusMm + gauge;
      this.lip.scale.set(radius, radius, 1);
      this.lip.position.set(middle[0], middle[1], point[2]);
    }
    this.tip.position.set(point[0], point[1], point[2]);
    this.tip.scale.setScalar(2.6 * mmPerPx);
    const [dx, dy] = [free[0] - point[0], free[1] - point[1]];
    const gap = Math.hypot(dx, dy);
    this.reach.visible = gap > mmPerPx;
    this.reach.position.set(point[0], point[1], point[2]);
    this.reach.rotation.z = Math.atan2(dy, dx);
    this.reach.scale.set(Math.max(gap, 1e-6), 1.6 * mmPerPx, 1.6 * mmPerPx);
  }

  dispose(): void {
    for (const part of [this.shank, this.lip, this.tip, this.reach]) part.geometry.dispose();
    this.brass.dispose();
    this.ink.dispose();
  }
}

function brassMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: { brass: { value: new Color() }, shade: { value: new Color() } },
    vertexShader: /* glsl */ `varying vec3 vN; void main() {
      vN = normalMatrix * normal; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }`,
    fragmentShader: /* glsl */ `uniform vec3 brass, shade; varying vec3 vN; void main() {
      vec3 n = normalize(vN);
      float light = max(dot(n, normalize(vec3(-0.5, 0.5, 0.7))), 0.0);
      vec3 c = mix(shade, brass, 0.35 + 0.65 * light) + 0.35 * pow(light, 14.0);
      gl_FragColor = vec4(c, 1.0); }`,
  });
}
