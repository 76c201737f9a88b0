import type { SampleTable } from '../mp4/sample-table.ts';
import { SaveRefusedError } from './save-refusals.ts';
import { mayCarrySets, standAloneRule } from './stand-alone-rule.ts';
import { examinePicture, type DecodedBy, type StandAloneRule } from './stands-alone.ts';

const BEGINNING = 16;
/** Pictures asked for at once, and the stretch of the recording in which they lie at most. */
const MOST_AT_ONCE = 512;
export const STRETCH_AT_ONCE = 2 ** 21;

/**
 * Refuses a track whose own index already says that its pictures do not all stand alone.
 *
 * @throws {SaveRefusedError}
 */
export function requireAllMarked(table: SampleTable): void {
  const { standAloneCount, sampleCount } = table;
  if (standAloneCount !== sampleCount || table.hasPartialSync) {
    throw new SaveRefusedError(
      'few-stand-alone',
      `Only ${standAloneCount} of the ${sampleCount} pictures of this recording stand alone; the others hold just what changed since their neighbours.`,
    );
  }
  if (table.isReordered) {
    throw new SaveRefusedError(
      'reordered',
      'The pictures of this recording are stored in another order than they are shown in.',
    );
  }
  if (table.hiddenByEdits > 0) {
    throw new SaveRefusedError(
      'edit-list',
      `This recording was trimmed without being rewritten: ${table.hiddenByEdits} of its pictures are hidden, so numbers of frames may not mean the same everywhere.`,
    );
  }
}

/** Watches that pictures with tables of their own and pictures without are not mixed. */
export class AloneProof {
  readonly #rule: StandAloneRule;
  #decodedBy: DecodedBy | undefined;

  constructor(rule: StandAloneRule) {
    this.#rule = rule;
  }

  /** @throws {SaveRefusedError} where the picture is not shown to stand alone */
  add(cameraFrame: number, picture: Uint8Array): void {
    const found = examinePicture(picture, this.#rule);
    if (typeof found !== 'string') {
      throw new SaveRefusedError(
        found.obstacle,
        `Camera frame ${cameraFrame} is not shown to stand alone: ${found.why}.`,
      );
    }
    this.#decodedBy ??= found;
    if (this.#decodedBy !== found) {
      throw new SaveRefusedError(
        'parameter-sets',
        `Camera frame ${cameraFrame} is not shown to stand alone: the tables for decoding it change on the way.`,
      );
    }
  }
}

/** Where some coded pictures lie in a recording, or as many bytes of each as are needed. */
export interface AskedPictures {
  readonly cameraFrames: readonly number[];
  readonly offsets: readonly number[];
  readonly lengths: readonly number[];
}

/** The pictures to look at, in portions that are each read at once. */
function portionsOf(
  { offsets, sizes }: SampleTable,
  cameraFrames: readonly number[],
  mostBytes: number,
): readonly AskedPictures[] {
  const portions: { cameraFrames: number[]; offsets: number[]; lengths: number[] }[] = [];
  for (const cameraFrame of cameraFrames) {
    const from = offsets[cameraFrame] ?? 0;
    const length = Math.min(mostBytes, sizes[cameraFrame] ?? 0);
    let portion = portions.at(-1);
    const begin = portion?.offsets[0] ?? 0;
    // Of whole pictures a stretch is read in one go, with those between that are not kept.
    const isFull =
      portion?.offsets.length === MOST_AT_ONCE ||
      from < (portion?.offsets.at(-1) ?? 0) ||
      (mostBytes === Infinity && from + length - begin > STRETCH_AT_ONCE);
    if (portion === undefined || isFull) {
      portion = { cameraFrames: [], offsets: [], lengths: [] };
      portions.push(portion);
    }
    portion.cameraFrames.push(cameraFrame);
    portion.offsets.push(from);
    portion.lengths.push(length);
  }
  return portions;
}

/**
 * Proves from the pictures themselves that those named stand alone. The next pictures are already being
 * read while some are looked at.
 *
 * @param readPictures  gives the bytes of each of some coded pictures
 * @param onPictures  called after each portion; throws to stop
 * @throws {SaveRefusedError} names the first that is not shown to
 */
export async function proveAlone(
  table: SampleTable,
  cameraFrames: ArrayLike<number>,
  readPictures: (asked: AskedPictures) => Promise<readonly Uint8Array[]>,
  onPictures: (done: number, all: number) => void = () => undefined,
): Promise<void> {
  requireAllMarked(table);
  const rule = standAloneRule(table);
  const proof = new AloneProof(rule);
  const named = mayCarrySets(table.codecLetters)
    ? Array.from({ length: table.sampleCount }, (_, at) => at)
    : [...new Set(Array.from(cameraFrames))].sort((a, b) => a - b);
  // A codec that stands alone by definition is known by its first bytes.
  const portions = portionsOf(table, named, rule.begins === undefined ? Infinity : BEGINNING);
  const ask = (which: number): Promise<readonly Uint8Array[]> | undefined => {
    const portion = portions[which];
    const coming = portion === undefined ? undefined : readPictures(portion);
    // Asked for ahead: when looking at the portion before fails, nobody waits for this one.
    coming?.catch(() => undefined);
    return coming;
  };
  let done = 0;
  let coming = ask(0);
  for (const [which, portion] of portions.entries()) {
    const pictures = await coming;
    coming = ask(which + 1);
    for (const [index, cameraFrame] of portion.cameraFrames.entries())
      proof.add(cameraFrame, pictures?.[index] ?? new Uint8Array());
    done += portion.cameraFrames.length;
    onPictures(done, named.length);
  }
}
