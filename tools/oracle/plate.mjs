// Judges a printer's plate, a 3MF of components, with an independent solid kernel: is every mesh a closed manifold, does
// all of it lie inside the plate, and does no part overlap another?
// usage: node plate.mjs FILE.3mf WIDTH DEPTH HEIGHT   prints one JSON object; mm and mm3.
// apart: the union of all placed parts is as large as their sum, to a millionth; where it is smaller, some overlap.
import { readFileSync } from 'node:fs';
import { inflateRawSync } from 'node:zlib';
import Module from 'manifold-3d';

const kernel = await Module();
kernel.setup();

// The one model part of the package, by the central directory. Format: PKWARE APPNOTE.TXT 4.3.
function modelOf(bytes) {
  let end = bytes.length - 22;
  while (bytes.readUInt32LE(end) !== 0x06054b50) end--;
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    const [method, packed, nameLength] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20), bytes.readUInt16LE(at + 28)];
    const name = bytes.toString('utf8', at + 46, at + 46 + nameLength);
    if (name === '3D/3dmodel.model') {
      const local = bytes.readUInt32LE(at + 42);
      const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
      const data = bytes.subarray(start, start + packed);
      return (method === 0 ? data : inflateRawSync(data)).toString('utf8');
    }
    at += 46 + nameLength + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  throw new Error('no 3D/3dmodel.model in the package');
}

const attributes = text => Object.fromEntries([...text.matchAll(/([\w:]+)="([^"]*)"/g)].map(found => [found[1], found[2]]));
const tags = (text, name) => [...text.matchAll(new RegExp(`<${name}\\s([^>]*?)/?>`, 'g'))].map(found => attributes(found[1]));

// A 3MF transform is four rows of three; the kernel wants columns of four.
function matrix(text) {
  const m = (text ?? '1 0 0 0 1 0 0 0 1 0 0 0').split(' ').map(Number);
  return [m[0], m[1], m[2], 0, m[3], m[4], m[5], 0, m[6], m[7], m[8], 0, m[9], m[10], m[11], 1];
}

const [file, ...size] = process.argv.slice(2);
const plate = size.map(Number);
if (!file || plate.length !== 3 || plate.some(Number.isNaN)) {
  console.error('usage: node plate.mjs FILE.3mf WIDTH DEPTH HEIGHT');
  process.exit(2);
}

const model = modelOf(readFileSync(file));
const meshes = new Map();
let components = [];
for (const [, head, body] of model.matchAll(/<object\s([^>]*)>([\s\S]*?)<\/object>/g)) {
  const { id } = attributes(head);
  if (body.includes('<components')) {
    components = tags(body, 'component');
  } else {
    const positions = Float32Array.from(tags(body, 'vertex').flatMap(v => [v.x, v.y, v.z].map(Number)));
    const corners = Uint32Array.from(tags(body, 'triangle').flatMap(t => [t.v1, t.v2, t.v3].map(Number)));
    meshes.set(id, new kernel.Manifold(new kernel.Mesh({ numProp: 3, vertProperties: positions, triVerts: corners })));
  }
}

const item = matrix(tags(model, 'item')[0].transform);
const statuses = [...meshes.values()].map(mesh => mesh.status());
const placed = components.map(component => meshes.get(component.objectid).transform(matrix(component.transform)).transform(item));
const sum = placed.reduce((all, part) => all + part.volume(), 0);
const union = kernel.Manifold.union(placed);
const boxes = placed.map(part => part.boundingBox());
const low = [0, 1, 2].map(axis => Math.min(...boxes.map(box => box.min[axis])));
const high = [0, 1, 2].map(axis => Math.max(...boxes.map(box => box.max[axis])));
console.log(JSON.stringify({
  file,
  status: statuses.find(status => status !== 'NoError') ?? 'NoError',
  objects: meshes.size,
  parts: placed.length,
  bodies: union.decompose().length,
  volume: sum,
  union: union.volume(),
  apart: Math.abs(sum - union.volume()) <= 1e-6 * sum,
  inside: low.every(value => value >= -1e-3) && high.every((value, axis) => value <= plate[axis] + 1e-3),
  low,
  high,
}));
