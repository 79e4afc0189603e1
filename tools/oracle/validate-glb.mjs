// Checks a GLB file against the glTF 2.0 specification with the format owner's validator.
// usage: node validate-glb.mjs FILE.glb   prints one JSON object: counts by severity, and every message.
import { readFileSync } from 'node:fs';
import validator from 'gltf-validator';

const path = process.argv[2];
const report = await validator.validateBytes(new Uint8Array(readFileSync(path)), { maxIssues: 0 });
const { numErrors, numWarnings, numInfos, numHints, messages } = report.issues;
console.log(JSON.stringify({
  errors: numErrors, warnings: numWarnings, infos: numInfos, hints: numHints,
  messages: messages.map(m => `${m.code} at ${m.pointer ?? m.offset}: ${m.message}`),
  meshes: report.info.resources?.length ?? 0, drawCalls: report.info.drawCallCount,
  triangles: report.info.totalTriangleCount, vertices: report.info.totalVertexCount,
  extensions: report.info.extensionsUsed ?? [],
}));
