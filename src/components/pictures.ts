import type { PictureComponent } from '../ui/WorksheetView.tsx';

const modules = import.meta.glob<{ readonly Picture: PictureComponent }>('../pictures/*.tsx', {
  eager: true,
});

/** Every picture by name, for the static render. The page script loads only those it needs. */
export const pictures: ReadonlyMap<string, PictureComponent> = new Map(
  Object.entries(modules).map(([path, { Picture }]) => [
    path.replace('../pictures/', '').replace('.tsx', ''),
    Picture,
  ]),
);
