// Hidden vertices and closest points with three-mesh-bvh, reading with three. One core.
// Usage: node three.mjs FOLDER REPEATS
import fs from 'node:fs'
import { BufferAttribute, BufferGeometry, DoubleSide, Ray, REVISION, Vector3 } from 'three'
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js'
import { mergeVertices } from 'three/examples/jsm/utils/BufferGeometryUtils.js'
import { MeshBVH, SAH } from 'three-mesh-bvh'

const [folder, repeats] = process.argv.slice(2)
const bvhPackage = JSON.parse(fs.readFileSync(new URL('./node_modules/three-mesh-bvh/package.json', import.meta.url)))
const who = `three-mesh-bvh ${bvhPackage.version}`

function bytesOf(name) {
  const b = fs.readFileSync(`${folder}/${name}`)
  return b.buffer.slice(b.byteOffset, b.byteOffset + b.byteLength)
}

const size = fs.readFileSync(`${folder}/size.txt`, 'utf8')
const file = bytesOf('mesh.bin')
const [vertices, triangles] = new Uint32Array(file, 0, 2)
const xyz = new Float32Array(file, 8, 3 * vertices)
const corners = new Uint32Array(file, 8 + 12 * vertices, 3 * triangles)
const hidden = new Uint8Array(vertices)

// Building sorts the index in place, so each tree gets its own.
function geometry() {
  const made = new BufferGeometry()
  made.setAttribute('position', new BufferAttribute(xyz, 3))
  made.setIndex(new BufferAttribute(corners.slice(), 1))
  return made
}

const build = () => new MeshBVH(geometry(), { strategy: SAH })

function measure(task, size, name, times, work, note = () => '') {
  work()
  const samples = []
  for (let i = 0; i < times; i++) {
    const start = performance.now()
    work()
    samples.push((performance.now() - start).toFixed(3))
  }
  console.log(['row', task, size, name, 1, note(), samples.join(' ')].join('\t'))
}

function findHidden(tree) {
  const ray = new Ray(new Vector3(), new Vector3(0, 0, 1))
  for (let v = 0; v < vertices; v++) {
    ray.origin.set(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2])
    hidden[v] = tree.raycastFirst(ray, DoubleSide, 1e-3) ? 1 : 0
  }
}

let sum = 0
function findClosest(tree, points) {
  const at = new Vector3()
  const found = {}
  sum = 0
  for (let i = 0; i < points.length; i += 3) {
    at.set(points[i], points[i + 1], points[i + 2])
    sum += tree.closestPointToPoint(at, found).distance
  }
}

const few = Math.max(1, Math.ceil(repeats / 2))
const hiddenNote = () => `${hidden.reduce((a, b) => a + b)} hidden`
measure('tree built', size, who, few, build)
measure('hidden vertices', size, `${who}, tree and answer`, few, () => findHidden(build()), hiddenNote)
const tree = build()
measure('hidden vertices', size, `${who}, tree at hand`, few, () => findHidden(tree), hiddenNote)
fs.writeFileSync(`${folder}/hidden-three-mesh-bvh.bin`, hidden)
for (const where of ['near', 'anywhere']) {
  const points = new Float32Array(bytesOf(`${where}.bin`))
  const note = () => `mean ${((3 * sum) / points.length).toFixed(5)} mm`
  measure(`closest points ${where}`, size, who, few, () => findClosest(tree, points), note)
}

let welded
measure(
  'STL read and welded',
  '1M',
  `three r${REVISION} STLLoader, mergeVertices`,
  Math.ceil(repeats / 3),
  () => {
    const read = new STLLoader().parse(bytesOf('large.stl'))
    read.deleteAttribute('normal')
    welded = mergeVertices(read, 1e-6)
  },
  () => `${welded.attributes.position.count} vertices`,
)
