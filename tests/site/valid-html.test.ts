import { FileSystemConfigLoader, HtmlValidate, cjsResolver } from 'html-validate/node';
import { describe, expect, it } from 'vitest';
import { readPages, samplePage, type BuiltPage } from './built-site.ts';
import { htmlRules } from './html-rules.ts';

const validator = new HtmlValidate(new FileSystemConfigLoader([cjsResolver()], htmlRules));

/** What the HTML standard has against a page. */
async function htmlFaults({ path, html }: BuiltPage): Promise<readonly string[]> {
  const report = await validator.validateString(html, path);
  return report.results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line, column }) => `${line}:${column} ${ruleId}: ${message}`),
  );
}

describe('the HTML', () => {
  it.each(readPages())('of $address is valid', async (page) => {
    expect((await htmlFaults(page)).slice(0, 20)).toEqual([]);
  });

  it('would be caught with a faulty element', async () => {
    const page = samplePage('<p><div>A</div></p><img src="/a.svg"><button>B</button>');
    expect((await htmlFaults(page)).length).toBeGreaterThan(2);
  });
});
