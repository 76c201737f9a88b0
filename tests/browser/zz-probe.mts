import { chromium } from '@playwright/test';
import { readPages } from '../site/built-site.ts';
const port = process.argv[2];
const b = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--blink-settings=defaultFontSize=32'] });
const p = await b.newPage({ viewport: { width: 390, height: 900 } });
for (const { address } of readPages()) {
  await p.goto(`http://127.0.0.1:${port}${address}`);
  const r = await p.evaluate(() => {
    const edge = document.documentElement.clientWidth;
    const w = document.documentElement.scrollWidth;
    const wide = w <= edge ? [] : [...document.querySelectorAll<HTMLElement>('body *')].filter((e) => e.getBoundingClientRect().right > edge + 1 && !e.closest('.table-frame > *, pre > *, .formula > *, .pic-svg > *, .working-sum > *')).map((e) => `${e.tagName.toLowerCase()}.${e.className} ${Math.round(e.getBoundingClientRect().right)}`);
    return { w, fs: getComputedStyle(document.documentElement).fontSize, wide: [...new Set(wide)].slice(0, 12) };
  });
  console.log(address, r.w, r.fs, r.wide.join(' | '));
}
await b.close();
