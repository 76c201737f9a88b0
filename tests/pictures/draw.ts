import { h, type ComponentType } from 'preact';
import renderToString from 'preact-render-to-string';
import { parse, type HTMLElement } from 'node-html-parser';

/** Static render of a picture, as a reader without script gets it. */
export function markup<Data>(
  Picture: ComponentType<{ picture: Data; instance: string }>,
  picture: Data,
  instance = 'sheet-picture-0',
): string {
  return renderToString(h(Picture, { picture, instance }));
}

export function draw<Data>(
  Picture: ComponentType<{ picture: Data; instance: string }>,
  picture: Data,
): HTMLElement {
  return parse(markup(Picture, picture));
}

export function numberOf(element: HTMLElement | null | undefined, attribute: string): number {
  const text = element?.getAttribute(attribute);
  if (text === undefined) throw new Error(`no ${attribute}`);
  return Number(text);
}

export function texts(root: HTMLElement): readonly string[] {
  return root
    .querySelectorAll('text')
    .map((text) => text.textContent.replaceAll('\u00a0', ' ').trim());
}
