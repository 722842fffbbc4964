import { Color, DoubleSide, ShaderMaterial, Vector2, Vector4 } from "three";
import { ROOM_BANDS } from "../values/room";
import { type Band, HATCH_LINE_PX, HATCH_STEP_PX, type Look } from "../values/look";

const VERTEX = /* glsl */ `
attribute float depth;
attribute float flags;
attribute float base;
attribute float room;
attribute float roomKnown;
varying float vRoom;
varying float vRoomKnown;
varying float vDepth;
flat varying float vFlags;
varying float vBase;
varying vec3 vNormal;
void main() {
  vDepth = depth;
  vFlags = flags;
  vBase = base;
  vRoom = room;
  vRoomKnown = roomKnown;
  vNormal = normalMatrix * normal;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;

// The band is chosen from the depth interpolated over the triangle, so its edge lies where the depth passes the gauge, to the
// pixel, and not where the vertices happen to lie.
const FRAGMENT = /* glsl */ `
uniform vec4 edges;          // shallowest depth of each band [mm]
uniform vec3 fill1, fill2, fill3, fill4, line2, line3, line4;
uniform float showRoom;      // 1: the room to the opposing teeth instead of the undercut
uniform vec4 roomEdges;      // most room of each band, least first [mm]
uniform vec3 room1, room2, room3, room4, roomLine1, roomLine2, roomLine3;
varying float vRoom;
varying float vRoomKnown;
uniform vec3 plaster, baseColour, inside, lead, paper;
uniform vec2 anchor;         // the screen place that the hatching is fixed to [device px]
uniform float scale;         // device px per CSS px
uniform float shown;         // 0 until the first survey
varying float vDepth;
flat varying float vFlags;
varying float vBase;
varying vec3 vNormal;

