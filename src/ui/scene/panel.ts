import {
  fastestSpeed,
  safePlay,
  SLOW_SPEED,
  type SafePlay,
} from '../../scene/camera/flash-safety.ts';
import { viewFps, type View } from '../../scene/camera/views.ts';
import { REEL } from '../../scene/drawing/reel.ts';
import { partOf, type LiveScene, type Panel } from './scene-parts.ts';
import type { Loupe } from './loupe.ts';
import { pictureAt, type Painted } from './painter.ts';
import { makeReelClock } from './reel-clock.ts';
import { sceneWords } from './state-words.ts';
import { makeTools } from './tools.ts';

/** After so long the reel starts again, so that no number grows without end; whole loops. */
const LONGEST_SECONDS = 600;

/** Film frames between two places of the slider while the reel runs. */
const SLIDER_STEP = 4;

/** Puts everything by which a reader moves a scene on the page, shut, and makes it work. */
export function makePanel(scene: LiveScene): Panel {
  const { element, picture, canvas, chosen, data } = scene;
  const open = partOf<HTMLButtonElement>(element, 'open');
  const tools = makeTools(element.id, picture);
  const { divider, scrub, state, number, wheel, lens, panel } = tools;
  panel.hidden = true;
  divider.hidden = data.sides.length < 2;
  divider.value = String(chosen.split * 100);
  open.after(panel);
  let isSlow = false;
  let loupe: Loupe | undefined;
  const clock = makeReelClock(picture, tick, say);
  const reduced = matchMedia('(prefers-reduced-motion: reduce)');

  const firstOf = (): Painted => scene.sides[0] as Painted;
  const speed = (): number =>
    Math.min(isSlow ? SLOW_SPEED : 1, ...scene.sides.map(({ side }) => fastestSpeed(side.film)));
  /** Counted where something is chosen anew, not for each of sixty pictures a second. */
  let safeties: readonly SafePlay[] = [];
  const filmFrameNow = (): number =>
    Math.floor(chosen.seconds * firstOf().shown.setting.filmFps + 0.1) % REEL.filmFrames;

  function paint(): void {
    scene.paint(clock.isPlaying ? safeties.map(({ contrast }) => contrast) : []);
  }

  function tick(seconds: number): void {
    chosen.seconds = (chosen.seconds + seconds * speed()) % LONGEST_SECONDS;
    paint();
  }

  /** Says what is shown; aloud only while it is still. */
  function say(): void {
    const { isPlaying } = clock;
    const pace = speed();
    safeties = scene.sides.map(({ shown, side }) => safePlay(shown, chosen.view, side.tone, pace));
    const words = isPlaying ? 'Pause' : 'Play';
    tools.play.textContent = reduced.matches ? 'Play is off: reduced motion' : words;
    tools.play.setAttribute('aria-disabled', String(reduced.matches));
    for (const [button, isOn] of [
      [tools.slow, isSlow],
      [tools.strips, chosen.isStrips],
      [tools.loupe, loupe?.isOn ?? false],
    ] as const) {
      button.setAttribute('aria-pressed', String(isOn));
    }
    element.dataset['is'] = isPlaying ? 'playing' : 'still';
    picture.style.setProperty('--at', `${100 * chosen.split}%`);
    state.setAttribute('aria-live', isPlaying ? 'off' : 'polite');
    for (const choice of panel.querySelectorAll<HTMLInputElement>('[type=radio]')) {
      choice.checked = choice.value === chosen.view;
    }
    state.textContent = sceneWords(scene.sides, chosen, safeties, {
      isPlaying,
      isSlow: pace < 1,
      isForced: pace < 1 && !isSlow,
    });
    if (!isPlaying) paint();
  }

  /** Stops, and shows one whole picture. */
  function showOne(): void {
    clock.pause();
    chosen.isStrips = false;
  }

  function step(by: number): void {
    showOne();
    const { shown } = firstOf();
    const next = Math.max(0, pictureAt(firstOf(), chosen.view, chosen.seconds) + by);
    chosen.seconds = (next + 0.01) / viewFps(chosen.view, shown.setting, shown.file);
    say();
  }

  const pressed: readonly (readonly [HTMLButtonElement, () => void])[] = [
    [
      tools.play,
      () => {
        if (clock.isPlaying) {
          clock.pause();
          return;
        }
        chosen.isStrips = false;
        if (loupe?.isOn === true) loupe.toggle();
        clock.play();
      },
    ],
    [tools.slow, () => (isSlow = !isSlow)],
    [
      tools.strips,
      () => {
        clock.pause();
        chosen.isStrips = !chosen.isStrips;
      },
    ],
  ];
  for (const [button, act] of pressed) {
    button.addEventListener('click', () => {
      act();
      say();
    });
  }
  tools.loupe.addEventListener('click', () => {
    clock.pause();
    void import('./loupe.ts').then(({ makeLoupe }) => {
      loupe ??= makeLoupe(picture, canvas, [lens, tools.loupe], data.loupeAt);
      loupe.toggle();
      say();
    });
  });
  for (const [button, by] of [
    [tools.back, -1],
    [tools.next, 1],
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
    showOne();
    chosen.seconds = (Number(scrub.value) + 0.5) / firstOf().shown.setting.filmFps;
    say();
  });
  panel.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== 'radio') return;
    chosen.view = target.value as View;
    say();
  });

  return {
    say,
    toggle() {
      panel.hidden = !panel.hidden;
      open.setAttribute('aria-expanded', String(!panel.hidden));
      say();
    },
    painted() {
      loupe?.draw();
      number.hidden = chosen.isStrips;
      const filmFrame = filmFrameNow();
      wheel.style.translate = `0 -${filmFrame}lh`;
      // A move of the slider costs a layout.
      if (!clock.isPlaying || filmFrame % SLIDER_STEP === 0) scrub.value = String(filmFrame);
    },
    changed() {
      clock.pause();
      divider.hidden = scene.sides.length < 2;
    },
  };
}
