import { expect, test } from '@playwright/test';

test('the link of a heading shows for pointer and keyboard, leads there, and is not printed', async ({
  page,
}) => {
  await page.goto('/gate/matching/');
  const heading = page.locator('.prose > h2').nth(1);
  const id = (await heading.getAttribute('id')) ?? 'none';
  const link = page.locator(`.section-link[href="#${id}"]`);
  await expect(link).toHaveAccessibleName('Link to this section');
  await expect(link).toHaveCSS('opacity', '0');
  await heading.hover();
  await expect(link).toHaveCSS('opacity', '1');
  await page.mouse.move(0, 0);
  await expect(link).toHaveCSS('opacity', '0');
  await link.focus();
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Tab');
  await expect(link).toBeFocused();
  await expect(link).toHaveCSS('opacity', '1');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(new RegExp(`#${id}$`, 'u'));

  // Beside the heading's last line, and large enough to touch.
  const [line, box] = [await heading.boundingBox(), await link.boundingBox()];
  expect(Math.min(box!.width, box!.height)).toBeGreaterThanOrEqual(24);
  expect(box!.y + box!.height).toBeLessThanOrEqual(line!.y + line!.height + 6);
  expect(box!.y).toBeGreaterThanOrEqual(line!.y - 6);
  expect(box!.x + box!.width).toBeLessThanOrEqual(line!.x + line!.width + 1);
  expect(box!.x).toBeGreaterThan(line!.x);

  await page.emulateMedia({ media: 'print' });
  await expect(link).toBeHidden();
});
