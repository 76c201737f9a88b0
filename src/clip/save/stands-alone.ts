import { kindOfH264Unit, kindOfHevcUnit, unitsOf, type UnitKind } from './nal-units.ts';
import { isSameBytes, type CodecDescription } from './parameter-sets.ts';
import type { SaveObstacle } from './save-refusals.ts';

/** How pictures of one codec are shown to stand alone. */
export interface StandAloneRule {
  readonly codec: 'h264' | 'hevc' | 'by-definition';
  readonly description: CodecDescription | undefined;
  /** Fixed bytes at the start of each picture of a codec that stands alone by definition. */
  readonly begins?: (picture: Uint8Array) => boolean;
}

/** Why one picture is not shown to stand alone. */
export interface NotAlone {
  readonly obstacle: SaveObstacle;
  readonly why: string;
}

const isJpeg = (picture: Uint8Array): boolean => picture[0] === 0xff && picture[1] === 0xd8;
const isProRes = (picture: Uint8Array): boolean =>
  String.fromCharCode(...picture.subarray(4, 8)) === 'icpf';
/** Header of VC-3: its own length, then the version. */
const isVc3 = (picture: Uint8Array): boolean =>
  picture[0] === 0 && picture[1] === 0 && (picture[4] ?? 0) >= 1 && (picture[4] ?? 9) <= 3;
const isAnything = (picture: Uint8Array): boolean => picture.length > 0;

/** Codecs in which every picture stands alone by their definition, by their four letters. */
const ALONE_BY_DEFINITION: Readonly<Record<string, (picture: Uint8Array) => boolean>> = {
  apco: isProRes,
  apcs: isProRes,
  apcn: isProRes,
  apch: isProRes,
  ap4h: isProRes,
  ap4x: isProRes,
  AVdn: isVc3,
  AVdh: isVc3,
  jpeg: isJpeg,
  mjpa: isJpeg,
  // Uncompressed 4:2:2 of 8 and 10 bits.
  '2vuy': isAnything,
  v210: isAnything,
};

/** Rule for a codec that stands alone by definition; undefined for any other. */
export function ruleByDefinition(codecLetters: string): StandAloneRule | undefined {
  const begins = Object.hasOwn(ALONE_BY_DEFINITION, codecLetters)
    ? ALONE_BY_DEFINITION[codecLetters]
    : undefined;
  return begins === undefined
    ? undefined
    : { codec: 'by-definition', description: undefined, begins };
}

/** Rule for motion JPEG under another name, as MP4 files carry it. */
export const JPEG_RULE: StandAloneRule = {
  codec: 'by-definition',
  description: undefined,
  begins: isJpeg,
};

/** How a picture that stands alone is decoded: with the sets it carries, or with those described. */
export type DecodedBy = 'own-sets' | 'description';

/**
 * Whether one coded picture stands alone, and with what it is decoded.
 *
 * Model: every slice belongs to a picture at which decoding starts afresh, and the picture needs no
 * parameter sets but those in the sample description or its own. Marks of the container are no proof:
 * recovery points and pictures refreshed in strips are marked as well.
 *
 * @param picture  all bytes of the coded picture
 * @returns how it is decoded, or why it is not shown to stand alone
 */
export function examinePicture(picture: Uint8Array, rule: StandAloneRule): DecodedBy | NotAlone {
  if (rule.begins !== undefined) {
    if (rule.begins(picture)) return 'description';
    return { obstacle: 'not-proven', why: 'it does not begin as pictures of this codec do' };
  }
  // Without a description the pictures carry start codes, or nothing that can be proven.
  const units = unitsOf(picture, rule.description?.framing ?? 'start-codes');
  if (units === undefined || units.length === 0) {
    return { obstacle: 'not-proven', why: 'it does not divide into units' };
  }
  const kindOf: (unit: Uint8Array) => UnitKind =
    rule.codec === 'h264' ? kindOfH264Unit : kindOfHevcUnit;
  const kinds = units.map(kindOf);
  if (kinds.includes('needs-others')) {
    return { obstacle: 'few-stand-alone', why: 'it may lean on pictures before it' };
  }
  if (!kinds.includes('whole-picture')) {
    return { obstacle: 'not-proven', why: 'it holds no picture' };
  }
  return decodedBy(
    rule,
    units.filter((_, at) => kinds[at] === 'parameter-set'),
  );
}

function decodedBy(rule: StandAloneRule, own: readonly Uint8Array[]): DecodedBy | NotAlone {
  const described = rule.description?.sets ?? [];
  if (described.length > 0) {
    const isKnown = own.every((set) => described.some((known) => isSameBytes(known, set)));
    if (isKnown) return 'description';
  }
  if (holdsAllSets(rule, own)) return 'own-sets';
  return {
    obstacle: 'parameter-sets',
    why:
      described.length === 0
        ? 'the tables for decoding it lie in another picture'
        : 'the tables for decoding it change on the way',
  };
}

/** Whether a picture carries every set that is needed to decode it. */
function holdsAllSets(rule: StandAloneRule, own: readonly Uint8Array[]): boolean {
  const isH264 = rule.codec === 'h264';
  const types = own.map((unit) => (isH264 ? (unit[0] ?? 0) & 0x1f : ((unit[0] ?? 0) >> 1) & 0x3f));
  return (isH264 ? [7, 8] : [32, 33, 34]).every((type) => types.includes(type));
}
