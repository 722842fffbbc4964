import { BufferAttribute, BufferGeometry, Color, DoubleSide, Group, Mesh, ShaderMaterial } from "three";
import type { Look } from "../values/look";
import { type ArmLine, sweptArm } from "./swept-arm";

const VERTEX = /* glsl */ `
attribute float springs;
varying vec3 facing;
varying float spring;
void main() {
  facing = normalize(mat3(modelViewMatrix) * normal);
  spring = springs;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;

// Polished metal under the same window as the plaster; the part that springs in brass.
const FRAGMENT = /* glsl */ `
uniform vec3 metal, brass, lead;
varying vec3 facing;
varying float spring;
void main() {
  vec3 n = normalize(facing);
  if (n.z < 0.0) n = -n;
  float key = max(dot(n, normalize(vec3(-0.45, 0.6, 0.66))), 0.0);
  vec3 colour = mix(metal, brass, step(0.5, spring));
  colour *= 0.62 + 0.5 * key;
  colour += 0.28 * pow(key, 14.0);
  colour = mix(colour, lead, 0.8 * pow(1.0 - n.z, 2.5));
  gl_FragColor = vec4(colour, 1.0);
}`;

/** The arms of the clasp looked at, as solid as they would be made. */
export class ArmFigures {
  readonly group = new Group();
  private drawn: Mesh[] = [];
  private readonly material = new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: DoubleSide,
    uniforms: { metal: { value: new Color() }, brass: { value: new Color() }, lead: { value: new Color() } },
  });

  constructor() {
    this.group.matrixAutoUpdate = false;
  }

  setLook(look: Look): void {
    for (const name of ["metal", "brass", "lead"] as const) (this.material.uniforms[name]!.value as Color).setStyle(look[name]);
  }

  set(arms: readonly ArmLine[]): void {
    this.clear();
    for (const arm of arms) {
      const { positions, normals, springs, index } = sweptArm(arm);
      if (index.length === 0) continue;
      const geometry = new BufferGeometry();
      geometry.setAttribute("position", new BufferAttribute(positions, 3));
      geometry.setAttribute("normal", new BufferAttribute(normals, 3));
      geometry.setAttribute("springs", new BufferAttribute(springs, 1));
      geometry.setIndex(new BufferAttribute(index, 1));
      const mesh = new Mesh(geometry, this.material);
      mesh.frustumCulled = false;
      this.group.add(mesh);
      this.drawn.push(mesh);
    }
  }

  dispose(): void {
    this.clear();
    this.material.dispose();
  }

  private clear(): void {
    for (const { geometry } of this.drawn) geometry.dispose();
    this.drawn = [];
    this.group.clear();
  }
}
