type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/** What a select had chosen in the page as it was built: the marked option, else the first. */
function builtChoice(field: HTMLSelectElement): string {
  const marked = [...field.options].find((option) => option.defaultSelected);
  return marked?.value ?? field.options[0]?.value ?? '';
}

function isTyped(field: Field): boolean {
  if (field instanceof HTMLSelectElement) return field.value !== builtChoice(field);
  // The value of a box to tick never changes; whether it is ticked does.
  const isBox = field.type === 'checkbox' || field.type === 'radio';
  if (isBox && field instanceof HTMLInputElement) return field.checked !== field.defaultChecked;
  return field.value !== field.defaultValue;
}

/** Its fields; what moves a scene in it is none of them. */
const fieldsOf = (form: HTMLElement): readonly Field[] => [
  ...form.querySelectorAll<Field>(':is(input, select, textarea):not(scene-view *)'),
];

/**
 * Fields of a form that say something else than the page as it was built: typed before the script
 * came, or put back by the browser after a reload or on the way back.
 */
export function typedFields(form: HTMLElement): readonly Field[] {
  return fieldsOf(form).filter(isTyped);
}

/** The texts of those fields, by name. */
export function typedTexts(form: HTMLElement): Readonly<Record<string, string>> {
  return Object.fromEntries(typedFields(form).map(({ name, value }) => [name, value]));
}
