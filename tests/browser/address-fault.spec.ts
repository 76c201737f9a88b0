import { expect, test } from '@playwright/test';

for (const [query, said] of [
  ['?w=no-such-sheet&filmFps=18', 'no-such-sheet'],
  ['?w=flash-match&filmFps=18&pitchOfHoles=7#flash-match', 'pitchOfHoles'],
] as const) {
  test(`an address with something unknown in it says so: ${said}`, async ({ page }) => {
    await page.goto(`/gate/matching/${query}`);
    await expect(page.locator('main').getByText(said)).toBeVisible();
  });
}