float stripe(float along, float step, float width) {
  float off = abs(fract(along / step) - 0.5) * step;
  return 1.0 - smoothstep(0.5 * width - 0.5, 0.5 * width + 0.5, off);
}
float past(float edge) {
  return clamp((vDepth - edge) / max(fwidth(vDepth), 1e-5) + 0.5, 0.0, 1.0);
}
float within(float edge) {
  return clamp((edge - vRoom) / max(fwidth(vRoom), 1e-5) + 0.5, 0.0, 1.0);
}
void main() {
  vec3 n = normalize(vNormal) * (gl_FrontFacing ? 1.0 : -1.0);
  vec2 at = (gl_FragCoord.xy - anchor) / scale;
  const float R = 0.70710678;
  float rising = stripe((at.x - at.y) * R, ${HATCH_STEP_PX.toFixed(1)}, ${HATCH_LINE_PX.toFixed(2)});
  float falling = stripe((at.x + at.y) * R, ${HATCH_STEP_PX.toFixed(1)}, ${HATCH_LINE_PX.toFixed(2)});

  int flags = int(vFlags + 0.5);
  float capped = float(flags & 1);
  float narrow = float((flags >> 2) & 1);
  float unsure = float((flags >> 1) & 1);
  float isBase = step(0.5, vBase);
  float anatomic = shown * (1.0 - isBase);
  vec3 colour = plaster;
  float banded = past(edges.x) * anatomic;
  colour = mix(colour, fill1, banded);
  colour = mix(colour, mix(fill2, line2, rising), past(edges.y) * anatomic);
  colour = mix(colour, mix(fill3, line3, falling), past(edges.z) * anatomic);
  colour = mix(colour, mix(fill4, line4, max(rising, falling)), past(edges.w) * anatomic);

  // No gauge reaches: a fine lead stipple. Deeper than can be told: dots of paper. Unsure: the band shows only through slits. All are cues beside the colour.
  vec2 grain = fract((at + vec2(0.0, floor(at.x / 5.0) * 2.5)) / 5.0) - 0.5;
  float stipple = 1.0 - smoothstep(0.7, 1.3, length(grain) * 5.0);
  colour = mix(colour, lead, 0.75 * stipple * narrow * banded);
  vec2 cell = fract(at / 8.0) - 0.5;
  float dots = 1.0 - smoothstep(1.3, 2.1, length(cell) * 8.0);
  colour = mix(colour, paper, 0.85 * dots * capped * anatomic);
  float slits = 1.0 - stripe(at.y, 7.0, 3.2);
  colour = mix(colour, paper, 0.85 * (1.0 - slits) * unsure * banded);

  // Room: the darker the less; where it is not known, sparse dots of lead.
  float roomed = step(0.999, vRoomKnown) * showRoom * (1.0 - isBase);
  if (showRoom > 0.5) {
    colour = plaster;
    banded = within(roomEdges.w) * roomed;
    colour = mix(colour, room4, banded);
    colour = mix(colour, mix(room3, roomLine3, rising), within(roomEdges.z) * roomed);
    colour = mix(colour, mix(room2, roomLine2, falling), within(roomEdges.y) * roomed);
    colour = mix(colour, mix(room1, roomLine1, max(rising, falling)), within(roomEdges.x) * roomed);
    colour = mix(colour, lead, 0.35 * (1.0 - smoothstep(0.6, 1.2, length(cell) * 8.0)) * (1.0 - roomed));
  }

  colour = mix(colour, baseColour, isBase);
  if (!gl_FrontFacing) colour = inside;

  // Plaster under a window from the upper left; bands are shaded less, so that their colours can be told from the legend.
  float key = max(dot(n, normalize(vec3(-0.45, 0.6, 0.66))), 0.0);
  float shade = 0.66 + 0.28 * key + 0.08 * n.z;
  float rim = pow(1.0 - abs(n.z), 3.0);
  colour *= mix(shade, 0.78 + 0.24 * shade, banded);
  colour = mix(colour, lead, (0.34 - 0.22 * banded) * rim);
  gl_FragColor = vec4(colour, 1.0);
}`;

/** The cast's material: plaster, undercut bands with crisp edges at the gauges, hatching fixed on the screen. */
export class BandMaterial extends ShaderMaterial {
  constructor() {
    const colour = (): { value: Color } => ({ value: new Color() });
    super({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      side: DoubleSide,
      uniforms: {
        edges: { value: new Vector4() },
        fill1: colour(),
        fill2: colour(),
        fill3: colour(),
        fill4: colour(),
        line2: colour(),
        line3: colour(),
        line4: colour(),
        plaster: colour(),
        baseColour: colour(),
        inside: colour(),
        lead: colour(),
        paper: colour(),
        anchor: { value: new Vector2() },
        scale: { value: 1 },
        shown: { value: 0 },
        showRoom: { value: 0 },
        roomEdges: { value: new Vector4(...(ROOM_BANDS.map(({ belowMm }) => belowMm) as [number, number, number, number])) },
        room1: { value: new Color(ROOM_BANDS[0]!.fill) },
        room2: { value: new Color(ROOM_BANDS[1]!.fill) },
        room3: { value: new Color(ROOM_BANDS[2]!.fill) },
        room4: { value: new Color(ROOM_BANDS[3]!.fill) },
        roomLine1: { value: new Color(ROOM_BANDS[0]!.line) },
        roomLine2: { value: new Color(ROOM_BANDS[1]!.line) },
        roomLine3: { value: new Color(ROOM_BANDS[2]!.line) },
      },
    });
  }

  setLook(look: Look): void {
    this.paint({
      plaster: look.plaster,
      baseColour: look.base,
      inside: look.inside,
      lead: look.lead,
      paper: look.name === "light" ? look.paper : look.plaster,
    });
  }

  setBands(all: readonly Band[]): void {
    const [b1, b2, b3, b4] = all;
    if (!b1 || !b2 || !b3 || !b4) throw new RangeError(`four bands are drawn, got ${all.length}`);
    this.paint({ fill1: b1.fill, fill2: b2.fill, fill3: b3.fill, fill4: b4.fill, line2: b2.line, line3: b3.line, line4: b4.line });
    (this.uniforms["edges"]!.value as Vector4).set(b1.fromMm, b2.fromMm, b3.fromMm, b4.fromMm);
  }

  setScreen(anchorX: number, anchorY: number, scale: number): void {
    (this.uniforms["anchor"]!.value as Vector2).set(anchorX, anchorY);
    this.uniforms["scale"]!.value = scale;
  }

  setShown(shown: boolean): void {
    this.uniforms["shown"]!.value = shown ? 1 : 0;
  }

  setShowRoom(show: boolean): void {
    this.uniforms["showRoom"]!.value = show ? 1 : 0;
  }

  private paint(colours: Record<string, string>): void {
    for (const [name, css] of Object.entries(colours)) (this.uniforms[name]!.value as Color).setStyle(css);
  }
}
