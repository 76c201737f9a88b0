import { STORED_FIELDS } from '../../worksheets/machine/bench-fields.ts';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import { TABLE_KEY } from '../islands/kept-opening.ts';
import { parseJson } from './bench-text.ts';
import type { BenchTexts } from './bench-state.ts';
import { isRecord } from './is-record.ts';

/**
 * Contract of the reel on the table, version 1: key `table-reel` of localStorage. It is written by the
 * box from the reel chosen there, so that a chapter need not read the whole box; what cannot be read is
 * no reel, and nothing is lost by it. Example: `{"version":1,"name":"r007 Regatta","job":"j1",
 * "reel":"r7","entries":{"reel.gauge":"super-8"},"sheets":{"condition-triage":{"smell":"none"}},
 * "refusal":"","judgedFor":"super-8"}`. `entries` are texts of bench fields, which win over the bench; `sheets` are texts of
 * inputs of single worksheets; `refusal` says why it must not go on the projector of the bench that runs the gauge `judgedFor`.
 */
export interface TableReel {
  readonly name: string;
  readonly job: string;
  readonly reel: string;
  readonly entries: BenchTexts;
  readonly sheets: Readonly<Record<string, Entries>>;
  readonly refusal: string;
  /** Gauge that the projector ran when that was judged; empty where the bench did not say. */
  readonly judgedFor: string;
}

const TABLE_VERSION = 1;
const LONGEST_TEXT = 2000;

function texts(value: unknown, known?: readonly string[]): Entries {
  if (!isRecord(value)) return {};
  const pairs = Object.entries(value).filter(
    (pair): pair is [string, string] =>
      typeof pair[1] === 'string' &&
      pair[1].length <= LONGEST_TEXT &&
      (known === undefined || known.includes(pair[0])),
  );
  return Object.fromEntries(pairs);
}

/** Reads the stored text; undefined where it is no reel of this version. */
export function parseTableReel(text: string): TableReel | undefined {
  const value = parseJson(text);
  if (!isRecord(value) || value['version'] !== TABLE_VERSION) return undefined;
  const { name, job, reel, refusal, judgedFor } = value;
  if (typeof name !== 'string' || typeof job !== 'string' || typeof reel !== 'string') {
    return undefined;
  }
  const sheets = isRecord(value['sheets']) ? Object.entries(value['sheets']) : [];
  return {
    name: name.slice(0, 80),
    job,
    reel,
    entries: texts(value['entries'], STORED_FIELDS),
    sheets: Object.fromEntries(sheets.map(([id, entries]) => [id, texts(entries)])),
    refusal: typeof refusal === 'string' ? refusal.slice(0, LONGEST_TEXT) : '',
    judgedFor: typeof judgedFor === 'string' ? judgedFor : '',
  };
}

export function tableReelText(reel: TableReel): string {
  return JSON.stringify({ version: TABLE_VERSION, ...reel });
}

/** The reel on the table of this device; undefined where there is none. */
export function readTableReel(openStorage: () => Storage): TableReel | undefined {
  try {
    const text = openStorage().getItem(TABLE_KEY);
    return text === null ? undefined : parseTableReel(text);
  } catch {
    return undefined;
  }
}
