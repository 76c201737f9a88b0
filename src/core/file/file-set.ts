// Whether the folder of a reel is complete: what is kept for good, proved and kept apart.

/** Whether something is in the folder. What was not looked for counts as missing. */
export type FilePresence = 'there' | 'missing' | 'not-looked';

/** What was found of the files of one reel. */
export interface FileSetFindings {
  readonly hasSound: boolean;
  /** `film.mkv`, every film frame once. */
  readonly master: FilePresence;
  /** `recording.mov`, as the camera wrote it. */
  readonly recording: FilePresence;
  /** `taken.wav`, as it was recorded. */
  readonly takenSound: FilePresence;
  /** `film-with-sound.mkv`. */
  readonly masterWithSound: FilePresence;
  /** `viewing.mp4`. */
  readonly viewing: FilePresence;
  /** `film.framemd5`, a checksum for each picture. */
  readonly pictureChecksums: FilePresence;
  /** `checksums.txt`, a checksum for each file. */
  readonly fileChecksums: FilePresence;
  /** Sets of the files, this one included; whole, ≥ 1. */
  readonly setCount: number;
  /** Places in which they lie; whole, ≥ 1. */
  readonly placeCount: number;
  /** Whether every set was read back against its checksums. */
  readonly readBack: 'all' | 'some' | 'not-yet';
}

export type FileSetLack =
  | 'master'
  | 'recording'
  | 'taken-sound'
  | 'master-with-sound'
  | 'viewing'
  | 'picture-checksums'
  | 'file-checksums'
  | 'sets'
  | 'places'
  | 'read-back';

/** Sets that are kept, and places for them; the common rule of three and two. */
export const KEPT_SETS = 3;
export const KEPT_PLACES = 2;

/**
 * What the folder of a reel lacks, the gravest first: what cannot be made again, then what can, then
 * the checksums, then sets and places, then the proof that they read. The recording is wanted as long
 * as the master is not proven, that is without checksums of its pictures or not read back.
 *
 * Model: a list of what is kept for good; not looked for counts as missing. A silent film needs no
 * sound. With the master with sound at hand and read back, the one without may go.
 *
 * @param findings  what was found
 * @returns lacks, gravest first; empty when the set is complete
 * @source common practice, no source
 */
export function fileSetLacks(findings: FileSetFindings): readonly FileSetLack[] {
  const { hasSound, setCount, placeCount, readBack } = findings;
  const isThere = (file: FilePresence): boolean => file === 'there';
  const isReadBack = readBack === 'all';
  const hasMaster =
    isThere(findings.master) || (hasSound && isThere(findings.masterWithSound) && isReadBack);
  const isProven = hasMaster && isThere(findings.pictureChecksums) && isReadBack;
  const lacks: readonly (readonly [boolean, FileSetLack])[] = [
    [!isProven && !isThere(findings.recording), 'recording'],
    [hasSound && !isThere(findings.takenSound), 'taken-sound'],
    [!hasMaster, 'master'],
    [hasSound && !isThere(findings.masterWithSound), 'master-with-sound'],
    [!isThere(findings.viewing), 'viewing'],
    [!isThere(findings.pictureChecksums), 'picture-checksums'],
    [!isThere(findings.fileChecksums), 'file-checksums'],
    [setCount < KEPT_SETS, 'sets'],
    [placeCount < KEPT_PLACES, 'places'],
    [!isReadBack, 'read-back'],
  ];
  return lacks.flatMap(([isLacking, lack]) => (isLacking ? [lack] : []));
}
