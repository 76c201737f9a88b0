import type { Worksheet } from '../../worksheets/machine/types.ts';
import { liveScene } from './live-scene.ts';
import { partOf, type LiveScene } from './scene-parts.ts';

/** Fetches a worksheet by its id. */
type LoadWorksheet = (id: string) => Promise<Worksheet>;

/** Has the button bring what a reader moves the scene with. */
function listen(scene: LiveScene): void {
  const open = partOf<HTMLButtonElement>(scene.element, 'open');
  const words = open.textContent;
  open.addEventListener('click', () => {
    scene.panel().then(
      (panel) => {
        open.textContent = words;
        panel.toggle();
      },
      () => {
        open.textContent = 'It could not be loaded. Try again';
      },
    );
  });
}

/** Has it show the numbers of the sheet that it belongs to, where there is one. */
async function follow(scene: LiveScene, load: LoadWorksheet | undefined): Promise<void> {
  const { follows } = scene.element.dataset;
  if (follows === undefined || load === undefined) return;
  const form = document.querySelector<HTMLElement>(`worksheet-form[data-id="${follows}"]`);
  if (form === null) throw new Error(`no sheet ${follows} beside its scene`);
  const [{ followSheet }, worksheet] = await Promise.all([
    import('./follow-sheet.ts'),
    load(follows),
  ]);
  followSheet(scene, form, worksheet);
}

/**
 * Brings a scene to life for the table of islands; asked again it is alive already.
 *
 * @param load  fetches a worksheet, for a scene that follows one
 */
export async function hydrateScene(
  element: HTMLElement,
  load?: LoadWorksheet,
): Promise<() => void> {
  const scene = await liveScene(element);
  if (element.dataset['ready'] === 'true') return scene.redraw;
  await follow(scene, load);
  listen(scene);
  // The line between two pictures lies on them from the first touch on; if it does not come, the button
  // says so when it is pressed.
  if (scene.sides.length > 1) void scene.panel().then(scene.redraw, () => undefined);
  element.dataset['ready'] = 'true';
  scene.redraw();
  return scene.redraw;
}
