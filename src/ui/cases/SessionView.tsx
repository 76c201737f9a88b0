import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { dueItems, withAnswer, withSession, type PathRecord } from '../../practice/path.ts';
import {
  keyOf,
  sessionItems,
  type SessionItem,
  type SessionLevel,
} from '../../practice/session.ts';
import { PracticeView } from '../practice/PracticeView.tsx';
import { CaseView } from './CaseView.tsx';
import { FaultCaseView } from './FaultCaseView.tsx';
import { LevelChoice } from './LevelChoice.tsx';
import { pagePath, today } from './path-store.ts';
import {
  drawable,
  drawItem,
  titleOfKey,
  type DrawnItem,
  type PracticeStock,
} from './practice-stock.ts';
import { setLink, type SetAddress } from './set-address.ts';

interface Props {
  readonly stock: PracticeStock;
  /** What the address asks for. */
  readonly asked: SetAddress | undefined;
  readonly onPath: (path: PathRecord) => void;
}

/** A seed of six digits for a reader who typed none. */
const freshSeed = (): string => String(Math.floor(100_000 + Math.random() * 900_000));

type Stage =
  | { readonly name: 'start' }
  | { readonly name: 'running'; readonly items: readonly SessionItem[]; readonly place: number }
  | { readonly name: 'ended'; readonly items: readonly SessionItem[] };

/** A session of ten: it starts with a seed, asks, and ends. */
export function SessionView({ stock, asked, onPath }: Props): ComponentChildren {
  const [seed, setSeed] = useState(asked?.seed ?? '');
  const [level, setLevel] = useState<SessionLevel>(asked?.level ?? 'all');
  const [stage, setStage] = useState<Stage>({ name: 'start' });
  const [item, setItem] = useState<{ readonly place: number; readonly drawn: DrawnItem }>();
  const [isMissing, setIsMissing] = useState(false);
  const [results, setResults] = useState<ReadonlyMap<number, boolean>>(new Map());
  const box = useRef<HTMLDivElement>(null);

  const open = async (items: readonly SessionItem[], place: number): Promise<void> => {
    setStage({ name: 'running', items, place });
    const wanted = items[place];
    if (wanted === undefined) return;
    try {
      const drawn = await drawItem(stock, wanted);
      setIsMissing(false);
      setItem({ place, drawn });
    } catch {
      setIsMissing(true);
    }
  };
  const start = (): void => {
    const used = seed.trim() === '' ? freshSeed() : seed.trim();
    // A set with a seed is the same for everybody: what comes back for one is left to other sessions.
    const due = seed.trim() === '' ? dueItems(pagePath.read(), today()) : [];
    setSeed(used);
    setResults(new Map());
    void open(sessionItems(drawable(stock), used, level, due), 0);
  };
  const tried = (isRight: boolean): void => {
    if (stage.name !== 'running' || results.has(stage.place)) return;
    const wanted = stage.items[stage.place];
    if (wanted === undefined) return;
    setResults(new Map([...results, [stage.place, isRight]]));
    onPath(pagePath.update((path) => withAnswer(path, keyOf(wanted), isRight, today())));
  };
  const next = (): void => {
    if (stage.name !== 'running') return;
    const { items, place } = stage;
    if (place + 1 < items.length) {
      void open(items, place + 1);
      return;
    }
    const right = [...results.values()].filter(Boolean).length;
    const session = { day: today(), seed, right, of: items.length };
    onPath(pagePath.update((path) => withSession(path, session)));
    setItem(undefined);
    setStage({ name: 'ended', items });
  };
  const shown = item?.place ?? -1;
  useEffect(() => {
    if (stage.name === 'start') return;
    box.current?.querySelector<HTMLElement>('h3')?.focus();
  }, [stage.name, shown]);

  if (stage.name === 'start') {
    return (
      <form
        class="practice session-start"
        aria-labelledby="session-title"
        onSubmit={(event) => {
          event.preventDefault();
          start();
        }}
      >
        <h3 id="session-title">A session of ten</h3>
        <p>
          Six cases and four sums, what you missed before first. With a word or number of your own,
          everybody who types it gets the same ten.
        </p>
        <div class="case-fields">
          <LevelChoice label="Level" level={level} onLevel={setLevel} />
          <label>
            Word or number of the set, if you have one{' '}
            <input
              type="text"
              value={seed}
              maxLength={40}
              autocomplete="off"
              onInput={(event) => {
                setSeed(event.currentTarget.value);
              }}
            />
          </label>
        </div>
        <p class="mixed-line">
          <button type="submit">Start</button>
        </p>
      </form>
    );
  }
  if (stage.name === 'ended') {
    const right = [...results.values()].filter(Boolean).length;
    const missed = stage.items.filter((_, place) => results.get(place) !== true);
    return (
      <div class="practice" ref={box}>
        <h3 tabIndex={-1}>End of the session</h3>
        <p>
          <strong>
            {right} of {stage.items.length} right at the first answer.
          </strong>{' '}
          Stop here for today.
        </p>
        {missed.length > 0 && (
          <>
            <p>What you missed comes back after one, three and seven days:</p>
            <ul>
              {missed.map((each) => (
                <li key={keyOf(each)}>{titleOfKey(stock, keyOf(each))}</li>
              ))}
            </ul>
          </>
        )}
        <p>
          Set “{seed}”: <a href={setLink(seed, level)}>the link to the same ten</a>.
        </p>
        <p class="mixed-line">
          <button
            type="button"
            onClick={() => {
              setSeed('');
              setStage({ name: 'start' });
            }}
          >
            Another session
          </button>
        </p>
      </div>
    );
  }
  const { items, place } = stage;
  const drawn = item?.place === place ? item.drawn : undefined;
  return (
    <div ref={box}>
      {drawn?.type === 'case' && (
        <CaseView
          key={place}
          drawn={drawn.drawn}
          worksheet={drawn.worksheet}
          instance="session"
          onTried={tried}
        />
      )}
      {drawn?.type === 'fault' && (
        <FaultCaseView key={place} drawn={drawn.drawn} instance="session" onTried={tried} />
      )}
      {drawn?.type === 'sum' && (
        <PracticeView
          key={place}
          kind={drawn.kind}
          worksheet={drawn.worksheet}
          first={drawn.problem}
          instance="session"
          hasFixedNumbers
          onTried={tried}
        />
      )}
      {isMissing && (
        <p role="alert">
          This question could not be loaded. Look whether you are on line, and go on to the next.
        </p>
      )}
      <p class="mixed-line">
        <button type="button" class="button" onClick={next}>
          {place + 1 < items.length ? 'Next question' : 'See how it went'}
        </button>
        <span role="status">
          Question {place + 1} of {items.length}
        </span>
      </p>
    </div>
  );
}
