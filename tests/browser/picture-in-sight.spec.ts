import { expect, test, type Page } from '@playwright/test';
import { turnTag } from './short-run.ts';

// Cause and effect on one screen: whatever field of a sheet is changed, its picture is in sight.

const PAGES = [
  '/gate/matching/',
  '/gate/shutter-blades/',
  '/gate/lens/',
  '/gate/light/',
  '/file/whole-frames/',
  '/file/sound/',
  '/reel/gauges/',
  '/customer/options/',
];

interface Seen {
  readonly field: string;
  /** Share of the picture's height between the verdict and the foot of the window. */
  readonly share: number;
}

/** Goes through all fields of all sheets with a picture, down and up again, as the tab key does. */
async function picturesSeen(page: Page): Promise<readonly Seen[]> {
  return page.evaluate(() => {
    const seen: { field: string; share: number }[] = [];
    for (const form of document.querySelectorAll('worksheet-form')) {
      const picture = form.querySelector(
        '.sheet-results > :is(.sheet-scene, .sheet-pictures) :is(.scene-picture, svg)',
      );
      const verdict = form.querySelector('.verdict');
      if (picture === null || verdict === null) continue;
      const fields = [...form.querySelectorAll<HTMLElement>('.sheet-inputs :is(input, select)')];
      for (const field of [...fields, ...fields.toReversed()]) {
        field.focus();
        const { top, bottom, height } = picture.getBoundingClientRect();
        const from = Math.max(top, verdict.getBoundingClientRect().bottom);
        const share = (Math.min(bottom, innerHeight) - from) / height;
        seen.push({ field: field.id, share });
      }
    }
    return seen;
  });
}

for (const [place, [width, height]] of (
  [
    [1440, 900],
    [820, 1180],
  ] as const
).entries()) {
  test(`every field of every sheet has its picture in sight at ${width} × ${height}${turnTag(place, 2)}`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    let fields = 0;
    for (const address of PAGES) {
      await page.goto(address);
      const seen = await picturesSeen(page);
      expect(seen.length, address).toBeGreaterThan(4);
      expect(
        seen.filter(({ share }) => share < 0.7),
        address,
      ).toEqual([]);
      fields += seen.length;
    }
    expect(fields).toBeGreaterThan(150);
  });
}

test('on a phone the picture stands between the verdict and the fields @phone', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  for (const address of PAGES) {
    await page.goto(address);
    const places = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          '.sheet:has(.sheet-results > :first-child:not(.sheet-answers))',
        ),
      ].map((sheet) =>
        ['.verdict', '.sheet-results > :first-child', '.sheet-inputs', '.sheet-answers'].map(
          (part) => sheet.querySelector(part)!.getBoundingClientRect().top,
        ),
      ),
    );
    expect(places.length, address).toBeGreaterThan(0);
    for (const tops of places) expect(tops, address).toEqual(tops.toSorted((a, b) => a - b));
  }
});

test('a scene in a sheet is played without waking the sheet, and outlives its waking', async ({
  page,
}) => {
  await page.goto('/gate/matching/');
  const sheet = page.locator('worksheet-form[data-id="flash-match"]');
  const scene = sheet.locator('#scene-flash-match');
  await scene.locator('[data-part="open"]').click();
  await expect(scene.locator('[data-part="play"]')).toBeVisible({ timeout: 25_000 });
  await scene.getByRole('slider', { name: 'Film frame' }).fill('12');
  await expect(sheet).not.toHaveAttribute('data-ready', 'true');
  await expect(sheet).not.toHaveAttribute('data-answers', 'old');
  await sheet.locator('[name="filmFps"]').fill('24');
  await expect(sheet).toHaveAttribute('data-ready', 'true', { timeout: 25_000 });
  await expect(sheet.locator('.origin-status')).toHaveText('Showing the book’s numbers, changed');
  await expect(scene.locator('[data-part="play"]')).toBeVisible();
  await expect(scene.locator('canvas[data-part="canvas"]')).toBeVisible({ timeout: 25_000 });
  await sheet.getByRole('button', { name: 'Book’s numbers' }).click();
  await expect(sheet.locator('.origin-status')).toHaveText('Showing the book’s numbers');
});
