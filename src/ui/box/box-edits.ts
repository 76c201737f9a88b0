import type { ReelState } from '../../core/job/reel-states.ts';
import type { JobField } from '../../worksheets/box/job-fields.ts';
import {
  MOST_IN_BOX,
  type Box,
  type Job,
  type JobTexts,
  type OnTable,
  type Reel,
  type ReelTexts,
} from '../../worksheets/box/job.ts';
import type { ReelField } from '../../worksheets/box/reel-fields.ts';
import { needsReason } from '../../worksheets/box/reel-way.ts';
import { freeId } from './box-schema.ts';

// What the reader can do to the box, as plain functions from box to box.

const ids = (items: readonly { readonly id: string }[]): ReadonlySet<string> =>
  new Set(items.map(({ id }) => id));

function withText<Field extends string>(
  texts: Partial<Readonly<Record<Field, string>>>,
  field: Field,
  text: string,
): Partial<Readonly<Record<Field, string>>> {
  const kept = text.slice(0, MOST_IN_BOX.textLength);
  if ((texts[field] ?? '') === kept) return texts;
  const others = Object.entries(texts).filter(([key]) => key !== field);
  const pairs = kept === '' ? others : [...others, [field, kept] as const];
  return Object.fromEntries(pairs) as Partial<Record<Field, string>>;
}

/** The list with one item changed; the very same list where nothing changes. */
function changeItem<Item extends { readonly id: string }>(
  items: readonly Item[],
  id: string,
  change: (item: Item) => Item,
): readonly Item[] {
  const next = items.map((item) => (item.id === id ? change(item) : item));
  return next.some((item, index) => item !== items[index]) ? next : items;
}

function changeJob(box: Box, id: string, change: (job: Job) => Job): Box {
  const jobs = changeItem(box.jobs, id, change);
  return jobs === box.jobs ? box : { ...box, jobs };
}

function changeReel(box: Box, { job, reel }: OnTable, change: (reel: Reel) => Reel): Box {
  return changeJob(box, job, (before) => {
    const reels = changeItem(before.reels, reel, change);
    return reels === before.reels ? before : { ...before, reels };
  });
}

/**
 * A new job with its first line to fill in, open at once, with the workshop, its terms and its currency
 * as they stood on the last one. A full box stays as it is.
 */
export function startJob(box: Box): Box {
  if (box.jobs.length >= MOST_IN_BOX.jobs) return box;
  const id = freeId('j', ids(box.jobs));
  const { workshop = '', terms = '', currency = '' } = box.jobs.at(-1)?.texts ?? {};
  const given = Object.entries({ workshop, terms, currency }).filter(([, text]) => text !== '');
  const texts = Object.fromEntries(given) as JobTexts;
  const started = { ...box, jobs: [...box.jobs, { id, texts, reels: [] }], currentJob: id };
  return addReels(started, id, [{}]);
}

export function chooseJob(box: Box, id: string): Box {
  return box.currentJob !== id && box.jobs.some((job) => job.id === id)
    ? { ...box, currentJob: id }
    : box;
}

/** The box without a reel on the table. */
export function clearTable({ jobs, currentJob }: Box): Box {
  return { jobs, currentJob };
}

export function removeJob(box: Box, id: string): Box {
  const jobs = box.jobs.filter((job) => job.id !== id);
  if (jobs.length === box.jobs.length) return box;
  const kept = box.onTable?.job === id ? clearTable(box) : box;
  const currentJob = box.currentJob === id ? (jobs[0]?.id ?? '') : box.currentJob;
  return { ...kept, jobs, currentJob };
}

export function setJobText(box: Box, job: string, field: JobField, text: string): Box {
  return changeJob(box, job, (before) => {
    const texts = withText(before.texts, field, text);
    return texts === before.texts ? before : { ...before, texts };
  });
}

export function setReelText(box: Box, place: OnTable, field: ReelField, text: string): Box {
  return changeReel(box, place, (before) => {
    const texts = withText(before.texts, field, text);
    return texts === before.texts ? before : { ...before, texts };
  });
}

/** The number after the last one: `r007` → `r008`; `r001` in an empty job. */
export function nextNumber(reels: readonly Reel[]): string {
  const numbers = reels.map(({ texts }) => texts.number ?? '').filter((text) => /\d+$/u.test(text));
  const last = numbers.at(-1) ?? 'r000';
  const digits = /\d+$/u.exec(last)?.[0] ?? '000';
  const stem = last.slice(0, last.length - digits.length);
  const taken = new Set(numbers);
  let number = Number(digits) + 1;
  while (taken.has(`${stem}${String(number).padStart(digits.length, '0')}`)) number += 1;
  return `${stem}${String(number).padStart(digits.length, '0')}`;
}

/** A row that nobody has typed into: it has its number, and nothing else. */
const isUntouched = ({ texts, state, log }: Reel): boolean =>
  state === 'arrived' &&
  log.length === 0 &&
  Object.keys(texts).every((field) => field === 'number');

