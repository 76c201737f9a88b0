// More files that readers may drop and no browser reads: each gets a sentence of its own, and the page
// goes on. The first kinds are in recording-files.spec.ts.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import { runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';
import { serveClipPage, withFile, type ClipPage } from './clip-page/built-clip-page.ts';

test.skip(!runsWholeChain, 'SKIPPED: needs ffmpeg 5 or later, with ffprobe');
test.describe.configure({ mode: 'default', timeout: 180_000 });

let served: ClipPage;
let folder: string;
let page: Page;
test.beforeAll(async ({ browser }) => {
  folder = mkdtempSync(join(tmpdir(), 'recording-refusals-'));
  served = await serveClipPage();
  page = await browser.newPage();
  await page.goto(served.address);
});
test.afterAll(async () => {
  await page.close();
  await served.stop();
  rmSync(folder, { recursive: true, force: true });
});

interface Refused {
  readonly kind: string;
  readonly refusal?: {
    readonly obstacle: string;
    readonly sentence: string;
    readonly advice: string;
  };
}

/** Options of the coder for each file that is coded. */
const codings = new Map<string, readonly string[]>();
let areCoded = false;

/** All of them, from a second of the same moving pattern, in one run of the coder. */
function codeAll(): void {
  const source = ['-f', 'lavfi', '-i', 'testsrc2=size=352x288:rate=25'];
  const files = [...codings].flatMap(([name, options]) => ['-t', '1', ...options, name]);
  runFfmpeg([...source, ...files], folder);
  areCoded = true;
}

/** A second of a moving pattern, coded in some way. */
function coded(name: string, ...options: readonly string[]): () => string {
  codings.set(name, options);
  return () => {
    if (!areCoded) codeAll();
    return join(folder, name);
  };
}

const written = (name: string, bytes: Buffer): string => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};

const box = (type: string, ...parts: readonly Buffer[]): Buffer => {
  const body = Buffer.concat(parts);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(8 + body.length, 0);
  head.write(type, 4, 'latin1');
  return Buffer.concat([head, body]);
};
const FILE_TYPE = box('ftyp', Buffer.from('isom\x00\x00\x02\x00isomiso2mp41', 'latin1'));

const X264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];

const goodFile = coded('good.mp4', ...X264);

/** A good file with something done to its bytes. */
function spoilt(name: string, change: (bytes: Buffer) => Buffer): () => string {
  return () => written(name, change(readFileSync(goodFile())));
}

interface BadFile {
  readonly name: string;
  readonly make: () => string;
  readonly says: RegExp;
}

const CODINGS: readonly BadFile[] = [
  {
    name: 'MPEG-4 Part 2',
    make: coded('part2.mp4', '-c:v', 'mpeg4'),
    says: /coded as MPEG-4 Part 2 or motion JPEG/u,
  },
  {
    name: 'DV',
    make: coded('dv.mov', '-vf', 'scale=720:576', '-c:v', 'dvvideo', '-pix_fmt', 'yuv420p'),
    says: /coded as DV/u,
  },
  {
    name: 'uncompressed, 10 bit',
    make: coded('raw.mov', '-c:v', 'v210'),
    says: /coded as uncompressed video/u,
  },
  {
    name: 'animation',
    make: coded('rle.mov', '-c:v', 'qtrle'),
    says: /coded as an old kind of QuickTime video/u,
  },
  {
    name: 'the master of this book',
    make: coded('film.mkv', '-c:v', 'ffv1', '-level', '3'),
    says: /coded as FFV1/u,
  },
  {
    name: 'JPEG 2000',
    make: coded('j2k.mkv', '-c:v', 'jpeg2000'),
    says: /coded as JPEG 2000/u,
  },
  {
    name: 'MPEG-2 in a transport stream',
    make: coded('mpeg2.ts', '-c:v', 'mpeg2video'),
    says: /transport stream are coded neither .* most often MPEG-2/u,
  },
  {
    name: 'MPEG-1',
    make: coded('mpeg1.mkv', '-c:v', 'mpeg1video'),
    says: /coded as MPEG-1/u,
  },
  {
    name: 'protected',
    make: coded(
      'protected.mp4',
      ...X264,
      ...['-encryption_scheme', 'cenc-aes-ctr'],
      ...['-encryption_key', '00112233445566778899aabbccddeeff'],
      ...['-encryption_kid', '112233445566778899aabbccddeeff00'],
    ),
    says: /protected|encrypted/u,
  },
];

