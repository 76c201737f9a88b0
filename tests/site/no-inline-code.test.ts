import { describe, expect, it } from 'vitest';
import { readPages, samplePage, type BuiltPage } from './built-site.ts';

/** Scripts and styles written into a page, which its policy would block. */
function inlineCode({ root }: BuiltPage): readonly string[] {
  const isData = (type: string | undefined): boolean =>
    type === 'application/json' || type === 'application/ld+json';
  const elements = root.querySelectorAll('*');
  return [
    ...root
      .querySelectorAll('script')
      .filter((script) => !script.hasAttribute('src') && !isData(script.getAttribute('type')))
      .map((script) => `inline script ${script.text.slice(0, 60)}`),
    ...root.querySelectorAll('style').map((style) => `inline style ${style.text.slice(0, 60)}`),
    ...elements
      .filter((element) => element.hasAttribute('style'))
      .map((element) => `style attribute on ${element.tagName}: ${element.getAttribute('style')}`),
    ...elements.flatMap((element) =>
      Object.keys(element.attributes)
        .filter((name) => /^on/iu.test(name))
        .map((name) => `${name} on ${element.tagName}`),
    ),
    ...root
      .querySelectorAll('[href], [src], [action]')
      .map((element) => element.getAttribute('href') ?? element.getAttribute('src') ?? '')
      .filter((link) => /^\s*(?:javascript|data):/iu.test(link))
      .map((link) => `address ${link.slice(0, 60)}`),
  ];
}

describe('inline code', () => {
  it.each(readPages())('is not on $address', (page) => {
    expect(inlineCode(page)).toEqual([]);
  });

  it.each([
    '<script>alert(1)</script>',
    '<script type="module">alert(1)</script>',
    '<style>p { color: red }</style>',
    '<p style="color: red">A</p>',
    '<svg><path style="fill: red"/></svg>',
    '<button onclick="go()">A</button>',
    '<a href="javascript:go()">A</a>',
    '<img src="data:image/png;base64,AAAA" alt="">',
  ])('would be caught: %s', (body) => {
    expect(inlineCode(samplePage(body))).toHaveLength(1);
  });

  it('does not mean files and data blocks', () => {
    const body =
      '<script src="/a.js"></script><script type="application/json">{}</script><p class="on">A</p>';
    expect(inlineCode(samplePage(body))).toEqual([]);
  });
});
