import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * Violations that axe finds. Legacy mode leaves out the other frames, of which the book has none; only
 * violations are worked out in full.
 */
export async function axeViolations(
  page: Page,
  rules?: readonly string[],
): Promise<readonly string[]> {
  const builder = new AxeBuilder({ page })
    .setLegacyMode(true)
    .options({ resultTypes: ['violations'] });
  if (rules !== undefined) {
    // One call of options would undo another, so the rules go into the same object.
    builder.options({
      resultTypes: ['violations'],
      runOnly: { type: 'rule', values: [...rules] },
    });
  }
  const { violations } = await builder.analyze();
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id} (${help}): ${target.join(' ')}`),
  );
}

/** Colours are all that the dark scheme changes, so only the rules about colour run again there. */
export const COLOUR_RULES = ['color-contrast', 'link-in-text-block'] as const;
