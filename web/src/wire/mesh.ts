/** The cast as the server sends it once. */
export interface CastMesh {
  /** x, y, z of each vertex [mm, scan frame]; stride 3. */
  readonly positions: Float32Array<ArrayBuffer>;
  /** Three vertex numbers a triangle, counter-clockwise from outside; stride 3. */
  readonly corners: Uint32Array<ArrayBuffer>;
  /** 1 for each triangle of the plaster base, 0 for the anatomic surface. */
  readonly base: Uint8Array<ArrayBuffer>;
}

const MAGIC = 0x314d5752; // "RWM1", little-endian
const HEAD_BYTES = 16;

/** A number that tells casts apart: the same surface, opened again, has the same one (FNV-1a over positions and corners). */
export function fingerprint({ positions, corners }: CastMesh): string {
  let hash = 0x811c9dc5;
  for (const words of [new Uint32Array(positions.buffer, positions.byteOffset, positions.length), corners]) {
    for (const word of words) hash = Math.imul(hash ^ word, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}

/** Reads the binary mesh of docs/protocol.md; throws when it is not one, with the place and both sizes. */
export function decodeMesh(bytes: ArrayBuffer): CastMesh {
  if (bytes.byteLength < HEAD_BYTES) {
    throw new RangeError(`mesh: ${bytes.byteLength} bytes, shorter than its ${HEAD_BYTES}-byte head`);
  }
  const head = new DataView(bytes);
  if (head.getUint32(0, true) !== MAGIC) {
    throw new RangeError(`mesh: starts with 0x${head.getUint32(0, true).toString(16)}, not with RWM1`);
  }
  const vertices = head.getUint32(4, true);
  const triangles = head.getUint32(8, true);
  const wanted = HEAD_BYTES + 12 * vertices + 13 * triangles;
  if (bytes.byteLength !== wanted) {
    throw new RangeError(`mesh: ${bytes.byteLength} bytes, but ${vertices} vertices and ${triangles} triangles need ${wanted}`);
  }
  const cornersAt = HEAD_BYTES + 12 * vertices;
  const corners = new Uint32Array(bytes, cornersAt, 3 * triangles);
  for (let i = 0; i < corners.length; i++) {
    if (corners[i]! >= vertices) throw new RangeError(`mesh: corner ${i} names vertex ${corners[i]!} of ${vertices}`);
  }
  return {
    positions: new Float32Array(bytes, HEAD_BYTES, 3 * vertices),
    corners,
    base: new Uint8Array(bytes, cornersAt + 12 * triangles, triangles),
  };
}
