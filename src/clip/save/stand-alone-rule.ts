import { boxesIn, bytesOfBox, type Box } from '../mp4/boxes.ts';
import type { SampleTable } from '../mp4/sample-table.ts';
import {
  readAvcDescription,
  readHevcDescription,
  type CodecDescription,
} from './parameter-sets.ts';
import { SaveRefusedError } from './save-refusals.ts';
import { JPEG_RULE, ruleByDefinition, type StandAloneRule } from './stands-alone.ts';

/** Bytes of a picture entry of a sample description before the boxes inside it begin. */
const ENTRY_FIELDS = 78;
const HEADER = 8;
/** Object type of JPEG in the stream description of an MP4 file. */
const JPEG_OBJECT = 0x6c;

function boxOfEntry(table: SampleTable, type: string): Box | undefined {
  const { view, codecEntry } = table;
  if (codecEntry.body + ENTRY_FIELDS > codecEntry.end) return undefined;
  return boxesIn(view, codecEntry.body + ENTRY_FIELDS, codecEntry.end).find(
    (box) => box.type === type,
  );
}

function contentOf(table: SampleTable, type: string): Uint8Array | undefined {
  const box = boxOfEntry(table, type);
  return box === undefined ? undefined : bytesOfBox(table.view, box).subarray(HEADER);
}

/** Object type in an `esds` box: the byte after the decoder’s tag (4) and its length. */
function objectType(esds: Uint8Array): number | undefined {
  // Version and flags, then the tag of the stream with its length and three bytes of fields.
  let at = 4;
  const skipTag = (tag: number): boolean => {
    if (esds[at] !== tag) return false;
    at += 1;
    while (((esds[at] ?? 0) & 0x80) !== 0) at += 1;
    at += 1;
    return true;
  };
  if (!skipTag(3)) return undefined;
  const flags = esds[at + 2] ?? 0;
  at += 3 + ((flags & 0x80) !== 0 ? 2 : 0) + ((flags & 0x20) !== 0 ? 2 : 0);
  if ((flags & 0x40) !== 0) at += 1 + (esds[at] ?? 0);
  return skipTag(4) ? esds[at] : undefined;
}

function described(
  content: Uint8Array | undefined,
  read: (content: Uint8Array) => CodecDescription,
): CodecDescription | undefined {
  return content === undefined ? undefined : read(content);
}

/** Letters under which sets may also stand between the pictures, so that all pictures have to be seen. */
export function mayCarrySets(codecLetters: string): boolean {
  return ['avc3', 'avc4', 'hev1'].includes(codecLetters) || /^ai\w\w$/u.test(codecLetters);
}

/**
 * How the pictures of a track are shown to stand alone.
 *
 * @throws {SaveRefusedError} where nothing is known of the codec that could show it
 */
export function standAloneRule(table: SampleTable): StandAloneRule {
  const { codecLetters } = table;
  const byDefinition = ruleByDefinition(codecLetters);
  if (byDefinition !== undefined) return byDefinition;
  if (/^(?:avc[1-4]|ai\w\w)$/u.test(codecLetters)) {
    return { codec: 'h264', description: described(contentOf(table, 'avcC'), readAvcDescription) };
  }
  if (codecLetters === 'hvc1' || codecLetters === 'hev1') {
    return { codec: 'hevc', description: described(contentOf(table, 'hvcC'), readHevcDescription) };
  }
  const stream = codecLetters === 'mp4v' ? contentOf(table, 'esds') : undefined;
  if (stream !== undefined && objectType(stream) === JPEG_OBJECT) return JPEG_RULE;
  throw new SaveRefusedError(
    'unknown-codec',
    `Nothing shows that pictures coded as “${codecLetters.trim()}” stand alone.`,
  );
}
