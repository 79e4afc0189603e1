// Judges binary STL files with an independent solid kernel: is each one a closed manifold, and how large?
// usage: node oracle.mjs FILE.stl ...   prints one JSON array, an entry per file in order.
// Units are the file's own (mm): volume mm3, area mm2. status is "NoError" for a closed, oriented 2-manifold;
// "NotBinaryStl" where the file's length does not fit its count. Corners join only when bit for bit equal.
import { readFileSync } from 'node:fs';
import Module from 'manifold-3d';

const kernel = await Module();
kernel.setup();

function readStl(path) {
  const bytes = readFileSync(path);
  if (bytes.length < 84 || bytes.length !== 84 + 50 * bytes.readUInt32LE(80)) return null;
  const count = bytes.readUInt32LE(80);
  const seen = new Map();
  const positions = [];
  const corners = new Uint32Array(count * 3);
  for (let i = 0; i < corners.length; i++) {
    const at = 84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3);
    // Adding zero joins -0 and +0.
    const point = [0, 4, 8].map(step => bytes.readFloatLE(at + step) + 0);
    const key = point.join(' ');
    let index = seen.get(key);
    if (index === undefined) {
      index = seen.size;
      seen.set(key, index);
      positions.push(...point);
    }
    corners[i] = index;
  }
  return { positions: Float32Array.from(positions), corners };
}

function judge(path) {
  const soup = readStl(path);
  if (!soup) return { file: path, status: 'NotBinaryStl', volume: 0, area: 0, genus: 0, triangles: 0, bodies: 0 };
  const triangles = soup.corners.length / 3;
  let solid;
  try {
    solid = new kernel.Manifold(new kernel.Mesh({ numProp: 3, vertProperties: soup.positions, triVerts: soup.corners }));
  } catch (fault) {
    return { file: path, status: fault.code ?? fault.message ?? String(fault), volume: 0, area: 0, genus: 0, triangles, bodies: 0 };
  }
  const parts = solid.decompose();
  const verdict = {
    file: path, status: solid.status(), volume: solid.volume(), area: solid.surfaceArea(), genus: solid.genus(),
    triangles, bodies: parts.length,
  };
  parts.forEach(part => part.delete());
  solid.delete();
  return verdict;
}

console.log(JSON.stringify(process.argv.slice(2).map(judge)));
