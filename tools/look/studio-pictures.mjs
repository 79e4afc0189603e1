// Photographs the running studio in every pose, light and dark, for docs/pictures.
// usage: linewright studio --no-open --port 4816, then: node studio-pictures.mjs http://127.0.0.1:4816/ OUTFOLDER [--size 1280x800] [--only joint,clasp]
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import puppeteer from 'puppeteer-core';

const { values, positionals: [address, folder] } = parseArgs({
  allowPositionals: true,
  options: { size: { type: 'string', default: '1280x800' }, only: { type: 'string' } },
});
const [width, height] = values.size.split('x').map(Number);
const flags = [
  '--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist', '--disable-quic',
  '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--hide-scrollbars',
];
const poses = ['wrist', 'round', 'open', 'flat', 'link', 'joint', 'clasp', 'apart'];
const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? ['/usr/bin/chromium', '/usr/bin/google-chrome'].find(existsSync),
  args: flags, headless: true, protocolTimeout: 300_000, defaultViewport: { width, height },
});
try {
  for (const theme of ['light', 'dark']) {
    const page = await browser.newPage();
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: theme }, { name: 'prefers-reduced-motion', value: 'reduce' }]);
    await page.goto(address);
    await page.waitForFunction('window.studio?.live.isCurrent', { timeout: 300_000, polling: 300 });
    for (const pose of poses.filter(name => !values.only || values.only.split(',').includes(name))) {
      await page.click(`[data-pose=${pose}]`);
      if (pose === 'clasp') await page.evaluate('window.studio.viewer.draw(0.55 * window.studio.viewer.strokeMm); window.studio.viewer.look("corner", 0)');
      await new Promise(done => setTimeout(done, 900));
      await page.waitForFunction('window.studio.stage.isSettled', { timeout: 120_000, polling: 200 });
      await page.screenshot({ path: join(folder, `studio-${pose}-${theme}.jpg`), type: 'jpeg', quality: 84 });
    }
    await page.evaluate('localStorage.clear()');
    await page.close();
  }
} finally {
  await browser.close();
}
