import type { CaseKind } from '../../practice/case-kind.ts';
import { drawCase, type DrawnCase } from '../../practice/draw-case.ts';
import { seededChance } from '../../practice/chance.ts';
import {
  drawFaultCase,
  FAULT_CASES,
  type DrawnFault,
  type ShownFault,
} from '../../practice/fault-case.ts';
import type { SessionItem } from '../../practice/session.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { loadWorksheet } from '../islands/load-worksheet.ts';
import { sitePath } from '../islands/site-path.ts';
import {
  drawProblem,
  type PracticeKind,
  type PracticeProblem,
} from '../practice/practice-problem.ts';

/** What practice draws from; the build writes it as /practice-kinds.json. */
export interface PracticeStock {
  readonly cases: readonly CaseKind[];
  readonly sums: readonly PracticeKind[];
  readonly chapters: readonly { readonly id: string; readonly title: string }[];
  readonly handTasks: readonly { readonly id: string; readonly title: string }[];
}

/** Fetches the kinds, the names of the chapters and of the tasks for the hands. */
export async function loadStock(): Promise<PracticeStock> {
  const response = await fetch(sitePath('/practice-kinds.json'));
  if (!response.ok) throw new Error(`practice kinds: ${response.status}`);
  return (await response.json()) as PracticeStock;
}

/** Kinds of case with the recordings among them, which the scene plays. */
export const caseTitles = ({
  cases,
}: PracticeStock): readonly { readonly id: string; readonly title: string }[] => [
  ...cases,
  ...FAULT_CASES,
];

/** What a session or a sheet draws from. */
export const drawable = (
  stock: PracticeStock,
): { readonly cases: ReturnType<typeof caseTitles>; readonly sums: PracticeStock['sums'] } => ({
  cases: caseTitles(stock),
  sums: stock.sums,
});

let faults: Promise<readonly ShownFault[]> | undefined;

/** Fetches the dictionary of faults once; after a failure it is tried again. */
function loadFaults(): Promise<readonly ShownFault[]> {
  faults ??= fetch(sitePath('/practice-faults.json')).then(async (response) => {
    if (!response.ok) throw new Error(`faults: ${response.status}`);
    return (await response.json()) as readonly ShownFault[];
  });
  faults.catch(() => {
    faults = undefined;
  });
  return faults;
}

/** A question, drawn. */
export type DrawnItem =
  | { readonly type: 'fault'; readonly drawn: DrawnFault }
  | { readonly type: 'case'; readonly worksheet: Worksheet; readonly drawn: DrawnCase }
  | {
      readonly type: 'sum';
      readonly worksheet: Worksheet;
      readonly kind: PracticeKind;
      readonly problem: PracticeProblem;
    };

/** Loads the sheet of an item and draws it. */
export async function drawItem(stock: PracticeStock, item: SessionItem): Promise<DrawnItem> {
  const faultKind = FAULT_CASES.find(({ id }) => id === item.id);
  if (faultKind !== undefined && item.type === 'case') {
    const drawn = drawFaultCase(faultKind, await loadFaults(), item.level, item.seed);
    return { type: 'fault', drawn };
  }
  const kind = [...stock.cases, ...stock.sums].find(({ id }) => id === item.id);
  if (kind === undefined) throw new Error(`no kind ${item.id}`);
  const worksheet = await loadWorksheet(kind.worksheet);
  if (item.type === 'case') {
    const drawn = drawCase(kind as CaseKind, worksheet, item.level, item.seed);
    return { type: 'case', worksheet, drawn };
  }
  const sum = kind as PracticeKind;
  const problem = drawProblem(sum, worksheet, seededChance(`${item.id}/${item.seed}`));
  return { type: 'sum', worksheet, kind: sum, problem };
}

/** Title of the kind that a key of the record means, with its level. */
export function titleOfKey(stock: PracticeStock, key: string): string | undefined {
  const [id, level] = key.split(':');
  const kind = [...caseTitles(stock), ...stock.sums].find((each) => each.id === id);
  if (kind === undefined) return undefined;
  return level === undefined ? kind.title : `${kind.title} · level ${level}`;
}
