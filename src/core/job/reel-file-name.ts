/** What is in a file of a reel. */
export type ReelFileKind = 'rec' | 'snd' | 'keep' | 'master' | 'deliv' | 'view' | 'hash' | 'note';

/** What the name of a file of a reel is made of, as typed. */
export interface ReelFileParts {
  /** Number of the job: `2026-014`. */
  readonly job: string;
  /** Number of the reel: `r007`, `7`; a letter after it names one of several rolls on a reel: `r007b`. */
  readonly reel: string;
  /** As far as it is known: `1974-08`, `197x`. */
  readonly date: string;
  /** Words on the box, or a shorter title. */
  readonly title: string;
  readonly take: number;
  readonly kind: ReelFileKind;
}

const LONGEST_TITLE = 24;
/** Letters that are no letter with an accent. */
const SPELT: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
  œ: 'oe',
  ł: 'l',
  đ: 'd',
  þ: 'th',
  ð: 'd',
  ä: 'ae',
  ö: 'oe',
  ü: 'ue',
  å: 'aa',
};

function plainWords(text: string): string {
  return text
    .toLowerCase()
    .normalize('NFC')
    .replaceAll(/[ßæøœłđþðäöüå]/gu, (letter) => SPELT[letter] ?? letter)
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/gu, '-')
    .replaceAll(/^-+|-+$/gu, '');
}

/**
 * The number of a reel as its files bear it: three digits and the letter of the roll, `a` where none is
 * said. Reels of one job with the same key would write over each other.
 *
 * @param reel  number as typed
 * @returns digits and a letter; a few plain letters where there is no digit
 * @source common practice, no source
 * @example reelFileKey('R 7b') // '007b'
 */
export function reelFileKey(reel: string): string {
  const [, digits, roll] = /(\d+)(?:\s*([a-z])(?![a-z]))?/iu.exec(reel) ?? [];
  if (digits === undefined) return `${plainWords(reel).slice(0, 8) || '000'}a`;
  return `${digits.replace(/^0+(?=\d)/u, '').padStart(3, '0')}${(roll ?? 'a').toLowerCase()}`;
}

/**
 * Name of a file of a reel, without its ending: the number of the reel is the key, the title only
 * helps the eye. Lower case, because some disks do not tell cases apart; the number stands before the
 * date, because `197x` sorts after 1979 and titles are alike.
 *
 * Model: job, reel, date, title and take joined by `_`; nothing but a–z, 0–9, hyphen and `_`.
 *
 * @param parts  what the name is made of
 * @returns name of at most 70 characters
 * @source common practice, no source
 */
export function reelFileName(parts: ReelFileParts): string {
  const { job, reel, date, title, take, kind } = parts;
  const jobWords = plainWords(job).slice(0, 16);
  const titleWords = plainWords(title).slice(0, LONGEST_TITLE).replace(/-+$/u, '');
  return [
    `${jobWords === '' ? 'j' : `j${jobWords}-`}r${reelFileKey(reel)}`,
    plainWords(date).slice(0, 10) || 'undated',
    titleWords === '' ? 'untitled' : titleWords,
    `t${String(take).padStart(2, '0')}`,
    kind,
  ].join('_');
}
