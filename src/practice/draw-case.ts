import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { UnitName } from '../quantity/units.ts';
import { entryText } from '../worksheets/machine/entry-text.ts';
import { evaluate, fillEntries, type Entries } from '../worksheets/machine/evaluate.ts';
import type { Outcome, Worksheet, WorkingStep } from '../worksheets/machine/types.ts';
import { holds, type CaseGround } from './case-conditions.ts';
import type { CaseKind, CaseLevel, CaseSlip } from './case-kind.ts';
import { drawnOne, seededChance, shuffled, type Chance } from './chance.ts';
import { drawnEntries, drawnText } from './drawn-entries.ts';

/** One choice of a drawn case. */
export interface DrawnChoice {
  readonly text: string;
  readonly isRight: boolean;
  /** Why it is wrong, or what the slip was; for the right one, what the sheet says. */
  readonly reason: string;
}

/** A case as it is put to the trainee, with what the sheet says to it. */
export interface DrawnCase {
  readonly kind: string;
  readonly title: string;
  readonly level: CaseLevel;
  readonly seed: string;
  readonly scene: string;
  readonly question: string;
  readonly told: readonly { readonly label: string; readonly text: string }[];
  readonly choices: readonly DrawnChoice[];
  /** Name of a picture in `outcome`. */
  readonly picture?: string | undefined;
  /** Entries of the sheet that decides, for the link to it. */
  readonly entries: Entries;
  readonly outcome: Outcome;
  readonly working: readonly WorkingStep[];
}

/** Draws tried before giving up; some have no right choice among those that the kind knows. */
const MOST_DRAWS = 400;
const FEWEST_CHOICES = 2;

interface Judged {
  readonly entries: Entries;
  readonly outcome: Outcome;
  readonly working: readonly WorkingStep[];
}

function judged(worksheet: Worksheet, entries: Entries): Judged | undefined {
  const filled = fillEntries(worksheet.inputs, entries);
  const { outcome, working } = evaluate(worksheet, filled);
  return outcome === undefined
    ? undefined
    : { entries: filled, outcome, working: working?.() ?? [] };
}

/** Entries of a slip: `=other` copies what another input has. */
function slipEntries(entries: Entries, { entries: changed = {} }: CaseSlip): Entries {
  return {
    ...entries,
    ...Object.fromEntries(
      Object.entries(changed).map(([key, text]) => [
        key,
        text.startsWith('=') ? (entries[text.slice(1)] ?? '') : text,
      ]),
    ),
  };
}

/** One right choice and some wrong ones in an order by chance; undefined where that cannot be had. */
function arranged(
  chance: Chance,
  right: readonly DrawnChoice[],
  wrong: readonly DrawnChoice[],
  shown: number,
): readonly DrawnChoice[] | undefined {
  const [only] = right;
  if (only === undefined || right.length !== 1) return undefined;
  const others = wrong.filter(
    ({ text }, index) =>
      text !== only.text && wrong.findIndex((each) => each.text === text) === index,
  );
  const picked = shuffled(chance, others).slice(0, shown - 1);
  if (picked.length + 1 < FEWEST_CHOICES) return undefined;
  return shuffled(chance, [only, ...picked]);
}

function wordChoices(
  chance: Chance,
  kind: CaseKind,
  ground: CaseGround,
): readonly DrawnChoice[] | undefined {
  const all = (kind.choices ?? []).map(({ text, when, needs }) => {
    const isRight = when.some((condition) => holds(ground, condition));
    return { text, isRight, reason: isRight ? ground.outcome.verdict.sentence : needs };
  });
  const right = all.filter(({ isRight }) => isRight);
  const wrong = all.filter(({ isRight }) => !isRight);
  return arranged(chance, right, wrong, kind.shown);
}

function figureChoices(
  chance: Chance,
  kind: CaseKind,
  worksheet: Worksheet,
  { entries, outcome }: CaseGround,
): readonly DrawnChoice[] | undefined {
  const { figure } = kind;
  const text = figure === undefined ? undefined : outcome.answers[figure.answer]?.text;
  if (figure === undefined || text === undefined) return undefined;
  const right = { text, isRight: true, reason: outcome.verdict.sentence };
  const wrong = figure.slips.flatMap((slip) => {
    const slipped = judged(worksheet, slipEntries(entries, slip));
    const found = slipped?.outcome.answers[slip.answer ?? figure.answer];
    return found === undefined ? [] : [{ text: found.text, isRight: false, reason: slip.words }];
  });
  return arranged(chance, [right], wrong, kind.shown);
}

interface Setting extends DrawnChoice {
  readonly judged: Judged;
}

