import { fillEntries } from '../../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { benchFromEntries } from './bench-from-entries.ts';
import type { LiveScene } from './scene-parts.ts';
import { sideAt } from './side-at.ts';

/**
 * Has a scene show the numbers of a sheet, whoever sets them: the reader, the bench or a link. Numbers
 * that give no picture leave the last one there, dimmed.
 *
 * @param form       the sheet's form, alive or not
 * @param worksheet  its worksheet, whose inputs have the names of the flash match
 */
export function followSheet(scene: LiveScene, form: HTMLElement, worksheet: Worksheet): void {
  const { element, data } = scene;
  const [usual] = data.sides;
  if (usual === undefined) return;
  let shown = '';
  function show(): void {
    const fields = form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[name]');
    const typed = [...fields].flatMap(({ name, value }) =>
      Object.hasOwn(worksheet.inputs, name) ? [[name, value] as const] : [],
    );
    const asked = JSON.stringify(typed);
    if (asked === shown || usual === undefined) return;
    shown = asked;
    try {
      const entries = fillEntries(worksheet.inputs, Object.fromEntries(typed));
      scene.show({ ...data, sides: [sideAt(usual, benchFromEntries(worksheet, entries))] });
      delete element.dataset['answers'];
    } catch {
      element.dataset['answers'] = 'old';
    }
  }
  // A change of the fields changes the answers; a bench or a link sets fields without an event.
  const changes = new MutationObserver(show);
  for (const part of form.querySelectorAll('.verdict, .sheet-inputs, .sheet-answers')) {
    changes.observe(part, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
    });
  }
  form.addEventListener('input', show);
  show();
}
