import toolStyles from '../../styles/scene-tools.css?url';
import { REEL } from '../../scene/drawing/reel.ts';
import type { View } from '../../scene/camera/views.ts';

/** Everything by which a reader moves a scene. */
export interface Tools {
  readonly play: HTMLButtonElement;
  readonly slow: HTMLButtonElement;
  readonly back: HTMLButtonElement;
  readonly next: HTMLButtonElement;
  readonly strips: HTMLButtonElement;
  readonly loupe: HTMLButtonElement;
  readonly scrub: HTMLInputElement;
  readonly divider: HTMLInputElement;
  readonly state: HTMLElement;
  /** Number of the film frame on the edge of the film. */
  readonly number: HTMLElement;
  /** All numbers under each other, like a counter's wheel: turned, it is not laid out anew. */
  readonly wheel: HTMLElement;
  readonly lens: HTMLCanvasElement;
  /** Holds all but what lies on the picture. */
  readonly panel: HTMLElement;
}

const VIEWS: readonly (readonly [View, string])[] = [
  ['film', 'Film in the gate'],
  ['camera', 'Camera file'],
  ['kept', 'Kept pictures'],
  ['television', 'Television copy'],
];

const WARNING =
  'the picture moves and its light may pulse. What would flash more than three times a second is lowered or slowed. If flicker harms you, leave it still or go picture by picture.';

/** An element with attributes and what is in it. */
function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string>>,
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...inside);
  return element;
}

const button = (part: string, words: string, more: Readonly<Record<string, string>> = {}) =>
  make('button', { type: 'button', class: 'pic-button', 'data-part': part, ...more }, words);

const slider = (part: string, most: string, more: Readonly<Record<string, string>>) =>
  make('input', { type: 'range', 'data-part': part, max: most, autocomplete: 'off', ...more });

function viewChoice(id: string): HTMLElement {
  const choices = VIEWS.map(([view, words]) =>
    make('label', {}, make('input', { type: 'radio', name: `${id}-view`, value: view }), words),
  );
  return make('fieldset', { class: 'scene-views' }, make('legend', {}, 'Shown'), ...choices);
}

/**
 * Makes the tools of a scene, and lays what belongs there over its picture.
 *
 * @param id       of the scene; sets the names of its fields apart from those of others
 * @param picture  what holds the still
 */
export function makeTools(id: string, picture: HTMLElement): Tools {
  const wheel = make('span', {}, [...Array(REEL.filmFrames).keys()].join('\n'));
  document.head.append(make('link', { rel: 'stylesheet', href: toolStyles }));
  const tools = {
    wheel,
    play: button('play', 'Play', { 'aria-describedby': `${id}-warning` }),
    slow: button('slow', '¼ speed'),
    back: button('back', '‹ Back', { 'aria-label': 'One picture back' }),
    next: button('next', 'Next ›', { 'aria-label': 'One picture on' }),
    strips: button('strips', 'Strips'),
    loupe: button('loupe', 'Loupe'),
    scrub: slider('scrub', '107', {}),
    divider: slider('divider', '100', {
      class: 'scene-divider',
      value: '50',
      'aria-label': 'Line between the two pictures',
    }),
    state: make('p', { class: 'scene-state', 'data-part': 'state' }),
    number: make('span', { class: 'scene-number', 'aria-hidden': 'true', hidden: '' }, wheel),
    lens: make('canvas', {
      class: 'scene-lens',
      tabindex: '0',
      role: 'img',
      'aria-label': 'Loupe: the picture three times as large. Arrow keys move it',
      hidden: '',
    }),
  };
  const { play, slow, back, next, strips, loupe, scrub, state } = tools;
  picture.append(tools.number, tools.divider, tools.lens);
  const warning = make('p', { class: 'scene-warning', id: `${id}-warning` });
  warning.append(make('strong', {}, 'Before you play:'), ` ${WARNING}`);
  const panel = make(
    'div',
    { class: 'scene-tools' },
    warning,
    make('div', { class: 'pic-buttons' }, play, slow, back, next, strips, loupe),
    make('label', { class: 'scene-scrub' }, make('span', {}, 'Film frame'), scrub),
    viewChoice(id),
    state,
  );
  return { ...tools, panel };
}
