import type { ComponentChildren } from 'preact';
import { PracticeView } from '../practice/PracticeView.tsx';
import { CaseView } from './CaseView.tsx';
import { FaultCaseView } from './FaultCaseView.tsx';
import type { DrawnItem } from './practice-stock.ts';

interface Props {
  readonly item: DrawnItem;
  /** Told of the first answer. */
  readonly onTried: (isRight: boolean) => void;
}

const INSTANCE = 'session';

/** One question of a session, whatever its kind. */
export function SessionQuestion({ item, onTried }: Props): ComponentChildren {
  switch (item.type) {
    case 'case':
      return (
        <CaseView
          drawn={item.drawn}
          worksheet={item.worksheet}
          instance={INSTANCE}
          onTried={onTried}
        />
      );
    case 'fault':
      return <FaultCaseView drawn={item.drawn} instance={INSTANCE} onTried={onTried} />;
    case 'sum':
      return (
        <PracticeView
          kind={item.kind}
          worksheet={item.worksheet}
          first={item.problem}
          instance={INSTANCE}
          hasFixedNumbers
          onTried={onTried}
        />
      );
  }
}
