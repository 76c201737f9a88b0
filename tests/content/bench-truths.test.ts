import { describe, expect, it } from 'vitest';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { readFiles } from '../walls/source-files.ts';

// Things that the book once had wrong about the work itself, where no number can catch them.

const chapter = (path: string): string =>
  (
    readFiles('content/chapters', ['.mdx']).find((file) => file.path.endsWith(path))?.text ?? ''
  ).replaceAll('\u00a0', ' ');

describe('base, bending and shrinkage', () => {
  it('are taken from the film and not from the leader, in chapter and sheets', () => {
    const condition = chapter('02-condition.mdx');
    for (const step of ['Find the', 'Bend the film itself', 'Measure the shrinkage at the head']) {
      const line = condition.split('\n').find((text) => text.includes(step)) ?? '';
      expect(line, step).toMatch(/past the leader|not on the leader/u);
    }
    expect(chapter('01-gauges.mdx')).toMatch(/leader/u);
    const { inputs } = findWorksheet('condition-triage');
    for (const key of ['base', 'brittleness']) {
      expect(inputs[key]?.help, key).toMatch(/leader/u);
      expect(inputs[key]?.help, key).not.toMatch(/^Try the leader/u);
    }
  });
});

/** The words in the order in which the text has them; fails where one is missing. */
function inOrder(text: string, words: readonly (string | RegExp)[]): void {
  let from = 0;
  for (const word of words) {
    const rest = text.slice(from);
    const at = typeof word === 'string' ? rest.indexOf(word) : rest.search(word);
    expect(at, `${String(word)} after place ${from}`).toBeGreaterThanOrEqual(0);
    from += at + 1;
  }
}

