import { createHash } from 'node:crypto';
import { safePlay } from '../scene/camera/flash-safety.ts';
import type { BenchNumbers } from '../scene/camera/setting.ts';
import { LOOKS, sideOf, soundBeside, type LookId } from '../scene/looks/looks.ts';
import type { Look } from '../scene/looks/look.ts';
import { sideData, type SceneData } from '../scene/scene-data.ts';
import { shownOf, type Side } from '../scene/side.ts';
import { benchFromEntries } from '../ui/scene/bench-from-entries.ts';
import { findWorksheet } from '../worksheets/registry.ts';
import { allEntriesFromText } from './entries-from-text.ts';

/** What a chapter may write of a scene. */
export interface SceneProps {
  /** Entries of the bench, as in the flash match: `filmFps=18; exposureSeconds=1/50`. */
  readonly entries?: string | undefined;
  /** The second side, right of the divider: entries, or a look; `sound` is the same without the fault. */
  readonly against?: string | undefined;
  /** A fault by its id. */
  readonly look?: string | undefined;
  /** Worksheet whose numbers it shows; entries are then that one's. */
  readonly follows?: string | undefined;
}

/** A scene with its words. */
export interface Scene {
  readonly data: SceneData;
  /** Says what differs, not what is drawn. */
  readonly alternative: string;
  /** Name of its still. */
  readonly still: string;
}

/**
 * A look by its id.
 *
 * @throws {Error} that names what is known
 */
export function lookOf(id: string): Look {
  if (!Object.hasOwn(LOOKS, id)) {
    throw new Error(`no look “${id}”. Known: ${Object.keys(LOOKS).join(', ')}`);
  }
  return LOOKS[id as LookId];
}

/** The bench of a scene as a chapter writes it: entries of the flash match, or of a sheet like it. */
function benchFromText(text: string, worksheetId = 'flash-match'): BenchNumbers {
  const worksheet = findWorksheet(worksheetId);
  return benchFromEntries(worksheet, allEntriesFromText(worksheet, text));
}

/** The sheet of which the pictures are those that are kept, not those that the camera took. */
const KEEPS = 'keep-list';

const SUBJECT = 'A home movie: two scullers and a cox pass a boathouse, a child on a jetty waves.';

/** Name of the still of a scene: the same for the same picture. */
export function stillName(data: SceneData): string {
  return createHash('sha256').update(JSON.stringify(data)).digest('hex').slice(0, 12);
}

/**
 * Address of the still of a scene. While the book is written no still is built: the address carries the
 * scene, and it is drawn when it is asked for.
 */
export function stillAddress(data: SceneData, width: 320 | 640): string {
  const scene = import.meta.env.DEV ? `?scene=${encodeURIComponent(JSON.stringify(data))}` : '';
  return `/scenes/${stillName(data)}-${width}.webp${scene}`;
}

/** How the light of a side differs from strip to strip. */
export function lightWords(side: Side): string {
  const { swing } = safePlay(shownOf(side), side.view, side.tone, 1);
  if (swing < 0.0005) return 'all alike in light';
  const percent = swing < 0.1 ? (swing * 100).toFixed(1) : String(Math.round(swing * 100));
  const rows = side.bench.readoutSeconds > 0 ? ', in bands that move from strip to strip' : '';
  return `differing in light by up to ${percent}\u00a0%${rows}`;
}

function alternativeOf(
  sides: readonly Side[],
  starts: SceneData['starts'],
  look: Look | undefined,
  other: Look | undefined,
): string {
  const [first, second] = sides;
  if (first === undefined) return SUBJECT;
  if (starts === 'picture') {
    const name = look?.name ?? 'One picture';
    return other === undefined
      ? `${SUBJECT} ${name}.`
      : `${SUBJECT} Left of the line: ${name}. Right of it: ${other.name}.`;
  }
  const strips = 'Thirteen pictures in a row, an upright strip of each';
  const words =
    second === undefined
      ? `${strips}, ${lightWords(first)}.`
      : `${strips}: on the left ${lightWords(first)}, on the right ${lightWords(second)}.`;
  return `${SUBJECT} ${look === undefined ? '' : `${look.name}. `}${words}`;
}

/** Whether a look shows in strips rather than in one picture. */
const startOf = (look: Look | undefined): SceneData['starts'] =>
  look === undefined || look.wants === 'strips' ? 'strips' : 'picture';

/**
 * A scene as a chapter writes it.
 *
 * @throws {Error} that names what is known, for a look or an entry that is not
 */
export function sceneOf({ entries, against, look: id, follows }: SceneProps): Scene {
  const look = id === undefined ? undefined : lookOf(id);
  const plain: Look = { name: '', view: follows === KEEPS ? 'kept' : 'camera' };
  const text = entries ?? (follows === undefined ? undefined : '');
  const bench = text === undefined ? undefined : benchFromText(text, follows);
  const first = sideOf(look ?? plain, bench);
  const isLook = against !== undefined && Object.hasOwn(LOOKS, against);
  const other = isLook ? lookOf(against) : undefined;
  const second = secondSide();
  const starts = startOf(look);
  const sides = second === undefined ? [first] : [first, second];
  const place = look?.split === undefined ? {} : { split: look.split };
  const data: SceneData = { sides: sides.map(sideData), starts, ...place };
  return { data, alternative: alternativeOf(sides, starts, look, other), still: stillName(data) };

  function secondSide(): Side | undefined {
    if (against === undefined) return undefined;
    if (other === undefined) return sideOf(plain, benchFromText(against));
    return against === 'sound' ? soundBeside(look ?? plain) : sideOf(other, bench);
  }
}
