import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { DrawnFault } from '../../practice/fault-case.ts';
import { sitePath } from '../islands/site-path.ts';
import { FaultStill } from './FaultStill.tsx';
import { PickOne } from './PickOne.tsx';

interface Props {
  readonly drawn: DrawnFault;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
  /** Told of the first answer. */
  readonly onTried: (isRight: boolean) => void;
}

/** A recording with one fault: the scene plays it, and the trainee says what it is. */
export function FaultCaseView({ drawn, instance, onTried }: Props): ComponentChildren {
  const { title, level, told, question, choices, fault } = drawn;
  return (
    <PickOne
      instance={instance}
      title={title}
      level={level}
      question={question}
      choices={choices}
      onTried={onTried}
      answer={
        <>
          <p>
            <strong>{fault.name}.</strong> {fault.cause}
          </p>
          <ol>
            {fault.cure.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p>
            <a href={sitePath(`/faults/#${fault.id}`)}>The dictionary of faults: {fault.name}</a>
          </p>
          <p>
            <a href={sitePath(fault.help.href)}>{fault.help.title}</a>
          </p>
        </>
      }
    >
      {told !== undefined && <p>{told}</p>}
      <FaultScene drawn={drawn} instance={instance} />
    </PickOne>
  );
}

/** The still, and the viewer once it is asked for. Left of the line lies the fault, right of it a sound film. */
function FaultScene({ drawn, instance }: Omit<Props, 'onTried'>): ComponentChildren {
  const scene = useRef<HTMLDivElement>(null);
  const [state, setState] = useState<'still' | 'asked' | 'missing'>('still');
  const play = async (): Promise<void> => {
    const element = scene.current;
    if (element === null || state === 'asked') return;
    setState('asked');
    try {
      const { hydrateScene } = await import('../scene/hydrate-scene.ts');
      await hydrateScene(element);
      // The scene has taken the button over by now: this press opens its tools.
      element.querySelector<HTMLButtonElement>('[data-part="open"]')?.click();
    } catch {
      setState('missing');
    }
  };
  return (
    <>
      <div id={`${instance}-scene`} ref={scene} data-scene={drawn.fault.scene}>
        <figure class="scene">
          <div class="scene-picture" data-part="picture">
            <FaultStill fault={drawn.fault} />
            <canvas data-part="canvas" width="640" height="480" hidden aria-hidden="true" />
          </div>
          <button
            type="button"
            class="scene-open"
            data-part="open"
            aria-expanded="false"
            onClick={() => {
              void play();
            }}
          >
            Play it, step through it, look closer
          </button>
        </figure>
      </div>
      {state === 'missing' && (
        <p role="alert">The player could not be loaded. The still picture shows the same fault.</p>
      )}
    </>
  );
}