function settingChoices(
  kind: CaseKind,
  worksheet: Worksheet,
  entries: Entries,
): readonly Setting[] {
  const { keys = [], of = [] } = kind.settings ?? {};
  return of.flatMap((setting) => {
    const found = judged(worksheet, { ...entries, ...setting });
    if (found === undefined) return [];
    const text = keys
      .map((key) => {
        const spec = worksheet.inputs[key];
        return spec === undefined ? '' : `${spec.label} ${entryText(spec, setting[key] ?? '')}`;
      })
      .join(', ');
    const { level, sentence } = found.outcome.verdict;
    return [{ text, isRight: level === 'good', reason: sentence, judged: found }];
  });
}

function drawnFacts(chance: Chance, kind: CaseKind): CaseGround['facts'] {
  return Object.fromEntries(
    Object.entries(kind.facts ?? {}).map(([key, { unit, texts }]) => {
      const text = drawnText(chance, drawnOne(chance, texts) ?? '');
      if (unit === undefined) return [key, { text }];
      const reading = { unit: unit as UnitName, entryUnit: unit as UnitName };
      const parsed = parseQuantity(text, { ...reading, minimum: 0, maximum: 1e18 });
      if (!parsed.ok) throw new Error(`case ${kind.id}: “${text}” is no fact in ${unit}`);
      return [key, { text, value: parsed.value.value }];
    }),
  );
}

function toldOf(
  kind: CaseKind,
  worksheet: Worksheet,
  drawn: Entries,
  facts: CaseGround['facts'],
): DrawnCase['told'] {
  const inSettings = kind.settings?.keys ?? [];
  const keys =
    kind.told ??
    Object.keys(worksheet.inputs).filter(
      (key) => Object.hasOwn(drawn, key) && !inSettings.includes(key),
    );
  return [
    ...Object.entries(facts).map(([key, { text }]) => ({
      label: kind.facts?.[key]?.label ?? '',
      text,
    })),
    ...keys.flatMap((key) => {
      const spec = worksheet.inputs[key];
      if (spec === undefined) return [];
      const text = drawn[key] ?? spec.default;
      // An empty field is a point that nobody looked at or measured.
      return [{ label: spec.label, text: text === '' ? 'not measured' : entryText(spec, text) }];
    }),
  ];
}

type Drawn = Pick<DrawnCase, 'told' | 'choices' | 'entries' | 'outcome' | 'working'>;

function tryCase(
  chance: Chance,
  kind: CaseKind,
  worksheet: Worksheet,
  level: CaseLevel,
): Drawn | undefined {
  const drawn = drawnEntries(chance, kind.levels[level - 1] ?? {});
  const facts = drawnFacts(chance, kind);
  const told = toldOf(kind, worksheet, drawn, facts);
  if (kind.settings !== undefined) {
    const all = settingChoices(kind, worksheet, drawn);
    const right = all.filter(({ isRight }) => isRight);
    // Of several good settings any one would be right: the others are left out, and one stays.
    const kept = drawnOne(chance, right);
    const wrong = all.filter(({ isRight }) => !isRight);
    if (kept === undefined) return undefined;
    const choices = arranged(chance, [kept], wrong, kind.shown);
    if (choices === undefined) return undefined;
    return { ...kept.judged, told, choices: choices.map(plainChoice) };
  }
  const found = judged(worksheet, drawn);
  if (found === undefined) return undefined;
  const ground = { ...found, facts };
  const choices =
    kind.figure === undefined
      ? wordChoices(chance, kind, ground)
      : figureChoices(chance, kind, worksheet, ground);
  if (choices === undefined) return undefined;
  const seen = (kind.seen ?? []).flatMap((key) => {
    const answer = found.outcome.answers[key];
    return answer === undefined ? [] : [{ label: answer.label, text: answer.text }];
  });
  return { ...found, told: [...told, ...seen], choices };
}

const plainChoice = ({ text, isRight, reason }: DrawnChoice): DrawnChoice => ({
  text,
  isRight,
  reason,
});

/**
 * A case of a kind, the same for the same seed. What is right is what the sheet says to the entries.
 *
 * @throws {Error} when no draw has exactly one right choice: a fault in content/cases.yaml
 */
export function drawCase(
  kind: CaseKind,
  worksheet: Worksheet,
  level: CaseLevel,
  seed: string,
): DrawnCase {
  const chance = seededChance(`${kind.id}/${level}/${seed}`);
  const { id, title, scene, question } = kind;
  for (let draw = 0; draw < MOST_DRAWS; draw += 1) {
    const found = tryCase(chance, kind, worksheet, level);
    if (found !== undefined) {
      return { kind: id, title, level, seed, scene, question, picture: kind.picture, ...found };
    }
  }
  throw new Error(`case ${id}, level ${level}, seed ${seed}: no draw has just one right choice`);
}
