import type { PictureComponent } from '../WorksheetView.tsx';

// One chunk per picture: a page loads only those it shows.
const modules = import.meta.glob<{ readonly Picture: PictureComponent }>('../../pictures/*.tsx');

/** Fetches one picture for the page; undefined for a name that no picture has. */
export async function loadPicture(name: string): Promise<PictureComponent | undefined> {
  return (await modules[`../../pictures/${name}.tsx`]?.())?.Picture;
}
