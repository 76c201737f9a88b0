import { expect, test, type Locator, type Page } from '@playwright/test';

// The drawn home movie: still until asked, then it plays, steps, compares, and says what it does.
const MATCHING = '/gate/matching/';
const scene = (page: Page, id = 'scene-pulsing'): Locator => page.locator(`#${id}`);
const part = (page: Page, name: string): Locator => scene(page).locator(`[data-part="${name}"]`);

async function wake(page: Page): Promise<void> {
  await page.goto(MATCHING);
  await part(page, 'open').click();
  await expect(scene(page)).toHaveAttribute('data-ready', 'true');
  await expect(part(page, 'canvas')).toBeVisible();
  await part(page, 'next').click();
}

/** A number that changes with any pixel of the picture. */
const pixels = (page: Page): Promise<number> =>
  part(page, 'canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let sum = 0;
    for (let at = 0; at < data.length; at += 7) sum = (sum * 31 + data[at]!) % 1_000_003;
    return sum;
  });

test('a scene is a still picture until it is touched, and loads nothing', async ({ page }) => {
  const loaded: string[] = [];
  page.on('request', (request) => loaded.push(request.url()));
  await page.goto(MATCHING);
  await scene(page).scrollIntoViewIfNeeded();
  await expect(scene(page).getByRole('img').first()).toBeVisible();
  await page.waitForLoadState('networkidle');
  expect(loaded.some((url) => url.includes('/scenes/'))).toBe(true);
  expect(loaded.filter((url) => /film-worker|\/scene\.[^/]+\.js/u.test(url))).toEqual([]);
});

test('the first press counts, and the state says what the picture holds @phone-long', async ({
  page,
}) => {
  await wake(page);
  await expect(part(page, 'state')).toContainText(/Camera frame \d+ = film frame \d+/u);
  await expect(part(page, 'state')).toContainText('swings by 14.8');
});

test('stepping changes the picture, and back again gives the same one', async ({ page }) => {
  await wake(page);
  const first = await pixels(page);
  await part(page, 'next').click();
  await expect.poll(() => pixels(page)).not.toBe(first);
  await part(page, 'back').click();
  await expect.poll(() => pixels(page)).toBe(first);
});

test('it plays when asked, pauses out of sight, and says what is lowered', async ({ page }) => {
  await wake(page);
  await part(page, 'play').click();
  await expect(scene(page)).toHaveAttribute('data-is', 'playing');
  await expect(part(page, 'state')).toContainText('for safety');
  const before = await pixels(page);
  await expect.poll(() => pixels(page)).not.toBe(before);
  await page.evaluate(() => {
    scrollTo(0, document.body.scrollHeight);
  });
  await expect(scene(page)).toHaveAttribute('data-is', 'still');
});

test('while it plays, the page is not laid out anew for every film frame', async ({ page }) => {
  await wake(page);
  await part(page, 'play').click();
  await expect(scene(page)).toHaveAttribute('data-is', 'playing');
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const layouts = async (): Promise<number> => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'LayoutCount')?.value ?? Number.NaN;
  };
  const filmFrames = 36;
  const before = await layouts();
  // Its number on the edge of the film goes on all the same.
  const seen = await scene(page)
    .locator('.scene-number > span')
    .evaluate(
      (wheel: HTMLElement, wanted) =>
        new Promise<number>((resolve) => {
          const places = new Set<string>();
          const look = (): void => {
            places.add(wheel.style.translate);
            if (places.size > wanted) resolve(places.size);
            else requestAnimationFrame(look);
          };
          look();
        }),
      filmFrames,
    );
  expect(seen).toBeGreaterThan(filmFrames);
  expect((await layouts()) - before).toBeLessThan(filmFrames / 2);
});