const CONTAINERS: readonly BadFile[] = [
  { name: 'a DVD', make: coded('a.vob', '-c:v', 'mpeg2video'), says: /MPEG program stream/u },
  { name: 'Windows Media', make: coded('a.wmv', '-c:v', 'wmv2'), says: /is Windows Media/u },
  { name: 'Flash', make: coded('a.flv', '-c:v', 'flv1'), says: /is Flash video/u },
  { name: 'Ogg', make: coded('a.ogv', '-c:v', 'libtheora'), says: /is Ogg/u },
  { name: 'bare H.264', make: coded('a.h264', ...X264), says: /without a container/u },
  { name: 'DV without container', make: coded('a.dv', '-target', 'pal-dv'), says: /is DV/u },
  {
    name: 'a picture',
    make: coded('a.png', '-frames:v', '1'),
    says: /is a picture, and no video recording/u,
  },
  {
    name: 'a sound file',
    make: () => {
      const path = join(folder, 'a.wav');
      runFfmpeg(['-f', 'lavfi', '-i', 'sine=duration=1', path]);
      return path;
    },
    says: /is a sound file, without pictures/u,
  },
  {
    name: 'an archive',
    make: () =>
      written('a.zip', Buffer.concat([Buffer.from('PK\u0003\u0004'), Buffer.alloc(900, 7)])),
    says: /is a ZIP archive/u,
  },
];

const HOSTILE: readonly BadFile[] = [
  {
    name: 'a box as long as the sky',
    make: () => {
      const head = Buffer.from('\x00\x00\x00\x01moov', 'latin1');
      const long = Buffer.alloc(8, 0xff);
      long[0] = 0x7f;
      return written('sky.mp4', Buffer.concat([FILE_TYPE, head, long, Buffer.alloc(4000, 1)]));
    },
    says: /damaged|cut off/u,
  },
  {
    name: 'boxes in boxes in boxes',
    make: () => {
      const depth = 20_000;
      // Eight bytes of head for each box, then those of the innermost one.
      const boxes = Buffer.alloc(8 * depth + 8 + 16);
      for (let at = 0; at <= 8 * depth; at += 8) {
        boxes.writeUInt32BE(boxes.length - at, at);
        boxes.write('moov', at + 4, 'latin1');
      }
      return written('nested.mp4', Buffer.concat([FILE_TYPE, boxes]));
    },
    says: /damaged|cut off/u,
  },
  {
    name: 'a count of four thousand million pictures',
    make: spoilt('many.mp4', (bytes) => {
      bytes.writeUInt32BE(0xff_ff_ff_f0, bytes.indexOf('stsz') + 12);
      bytes.writeUInt32BE(0xff_ff_ff_f0, bytes.indexOf('stts') + 12);
      return bytes;
    }),
    says: /damaged|cut off/u,
  },
  {
    name: 'pictures said to lie far behind the end of the file',
    make: spoilt('behind.mp4', (bytes) => {
      const at = bytes.indexOf('stco');
      for (let place = at + 12; place < at + 12 + 4; place += 4)
        bytes.writeUInt32BE(0xf0_00_00_00, place);
      return bytes;
    }),
    says: /damaged|cut off/u,
  },
  {
    name: 'pictures of no size',
    make: spoilt('nothing.mp4', (bytes) => {
      const entry = bytes.indexOf('avc1', bytes.indexOf('stsd'));
      bytes.writeUInt32BE(0, entry + 28);
      return bytes;
    }),
    says: /pictures without width or height/u,
  },
  {
    name: 'nothing but noise behind a good beginning',
    make: () => {
      const noise = Buffer.from(
        Uint8Array.from({ length: 60_000 }, (_, at) => (at * at * 31 + at * 7) % 256),
      );
      return written(
        'noise.mkv',
        Buffer.concat([Buffer.from([0x1a, 0x45, 0xdf, 0xa3, 0x93]), noise]),
      );
    },
    says: /damaged|cut off|no video recording/u,
  },
];

for (const [what, files] of [
  ['coding', CODINGS],
  ['container', CONTAINERS],
  ['hostile file', HOSTILE],
] as const) {
  test(`says of each ${what} what it is, and goes on`, async () => {
    const faults: string[] = [];
    const noteFault = ({ message }: Error): void => {
      faults.push(message);
    };
    page.on('pageerror', noteFault);
    const sentences: string[] = [];
    for (const { name, make, says } of files) {
      await test.step(name, async () => {
        const told = await withFile<Refused>(page, make(), 'read', { want: 'film' });
        const { sentence = `${told.kind}, not refused`, advice = '' } = told.refusal ?? {};
        expect.soft(sentence, name).toMatch(says);
        expect.soft(advice, name).not.toBe('');
        sentences.push(sentence);
      });
    }
    if (what !== 'hostile file') expect(new Set(sentences).size).toBe(files.length);
    const good = await withFile<{ readonly frameCount: number }>(page, goodFile(), 'read', {
      want: 'gate',
    });
    expect(good.frameCount).toBe(25);
    expect(faults).toEqual([]);
    page.off('pageerror', noteFault);
  });
}
