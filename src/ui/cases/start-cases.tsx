import { render, type ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { pagePath } from './path-store.ts';
import { loadStock, type PracticeStock } from './practice-stock.ts';
import { RecordView } from './RecordView.tsx';
import { SessionView } from './SessionView.tsx';
import { readSetAddress, type SetAddress } from './set-address.ts';

function CasePractice(props: {
  readonly stock: PracticeStock;
  readonly asked: SetAddress | undefined;
}): ComponentChildren {
  const [path, setPath] = useState(() => pagePath.read());
  return (
    <>
      <SessionView stock={props.stock} asked={props.asked} onPath={setPath} />
      <RecordView stock={props.stock} path={path} onPath={setPath} />
    </>
  );
}

/**
 * Opens practice by cases in place of its button.
 *
 * @returns writes its fields again from what it keeps
 */
export async function startCases(place: HTMLElement): Promise<() => void> {
  const stock = await loadStock();
  const asked = readSetAddress(location.search);
  place.replaceChildren();
  const draw = (): void => {
    render(<CasePractice stock={stock} asked={asked} />, place);
  };
  draw();
  place.querySelector<HTMLElement>('select')?.focus();
  place.dataset['ready'] = 'true';
  return draw;
}
