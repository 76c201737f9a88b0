import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { dueItems, withAnswer, withSession, type PathRecord } from '../../practice/path.ts';
import {
  keyOf,
  sessionItems,
  type SessionItem,
  type SessionLevel,
} from '../../practice/session.ts';
import { pagePath, today } from './path-store.ts';
import {
  drawable,
  drawItem,
  titleOfKey,
  type DrawnItem,
  type PracticeStock,
} from './practice-stock.ts';
import { SessionEnd } from './SessionEnd.tsx';
import { SessionQuestion } from './SessionQuestion.tsx';
import { SessionStart } from './SessionStart.tsx';
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
  const rightCount = [...results.values()].filter(Boolean).length;

  // A reader may go on before a question has come: what comes late is not shown.
  const wantedPlace = useRef(0);
  const open = async (items: readonly SessionItem[], place: number): Promise<void> => {
    setStage({ name: 'running', items, place });
    setIsMissing(false);
    wantedPlace.current = place;
    const wanted = items[place];
    if (wanted === undefined) return;
    const drawn = await drawItem(stock, wanted).catch(() => undefined);
    if (wantedPlace.current !== place) return;
    if (drawn === undefined) setIsMissing(true);
    else setItem({ place, drawn });
  };
  const start = (): void => {
    const used = seed.trim() === '' ? freshSeed() : seed.trim();
    // A set with a seed is the same for everybody: what comes back for one is left to other sessions.
    const due = seed.trim() === '' ? dueItems(pagePath.read(), today()) : [];
    setSeed(used);
    setResults(new Map());
    void open(sessionItems(drawable(stock), used, level, due), 0);
  };
  const noteAnswer = (isRight: boolean): void => {
    if (stage.name !== 'running' || results.has(stage.place)) return;
    const wanted = stage.items[stage.place];
    if (wanted === undefined) return;
    setResults(new Map([...results, [stage.place, isRight]]));
    onPath(pagePath.update((path) => withAnswer(path, keyOf(wanted), isRight, today())));
  };
  const goOn = (): void => {
    if (stage.name !== 'running') return;
    const { items, place } = stage;
    if (place + 1 < items.length) {
      void open(items, place + 1);
      return;
    }
    const session = { day: today(), seed, right: rightCount, of: items.length };
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
      <SessionStart level={level} onLevel={setLevel} seed={seed} onSeed={setSeed} onStart={start} />
    );
  }
  if (stage.name === 'ended') {
    const missed = stage.items.filter((_, place) => results.get(place) !== true);
    return (
      <div ref={box}>
        <SessionEnd
          right={rightCount}
          of={stage.items.length}
          missed={missed.flatMap((each) => titleOfKey(stock, keyOf(each)) ?? [])}
          seed={seed}
          link={setLink(seed, level)}
          onAgain={() => {
            setSeed('');
            setStage({ name: 'start' });
          }}
        />
      </div>
    );
  }
  const { items, place } = stage;
  return (
    <div ref={box}>
      {item?.place === place && (
        <SessionQuestion key={place} item={item.drawn} onTried={noteAnswer} />
      )}
      {isMissing && (
        <p role="alert">
          This question could not be loaded. Check that you are online, and go on to the next.
        </p>
      )}
      <p class="mixed-line">
        <button type="button" class="button" onClick={goOn}>
          {place + 1 < items.length ? 'Next question' : 'See how it went'}
        </button>
        <span role="status">
          Question {place + 1} of {items.length}
        </span>
      </p>
    </div>
  );
}
