import { EMPTY_BENCH, type BenchState } from '../../src/ui/bench/bench-state.ts';

/** A stored text, and what a reader of version 3 makes of it. */
export interface ContractCase {
  readonly title: string;
  readonly stored: string;
  readonly state: BenchState;
  /** A piece of each fault, in order; none for a text that is in order. */
  readonly faults: readonly string[];
}

const club = { name: 'Club bench', entries: { 'projector.filmFps': '18' } } as const;
const clubState: BenchState = { ...EMPTY_BENCH, benches: [club], region: '25/50' };
const stored = (changes: object): string =>
  JSON.stringify({ version: 3, benches: [club], region: '25/50', ...changes });

/** The contract of bench-versions.ts as data, the steps up from earlier versions last. */
export const contractCases: readonly ContractCase[] = [
  {
    title: 'a whole state is read as it is',
    stored: stored({ currentBench: 0, reels: [], currentReel: 0, units: 'metric' }),
    state: clubState,
    faults: [],
  },
  {
    title: 'keys that are absent are empty',
    stored: stored({}),
    state: clubState,
    faults: [],
  },
  {
    title: 'a text that is no quantity stays for its field to show',
    stored: stored({ benches: [{ ...club, entries: { 'projector.filmFps': 'fast' } }] }),
    state: { ...clubState, benches: [{ ...club, entries: { 'projector.filmFps': 'fast' } }] },
    faults: [],
  },
  {
    title: 'a number where a text belongs is taken as typed',
    stored: stored({ benches: [{ ...club, entries: { 'projector.filmFps': 18 } }] }),
    state: clubState,
    faults: [],
  },
  {
    title: 'a field that was added later is passed over alone',
    stored: stored({
      benches: [{ ...club, entries: { ...club.entries, 'projector.lampWatts': '100' } }],
    }),
    state: clubState,
    faults: ['Club bench: no field is called “projector.lampWatts”'],
  },
  {
    title: 'a key that was added later is passed over alone',
    stored: stored({ lamps: [] }),
    state: clubState,
    faults: ['“lamps” is not known here'],
  },
  {
    title: 'a property of a bench that was added later is passed over alone',
    stored: stored({ benches: [{ ...club, colour: 'red' }] }),
    state: clubState,
    faults: ['Club bench: “colour” is not known here'],
  },
  {
    title: 'a choice that gained a possibility keeps the text for its field to show',
    stored: stored({ benches: [{ name: 'A', entries: { 'projector.gauge': '28mm' } }] }),
    state: { ...clubState, benches: [{ name: 'A', entries: { 'projector.gauge': '28mm' } }] },
    faults: [],
  },
  {
    title: 'a region that is none is left unsaid',
    stored: stored({ region: '12/25' }),
    state: { ...clubState, region: '' },
    faults: ['region: not one of the choices'],
  },
  {
    title: 'a damaged bench does not take the next one with it',
    stored: stored({ benches: ['torn', club, null] }),
    state: clubState,
    faults: ['Bench 1: cannot be read', 'Bench 3: cannot be read'],
  },
  {
    title: 'damaged fields leave the sound ones',
    stored: stored({
      benches: [
        {
          name: 'Club bench',
          entries: {
            'projector.filmFps': '18',
            'camera.cameraFps': null,
            'camera.cameraRates': ['25'],
            'camera.exposureTimes': '1/50; '.repeat(400),
          },
        },
      ],
    }),
    state: clubState,
    faults: [
      'camera.cameraFps is not a text',
      'camera.cameraRates is not a text',
      'camera.exposureTimes is too long',
    ],
  },
  {
    title: 'a reel field has no place on a bench',
    stored: stored({
      benches: [{ ...club, entries: { ...club.entries, 'reel.nativeFps': '18' } }],
    }),
    state: clubState,
    faults: ['no field is called “reel.nativeFps”'],
  },
  {
    title: 'a name that is none is replaced by a number',
    stored: stored({ benches: [{ entries: club.entries }] }),
    state: { ...clubState, benches: [{ ...club, name: 'Bench 1' }] },
    faults: ['Bench 1: has no name'],
  },
  {
    title: 'a place that does not exist means the first',
    stored: stored({ currentBench: 7 }),
    state: clubState,
    faults: ['currentBench: no such place'],
  },
  {
    title: 'lists that are none leave the rest',
    stored: stored({ reels: 'two', units: 'cubits' }),
    state: clubState,
    faults: ['reels: not a list', 'units: not one of the choices'],
  },
  {
    title: 'keys that reach into an object’s machinery are only unknown keys',
    stored: `{"version":1,"benches":[{"name":"Club bench","entries":{"projector.filmFps":"18","__proto__":"x","constructor":"y"}}],"region":"25/50"}`,
    state: clubState,
    faults: ['no field is called “__proto__”', 'no field is called “constructor”'],
  },
  {
    title: 'a state that does not say its version is read all the same',
    stored: JSON.stringify({ benches: [club], region: '25/50' }),
    state: clubState,
    faults: ['It does not say its version'],
  },
  {
    title: 'a text that is not JSON holds nothing',
    stored: '{"version":1,"benches":[{"na',
    state: EMPTY_BENCH,
    faults: ['Nothing in it is a bench description'],
  },
  {
    title: 'JSON that is no object holds nothing',
    stored: '[1, 2]',
    state: EMPTY_BENCH,
    faults: ['Nothing in it is a bench description'],
  },
  {
    title: 'a field that version 1 called by another name is kept under its new one',
    stored: stored({
      version: 1,
      benches: [
        { ...club, entries: { ...club.entries, 'projector.openFraction': '45 %' } },
        { name: 'Shutter alone', entries: { 'projector.openFraction': '130/360' } },
      ],
    }),
    state: {
      ...clubState,
      benches: [
        { ...club, entries: { ...club.entries, 'projector.openPercent': '45 %' } },
        { name: 'Shutter alone', entries: { 'projector.openPercent': '130/360' } },
      ],
    },
    faults: [],
  },
  {
    title: 'the old name is unknown to this version',
    stored: stored({
      benches: [{ ...club, entries: { ...club.entries, 'projector.openFraction': '45 %' } }],
    }),
    state: clubState,
    faults: ['no field is called “projector.openFraction”'],
  },
  {
    title: 'film rates that version 2 called speeds are kept under their new names',
    stored: stored({
      version: 2,
      benches: [
        {
          ...club,
          entries: { 'projector.speedChoice': 'list', 'projector.fixedSpeeds': '18; 24' },
        },
        { name: 'Both', entries: { 'projector.fixedSpeeds': '16', 'projector.filmRates': '18' } },
      ],
    }),
    state: {
      ...clubState,
      benches: [
        {
          ...club,
          entries: { 'projector.filmRateChoice': 'list', 'projector.filmRates': '18; 24' },
        },
        { name: 'Both', entries: { 'projector.filmRates': '18' } },
      ],
    },
    faults: ['Both: no field is called “projector.fixedSpeeds”'],
  },
  {
    title: 'a damaged state of version 1 is brought up as far as it can be read',
    stored: stored({
      version: 1,
      benches: [
        'torn',
        { name: 'A', entries: 'none' },
        { entries: { 'projector.openFraction': {} } },
      ],
    }),
    state: {
      ...clubState,
      benches: [
        { name: 'A', entries: {} },
        { name: 'Bench 3', entries: {} },
      ],
    },
    faults: [
      'Bench 1: cannot be read',
      'A: no entries',
      'Bench 3: has no name',
      'projector.openPercent is not a text',
    ],
  },
];