test('the line between the pictures moves by the keys', async ({ page }) => {
  await wake(page);
  await part(page, 'strips').click();
  const before = await pixels(page);
  const divider = scene(page).getByRole('slider', { name: 'Line between the two pictures' });
  await divider.focus();
  await page.keyboard.press('End');
  await expect(divider).toHaveValue('100');
  await expect.poll(() => pixels(page)).not.toBe(before);
});

test('the kept pictures, the copy for television and the film itself can be shown', async ({
  page,
}) => {
  await wake(page);
  for (const [name, words] of [
    ['Film in the gate', /Film frame \d+/u],
    ['Kept pictures', /Kept picture \d+ = camera frame \d+ = film frame/u],
    ['Television copy', /television copy \d+ = camera frame/u],
  ] as const) {
    await scene(page).getByRole('radio', { name }).check();
    await expect(part(page, 'state')).toContainText(words);
  }
});

test('with reduced motion nothing moves without a press', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await wake(page);
  await expect(part(page, 'play')).toHaveText('Play is off: reduced motion');
  const before = await pixels(page);
  await part(page, 'play').click({ force: true });
  await page.waitForTimeout(400);
  expect(await pixels(page)).toBe(before);
  await part(page, 'next').click();
  await expect.poll(() => pixels(page)).not.toBe(before);
});

/** Plays a scene whose film frames are drawn on the page, half as large. */
async function playsOnPage(page: Page): Promise<void> {
  await wake(page);
  expect(await part(page, 'canvas').getAttribute('width')).toBe('320');
  const first = await pixels(page);
  await part(page, 'next').click();
  await expect.poll(() => pixels(page)).not.toBe(first);
  await part(page, 'back').click();
  await expect.poll(() => pixels(page)).toBe(first);
  await part(page, 'play').click();
  await expect(scene(page)).toHaveAttribute('data-is', 'playing');
  await expect.poll(() => pixels(page)).not.toBe(first);
}

test('where a browser refuses the worker the page draws the film itself', async ({ page }) => {
  await page.addInitScript(() => {
    const refuse = (): never => {
      throw new DOMException('refused', 'SecurityError');
    };
    globalThis.Worker = new Proxy(Worker, { construct: refuse });
  });
  await playsOnPage(page);
});

test('so it does where the worker finds no canvas', async ({ page }) => {
  await page.route(/film-worker/u, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'throw new Error("no canvas")' }),
  );
  await playsOnPage(page);
});

test('the tools come with the press that asks for them; a failed one may be tried again', async ({
  page,
}) => {
  await page.route(/\/panel\.[^/]+\.js/u, (route) => route.abort(), { times: 1 });
  await page.goto(MATCHING);
  const open = part(page, 'open');
  await open.click();
  await expect(open).toHaveText('It could not be loaded. Try again');
  await open.click();
  await expect(part(page, 'play')).toBeVisible();
});

test('the loupe follows a finger and the arrow keys, and leaves the page where it is @phone', async ({
  page,
}) => {
  await wake(page);
  await part(page, 'loupe').click();
  const lens = scene(page).getByRole('img', { name: /^Loupe/u });
  await expect(lens).toBeVisible();
  const glass = (): Promise<number> =>
    lens.evaluate((canvas: HTMLCanvasElement) => {
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
      return data.reduce((sum, code, at) => (sum * 31 + code * (at % 7)) % 1_000_003, 0);
    });
  // It lies on the picture at every width.
  const picture = (await part(page, 'picture').boundingBox())!;
  const box = (await lens.boundingBox())!;
  expect(box.x).toBeGreaterThanOrEqual(picture.x - 1);
  expect(box.x + box.width).toBeLessThanOrEqual(picture.x + picture.width + 1);
  expect(box.y).toBeGreaterThanOrEqual(picture.y - 1);
  expect(box.y + box.height).toBeLessThanOrEqual(picture.y + picture.height + 1);
  expect(box.width / picture.width).toBeCloseTo(300 / 640, 1);
  const before = await glass();
  await part(page, 'picture').dispatchEvent('pointerdown', {
    pointerType: 'touch',
    clientX: picture.x + picture.width * 0.2,
    clientY: picture.y + picture.height * 0.6,
  });
  const touched = await glass();
  expect(touched).not.toBe(before);
  // The finger is on the left, so the glass is on the right.
  expect((await lens.boundingBox())!.x).toBeGreaterThan(picture.x + picture.width * 0.4);
  const scrolled = await page.evaluate(() => scrollY);
  await part(page, 'loupe').focus();
  await page.keyboard.press('ArrowDown');
  expect(await glass()).not.toBe(touched);
  expect(await page.evaluate(() => scrollY)).toBe(scrolled);
});

