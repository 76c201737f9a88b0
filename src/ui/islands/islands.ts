import { isOpeningKept } from './kept-opening.ts';
import { loadPicture } from './load-picture.ts';
import { loadWorksheet } from './load-worksheet.ts';

/** When a part of a page is brought to life, unless a link, a bench or the reader asks sooner. */
export type When =
  | 'touched' // at the first touch, key or change
  | 'handed' // the same, or when a file is dragged over it or pasted
  | 'near' // when it is less than a thumb's scroll from the screen
  | 'at-once';

/** Writes every field of a live part again from what it keeps. */
export type Redraw = () => void;

/** A part of a page that a script brings to life. */
export interface Island {
  readonly selector: string;
  readonly when: When;
  /** Whether it has more to show than the page as it was built, though nobody has touched it. */
  isAskedFor?(): boolean;
  /**
   * Loads its code and brings it to life; rejected where the code cannot be fetched. Gives what is to
   * be called when a browser brings the page back whole: some empty the fields meanwhile.
   */
  wake(element: HTMLElement): Promise<Redraw>;
}

/** Wakes the scenes that show the numbers of a sheet: they must not go on showing the book's. */
function wakeFollowers(id: string): void {
  for (const scene of document.querySelectorAll<HTMLElement>(`[data-follows="${id}"]`)) {
    import('../scene/hydrate-scene.ts')
      .then(({ hydrateScene }) => hydrateScene(scene, loadWorksheet))
      .catch(() => (scene.dataset['answers'] = 'old'));
  }
}

/** Every island of the book. Adding one is a row here and its markup in a component. */
export const ISLANDS: readonly Island[] = [
  {
    selector: 'worksheet-form',
    when: 'touched',
    async wake(element) {
      // All at once: on a slow line every step that waits for another costs a second.
      const { id = '', pictures = '' } = element.dataset;
      const [{ hydrateWorksheet }, worksheet] = await Promise.all([
        import('../hydrate-worksheet.tsx'),
        loadWorksheet(id),
        // Everything else waits for it; asked for now, it costs no step of its own.
        import('preact'),
        // So does a bench, where one is kept.
        isOpeningKept() ? import('../bench/sheet-opening.ts') : undefined,
        ...pictures.split(' ').map(loadPicture),
      ]);
      const redraw = hydrateWorksheet(element, worksheet);
      wakeFollowers(id);
      return redraw;
    },
  },
  {
    selector: 'front-scene',
    when: 'touched',
    async wake(element) {
      const { hydrateFront } = await import('../scene/hydrate-front.ts');
      return hydrateFront(element, loadWorksheet('flash-match'));
    },
  },
  {
    selector: 'scene-view',
    when: 'touched',
    async wake(element) {
      const { hydrateScene } = await import('../scene/hydrate-scene.ts');
      return hydrateScene(element, loadWorksheet);
    },
  },
  {
    selector: 'practice-sheet',
    when: 'touched',
    async wake(element) {
      const { hydratePractice } = await import('../practice/hydrate-practice.tsx');
      return hydratePractice(element);
    },
  },
  {
    selector: 'mixed-practice',
    when: 'touched',
    async wake(element) {
      const { startMixedPractice } = await import('../practice/start-mixed-practice.tsx');
      return startMixedPractice(element);
    },
  },
  {
    selector: 'case-practice',
    when: 'touched',
    async wake(element) {
      const { startCases } = await import('../cases/start-cases.tsx');
      return startCases(element);
    },
  },
  {
    selector: 'trainer-sheets',
    when: 'touched',
    async wake(element) {
      const { startTrainer } = await import('../cases/start-trainer.tsx');
      return startTrainer(element);
    },
  },
  {
    selector: 'recording-sheet',
    when: 'handed',
    async wake(element) {
      const { hydrateRecording } = await import('../recording/hydrate-recording.tsx');
      return hydrateRecording(element);
    },
  },
  {
    selector: 'bench-form',
    when: 'near',
    async wake(element) {
      const { hydrateBench } = await import('../bench/hydrate-bench.tsx');
      return hydrateBench(element);
    },
  },
  {
    selector: 'box-form',
    when: 'near',
    async wake(element) {
      const { hydrateBox } = await import('../box/hydrate-box.tsx');
      return hydrateBox(element);
    },
  },
  {
    selector: '[data-plan]',
    when: 'touched',
    // Its link, a bench or the reel on the table, or what was written on its lines before.
    isAskedFor: () => location.search !== '' || history.state !== null || isOpeningKept(),
    async wake(element) {
      const { hydrateGathered } = await import('../gathered/hydrate-gathered.tsx');
      return hydrateGathered(element);
    },
  },
  {
    selector: '[data-cards-tools]',
    when: 'at-once',
    async wake() {
      const { startCards } = await import('../cards/start-cards.ts');
      return startCards();
    },
  },
  {
    selector: '[data-search]',
    when: 'at-once',
    async wake(element) {
      const { hydrateSearch } = await import('../search/hydrate-search.tsx');
      return hydrateSearch(element);
    },
  },
];
