import type { SampleTable } from '../mp4/sample-table.ts';
import { SaveRefusedError } from './save-refusals.ts';
import { mayCarrySets, standAloneRule } from './stand-alone-rule.ts';
import { examinePicture, type DecodedBy, type StandAloneRule } from './stands-alone.ts';

const BEGINNING = 16;
/** Pictures asked for at once: a card answers slowly, and a few large pictures fit into memory. */
const ASKED_AT_ONCE = 8;

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

/**
 * Proves from the pictures themselves that those named stand alone.
 *
 * @param readPicture  gives the bytes of a coded picture, all of them or so many from the first
 * @param onPicture  called after each; throws to stop
 * @throws {SaveRefusedError} names the first that is not shown to
 */
export async function proveAlone(
  table: SampleTable,
  cameraFrames: ArrayLike<number>,
  readPicture: (cameraFrame: number, most?: number) => Promise<Uint8Array>,
  onPicture: (done: number, all: number) => void = () => undefined,
): Promise<void> {
  requireAllMarked(table);
  const rule = standAloneRule(table);
  const proof = new AloneProof(rule);
  // A codec that stands alone by definition is known by its first bytes.
  const most = rule.begins === undefined ? undefined : BEGINNING;
  const named = mayCarrySets(table.codecLetters)
    ? Array.from({ length: table.sampleCount }, (_, at) => at)
    : [...new Set(Array.from(cameraFrames))].sort((a, b) => a - b);
  for (let from = 0; from < named.length; from += ASKED_AT_ONCE) {
    const asked = named.slice(from, from + ASKED_AT_ONCE);
    const pictures = await Promise.all(asked.map((frame) => readPicture(frame, most)));
    for (const [at, cameraFrame] of asked.entries()) {
      proof.add(cameraFrame, pictures[at] ?? new Uint8Array());
      onPicture(from + at + 1, named.length);
    }
  }
}
