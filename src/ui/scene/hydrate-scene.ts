import { fastestSpeed, safePlay, SLOW_SPEED } from '../../scene/camera/flash-safety.ts';
import { STRIPS } from '../../scene/camera/strips.ts';
import { viewFps, type View } from '../../scene/camera/views.ts';
import { REEL } from '../../scene/drawing/reel.ts';
import type { SceneData } from '../../scene/scene-data.ts';
import { startFilmSupply } from './film-supply.ts';
import type { Loupe } from './loupe.ts';
import { makePainted, makePainter, pictureAt, type Painted } from './painter.ts';
import { makeReelClock } from './reel-clock.ts';
import { makeTools } from './tools.ts';
import { pictureWords, swingWords } from './state-words.ts';

/** The picture as it is drawn at most, pixels. */
const FULL_WIDTH = 640;
/** After so long the reel starts again, so that no number grows without end; whole loops. */
const LONGEST_SECONDS = 600;

/** What the reader has chosen. */
interface Chosen {
  view: View;
  seconds: number;
  isStrips: boolean;
  isSlow: boolean;
  split: number;
}

function partOf<Part extends HTMLElement>(element: HTMLElement, part: string): Part {
  const found = element.querySelector<Part>(`[data-part="${part}"]`);
  if (found === null) throw new Error(`a scene without ${part}`);
  return found;
}

/** A scene that is alive. */
export interface LiveScene {
  /** Paints it again from what it keeps. */
  readonly redraw: () => void;
  /** Changes what it shows: the settings of a front page, say. */
  readonly show: (data: SceneData) => void;
}

const live = new WeakMap<HTMLElement, Promise<LiveScene>>();

/** Brings a scene to life once, whoever asks. */
export function liveScene(element: HTMLElement): Promise<LiveScene> {
  const begun = live.get(element) ?? startScene(element);
  live.set(element, begun);
  return begun;
}

/** Brings a scene to life for the table of islands. */
export async function hydrateScene(element: HTMLElement): Promise<() => void> {
  return (await liveScene(element)).redraw;
}

/**
 * Brings a scene to life: it stays as still as it was until the reader asks.
 *
 * @param element  the scene's element, whose markup the component made
 */