const section = (text: string, heading: string): string => {
  const [, after = ''] = text.split(`\n${heading}\n`);
  expect(after, heading).not.toBe('');
  return after.split(/\n#{1,3} /u)[0] ?? '';
};

describe('cleaning', () => {
  it('goes dry before wet: air, rollers, plush, and only then a moist plush', () => {
    const safety = section(chapter('03-safety.mdx'), '### Dry before wet');
    inOrder(safety, [
      '1. **Blown air',
      '2. **<Term id="particle-transfer-roller">',
      '3. **Plush',
      '4. **Moist plush',
    ]);
    const condition = section(chapter('02-condition.mdx'), '## Cleaning');
    inOrder(condition, [
      /hand bulb/u,
      /particle-transfer rollers/u,
      /Then plush/u,
      /isopropyl alcohol/u,
    ]);
  });

  it('is dry only on striped and lacquered film, wherever alcohol is named for film', () => {
    for (const path of ['02-condition.mdx', '03-safety.mdx', '05-mending.mdx']) {
      expect(chapter(path), path).toMatch(
        /striped or lacquered film[^.]*dry|without (?:a )?stripe and (?:without )?lacquer/iu,
      );
    }
    const splices = section(chapter('02-condition.mdx'), '## Splices');
    inOrder(splices, [/isopropyl alcohol/u, /striped or lacquered film use no alcohol/u]);
  });
});

describe('a match', () => {
  it('is proven with film in the gate, at head and tail of a full reel', () => {
    const speed = chapter('03-measuring-speed.mdx');
    expect(speed).toMatch(
      /speed is proven when [^.]*with film in the gate, at the head and at the tail of a full reel/u,
    );
    expect(speed).not.toMatch(/proven when [^.]*empty/u);
  });
});

describe('the way of the picture', () => {
  const lens = chapter('05-lens.mdx');

  it('is expected upside down and mirrored, flipped in the file, and checked with lettering', () => {
    inOrder(section(lens, '## Which way round the picture is'), [
      'on its head *and* mirrored',
      'Nothing is wrong: expect it',
      'turn the recording top to bottom in the file',
      'Check it with lettering',
      /Only if lettering is still wrong \*after\* the turn is the film in back to front/u,
    ]);
  });

  it('turns the streaks of a slipped blade over in the raw recording', () => {
    const rows = section(
      chapter('01-shutter-blades.mdx'),
      '## When the blade is too narrow or late',
    )
      .split('\n')
      .map((line) => line.split('|').map((cell) => cell.trim()));
    const late = rows.find((cells) => cells[3] === 'comes too late');
    const early = rows.find((cells) => cells[3] === 'comes too early');
    expect(late?.slice(1, 3)).toEqual(['streaks above bright parts', 'streaks below them']);
    expect(early?.slice(1, 3)).toEqual(['streaks below bright parts', 'streaks above them']);
    // The core smears upwards for a blade that comes late, in the picture with heads up.
    const sheet = findWorksheet('travel-ghost');
    const said = (bladeLagDegrees: string): string => {
      const { outcome } = evaluate(sheet, fillEntries(sheet.inputs, { bladeLagDegrees }));
      return outcome?.verdict.sentence ?? '';
    };
    expect(said('10')).toMatch(/upwards/u);
    expect(said('-10')).toMatch(/downwards/u);
  });
});

describe('a running machine with film in it', () => {
  it('is switched off lamp first, wherever the motor is to be stopped', () => {
    const files = [
      ...readFiles('content', ['.mdx', '.yaml']),
      ...readFiles('src/worksheets', ['.ts']),
      ...readFiles('src/drawings', ['.ts']),
    ].filter(({ path }) => !path.endsWith('editions.yaml'));
    const told = files.flatMap(({ path, text }) =>
      text
        .split('\n')
        .filter((line) =>
          /stop the motor|switch the motor off|then (?:the )?motor|motor off,/iu.test(line),
        )
        .map((line) => ({ path, line })),
    );
    expect(told.length).toBeGreaterThan(5);
    // A loop is set, and a knob is turned, on a machine that stands already.
    const standing = /setting the loop on moving film|knob with which/iu;
    for (const { path, line } of told) {
      if (!standing.test(line)) expect(line, path).toMatch(/lamp.*motor/iu);
    }
  });

  it('runs weak film slowly only by cool light, and names the heat flap', () => {
    const condition = chapter('02-condition.mdx');
    expect(condition).toMatch(/\| run slowly, with care \|[^|]*only by cool light/u);
    expect(condition).toMatch(/Below about 12 to 14 frames\/s many machines drop a heat flap/u);
  });

  it('gets no clap in front of its gate', () => {
    const sound = chapter('03-sound.mdx');
    expect(sound).toMatch(/Nobody claps in front of a gate/u);
    expect(findWorksheet('sound-offset').cautions.join(' ')).toMatch(
      /No clap in front of the gate/u,
    );
    for (const line of sound.split('\n')) {
      if (/\bclap\b/iu.test(line)) expect(line).not.toMatch(/clap your hands/iu);
    }
  });
});

describe('a global shutter', () => {
  it('is never proven by a picture without bands', () => {
    expect(chapter('02-matching.mdx')).toMatch(
      /Taking a picture without bands for a global shutter/u,
    );
    expect(chapter('01-whole-frames.mdx')).toMatch(
      /If you see no bands, you have not proved a global shutter/u,
    );
    expect(findWorksheet('flash-match').inputs['readoutSeconds']?.help).toMatch(
      /a picture without bands does not prove one/u,
    );
  });
});

describe('limits for vapours', () => {
  it('name who publishes them, and call 500 ppm what it is', () => {
    const safety = chapter('03-safety.mdx');
    expect(safety).not.toMatch(/\bthe law (?:says|sets|allows)|legal limit/iu);
    for (const line of safety.split('\n')) {
      if (line.includes('500 ppm')) expect(line).toMatch(/not in force/u);
    }
    expect(safety).toMatch(/MAK list, Germany, 2018/u);
    expect(safety).toMatch(/this book takes the strictest/u);
  });
});

describe('copies', () => {
  it('are three sets in every chapter and table', () => {
    const files = readFiles('content', ['.mdx', '.yaml']).filter(
      ({ path }) => !path.endsWith('editions.yaml'),
    );
    for (const { path, text } of files) {
      expect(text, path).not.toMatch(/\b(?:two|2) copies\b|\btwo sets of (?:the )?files/iu);
    }
    const tables = files.find(({ path }) => path.endsWith('tables.yaml'))?.text ?? '';
    const copies = [...tables.matchAll(/copies: '(\d+)'/gu)].map(([, count]) => count);
    expect(copies).toEqual(['3']);
    for (const path of ['04-files.mdx', '01-options.mdx', '02-time-and-quotation.mdx']) {
      expect(chapter(path), path).toMatch(/three sets/iu);
    }
    expect(chapter('04-files.mdx')).toMatch(/Never before the master is \*proven\*/u);
  });
});

describe('the open fraction', () => {
  it('is told before a sheet asks for it', () => {
    let isTold = false;
    let asked = 0;
    const paths = [...readFiles('content/chapters', ['.mdx'])].sort((a, b) =>
      a.path < b.path ? -1 : 1,
    );
    for (const { path, text } of paths) {
      for (const [found, id] of text.matchAll(
        /<Term id="open-fraction">|<Worksheet id="([^"]+)"/gu,
      )) {
        if (id === undefined) isTold = true;
        else if (Object.hasOwn(findWorksheet(id).inputs, 'openPercent')) {
          asked += 1;
          expect(isTold, `${path}: ${found}`).toBe(true);
        }
      }
    }
    expect(asked).toBeGreaterThan(2);
  });
});

describe('a formula', () => {
  it('stands beside the meaning of its letters', () => {
    let looked = 0;
    const bare = readFiles('content/chapters', ['.mdx']).flatMap(({ path, text }) =>
      [...text.matchAll(/^<Formula tex="[^"]*" \/>$/gmu)].flatMap((found) => {
        looked += 1;
        const around = text.slice(Math.max(0, found.index - 500), found.index + 900);
        return /\*[A-Za-zα-ω]\*|In words|\*[A-Za-z]<sub>/u.test(around)
          ? []
          : [`${path}: ${found[0]}`];
      }),
    );
    expect(bare).toEqual([]);
    expect(looked).toBeGreaterThan(5);
  });
});

describe('the English of the book', () => {
  it.each([/\breckon/iu, /\bwade\b/iu, /shall sound/iu, /what lacks/iu, /does not hold for/iu])(
    'does without %s',
    (phrase) => {
      const files = [
        ...readFiles('content', ['.mdx', '.yaml']),
        ...readFiles('src/worksheets', ['.ts']),
      ];
      expect(files.length).toBeGreaterThan(100);
      const found = files
        .filter(({ path }) => !path.endsWith('editions.yaml') && !path.endsWith('sources.yaml'))
        .flatMap(({ path, text }) =>
          text
            .split('\n')
            .filter((line) => phrase.test(line))
            .map((line) => `${path}: ${line.trim().slice(0, 80)}`),
        );
      expect(found).toEqual([]);
    },
  );
});
