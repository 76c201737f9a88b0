import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { ffprobe, runFfmpeg } from './ffmpeg.ts';
import { makeAllOnce } from './made-once.ts';
import { checksumsOf } from './picture-checksums.ts';

// Clips of moving test patterns, coded as cameras code: each picture alone, or in groups.

/** How a clip is coded: options of the coder, and the container’s ending. */
export interface Coding {
  readonly name: string;
  readonly ending: 'mp4' | 'mov' | 'mkv' | 'webm' | 'avi' | 'ts' | 'mxf';
  readonly options: readonly string[];
}

const X264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-qp', '24'];
const QUIET_X265 = ['-c:v', 'libx265', '-preset', 'ultrafast', '-tag:v', 'hvc1'];
const TAGS = [
  '-color_range',
  'tv',
  '-colorspace',
  'bt709',
  '-color_primaries',
  'bt709',
  '-color_trc',
  'bt709',
];
const TEN_422 = ['-pix_fmt', 'yuv422p10le', '-profile:v', 'high422'];

/** Codings in which every picture stands alone, and that a copy must carry over bit by bit. */
export const ALONE: readonly Coding[] = [
  {
    name: 'H.264 in MP4',
    ending: 'mp4',
    options: [...X264, '-g', '1', ...TAGS, '-pix_fmt', 'yuv420p'],
  },
  {
    name: 'H.264 in MOV',
    ending: 'mov',
    options: [...X264, '-g', '1', ...TAGS, '-pix_fmt', 'yuv420p'],
  },
  {
    name: 'H.264 10 bit 4:2:2 in MP4',
    ending: 'mp4',
    options: [...X264, '-g', '1', ...TAGS, ...TEN_422],
  },
  {
    name: 'HEVC in MP4',
    ending: 'mp4',
    options: [...QUIET_X265, '-x265-params', 'keyint=1:no-open-gop=1:log-level=error', ...TAGS],
  },
  {
    name: 'HEVC 10 bit in MOV',
    ending: 'mov',
    options: [
      ...QUIET_X265,
      ...[
        '-x265-params',
        'keyint=1:no-open-gop=1:log-level=error',
        '-pix_fmt',
        'yuv420p10le',
        ...TAGS,
      ],
    ],
  },
  {
    name: 'ProRes in MOV',
    ending: 'mov',
    options: ['-c:v', 'prores_ks', '-profile:v', '3', ...TAGS],
  },
  {
    name: 'JPEG in MOV',
    ending: 'mov',
    options: ['-c:v', 'mjpeg', '-q:v', '4', '-pix_fmt', 'yuvj420p'],
  },
  {
    name: 'JPEG in MP4',
    ending: 'mp4',
    options: ['-c:v', 'mjpeg', '-q:v', '4', '-pix_fmt', 'yuvj420p'],
  },
  {
    name: 'DNxHR in MOV',
    ending: 'mov',
    options: ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_sq', '-pix_fmt', 'yuv422p', ...TAGS],
  },
];

/** Codings of which a copy must be refused. */
export const NOT_ALONE: readonly Coding[] = [
  { name: 'closed groups', ending: 'mp4', options: [...X264, '-g', '12', '-bf', '0'] },
  { name: 'groups with B pictures', ending: 'mov', options: [...X264, '-g', '12', '-bf', '2'] },
  {
    name: 'open groups',
    ending: 'mp4',
    options: [...X264, '-x264-params', 'keyint=12:open-gop=1:bframes=2'],
  },
  {
    name: 'pictures refreshed in strips',
    ending: 'mp4',
    options: [...X264, '-x264-params', 'intra-refresh=1:keyint=10'],
  },
  { name: 'every second picture alone', ending: 'mp4', options: [...X264, '-g', '2', '-bf', '0'] },
];

export interface ClipOptions {
  readonly frames: number;
  readonly fps: string;
  readonly size?: string;
  /** More options before the coder’s, for instance sound. */
  readonly inputs?: readonly string[];
  readonly filter?: string;
}

/**
 * Writes a clip of a moving pattern in each of these codings, all in one run of the program, and gives their
 * paths back.
 */
export function writeCodedClips(
  folder: string,
  codings: readonly Coding[],
  options: ClipOptions,
): readonly string[] {
  const { frames, fps, size = '320x240', inputs = [], filter } = options;
  const reading = ['-f', 'lavfi', '-i', `testsrc2=size=${size}:rate=${fps}`, ...inputs];
  const files = codings.map((coding) => {
    const writing = [
      ...['-frames:v', String(frames), ...(filter === undefined ? [] : ['-vf', filter])],
      ...[...coding.options, '-threads', '2'],
    ];
    const path = join(folder, `${coding.name.replaceAll(/\W+/gu, '-')}.${coding.ending}`);
    return { path, writing, from: [...reading, ...writing] };
  });
  makeAllOnce(files, (missing) => {
    const outputs = missing.flatMap((at) => [...files[at]!.writing, files[at]!.path]);
    runFfmpeg([...reading, ...outputs]);
  });
  return files.map(({ path }) => path);
}

/** The same for one clip. */
export const writeCodedClip = (folder: string, coding: Coding, options: ClipOptions): string =>
  writeCodedClips(folder, [coding], options)[0]!;

/** One checksum for each decoded picture of a file. */
export const pictureChecksums = (path: string): readonly string[] =>
  checksumsOf([{ path, of: 'pictures' }])[0]!;

/** One checksum for each coded picture of a file. */
export const packetChecksums = (path: string): readonly string[] =>
  checksumsOf([{ path, of: 'packets' }])[0]!;

/** What ffprobe says of the picture stream, by name. */
export function streamFacts(path: string): Readonly<Record<string, string>> {
  const names =
    'codec_name,codec_tag_string,profile,width,height,pix_fmt,field_order,color_range,color_space,color_primaries,color_transfer,sample_aspect_ratio,r_frame_rate,avg_frame_rate,nb_frames,start_time:stream_side_data=rotation';
  const { stdout, status, stderr } = spawnSync(
    ffprobe!,
    [
      ...['-v', 'error', '-select_streams', 'v:0', '-show_entries', `stream=${names}`],
      ...['-of', 'default=noprint_wrappers=1', path],
    ],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(stderr);
  return Object.fromEntries(
    stdout
      .trim()
      .split('\n')
      .map((line) => {
        const at = line.indexOf('=');
        return [line.slice(0, at), line.slice(at + 1)];
      }),
  );
}

/** A file of the disk as a page receives it. */
export function asBlob(path: string): Blob {
  return new Blob([new Uint8Array(readFileSync(path))]);
}
