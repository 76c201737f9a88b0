type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

function isChanged(field: Field): boolean {
  if (field instanceof HTMLSelectElement) {
    return [...field.options].some((option) => option.selected !== option.defaultSelected);
  }
  return field.value !== field.defaultValue;
}

/**
 * Takes note of what a reader typed into a static form before its script arrived, because coming to
 * life sets every field to the form's own text.
 *
 * @returns a function to call after the form has come to life; it types the noted texts again
 */
export function noteEarlyTyping(form: HTMLElement): () => void {
  const noted = [...form.querySelectorAll<Field>('input, select, textarea')]
    .filter(isChanged)
    .map((field) => ({ field, text: field.value }));
  return () => {
    for (const { field, text } of noted) {
      field.value = text;
      const kind = field instanceof HTMLSelectElement ? 'change' : 'input';
      field.dispatchEvent(new Event(kind, { bubbles: true }));
    }
  };
}
