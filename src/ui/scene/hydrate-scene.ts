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
  // The line between two pictures lies on them from the first touch on.
  if (scene.sides.length > 1) await scene.panel();
  listen(scene);
  element.dataset['ready'] = 'true';
  scene.redraw();
  return scene.redraw;
}