/** Puts the reels of a list into a job; the empty row with which a new job begins makes room for them. */
export function addListedReels(box: Box, job: string, rows: readonly ReelTexts[]): Box {
  const cleared = changeJob(box, job, (before) => {
    const [first, ...others] = before.reels;
    const isEmptyJob = first !== undefined && others.length === 0 && isUntouched(first);
    return isEmptyJob && box.onTable?.job !== job ? { ...before, reels: [] } : before;
  });
  return addReels(cleared, job, rows);
}

/** Puts reels behind those of a job; a reel without a number gets the next one. */
export function addReels(box: Box, job: string, rows: readonly ReelTexts[]): Box {
  return changeJob(box, job, (before) => {
    const room = rows.slice(0, MOST_IN_BOX.reels - before.reels.length);
    const reels = [...before.reels];
    const taken = new Set(reels.map(({ id }) => id));
    for (const texts of room) {
      const id = freeId('r', taken);
      taken.add(id);
      const number = texts.number ?? nextNumber(reels);
      reels.push({ id, texts: { ...texts, number }, state: 'arrived', log: [] });
    }
    return reels.length === before.reels.length ? before : { ...before, reels };
  });
}

export function removeReel(box: Box, place: OnTable): Box {
  const { onTable } = box;
  const isOnTable = onTable?.job === place.job && onTable.reel === place.reel;
  const kept = isOnTable ? clearTable(box) : box;
  return changeJob(kept, place.job, (job) => ({
    ...job,
    reels: job.reels.filter(({ id }) => id !== place.reel),
  }));
}

/** Fills cells from a spreadsheet, from one reel down; rows that are missing are added. */
export function fillCells(
  box: Box,
  place: OnTable,
  fields: readonly ReelField[],
  rows: readonly (readonly string[])[],
): Box {
  const job = box.jobs.find(({ id }) => id === place.job);
  const first = job?.reels.findIndex(({ id }) => id === place.reel) ?? -1;
  if (job === undefined || first < 0) return box;
  const missing = Math.max(0, first + rows.length - job.reels.length);
  // One by one, so that each empty row gets its number.
  const grown = addReels(
    box,
    place.job,
    Array.from({ length: missing }, () => ({})),
  );
  return changeJob(grown, place.job, (before) => ({
    ...before,
    reels: before.reels.map((reel, index) => {
      const cells = rows[index - first];
      if (cells === undefined) return reel;
      const texts = fields.reduce<ReelTexts>((kept, field, column) => {
        const cell = cells[column];
        return cell === undefined ? kept : withText(kept, field, cell.trim());
      }, reel.texts);
      return texts === reel.texts ? reel : { ...reel, texts };
    }),
  }));
}

/** A move of a reel. The caller has asked what stops it; a move back without a reason is none. */
export function moveReel(
  box: Box,
  place: OnTable,
  move: {
    readonly state: ReelState;
    readonly day: string;
    readonly who: string;
    readonly reason: string;
  },
): Box {
  return changeReel(box, place, (reel) => {
    if (reel.state === move.state) return reel;
    if (needsReason(reel.state, move.state) && move.reason.trim() === '') return reel;
    return { ...reel, state: move.state, log: [...reel.log, move].slice(-MOST_IN_BOX.log) };
  });
}

/** Puts a reel on the table, if it is there. */
export function putOnTable(box: Box, onTable: OnTable): Box {
  const job = box.jobs.find(({ id }) => id === onTable.job);
  return job?.reels.some(({ id }) => id === onTable.reel) === true ? { ...box, onTable } : box;
}

/** What is done with a job of a file whose number is here already. */
export type ImportChoice = 'replace' | 'keep-both' | 'skip';

const jobKey = ({ texts }: Job): string => (texts.number ?? '').trim().toLowerCase();

/** The job here that has the number of one in a file. */
export function sameJob(box: Box, job: Job): Job | undefined {
  const key = jobKey(job);
  return key === '' ? undefined : box.jobs.find((other) => jobKey(other) === key);
}

/**
 * Takes the jobs of a file in. A job whose number is not here is added; for the others the reader has
 * chosen, by the id that the job has in the file.
 */
export function importJobs(
  box: Box,
  offered: Box,
  choices: ReadonlyMap<string, ImportChoice>,
): Box {
  let next = box;
  for (const job of offered.jobs) {
    const same = sameJob(box, job);
    const choice = same === undefined ? 'keep-both' : (choices.get(job.id) ?? 'skip');
    if (choice === 'skip') continue;
    if (choice === 'replace' && same !== undefined) {
      const { onTable } = next;
      const isStale = onTable?.job === same.id && !job.reels.some(({ id }) => id === onTable.reel);
      const kept = isStale ? clearTable(next) : next;
      next = changeJob(kept, same.id, () => ({ ...job, id: same.id }));
      continue;
    }
    if (next.jobs.length >= MOST_IN_BOX.jobs) continue;
    const id = freeId('j', ids(next.jobs));
    const number = job.texts.number ?? '';
    const texts = same === undefined ? job.texts : { ...job.texts, number: `${number} (copy)` };
    next = { ...next, jobs: [...next.jobs, { ...job, id, texts }] };
    if (next.currentJob === '') next = { ...next, currentJob: id };
  }
  return next;
}
