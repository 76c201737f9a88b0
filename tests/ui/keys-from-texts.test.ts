import { afterEach, describe, expect, it } from 'vitest';
import { entriesFromText } from '../../src/book/entries-from-text.ts';
import { parseFileText } from '../../src/ui/bench/bench-file.ts';
import { benchOverlay } from '../../src/ui/bench/bench-entries.ts';
import { benchMessage } from '../../src/ui/bench/BenchFields.tsx';
import { benchLink, parseBenchLink } from '../../src/ui/bench/bench-link.ts';
import { takeOffer } from '../../src/ui/bench/bench-edits.ts';
import { parseBenchState } from '../../src/ui/bench/bench-schema.ts';
import { EMPTY_BENCH } from '../../src/ui/bench/bench-state.ts';
import { answersAsText } from '../../src/ui/answers-as-text.ts';
import { answersAsCsv } from '../../src/ui/files/answers-as-files.ts';
import { addressFault, entriesFromQuery, permalink } from '../../src/ui/permalink.ts';
import { textOf } from '../../src/ui/file-text.ts';
import { entryText } from '../../src/worksheets/machine/entry-text.ts';
import { LINK_CODES } from '../../src/worksheets/bench/bench-inputs.ts';
import { STORED_FIELDS } from '../../src/worksheets/machine/bench-fields.ts';
import { evaluate, fillEntries, parseEntry } from '../../src/worksheets/machine/evaluate.ts';
import type { Outcome } from '../../src/worksheets/machine/types.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';

/** An outcome with the texts of its files, those that are fetched first among them. */
async function withTexts(outcome: Outcome | undefined): Promise<unknown> {
  const texts = (outcome?.files ?? []).map(textOf);
  return { ...outcome, files: await Promise.all(texts) };
}

/** Names that every object knows, and what a careless look-up would find under them. */
const INHERITED = [
  ...Object.getOwnPropertyNames(Object.prototype),
  ...['prototype', 'call', 'apply'],
];

const untouched = JSON.stringify(Object.getOwnPropertyNames(Object.prototype));
const codes = ['pg', 'pf', 'pn', 'pk', 'ps', 'pa', 'pz', 'po', 'pt', 'cf', 'cu', 'cr', 'ce'];
const moreCodes = ['cx', 'ct', 'cw', 'cp', 'rg', 'rf', 'rl', 'cl', 'rn', 'm', 'n', 'q', 'b'];

afterEach(() => {
  expect(JSON.stringify(Object.getOwnPropertyNames(Object.prototype))).toBe(untouched);
  expect(Object.keys({})).toEqual([]);
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
});

it('has names to try, “__proto__” among them', () => {
  expect(INHERITED).toContain('__proto__');
  expect(INHERITED).toContain('constructor');
  expect(INHERITED.length).toBeGreaterThan(12);
});

describe.each([...worksheets.values()])('worksheet $id', (worksheet) => {
  const inputs = worksheet.inputs;

  it('refuses such a name in each field of a link, and shows it as typed', () => {
    for (const name of INHERITED) {
      for (const [key, spec] of Object.entries(inputs)) {
        const query = new URLSearchParams({ w: 'x', [key]: name }).toString();
        const entries = fillEntries(inputs, entriesFromQuery(query, 'x', inputs) ?? {});
        expect(entries[key]).toBe(name);
        // A component can show a text; an object in its place would take the page down.
        expect(entryText(spec, name)).toBe(name);
        // A reel may be called anything.
        if (spec.kind === 'text') continue;
        const { messages, outcome } = evaluate(worksheet, entries);
        expect([key, name, outcome]).toEqual([key, name, undefined]);
        expect([key, name, typeof messages[key]]).toEqual([key, name, 'string']);
        const read = parseEntry(spec, name);
        expect(read.ok).toBe(false);
      }
    }
  });

  it('passes over such a name as a key of a link, and says so', () => {
    for (const name of INHERITED) {
      const query = `w=x&${name}=18&${encodeURIComponent(`${name}[polluted]`)}=1`;
      expect(entriesFromQuery(query, 'x', inputs)).toEqual({});
      const fault = addressFault(query, new Map([['x', inputs]]));
      expect(fault).toContain(`“${name}”`);
      expect(entriesFromQuery(`w=${name}`, 'x', inputs)).toBeUndefined();
      expect(addressFault(`w=${name}`, new Map([['x', inputs]]))).toContain('not on this page');
    }
  });

  it('is not changed by entries that carry such names', async () => {
    const entries = fillEntries(inputs, {});
    const carrying = JSON.parse(
      `{"__proto__":{"polluted":"1","filmFps":"1"},"constructor":"2","toString":"3"}`,
    ) as Record<string, string>;
    expect(fillEntries(inputs, carrying)).toEqual(entries);
    const { outcome } = evaluate(worksheet, { ...carrying, ...entries });
    expect(await withTexts(outcome)).toEqual(await withTexts(evaluate(worksheet, entries).outcome));
    if (outcome === undefined) throw new Error('the defaults give no outcome');
    expect(answersAsCsv(worksheet, entries, outcome)).not.toContain('polluted');
    expect(answersAsText(worksheet, entries, outcome)).not.toContain('polluted');
  });

  it('refuses such a name as a key in a chapter', () => {
    for (const name of INHERITED) {
      expect(() => entriesFromText(worksheet, `${name}=1`)).toThrow(/Known inputs/u);
    }
  });
});