test('the strips under a sheet follow its numbers', async ({ page }) => {
  await page.goto(MATCHING);
  const strips = scene(page, 'scene-flash-match');
  const canvas = strips.locator('canvas[data-part="canvas"]');
  await expect(canvas).toBeHidden();
  const sheet = page.locator('worksheet-form[data-id="flash-match"]');
  const light = (): Promise<readonly number[]> =>
    canvas.evaluate((one: HTMLCanvasElement) => {
      const pen = one.getContext('2d')!;
      // The sky of each strip, low, where no cloud is.
      return Array.from({ length: 13 }, (_, strip) => {
        const left = Math.round(((strip + 0.5) * one.width) / 13);
        return pen.getImageData(left, one.height * 0.9, 1, 1).data[2]!;
      });
    });
  await sheet.locator('[name="exposureSeconds"]').fill('1/100');
  // Thirteen film frames are drawn first: seconds on a busy machine.
  await expect(canvas).toBeVisible({ timeout: 25_000 });
  const spread = async (): Promise<number> => {
    const levels = await light();
    return Math.max(...levels) / Math.max(1, Math.min(...levels));
  };
  await expect.poll(spread).toBeGreaterThan(2);
  await sheet.locator('[name="exposureSeconds"]').fill('1/54');
  await expect.poll(spread).toBeLessThan(1.8);
  // Numbers that give no picture leave the last one there, dimmed.
  await sheet.locator('[name="exposureSeconds"]').fill('soon');
  await expect(strips).toHaveAttribute('data-answers', 'old');
  await sheet.locator('[name="exposureSeconds"]').fill('1/50');
  await expect(strips).not.toHaveAttribute('data-answers', 'old');
});

test('the first screen of the front page sets the setting that works @phone', async ({ page }) => {
  await page.goto('/');
  const verdict = page.locator('[data-front="verdict"]');
  await expect(verdict).toContainText('pulses by 14.8');
  const cure = page.locator('[data-front="cure"]');
  await cure.click();
  await expect(verdict).toContainText('No flicker');
  await expect(page.locator('input[data-key="exposureSeconds"]')).toHaveValue('1/54');
  await expect(page.locator('input[data-key="cameraFps"]')).toHaveValue('50');
  await expect(cure).toBeHidden();
  const exposure = page.locator('input[data-key="exposureSeconds"]');
  await exposure.fill('1/100');
  await expect(verdict).toContainText('pulses');
  await expect(exposure).toHaveAttribute('aria-invalid', 'false');
  await exposure.fill('soon');
  await expect(exposure).toHaveAttribute('aria-invalid', 'true');
});

test('the first screen holds picture, verdict, button, search and the three ways @phone', async ({
  page,
}) => {
  await page.goto('/');
  const height = page.viewportSize()!.height;
  const ways = page.getByRole('link', { name: 'Explain' });
  for (const one of [
    page.locator('#front-scene img'),
    page.locator('[data-front="verdict"]'),
    page.locator('[data-front="cure"]'),
    page.locator('#front-search'),
    ways.filter({ visible: true }).first(),
  ]) {
    const box = (await one.boundingBox())!;
    expect(box.y + Math.min(box.height, 40)).toBeLessThanOrEqual(height);
  }
});
