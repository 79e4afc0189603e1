// Reads a DXF file with the package dxf-parser and tells what it found.
// usage: node read-dxf.mjs FILE.dxf   prints JSON: version, layers with their line type, and for each layer the number of
// its lines, their length, the box round them and its lettering. Polylines that are closed run on to their first point.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';

const dxf = new DxfParser().parseSync(readFileSync(process.argv[2], 'latin1'));
const layers = Object.values(dxf.tables.layer.layers).map(layer => layer.name);
const found = layers.map(name => {
  const own = dxf.entities.filter(entity => entity.layer === name);
  let length = 0;
  const box = { left: Infinity, low: Infinity, right: -Infinity, high: -Infinity };
  const texts = own.filter(entity => entity.type === 'TEXT').map(entity => entity.text);
  for (const entity of own.filter(entity => entity.vertices)) {
    const points = entity.shape ? [...entity.vertices, entity.vertices[0]] : entity.vertices;
    points.forEach((point, i) => {
      if (i > 0) length += Math.hypot(point.x - points[i - 1].x, point.y - points[i - 1].y);
      box.left = Math.min(box.left, point.x);
      box.low = Math.min(box.low, point.y);
      box.right = Math.max(box.right, point.x);
      box.high = Math.max(box.high, point.y);
    });
  }
  if (length === 0) Object.assign(box, { left: 0, low: 0, right: 0, high: 0 });
  return { name, lines: own.length - texts.length, texts, length, ...box };
});
console.log(JSON.stringify({ version: dxf.header.$ACADVER, lineTypes: Object.keys(dxf.tables.lineType.lineTypes), entities: dxf.entities.length, layers: found }));
