// Draws a GLB or binary STL file to a PNG in a headless browser, with software GL where there is no GPU.
// usage: node look.mjs FILE OUT.png [--size 1600x1000] [--view front|top|side|under|iso|close]
//                                   [--az DEG --el DEG --zoom FACTOR] [--part NAME] [--at NAME] [--edges on|off]
// z is up. Azimuth 0 looks along +y (from the front), 90 along -x (from the right); elevation 90 looks down.
// --part keeps only nodes whose name starts with NAME, --at looks at the first such node and what is round it;
// the view 'close' looks at whatever comes nearest to the camera. --zoom 2 comes twice as near.
import { createServer } from 'node:http';
import { readFile, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { dirname, extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import puppeteer from 'puppeteer-core';

const here = dirname(fileURLToPath(import.meta.url));
const patience = 60_000;

// Azimuth, elevation, zoom.
const views = {
  front: [0, 8, 1], top: [0, 89.9, 1], side: [90, 8, 1], under: [20, -50, 1], iso: [35, 32, 1], close: [25, 35, 1],
};

const browsers = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const flags = [
  '--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist', '--disable-quic',
  '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--hide-scrollbars',
];

function fail(text) {
  console.error(text);
  process.exit(2);
}

function readCommand() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      size: { type: 'string', default: '1600x1000' }, view: { type: 'string', default: 'iso' },
      az: { type: 'string' }, el: { type: 'string' }, zoom: { type: 'string' }, part: { type: 'string' }, at: { type: 'string' }, edges: { type: 'string' },
    },
  });
  if (positionals.length !== 2) fail('usage: node look.mjs FILE(.glb|.stl) OUT.png [--view iso] [--az 35 --el 32 --zoom 1]');
  const [file, out] = positionals;
  const kind = extname(file).toLowerCase();
  if (!['.glb', '.stl'].includes(kind) || !existsSync(file)) fail(`${file}: expected an existing .glb or .stl file`);
  const view = views[values.view] ?? fail(`--view ${values.view}: expected one of ${Object.keys(views).join(', ')}`);
  const [width, height] = values.size.split('x').map(Number);
  if (!(width > 15 && height > 15)) fail(`--size ${values.size}: expected WIDTHxHEIGHT in pixels`);
  const number = (text, otherwise) => text === undefined ? otherwise : Number.isFinite(+text) ? +text : fail(`${text}: expected a number`);
  return {
    file, out, width, height,
    scene: {
      kind: kind.slice(1), part: values.part ?? null, at: values.at ?? null, close: values.view === 'close', edges: (values.edges ?? (kind === '.stl' ? 'on' : 'off')) === 'on',
      azimuthDeg: number(values.az, view[0]), elevationDeg: number(values.el, view[1]), zoom: number(values.zoom, view[2]),
    },
  };
}

// Serve the page, three.js and the one file to the browser, on the loopback only.
function serve(file) {
  const types = { '.html': 'text/html', '.js': 'text/javascript', '.mjs': 'text/javascript' };
  const server = createServer(async (request, response) => {
    const path = normalize(new URL(request.url, 'http://localhost').pathname);
    const from = path === '/model' ? file
      : path.startsWith('/three/') ? join(here, 'node_modules', path)
      : join(here, path === '/' ? 'page.html' : path);
    try {
      const body = await readFile(from);
      response.writeHead(200, { 'content-type': types[extname(from)] ?? 'application/octet-stream' });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise(resolve => server.listen(0, '127.0.0.1', () => resolve(server)));
}

const command = readCommand();
const server = await serve(command.file);
const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? browsers.find(existsSync) ?? fail('no Chromium found (Debian package chromium)'),
  args: flags, headless: true, protocolTimeout: patience,
  defaultViewport: { width: command.width, height: command.height, deviceScaleFactor: 1 },
});
try {
  const page = await browser.newPage();
  page.on('console', message => ['error', 'warn'].includes(message.type()) && console.error(`page: ${message.text()}`));
  page.on('pageerror', fault => console.error(`page: ${fault.message}`));
  await page.goto(`http://127.0.0.1:${server.address().port}/`, { timeout: patience });
  await page.waitForFunction('globalThis.draw', { timeout: patience });
  const { image, summary } = await page.evaluate(scene => globalThis.draw(scene), command.scene);
  await writeFile(command.out, Buffer.from(image.slice(image.indexOf(',') + 1), 'base64'));
  console.log(JSON.stringify({ file: command.file, out: command.out, ...summary }));
} catch (fault) {
  console.error(`${command.file}: ${fault.message}`);
  process.exitCode = 1;
} finally {
  await browser.close();
  server.close();
}
