import { describe, expect, it } from 'vitest';
import { makePage, readPages, type BuiltPage } from './built-site.ts';

/** Window titles and descriptions that two pages share or that are missing. */
function titleFaults(pages: readonly BuiltPage[]): readonly string[] {
  const faults: string[] = [];
  const seen = new Map<string, string>();
  const once = (what: string, text: string, address: string): void => {
    if (text.trim() === '') faults.push(`${address} has no ${what}`);
    else if (seen.has(what + text)) {
      faults.push(`${address} has the ${what} of ${seen.get(what + text)}: “${text}”`);
    } else seen.set(what + text, address);
  };
  for (const { address, root } of pages) {
    once('title', root.querySelector('title')?.text ?? '', address);
    const description = root.querySelector('meta[name="description"]')?.getAttribute('content');
    once('description', description ?? '', address);
  }
  return faults;
}

describe('the window titles and descriptions', () => {
  it('belong to one page each', () => {
    expect(titleFaults(readPages())).toEqual([]);
  });

  it('would be caught missing or shared', () => {
    const head = '<title>A</title><meta name="description" content="B">';
    const faults = titleFaults([
      makePage('a.html', head),
      makePage('b.html', head),
      makePage('c.html', '<title> </title>'),
    ]);
    expect(faults).toHaveLength(4);
    expect(faults[0]).toBe('/b.html has the title of /a.html: “A”');
  });
});