async function startScene(element: HTMLElement): Promise<LiveScene> {
  const data = JSON.parse(element.dataset['scene'] ?? '') as SceneData;
  const picture = partOf(element, 'picture');
  const canvas = partOf<HTMLCanvasElement>(element, 'canvas');
  const open = partOf<HTMLButtonElement>(element, 'open');
  const buttons = makeTools(element.id, picture);
  const { divider, scrub, state, number, lens, panel } = buttons;
  panel.hidden = true;
  divider.hidden = data.sides.length < 2;
  if (data.split !== undefined) divider.value = String(data.split * 100);
  open.after(panel);
  let painted: readonly Painted[] = data.sides.map(makePainted);
  const firstOf = (): Painted => painted[0] ?? makePainted(data.sides[0] as never);
  const startSeconds = ({ side, shown }: Painted): number =>
    (side.picture + 0.01) / viewFps(side.view, shown.setting, shown.file);
  const chosen: Chosen = {
    view: firstOf().side.view,
    seconds: startSeconds(firstOf()),
    isStrips: data.starts === 'strips',
    isSlow: false,
    split: Number(divider.value) / 100,
  };
  const supply = await startFilmSupply(FULL_WIDTH, () => {
    if (isWaiting) paint();
  });
  const painter = makePainter(canvas, supply);
  let loupe: Loupe | undefined;
  let isWaiting = false;
  const clock = makeReelClock(picture, tick, say);

  const speed = (): number =>
    Math.min(chosen.isSlow ? SLOW_SPEED : 1, ...painted.map(({ side }) => fastestSpeed(side.film)));
  const safeties = () =>
    painted.map(({ shown, side }) => safePlay(shown, chosen.view, side.tone, speed()));

  function paint(): void {
    const isDone = painter.paint(painted, {
      view: chosen.view,
      seconds: chosen.seconds,
      isStrips: chosen.isStrips,
      isPlaying: clock.isPlaying,
      split: chosen.split,
      contrasts: clock.isPlaying ? safeties().map(({ contrast }) => contrast) : [],
    });
    isWaiting = !isDone;
    if (!isDone) return;
    canvas.hidden = false;
    loupe?.draw();
    number.hidden = chosen.isStrips;
    number.textContent = String(filmFrameNow());
  }

  const filmFrameNow = (): number =>
    Math.floor(chosen.seconds * firstOf().shown.setting.filmFps + 0.1) % REEL.filmFrames;

  function tick(seconds: number): void {
    chosen.seconds = (chosen.seconds + seconds * speed()) % LONGEST_SECONDS;
    paint();
    scrub.value = String(filmFrameNow());
  }

  /** Says what is shown; aloud only while it is still. */
  function say(): void {
    const isPlaying = clock.isPlaying;
    const isReduced = matchMedia('(prefers-reduced-motion: reduce)').matches;
    buttons.play.textContent = isReduced
      ? 'Play is off: reduced motion'
      : isPlaying
        ? 'Pause'
        : 'Play';
    buttons.play.setAttribute('aria-disabled', String(isReduced));
    buttons.slow.setAttribute('aria-pressed', String(chosen.isSlow));
    buttons.strips.setAttribute('aria-pressed', String(chosen.isStrips));
    buttons.loupe.setAttribute('aria-pressed', String(loupe?.isOn ?? false));
    element.dataset['is'] = isPlaying ? 'playing' : 'still';
    picture.style.setProperty('--at', `${100 * chosen.split}%`);
    state.setAttribute('aria-live', isPlaying ? 'off' : 'polite');
    scrub.value = String(filmFrameNow());
    for (const choice of panel.querySelectorAll<HTMLInputElement>('[type=radio]')) {
      choice.checked = choice.value === chosen.view;
    }
    state.textContent = sentences(isPlaying).join(' ');
    if (!isPlaying) paint();
  }

  /** A sentence or two for each side, under its name where there are two. */
  function sidesWords(isPlaying: boolean): readonly string[] {
    const swings = safeties().map((safety) => swingWords(safety, isPlaying));
    return painted.map((one, index) => {
      const side = painted.length < 2 ? '' : index === 0 ? 'Left: ' : 'Right: ';
      const isNamed = !isPlaying && !chosen.isStrips;
      const what = isNamed ? `${pictureWords(one, chosen.view, chosen.seconds)} ` : '';
      return `${side}${what}${swings[index] ?? ''}`;
    });
  }

  function sentences(isPlaying: boolean): readonly string[] {
    const sides = sidesWords(isPlaying);
    if (isPlaying) {
      const isForced = speed() < 1 && !chosen.isSlow;
      const pace = speed() < 1 ? 'A quarter of the true speed' : 'True speed';
      return [`${pace}${isForced ? ', because this fault flashes at every edge' : ''}.`, ...sides];
    }
    if (!chosen.isStrips) return sides;
    const first = pictureAt(firstOf(), chosen.view, chosen.seconds);
    return [`Pictures ${first} to ${first + STRIPS - 1} side by side, a strip of each.`, ...sides];
  }

  function step(by: number): void {
    clock.pause();
    chosen.isStrips = false;
    const one = firstOf();
    const fps = viewFps(chosen.view, one.shown.setting, one.shown.file);
    const next = Math.max(0, pictureAt(one, chosen.view, chosen.seconds) + by);
    chosen.seconds = (next + 0.01) / fps;
    say();
  }

  open.addEventListener('click', () => {
    panel.hidden = !panel.hidden;
    open.setAttribute('aria-expanded', String(!panel.hidden));
  });
  buttons.play.addEventListener('click', () => {
    if (clock.isPlaying) {
      clock.pause();
      return;
    }
    chosen.isStrips = false;
    if (loupe?.isOn === true) loupe.toggle();
    clock.play();
    say();
  });
  buttons.slow.addEventListener('click', () => {
    chosen.isSlow = !chosen.isSlow;
    say();
  });
  buttons.strips.addEventListener('click', () => {
    clock.pause();
    chosen.isStrips = !chosen.isStrips;
    say();
  });
  buttons.loupe.addEventListener('click', () => {
    clock.pause();
    void import('./loupe.ts').then(({ makeLoupe }) => {
      loupe ??= makeLoupe(picture, canvas, lens, data.loupeAt);
      loupe.toggle();
      say();
    });
  });
  for (const [button, by] of [
    [buttons.back, -1],
    [buttons.next, 1],
  ] as const) {
    button.addEventListener('click', () => {
      step(by);
    });
    // A held key must not turn single steps into flicker.
    button.addEventListener('keydown', (event) => {
      if (event.repeat) event.preventDefault();
    });
  }
  divider.addEventListener('input', () => {
    chosen.split = Number(divider.value) / 100;
    picture.style.setProperty('--at', `${divider.value}%`);
    if (!clock.isPlaying) paint();
  });
  scrub.addEventListener('input', () => {
    clock.pause();
    chosen.isStrips = false;
    chosen.seconds = (Number(scrub.value) + 0.5) / firstOf().shown.setting.filmFps;
    say();
  });
  element.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== 'radio') return;
    chosen.view = target.value as View;
    say();
  });

  element.dataset['ready'] = 'true';
  say();
  return {
    redraw: say,
    show(next) {
      clock.pause();
      painted = next.sides.map(makePainted);
      chosen.seconds = startSeconds(firstOf());
      divider.hidden = painted.length < 2;
      say();
    },
  };
}
