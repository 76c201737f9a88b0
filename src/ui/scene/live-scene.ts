import { viewFps } from '../../scene/camera/views.ts';
import type { SceneData } from '../../scene/scene-data.ts';
import { startFilmSupply } from './film-supply.ts';
import { makePainted, makePainter, type Painted } from './painter.ts';
import { partOf, type Chosen, type LiveScene, type Panel } from './scene-parts.ts';

/** The picture as it is drawn at most, pixels. */
const FULL_WIDTH = 640;

function startSeconds({ side, shown }: Painted): number {
  return (side.picture + 0.01) / viewFps(side.view, shown.setting, shown.file);
}

/**
 * Brings a scene to life: it stays as still as it was until the reader asks.
 *
 * @param element  the scene's element, whose markup the component made
 */
async function startScene(element: HTMLElement): Promise<LiveScene> {
  const data = JSON.parse(element.dataset['scene'] ?? '') as SceneData;
  const canvas = partOf<HTMLCanvasElement>(element, 'canvas');
  let sides = data.sides.map(makePainted);
  const [first] = sides;
  if (first === undefined) throw new Error('no side');
  const chosen: Chosen = {
    view: first.side.view,
    seconds: startSeconds(first),
    isStrips: data.starts === 'strips',
    split: data.split ?? 0.5,
  };
  const painter = makePainter(
    canvas,
    await startFilmSupply(FULL_WIDTH, () => {
      if (isWaiting) scene.paint(lastContrasts);
    }),
  );
  let isWaiting = false;
  let lastContrasts: readonly number[] = [];
  let panel: Panel | undefined;
  let panelOnItsWay: Promise<Panel> | undefined;

  const scene: LiveScene = {
    element,
    picture: partOf(element, 'picture'),
    canvas,
    data,
    chosen,
    get sides() {
      return sides;
    },
    paint(contrasts = []) {
      lastContrasts = contrasts;
      isWaiting = !painter.paint(sides, { ...chosen, isAhead: contrasts.length > 0, contrasts });
      if (isWaiting) return;
      canvas.hidden = false;
      panel?.painted();
    },
    redraw() {
      if (panel === undefined) scene.paint();
      else panel.say();
    },
    show(next) {
      sides = next.sides.map(makePainted);
      if (sides[0] !== undefined) chosen.seconds = startSeconds(sides[0]);
      panel?.changed();
      scene.redraw();
    },
    async panel() {
      panelOnItsWay ??= import('./panel.ts').then(({ makePanel }) => makePanel(scene));
      try {
        panel = await panelOnItsWay;
      } catch (error) {
        panelOnItsWay = undefined;
        throw error;
      }
      return panel;
    },
  };
  return scene;
}

const live = new WeakMap<HTMLElement, Promise<LiveScene>>();

/** Brings a scene to life once, whoever asks; after a failure it may be asked again. */
export function liveScene(element: HTMLElement): Promise<LiveScene> {
  const begun = live.get(element);
  if (begun !== undefined) return begun;
  const start = startScene(element);
  live.set(element, start);
  start.catch(() => live.delete(element));
  return start;
}
