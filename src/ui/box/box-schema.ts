import type { ReelState } from '../../core/job/reel-states.ts';
import { JOB_FIELD_KEYS } from '../../worksheets/box/job-fields.ts';
import {
  MOST_IN_BOX,
  reelOf,
  type Box,
  type Job,
  type OnTable,
  type Reel,
  type StateChange,
} from '../../worksheets/box/job.ts';
import { REEL_FIELD_KEYS } from '../../worksheets/box/reel-fields.ts';
import { REEL_STATES } from '../../worksheets/box/reel-way.ts';
import { isRecord } from '../bench/is-record.ts';

/**
 * Contract of the stored box, version 1.
 *
 * Keys in localStorage, and the same text in an exported file:
 * - `box`: this state as JSON. Example:
 *   `{"version":1,"currentJob":"j1","onTable":{"job":"j1","reel":"r1"},"jobs":[{"id":"j1",
 *   "texts":{"number":"2026-014"},"reels":[{"id":"r1","texts":{"number":"r001","gauge":"Super 8"},
 *   "state":"named","log":[{"state":"named","day":"2026-11-27","who":"Ada","reason":""}]}]}]}`
 * - `box-aside`: stored texts that could not be read whole, as found.
 *
 * Texts are keyed by field and hold what was typed; a field left empty is absent. A text that cannot be
 * used stays and is shown in its field with a message. A reel or job without an id gets one. Whatever
 * else is not as described is passed over alone, named to the reader and kept aside.
 *
 * What a reader of version 1 sees after a change: as with the bench (bench-versions.ts). A field that is
 * renamed or changes its meaning needs version 2 and a step up to it here.
 */
export const BOX_VERSION = 1;

export interface BoxReadOut {
  readonly state: Box;
  readonly faults: readonly string[];
}

/** Own property only: a key such as `constructor` must not find what every object inherits. */
function own(record: Readonly<Record<string, unknown>>, key: string): unknown {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}

const shown = (key: string): string => `“${key.slice(0, 40)}”`;

function readTexts<Field extends string>(
  value: unknown,
  known: ReadonlySet<string>,
  place: string,
  faults: string[],
): Partial<Record<Field, string>> {
  const texts: Partial<Record<Field, string>> = {};
  if (value === undefined) return texts;
  if (!isRecord(value)) {
    faults.push(`${place}: no entries`);
    return texts;
  }
  for (const [key, given] of Object.entries(value)) {
    const text = typeof given === 'number' && Number.isFinite(given) ? String(given) : given;
    if (!known.has(key)) faults.push(`${place}: no field is called ${shown(key)}`);
    else if (typeof text !== 'string') faults.push(`${place}: ${key} is not a text`);
    else if (text.length > MOST_IN_BOX.textLength) faults.push(`${place}: ${key} is too long`);
    else if (text !== '') texts[key as Field] = text;
  }
  return texts;
}

const STATES: ReadonlySet<string> = new Set(REEL_STATES);
const isState = (value: unknown): value is ReelState =>
  typeof value === 'string' && STATES.has(value);

function readLog(value: unknown, place: string, faults: string[]): readonly StateChange[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    faults.push(`${place}: its way so far is not a list`);
    return [];
  }
  const text = (given: unknown): string => (typeof given === 'string' ? given.slice(0, 400) : '');
  return value.slice(-MOST_IN_BOX.log).flatMap((item: unknown) => {
    const state = isRecord(item) ? own(item, 'state') : undefined;
    if (!isRecord(item) || !isState(state)) {
      faults.push(`${place}: a step of its way cannot be read`);
      return [];
    }
    const [day, who, reason] = ['day', 'who', 'reason'].map((key) => text(own(item, key)));
    return [{ state, day: day ?? '', who: who ?? '', reason: reason ?? '' }];
  });
}

/** The first id of a kind that is not taken: `r1`, `r2` … */
export function freeId(letter: 'j' | 'r', taken: ReadonlySet<string>): string {
  let number = taken.size + 1;
  while (taken.has(`${letter}${number}`)) number += 1;
  return `${letter}${number}`;
}

