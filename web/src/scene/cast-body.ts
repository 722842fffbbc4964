import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Group, Mesh, Ray, Vector3 } from "three";
import { MeshBVH } from "three-mesh-bvh";
import { scan, type ScanVec } from "../values/vec";
import type { CastMesh } from "../wire/mesh";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Spot } from "../wire/types";
import type { BandMaterial } from "./band-material";
import { coarseIndex } from "./coarse-index";

const COARSE_TRIANGLES = 40_000;

/** Which triangles are drawn: all of them, fewer over the same vertices, or the thinned cast's own. */
export type Grain = "whole" | "coarse" | "thinned";

/** The cast as drawn: its geometries are made once; a survey only replaces the depth and flag of each vertex. */
export class CastBody {
  readonly mesh: Mesh<BufferGeometry, BandMaterial>;
  /** The same with fewer triangles, made when first asked for. */
  private coarse: Mesh<BufferGeometry, BandMaterial> | null = null;
  private thinned: Mesh<BufferGeometry, BandMaterial> | null = null;
  readonly group = new Group();
  private readonly depth: BufferAttribute;
  private readonly flags: BufferAttribute;
  private readonly tree: MeshBVH;

  constructor(
    private readonly cast: CastMesh,
    material: BandMaterial,
  ) {
    const geometry = surveyed(cast);
    this.depth = geometry.getAttribute("depth") as BufferAttribute;
    this.flags = geometry.getAttribute("flags") as BufferAttribute;
    // Indirect: triangles keep their numbers, for a spot names its triangle to the server.
    this.tree = new MeshBVH(geometry, { indirect: true });
    geometry.boundsTree = this.tree;
    this.mesh = new Mesh(geometry, material);
    this.mesh.frustumCulled = false;
    this.group.matrixAutoUpdate = false;
    this.group.add(this.mesh);
  }

  /** The thinned cast has come. */
  setThinned(cast: CastMesh): void {
    this.thinned = new Mesh(surveyed(cast), this.mesh.material);
    this.thinned.frustumCulled = false;
    this.thinned.visible = false;
    this.group.add(this.thinned);
  }

  draw(grain: Grain): void {
    if (grain === "coarse" && !this.coarse) {
      const fewer = new BufferGeometry();
      for (const [name, attribute] of Object.entries(this.mesh.geometry.attributes)) fewer.setAttribute(name, attribute);
      fewer.setIndex(new BufferAttribute(coarseIndex(this.cast.positions, this.cast.corners, COARSE_TRIANGLES), 1));
      this.coarse = new Mesh(fewer, this.mesh.material);
      this.coarse.frustumCulled = false;
      this.group.add(this.coarse);
    }
    this.mesh.visible = grain === "whole";
    if (this.coarse) this.coarse.visible = grain === "coarse";
    if (this.thinned) this.thinned.visible = grain === "thinned";
  }

  /** One buffer write each; no geometry is rebuilt. */
  setSurvey(survey: SurveyFrame): void {
    if (!survey.head.exact) {
      if (this.thinned) fill(this.thinned.geometry.getAttribute("depth") as BufferAttribute, survey.depth);
      return;
    }
    fill(this.depth, survey.depth);
    fill(this.flags, survey.flags);
  }

  /** Room over each vertex [mm], NaN where it is not known; null: none is known. The thinned cast has none. */
  setRoom(room: Float32Array | null): void {
    const { geometry } = this.mesh;
    const known = geometry.getAttribute("roomKnown") as BufferAttribute;
    fill(known, room ? Uint8Array.from(room, (mm) => (Number.isNaN(mm) ? 0 : 1)) : new Uint8Array(known.count));
    if (room) fill(geometry.getAttribute("room") as BufferAttribute, room.map((mm) => (Number.isNaN(mm) ? 0 : mm)));
  }

  /** The first place of the cast on a ray (scan frame). */
  hit(origin: ScanVec, direction: ScanVec): Spot | null {
    const found = this.tree.raycastFirst(new Ray(new Vector3(...origin), new Vector3(...direction)), 2);
    if (!found || found.faceIndex == null) return null;
    return { point: scan(found.point.x, found.point.y, found.point.z), triangle: found.faceIndex };
  }

  /** The place of the cast nearest to a point (scan frame). */
  nearest(point: ScanVec): Spot {
    const found = this.tree.closestPointToPoint(new Vector3(...point));
    if (!found) throw new RangeError("an empty cast has no nearest place");
    return { point: scan(found.point.x, found.point.y, found.point.z), triangle: found.faceIndex };
  }

  /** Outward direction of a triangle, from its winding (scan frame, not scaled): which side the rod stands on. */
  outward(triangle: number): ScanVec {
    const { corners, positions } = this.cast;
    const at = (k: number): Vector3 => new Vector3().fromArray(positions, 3 * corners[3 * triangle + k]!);
    const a = at(0);
    const n = at(1).sub(a).cross(at(2).sub(a));
    return scan(n.x, n.y, n.z);
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.coarse?.geometry.dispose();
    this.thinned?.geometry.dispose();
  }
}

/** A cast's geometry with room for a survey of it. */
function surveyed(cast: CastMesh): BufferGeometry {
  const vertices = cast.positions.length / 3;
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(cast.positions, 3));
  geometry.setIndex(new BufferAttribute(cast.corners, 1));
  geometry.computeVertexNormals(); // for shading alone
  geometry.setAttribute("depth", new BufferAttribute(new Float32Array(vertices), 1).setUsage(DynamicDrawUsage));
  geometry.setAttribute("flags", new BufferAttribute(new Uint8Array(vertices), 1).setUsage(DynamicDrawUsage));
  geometry.setAttribute("room", new BufferAttribute(new Float32Array(vertices), 1));
  geometry.setAttribute("roomKnown", new BufferAttribute(new Uint8Array(vertices), 1));
  geometry.setAttribute("base", new BufferAttribute(baseVertices(cast), 1));
  return geometry;
}

function fill(attribute: BufferAttribute, values: Float32Array | Uint8Array): void {
  if (values.length !== attribute.count) throw new RangeError(`a survey of ${values.length} vertices for a cast of ${attribute.count}`);
  (attribute.array as Float32Array | Uint8Array).set(values);
  attribute.needsUpdate = true;
}

/** 1 for the vertices that only base triangles use: the plain base ends within one row of triangles. */
function baseVertices({ positions, corners, base }: CastMesh): Uint8Array {
  const mark = new Uint8Array(positions.length / 3).fill(1);
  for (let t = 0; t < base.length; t++) {
    if (base[t]) continue;
    for (let k = 0; k < 3; k++) mark[corners[3 * t + k]!] = 0;
  }
  return mark;
}
