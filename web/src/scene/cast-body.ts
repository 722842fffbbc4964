import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Group, Mesh, Ray, Vector3 } from "three";
import { MeshBVH } from "three-mesh-bvh";
import { scan, type ScanVec } from "../values/vec";
import type { CastMesh } from "../wire/mesh";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Spot } from "../wire/types";
import type { BandMaterial } from "./band-material";
import { coarseIndex } from "./coarse-index";

const COARSE_TRIANGLES = 40_000;

/** The cast as drawn: one geometry made once; a survey only replaces the depth and flag of each vertex. */
export class CastBody {
  readonly mesh: Mesh<BufferGeometry, BandMaterial>;
  /** The same with fewer triangles, made when first asked for. */
  private coarse: Mesh<BufferGeometry, BandMaterial> | null = null;
  readonly group = new Group();
  private readonly depth: BufferAttribute;
  private readonly flags: BufferAttribute;
  private readonly tree: MeshBVH;

  constructor(
    private readonly cast: CastMesh,
    material: BandMaterial,
  ) {
    const vertices = cast.positions.length / 3;
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(cast.positions, 3));
    geometry.setIndex(new BufferAttribute(cast.corners, 1));
    geometry.computeVertexNormals(); // for shading alone
    this.depth = new BufferAttribute(new Float32Array(vertices), 1).setUsage(DynamicDrawUsage);
    this.flags = new BufferAttribute(new Uint8Array(vertices), 1).setUsage(DynamicDrawUsage);
    geometry.setAttribute("depth", this.depth);
    geometry.setAttribute("flags", this.flags);
    geometry.setAttribute("base", new BufferAttribute(baseVertices(cast), 1));
    // Indirect: triangles keep their numbers, for a spot names its triangle to the server.
    this.tree = new MeshBVH(geometry, { indirect: true });
    geometry.boundsTree = this.tree;
    this.mesh = new Mesh(geometry, material);
    this.mesh.frustumCulled = false;
    this.group.matrixAutoUpdate = false;
    this.group.add(this.mesh);
  }

  /** Which of the two is drawn: all triangles, or fewer while something moves. */
  setCoarse(coarse: boolean): void {
    if (coarse && !this.coarse) {
      const fewer = new BufferGeometry();
      for (const [name, attribute] of Object.entries(this.mesh.geometry.attributes)) fewer.setAttribute(name, attribute);
      fewer.setIndex(new BufferAttribute(coarseIndex(this.cast.positions, this.cast.corners, COARSE_TRIANGLES), 1));
      this.coarse = new Mesh(fewer, this.mesh.material);
      this.coarse.frustumCulled = false;
      this.group.add(this.coarse);
    }
    this.mesh.visible = !coarse;
    if (this.coarse) this.coarse.visible = coarse;
  }

  /** One buffer write each; no geometry is rebuilt. */
  setSurvey(survey: SurveyFrame): void {
    if (survey.depth.length !== this.depth.count) {
      throw new RangeError(`a survey of ${survey.depth.length} vertices for a cast of ${this.depth.count}`);
    }
    (this.depth.array as Float32Array).set(survey.depth);
    (this.flags.array as Uint8Array).set(survey.flags);
    this.depth.needsUpdate = true;
    this.flags.needsUpdate = true;
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
  }
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
