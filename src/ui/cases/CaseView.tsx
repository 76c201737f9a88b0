import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { DrawnCase } from '../../practice/draw-case.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { loadPicture } from '../islands/load-picture.ts';
import type { PictureComponent } from '../WorksheetView.tsx';
import { CaseAnswer } from './CaseAnswer.tsx';
import { CaseTold } from './CaseTold.tsx';
import { PickOne } from './PickOne.tsx';

interface Props {
  readonly drawn: DrawnCase;
  readonly worksheet: Worksheet;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
  /** Told of the first answer. */
  readonly onTried: (isRight: boolean) => void;
}

/** One case: what is found, the choices, and after the answer the reasons. */
export function CaseView({ drawn, worksheet, instance, onTried }: Props): ComponentChildren {
  const { title, level, scene, told, question, choices } = drawn;
  return (
    <PickOne
      instance={instance}
      title={title}
      level={level}
      question={question}
      choices={choices}
      onTried={onTried}
      answer={<CaseAnswer drawn={drawn} worksheet={worksheet} />}
    >
      <p>{scene}</p>
      <CaseTold told={told} />
      <CasePicture drawn={drawn} instance={instance} />
    </PickOne>
  );
}

/** The picture of the sheet that goes with a case, where it has one; loaded when it is shown. */
function CasePicture(props: {
  readonly drawn: DrawnCase;
  readonly instance: string;
}): ComponentChildren {
  const { drawn, instance } = props;
  const [Picture, setPicture] = useState<PictureComponent>();
  const data = drawn.outcome.pictures?.find(({ name }) => name === drawn.picture);
  useEffect(() => {
    if (drawn.picture === undefined) return;
    void loadPicture(drawn.picture).then(
      (loaded) => {
        setPicture(() => loaded);
      },
      () => {
        // The numbers tell the same.
      },
    );
  }, [drawn.picture]);
  if (Picture === undefined || data === undefined) return null;
  return (
    <div class="sheet-picture">
      <Picture picture={data as never} instance={`${instance}-picture`} />
    </div>
  );
}
