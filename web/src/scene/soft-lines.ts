import {
  BufferAttribute,
  Color,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  Mesh,
  ShaderMaterial,
  Vector2,
} from "three";

const VERTEX = /* glsl */ `
attribute vec3 start;
attribute vec3 end;
uniform vec2 screen;   // size of the picture [px]
uniform float reach;   // half the width with its soft edge [px]
varying vec2 at;       // along and across, from the start [px]
varying float span;    // length on the screen [px]
void main() {
  vec4 a = projectionMatrix * modelViewMatrix * vec4(start, 1.0);
  vec4 b = projectionMatrix * modelViewMatrix * vec4(end, 1.0);
  vec2 d = (b.xy - a.xy) * 0.5 * screen;
  span = length(d);
  vec2 along = span > 1e-4 ? d / span : vec2(1.0, 0.0);
  vec2 across = vec2(-along.y, along.x);
  at = vec2(mix(-reach, span + reach, position.x), reach * position.y);
  vec4 p = mix(a, b, position.x);
  p.xy = a.xy + (along * at.x + across * at.y) * 2.0 / screen;
  gl_Position = p;
}`;

// The distance to the piece itself, ends and all, so that the pieces of a curve join without gaps.
const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float opacity, core, reach;
varying vec2 at;
varying float span;
void main() {
  float off = length(vec2(max(max(-at.x, at.x - span), 0.0), at.y));
  float alpha = opacity * (1.0 - smoothstep(core, reach, off));
  if (alpha < 0.01) discard;
  gl_FragColor = vec4(colour, alpha);
}`;

export interface Stroke {
  readonly colour: string;
  readonly opacity: number;
  /** Half the width that is drawn in full, and half the width at which the soft edge ends [CSS px]. */
  readonly corePx: number;
  readonly edgePx: number;
}

/**
 * Pieces of line of constant width on the screen, with a soft edge. Two triangles a piece in one instanced draw: where WebGL
 * runs in software, three's own wide lines (six triangles a piece and a pass for each stroke) cost more than the whole cast.
 */
export class SoftLines extends Mesh<InstancedBufferGeometry, ShaderMaterial> {
  /** @param ends both ends of every piece, six numbers a piece */
  constructor(ends: Float32Array, { colour, opacity, corePx, edgePx }: Stroke) {
    const geometry = new InstancedBufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(new Float32Array([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0]), 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    const buffer = new InstancedInterleavedBuffer(ends, 6, 1);
    geometry.setAttribute("start", new InterleavedBufferAttribute(buffer, 3, 0));
    geometry.setAttribute("end", new InterleavedBufferAttribute(buffer, 3, 3));
    geometry.instanceCount = ends.length / 6;
    const material = new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      transparent: true,
      depthWrite: false,
      uniforms: {
        colour: { value: new Color(colour) },
        opacity: { value: opacity },
        core: { value: corePx },
        reach: { value: edgePx },
        screen: { value: new Vector2(1, 1) },
      },
    });
    super(geometry, material);
    this.frustumCulled = false;
  }

  /** Size of the picture [CSS px]. */
  setScreen(width: number, height: number): void {
    (this.material.uniforms["screen"]!.value as Vector2).set(width, height);
  }

  override dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
