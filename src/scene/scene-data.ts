import { USUAL_FILE, type FileWay } from './camera/views.ts';
import { NEUTRAL, type Tone } from './camera/tone.ts';
import { SOUND_FILM, type FilmFaults } from './gate/film-faults.ts';
import type { LoupePlace } from './looks/look.ts';
import type { Side } from './side.ts';

/** A side with what is usual left out, so that a page stays light. */
export interface SideData extends Pick<Side, 'bench' | 'view' | 'picture'> {
  readonly film?: Partial<FilmFaults>;
  readonly tone?: Partial<Tone>;
  readonly file?: Partial<FileWay>;
}

/** The whole side. */
export function fullSide({ film, tone, file, ...rest }: SideData): Side {
  return {
    ...rest,
    film: { ...SOUND_FILM, ...film },
    tone: { ...NEUTRAL, ...tone },
    file: { ...USUAL_FILE, ...file },
  };
}

/** What of a thing differs from the usual one; undefined where nothing does. */
function difference<T extends object>(thing: T, usual: T): Partial<T> | undefined {
  const different = Object.entries(thing).filter(
    ([key, value]) => JSON.stringify(value) !== JSON.stringify(usual[key as keyof T]),
  );
  return different.length === 0 ? undefined : (Object.fromEntries(different) as Partial<T>);
}

/** A side with what is usual left out. */
export function sideData({ film, tone, file, ...rest }: Side): SideData {
  const parts = {
    film: difference(film, SOUND_FILM),
    tone: difference(tone, NEUTRAL),
    file: difference(file, USUAL_FILE),
  };
  const told = Object.entries(parts).filter(([, part]) => part !== undefined);
  return { ...rest, ...Object.fromEntries(told) };
}

/** What a scene on a page shows, as plain data: its markup carries it, script and build read it. */
export interface SceneData {
  /** One picture, or two either side of the divider. */
  readonly sides: readonly SideData[];
  /** Whether it starts as thirteen pictures in strips, as one picture, or as a part of it enlarged. */
  readonly starts: 'strips' | 'picture' | 'loupe';
  /** Where the loupe is held. */
  readonly loupeAt?: LoupePlace;
  /** Place of the divider, share of the width; in the middle when left out. */
  readonly split?: number;
}
