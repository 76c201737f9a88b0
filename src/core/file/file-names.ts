/**
 * Names of the files of one reel, in the order in which they are made. Every command of the book reads
 * and writes these names and no others, so that the output of one is the input of the next.
 */
export const FILE_NAMES = {
  /** Recording of a camera that writes fields or frames of uneven length, as it came. */
  camera: 'camera.mov',
  /** Names of the parts into which the camera cut a recording, in order. */
  parts: 'parts.txt',
  /** What the keep list picks from: the recording of a camera, or what was made of `camera.mov`. */
  recording: 'recording.mov',
  /** The recording coded anew for a browser that cannot read it: to be measured, not to be kept. */
  readable: 'to-read.mp4',
  /** Every film frame once, the right way round, lossless: the master. */
  film: 'film.mkv',
  /** Filter that picks the frames of a measured keep list. */
  keepFilter: 'keep-filter.txt',
  /** Copy of the kept frames as the camera coded them; the wrapper of the recording is added. */
  copiedFilm: 'film-copied',
  /** List of the parts of that copy, where it is made in parts. */
  partList: 'film-parts.txt',
  /** The commands for these parts as one file to run, for a POSIX shell and for the Windows prompt. */
  posixCopyScript: 'copy-film.sh',
  windowsCopyScript: 'copy-film.cmd',
  /** One picture to look at. */
  look: 'look.png',
  /** Sound as recorded, untouched. */
  taken: 'taken.wav',
  /** Sound at the right speed. */
  corrected: 'corrected.wav',
  /** Sound fitted to a film that is shown at another rate, at its own pitch. */
  fitted: 'fitted.wav',
  /** Sound at the right speed and in step with the first picture. */
  sound: 'sound.wav',
  /** The master with its sound. */
  filmWithSound: 'film-with-sound.mkv',
  /** The film with repeats, at the rate of the customer’s screen. */
  delivery: 'delivery.mkv',
  /** The copy to watch. */
  viewing: 'viewing.mp4',
  /** Time of each picture of `camera.mov`. */
  cameraTimes: 'camera-times.csv',
  /** One checksum for each picture of `camera.mov`. */
  cameraChecksums: 'camera.framemd5',
  /** The same camera file with pictures at even times. */
  evenRecording: 'recording.mkv',
  /** One checksum for each picture of the recording, turned as the master is. */
  recordingChecksums: 'recording.framemd5',
  /** One checksum for each picture of the master. */
  pictureChecksums: 'film.framemd5',
  /** One checksum for each file of the folder. */
  fileChecksums: 'checksums.txt',
  /** The whole chain of one reel as a script, for a POSIX shell and for PowerShell. */
  posixScript: 'make-reel.sh',
  powershellScript: 'make-reel.ps1',
  /** What the script did, line by line. */
  log: 'reel-log.txt',
} as const;

/** Name of a file in the chain. */
export type FileName = (typeof FILE_NAMES)[keyof typeof FILE_NAMES];
