import { createContext, type ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import { ownProperty } from '../../quantity/own-property.ts';
import type { Entries } from '../../worksheets/machine/evaluate.ts';

/** What is written on the blank lines of a sheet, by the name of the line. */
export interface BlankTexts {
  readonly texts: Entries;
  readonly onChange: (name: string, text: string) => void;
}

export const BlankContext = createContext<BlankTexts>({ texts: {}, onChange: () => undefined });

/**
 * A line to write on: typed before printing, or by hand on the paper. Its text stays with the page's
 * history entry, so that a reload keeps it; it goes into no address and no store, and without a name
 * no form would send it.
 */
export function Blank({ name }: { readonly name: string }): ComponentChildren {
  const { texts, onChange } = useContext(BlankContext);
  return (
    <input
      type="text"
      autocomplete="off"
      data-blank={name}
      value={ownProperty(texts, name) ?? ''}
      onInput={(event) => {
        onChange(name, event.currentTarget.value);
      }}
    />
  );
}
