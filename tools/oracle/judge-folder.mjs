// Holds a folder written by "make" against its own report, with judges that this project did not write.
// usage: node judge-folder.mjs FOLDER   prints a line a file; ends with 1 where anything is wrong.
// Each part's STL: closed, one body, volume within 1e-4 and genus as report.json says (manifold-3d); nothing to repair
// and nothing split (admesh). Each GLB: no error and no warning (gltf-validator). The sheet: sound (qpdf), its words there
// (pdftotext). The outlines: read at true scale (dxf-parser).
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

// STL holds singles, the report the doubles behind them, rounded to a millionth.
const volumeTolerance = 1e-4;

const here = dirname(fileURLToPath(import.meta.url));
const folder = process.argv[2];
if (!folder) {
  console.error('usage: node judge-folder.mjs FOLDER');
  process.exit(2);
}

const ask = (script, ...files) => JSON.parse(execFileSync(process.execPath, [join(here, script), ...files.map(String)], { encoding: 'utf8' }));

// admesh's table has a line a count: "Degenerate facets : 0".
function admesh(file) {
  const answer = execFileSync('admesh', [file], { encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } });
  return label => {
    const found = new RegExp(`${label}\\s*:\\s*(-?[0-9.eE+]+)`).exec(answer);
    if (!found) throw new Error(`admesh says nothing about '${label}':\n${answer}`);
    return Number(found[1]);
  };
}

let isSound = true;
function say(name, faults, facts) {
  isSound &&= faults.length === 0;
  console.log(`${faults.length === 0 ? 'good' : 'BAD '} ${name}: ${[...faults, facts].join('; ')}`);
}

const report = JSON.parse(readFileSync(join(folder, 'report.json'), 'utf8'));
if (!(report.parts?.length > 0)) throw new Error('report.json names no parts');

const verdicts = ask('oracle.mjs', ...report.parts.map(part => join(folder, part.file)));
report.parts.forEach((part, i) => {
  const found = verdicts[i];
  const faults = [];
  const expect = (is, text) => is || faults.push(text);
  expect(found.status === 'NoError', `no closed solid: ${found.status}`);
  expect(Math.abs(found.volume - part.volume_mm3) <= volumeTolerance * part.volume_mm3, `volume ${found.volume}, reported ${part.volume_mm3}`);
  expect(found.genus === part.genus, `genus ${found.genus}, reported ${part.genus}`);
  expect(found.triangles === part.triangles, `${found.triangles} triangles, reported ${part.triangles}`);
  expect(found.bodies === 1, `${found.bodies} bodies`);
  const count = admesh(join(folder, part.file));
  expect(count('Number of parts') === 1, `admesh: ${count('Number of parts')} parts`);
  for (const label of ['Total disconnected facets', 'Degenerate facets', 'Facets removed', 'Facets added', 'Facets reversed', 'Backwards edges']) {
    expect(count(label) === 0, `admesh: ${label.toLowerCase()} ${count(label)}`);
  }

  say(part.file, faults, `${found.volume.toFixed(3)} mm3, genus ${found.genus}, ${found.triangles} triangles`);
});

for (const name of ['piece.glb', 'piece-flat.glb']) {
  const found = ask('validate-glb.mjs', join(folder, name));
  const faults = found.errors + found.warnings > 0 ? [`${found.errors} errors, ${found.warnings} warnings`, ...found.messages.slice(0, 5)] : [];
  say(name, faults, `${found.triangles} triangles, ${found.infos} remarks`);
}

// The sheet: qpdf finds it sound, poppler reads the piece's name and its laid-flat length on it; each page is an SVG too.
{
  const path = join(folder, 'sheet.pdf');
  const faults = [];
  const verdict = execFileSync('qpdf', ['--check', path], { encoding: 'utf8' });
  if (!verdict.includes('No syntax or stream encoding errors found')) faults.push('qpdf: ' + verdict.trim());
  const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  for (const said of [report.brief.name, `${report.layout.laid_flat_mm.toFixed(2)} laid flat`, 'Cautions']) {
    if (!text.includes(said)) faults.push(`pdftotext does not find '${said}'`);
  }
  const pages = text.split('\f').length - 1;
  for (let page = 1; page <= pages; page++) {
    if (!existsSync(join(folder, `sheet-${page}.svg`))) faults.push(`sheet-${page}.svg is missing`);
  }
  say('sheet.pdf', faults, `${pages} pages`);
}

// The outlines: true scale, so the top view's stone is as wide as the brief says.
{
  const found = ask('read-dxf.mjs', join(folder, 'outlines.dxf'));
  const faults = found.version === 'AC1009' ? [] : [`version ${found.version}`];
  const stone = found.layers.find(layer => layer.name === 'TOP_STONE');
  const width = stone ? stone.high - stone.low : 0;
  if (Math.abs(width - report.brief.stone.diameter_mm) > 0.03) faults.push(`the stone is ${width} wide`);
  say('outlines.dxf', faults, `${found.entities} lines on ${found.layers.length} layers`);
}

// The plates: every pattern closed, inside the printer's plate, apart from its neighbours.
const { plate_x_mm, plate_y_mm, plate_z_mm } = report.brief.process;
for (const plate of report.casting?.plates ?? []) {
  const found = ask('plate.mjs', join(folder, plate.file), plate_x_mm, plate_y_mm, plate_z_mm);
  const faults = [];
  if (found.status !== 'NoError') faults.push(`no closed solid: ${found.status}`);
  if (!found.apart) faults.push(`parts overlap: ${found.volume} mm3 in all, ${found.union} united`);
  if (!found.inside) faults.push(`outside the plate: ${found.low} to ${found.high}`);
  if (found.parts !== plate.patterns || found.bodies !== plate.patterns) faults.push(`${found.parts} parts in ${found.bodies} bodies, reported ${plate.patterns}`);
  say(plate.file, faults, `${found.parts} patterns, ${found.volume.toFixed(1)} mm3`);
}

process.exitCode = isSound ? 0 : 1;
