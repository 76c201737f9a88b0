import { typedFields } from '../islands/typed-fields.ts';

/**
 * Takes note of what a reader typed into a static form before its script arrived, because coming to
 * life sets every field to the form's own text.
 *
 * @returns a function to call after the form has come to life; it types the noted texts again
 */
export function noteEarlyTyping(form: HTMLElement): () => void {
  const noted = typedFields(form).map((field) => ({ field, text: field.value }));
  return () => {
    for (const { field, text } of noted) {
      field.value = text;
      const kind = field instanceof HTMLSelectElement ? 'change' : 'input';
      field.dispatchEvent(new Event(kind, { bubbles: true }));
    }
  };
}
