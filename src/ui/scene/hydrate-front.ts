import { advisedBench } from '../../scene/camera/advised-bench.ts';
import type { BenchNumbers } from '../../scene/camera/setting.ts';
import type { SideData } from '../../scene/scene-data.ts';
import { evaluate, fillEntries } from '../../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { LEVEL_SIGNS } from '../verdict-signs.ts';
import { benchFromEntries } from './bench-from-entries.ts';
import { frontVerdict } from './front-words.ts';
import { liveScene } from './live-scene.ts';
import { sideAt } from './side-at.ts';

const RIPPLE_LIMIT_PERCENT = 1;

/** A time as a camera shows it. */
const exposureText = (seconds: number): string => `1/${Number((1 / seconds).toPrecision(4))}`;

/** The input of the sheet that a field stands for. */
const keyOf = (field: HTMLInputElement): string => field.dataset['key'] ?? '';

function partOf(element: HTMLElement, part: string): HTMLElement {
  const found = element.querySelector<HTMLElement>(`[data-front="${part}"]`);
  if (found === null) throw new Error(`a front page without ${part}`);
  return found;
}

/**
 * Brings the first screen to life: what is typed is judged by the flash match, and the scene shows it.
 *
 * @param element    holds the scene, the verdict, the button and the fields
 * @param worksheet  the flash match, on its way
 */
export async function hydrateFront(
  element: HTMLElement,
  worksheet: Promise<Worksheet>,
): Promise<() => void> {
  const fields = [...element.querySelectorAll<HTMLInputElement>('input[data-key]')];
  const verdict = partOf(element, 'verdict');
  const cure = partOf(element, 'cure');
  const sceneElement = element.querySelector<HTMLElement>('scene-view');
  if (sceneElement === null) throw new Error('a front page without a scene');
  const [scene, flashMatch] = await Promise.all([liveScene(sceneElement), worksheet]);
  const { data } = scene;
  const [first] = data.sides;
  if (first === undefined) throw new Error('a scene without a side');
  const usual: SideData = first;
  let advised: BenchNumbers | undefined;

  function say(level: keyof typeof LEVEL_SIGNS, sentence: string): void {
    const { mark, word } = LEVEL_SIGNS[level];
    verdict.className = `verdict verdict-${level}`;
    const sign = document.createElement('span');
    sign.className = 'verdict-sign';
    sign.textContent = `${mark} ${word}`;
    verdict.replaceChildren(sign, ` ${sentence}`);
  }

  function judge(): void {
    const typed = Object.fromEntries(fields.map((field) => [keyOf(field), field.value] as const));
    const entries = fillEntries(flashMatch.inputs, typed);
    const { outcome, messages, message } = evaluate(flashMatch, entries);
    for (const field of fields) {
      // The attribute without a value would mean that nothing is wrong.
      field.setAttribute('aria-invalid', String(Object.hasOwn(messages, keyOf(field))));
    }
    if (outcome === undefined) {
      say('care', Object.values(messages)[0] ?? message ?? '');
      cure.hidden = true;
      return;
    }
    const { level, state, setting } = frontVerdict(outcome);
    const bench = benchFromEntries(flashMatch, entries);
    advised = advisedBench(bench, RIPPLE_LIMIT_PERCENT);
    say(level, state);
    cure.hidden = setting === undefined || advised === undefined;
    cure.textContent = setting ?? '';
    scene.show({ ...data, sides: [sideAt(usual, bench)] });
  }

  cure.addEventListener('click', () => {
    if (advised === undefined) return;
    const texts: Readonly<Record<string, string>> = {
      filmFps: String(Number(advised.filmFps.toPrecision(6))),
      cameraFps: String(Number(advised.cameraFps.toPrecision(6))),
      exposureSeconds: exposureText(advised.exposureSeconds),
    };
    for (const field of fields) field.value = texts[keyOf(field)] ?? field.value;
    judge();
    verdict.focus();
  });
  for (const field of fields) field.addEventListener('input', judge);
  element.dataset['ready'] = 'true';
  judge();
  return judge;
}