const REEL_KEYS: ReadonlySet<string> = new Set(REEL_FIELD_KEYS);
const JOB_KEYS: ReadonlySet<string> = new Set(JOB_FIELD_KEYS);

function extraKey(item: Readonly<Record<string, unknown>>, known: readonly string[]) {
  return Object.keys(item).find((key) => !known.includes(key));
}

function readId(
  value: unknown,
  letter: 'j' | 'r',
  taken: Set<string>,
  place: string,
  faults: string[],
) {
  const isFit = typeof value === 'string' && /^[a-z]\d{1,9}$/u.test(value) && !taken.has(value);
  if (!isFit)
    faults.push(
      `${place}: ${typeof value === 'string' ? 'its id is taken or unfit' : 'has no id'}`,
    );
  const id = isFit ? value : freeId(letter, taken);
  taken.add(id);
  return id;
}

function readReels(value: unknown, job: string, faults: string[]): readonly Reel[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    faults.push(`${job}: its reels are not a list`);
    return [];
  }
  if (value.length > MOST_IN_BOX.reels) faults.push(`${job}: more than ${MOST_IN_BOX.reels} reels`);
  const taken = new Set<string>();
  return value.slice(0, MOST_IN_BOX.reels).flatMap((item: unknown, index) => {
    const place = `${job}, reel ${index + 1}`;
    if (!isRecord(item)) {
      faults.push(`${place}: cannot be read`);
      return [];
    }
    const extra = extraKey(item, ['id', 'texts', 'state', 'log']);
    if (extra !== undefined) faults.push(`${place}: ${shown(extra)} is not known here`);
    const state = own(item, 'state');
    if (!isState(state)) faults.push(`${place}: its state is not one of the states`);
    return [
      {
        id: readId(own(item, 'id'), 'r', taken, place, faults),
        texts: readTexts(own(item, 'texts'), REEL_KEYS, place, faults),
        state: isState(state) ? state : 'announced',
        log: readLog(own(item, 'log'), place, faults),
      },
    ];
  });
}

function readJobs(value: unknown, faults: string[]): readonly Job[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    faults.push('jobs: not a list');
    return [];
  }
  if (value.length > MOST_IN_BOX.jobs) faults.push(`jobs: more than ${MOST_IN_BOX.jobs}`);
  const taken = new Set<string>();
  return value.slice(0, MOST_IN_BOX.jobs).flatMap((item: unknown, index) => {
    const place = `Job ${index + 1}`;
    if (!isRecord(item)) {
      faults.push(`${place}: cannot be read`);
      return [];
    }
    const extra = extraKey(item, ['id', 'texts', 'reels']);
    if (extra !== undefined) faults.push(`${place}: ${shown(extra)} is not known here`);
    return [
      {
        id: readId(own(item, 'id'), 'j', taken, place, faults),
        texts: readTexts(own(item, 'texts'), JOB_KEYS, place, faults),
        reels: readReels(own(item, 'reels'), place, faults),
      },
    ];
  });
}

function readOnTable(value: unknown): OnTable | undefined {
  if (!isRecord(value)) return undefined;
  const [job, reel] = [own(value, 'job'), own(value, 'reel')];
  return typeof job === 'string' && typeof reel === 'string' ? { job, reel } : undefined;
}

/** Reads a state of this version part by part; never throws, whatever it is given. */
export function readBox(value: Readonly<Record<string, unknown>>): BoxReadOut {
  const faults: string[] = [];
  const jobs = readJobs(own(value, 'jobs'), faults);
  const extra = extraKey(value, ['version', 'jobs', 'currentJob', 'onTable']);
  if (extra !== undefined) faults.push(`${shown(extra)} is not known here`);
  const wanted = own(value, 'currentJob');
  const currentJob = jobs.find(({ id }) => id === wanted)?.id ?? jobs[0]?.id ?? '';
  const onTable = readOnTable(own(value, 'onTable'));
  const box: Box = { jobs, currentJob };
  const isThere = onTable !== undefined && reelOf(box, onTable) !== undefined;
  return { state: isThere ? { ...box, onTable } : box, faults };
}

/** The state as it is stored and exported. */
export function boxJson(state: Box, indent?: number): string {
  return JSON.stringify({ version: BOX_VERSION, ...state }, undefined, indent);
}
