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

for (const [address, said] of [
  ['/job-sheet/?gauge=super-8&colourOfCan=red', 'colourOfCan'],
  ['/customer-sheet/?reelCount=3&shown=price,weather', 'weather'],
] as const) {
  test(`a sheet to fill in names what it does not know in its address: ${said}`, async ({
    page,
  }) => {
    await page.goto(address);
    const sentence = page.locator('.address-fault');
    await expect(sentence).toContainText(`“${said}”`);
    await expect(sentence).toContainText('left it out');
  });
}
