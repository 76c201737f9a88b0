import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/** What is asked of a page. */
interface AxeQuestion {
  /** Rules by their ids; all when left out. */
  readonly rules?: readonly string[];
  /** Selector of the part that is looked at; the whole page when left out. */
  readonly within?: string;
}

/**
 * Violations that axe finds. Legacy mode leaves out the other frames, of which the book has none; only
 * violations are worked out in full.
 */
export async function axeViolations(
  page: Page,
  { rules, within }: AxeQuestion = {},
): Promise<readonly string[]> {
  const builder = new AxeBuilder({ page }).setLegacyMode(true).options({
    resultTypes: ['violations'],
    // One call of options would undo another, so the rules go into the same object.
    ...(rules === undefined ? {} : { runOnly: { type: 'rule', values: [...rules] } }),
  });
  if (within !== undefined) builder.include(within);
  const { violations } = await builder.analyze();
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id} (${help}): ${target.join(' ')}`),
  );
}

/** Rules about colour, which are all that the dark scheme can break. */
export const COLOUR_RULES = ['color-contrast', 'link-in-text-block'] as const;