describe('the registry', () => {
  it('knows no worksheet of such a name', () => {
    for (const name of INHERITED) expect(() => findWorksheet(name)).toThrow(/Known:/u);
  });
});

/** Prices and times never travel in a link. */
const linkedFields = [...LINK_CODES.keys()];

describe('a bench', () => {
  it('from a link with such a text in every field is kept as typed and refused field by field', () => {
    for (const name of INHERITED) {
      const parts = [...codes, ...moreCodes].map((code) => [code, code === 'b' ? '1' : name]);
      const reading = parseBenchLink(`#${new URLSearchParams(parts).toString()}`);
      if (reading?.ok !== true) throw new Error('the link was not read');
      const state = takeOffer(EMPTY_BENCH, reading.offer);
      expect(reading.offer.region).toBe('');
      const texts = { ...state.benches[0]?.entries, ...state.reels[0]?.entries };
      expect(Object.keys(texts).sort()).toEqual([...linkedFields].sort());
      for (const field of linkedFields)
        expect(benchMessage(field, texts)).toEqual(expect.any(String));
      for (const worksheet of worksheets.values()) {
        expect(benchOverlay(worksheet, {}, state)?.entries ?? {}).toEqual({});
      }
      expect(parseBenchLink(new URL(benchLink(state), 'https://example.org').hash)).toMatchObject({
        ok: true,
      });
    }
  });

  it('from a link with such a code says that it is not known', () => {
    for (const name of INHERITED) {
      const reading = parseBenchLink(`#b=1&pf=18&${name}=24&${name}.x=1`);
      expect(reading).toMatchObject({ ok: true });
      expect(reading?.ok === true && reading.faults.join(' ')).toContain(`“${name}” is not known`);
    }
  });

  it('from a file with such a key is refused, or names the key and goes on', () => {
    for (const name of INHERITED) {
      const places = [
        `{"version":1,"${name}":{"polluted":1},"benches":[{"name":"A","entries":{"projector.filmFps":"18"}}]}`,
        `{"version":1,"benches":[{"name":"A","${name}":{"polluted":1},"entries":{"projector.filmFps":"18"}}]}`,
        `{"version":1,"benches":[{"name":"A","entries":{"projector.filmFps":"18","${name}":"1"}}]}`,
      ];
      for (const text of places) {
        const reading = parseFileText(text);
        const said = reading.ok ? reading.faults.join(' ') : reading.reason;
        expect([text, said]).toEqual([text, expect.stringContaining(name)]);
        const stored = parseBenchState(JSON.parse(text) as Record<string, unknown>);
        expect(stored.faults.join(' ')).toContain(name);
        expect(stored.state.benches[0]?.entries).toEqual({ 'projector.filmFps': '18' });
      }
    }
  });

  it('from a file with such a text in every field gives it to no worksheet', () => {
    for (const name of INHERITED) {
      const fields = (isReel: boolean) =>
        Object.fromEntries(
          STORED_FIELDS.filter((field) => field.startsWith('reel.') === isReel).map((field) => [
            field,
            name,
          ]),
        );
      const file = {
        version: 1,
        benches: [{ name, entries: fields(false) }],
        reels: [{ name, entries: fields(true) }],
        region: name,
        units: name,
      };
      const reading = parseFileText(JSON.stringify(file));
      if (!reading.ok) throw new Error(reading.reason);
      expect(reading.state).toMatchObject({ region: '', units: 'metric' });
      for (const worksheet of worksheets.values()) {
        expect(benchOverlay(worksheet, {}, reading.state)?.entries ?? {}).toEqual({});
      }
    }
  });
});

describe('what a page says of its address', () => {
  const { inputs } = findWorksheet('flash-match');
  const sheets = new Map([['flash-match', inputs]]);

  it('is nothing where every key is known', () => {
    expect(addressFault('', sheets)).toBeUndefined();
    expect(addressFault('?q=1', sheets)).toBeUndefined();
    const address = permalink('/', 'flash-match', { filmFps: '18' });
    const query = new URL(address, 'https://example.org').search;
    expect(addressFault(query, sheets)).toBeUndefined();
    expect(addressFault('?w=later&x=1', new Map([['later', undefined]]))).toBeUndefined();
  });

  it('names what it passed over, without marks that cannot be seen', () => {
    expect(addressFault('?w=flash-match&filmFps=18&blades=3', sheets)).toBe(
      'This sheet does not know “blades” from the link and left it out.',
    );
    expect(addressFault('?w=flash-matches', sheets)).toBe(
      'This address asks for a sheet called “flash-matches”, which is not on this page. It may have been damaged on its way.',
    );
    const many = Array.from({ length: 9 }, (_, index) => `k${index}=1`).join('&');
    expect(addressFault(`?w=flash-match&${many}`, sheets)).toContain(
      '“k4” and 4 more from the link and left them out.',
    );
    expect(addressFault(`?w=flash-match&%E2%80%AEa=1`, sheets)).toContain('“a”');
  });
});
