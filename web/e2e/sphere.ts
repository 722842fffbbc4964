/** Radius of the test sphere [mm]: as wide as an arch, so that its unit is not guessed to be another. */
export const RADIUS_MM = 24;

/** A sphere as a binary STL; edges about 0.35 mm, so its facets lie within edge²/(8 R) = 0.7 µm of it. */
export function sphereStl(): Buffer {
  const rows = 216;
  const around = 432;
  const at = (i: number, j: number): [number, number, number] => {
    const lat = (Math.PI * i) / rows - Math.PI / 2;
    const lon = (2 * Math.PI * (j % around)) / around;
    return [RADIUS_MM * Math.cos(lat) * Math.cos(lon), RADIUS_MM * Math.cos(lat) * Math.sin(lon), RADIUS_MM * Math.sin(lat)];
  };
  const pole = (up: boolean): [number, number, number] => [0, 0, up ? RADIUS_MM : -RADIUS_MM];
  const triangles: [number, number, number][][] = [];
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < around; j++) {
      const low = i === 0 ? pole(false) : at(i, j);
      const high = i === rows - 1 ? pole(true) : at(i + 1, j + 1);
      if (i > 0) triangles.push([low, at(i, j + 1), high]);
      if (i < rows - 1) triangles.push([low, at(i + 1, j + 1), at(i + 1, j)]);
    }
  }
  const bytes = Buffer.alloc(84 + 50 * triangles.length);
  bytes.writeUInt32LE(triangles.length, 80);
  triangles.forEach((corners, t) => corners.flat().forEach((v, k) => bytes.writeFloatLE(v, 84 + 50 * t + 12 + 4 * k)));
  return bytes;
}
