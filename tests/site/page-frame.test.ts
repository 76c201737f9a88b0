import { describe, expect, it } from 'vitest';
import { makePage, readPages, type BuiltPage } from './built-site.ts';

/** Parts of the content security policy that every page must carry. */
const POLICY: Readonly<Record<string, RegExp>> = {
  'default-src': /^'none'$/u,
  'script-src': /^'self'(?: 'wasm-unsafe-eval')?$/u,
  'style-src': /^'self'$/u,
  'connect-src': /^'self'$/u,
  'font-src': /^'self'$/u,
  'base-uri': /^'(?:none|self)'$/u,
  'form-action': /^'(?:none|self)'$/u,
};

function policyFaults(policy: string): readonly string[] {
  const directives = new Map(
    policy.split(';').map((directive) => {
      const [name = '', ...values] = directive.trim().split(/\s+/u);
      return [name, values.join(' ')];
    }),
  );
  const faults = Object.entries(POLICY).flatMap(([name, expected]) => {
    const value = directives.get(name);
    return value !== undefined && expected.test(value)
      ? []
      : [`${name} is “${value ?? 'missing'}”`];
  });
  const loose = [...directives].filter(([, value]) =>
    /'unsafe-(?:inline|eval)'|\*|https?:|(?:^|\s)data:/u.test(value),
  );
  return [...faults, ...loose.map(([name, value]) => `${name} allows ${value}`)];
}

/** What the frame of a page lacks: language, landmarks, headings, description, policy. */
function frameFaults({ root, html }: BuiltPage): readonly string[] {
  const faults: string[] = [];
  const count = (selector: string): number => root.querySelectorAll(selector).length;
  if (!/^<!doctype html>/iu.test(html)) faults.push('has no doctype');
  if (!root.querySelector('html')?.getAttribute('lang')) faults.push('has no lang');
  if (count('main') !== 1) faults.push(`has ${count('main')} main elements`);
  if (count('h1') !== 1) faults.push(`has ${count('h1')} first headings`);
  if (count('meta[name="viewport"]') !== 1) faults.push('has no viewport');
  if (count('meta[charset]') !== 1) faults.push('has no charset');
  if (!root.querySelector('meta[name="description"]')?.getAttribute('content')) {
    faults.push('has no description');
  }
  const levels = root
    .querySelectorAll('h1, h2, h3, h4, h5, h6')
    .map((heading) => Number(heading.tagName.slice(1)));
  levels.forEach((level, index) => {
    const before = levels[index - 1] ?? 0;
    if (level > before + 1) faults.push(`goes from heading level ${before} to ${level}`);
  });
  const policies = root
    .querySelectorAll('meta')
    .filter((meta) => meta.getAttribute('http-equiv')?.toLowerCase() === 'content-security-policy');
  if (policies.length !== 1) faults.push(`has ${policies.length} content security policies`);
  for (const meta of policies) faults.push(...policyFaults(meta.getAttribute('content') ?? ''));
  return faults;
}

describe('the frame of a page', () => {
  it.each(readPages())('is complete on $address', (page) => {
    expect(frameFaults(page)).toEqual([]);
  });

  const policy =
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; font-src 'self'; " +
    "base-uri 'none'; form-action 'none'";
  const whole = (body: string, csp = policy): BuiltPage =>
    makePage(
      'a.html',
      `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="x">` +
        `<meta name="description" content="x"><meta http-equiv="Content-Security-Policy" content="${csp}">` +
        `</head><body>${body}</body></html>`,
    );

  it('would pass as it should be', () => {
    expect(frameFaults(whole('<main><h1>A</h1><h2>B</h2><h3>C</h3><h2>D</h2></main>'))).toEqual([]);
  });

  it.each([
    ['without anything', makePage('a.html', '<p>A</p>'), 8],
    ['with two first headings', whole('<main><h1>A</h1><h1>B</h1></main>'), 1],
    ['with a skipped level', whole('<main><h1>A</h1><h3>B</h3></main>'), 1],
    [
      'with inline styles allowed',
      whole(
        '<main><h1>A</h1></main>',
        policy.replace("style-src 'self'", "style-src 'unsafe-inline'"),
      ),
      2,
    ],
    [
      'with another host',
      whole('<main><h1>A</h1></main>', `${policy}; img-src https://a.example`),
      1,
    ],
  ])('would be caught %s', (_what, page, count) => {
    expect(frameFaults(page)).toHaveLength(count);
  });
});
