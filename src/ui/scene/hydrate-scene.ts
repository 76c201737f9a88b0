import { liveScene } from './live-scene.ts';
import { partOf, type LiveScene } from './scene-parts.ts';

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

/** Brings a scene to life for the table of islands. */
export async function hydrateScene(element: HTMLElement): Promise<() => void> {
  const scene = await liveScene(element);
  listen(scene);
  // The line between two pictures lies on them from the first touch on; if it does not come, the button
  // says so when it is pressed.
  if (scene.sides.length > 1) void scene.panel().then(scene.redraw, () => undefined);
  element.dataset['ready'] = 'true';
  scene.redraw();
  return scene.redraw;
}
