import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { fillEntries, type Entries } from '../../worksheets/machine/evaluate.ts';
import type { InputSpecs } from '../../worksheets/machine/types.ts';
import type { BenchOverlay } from '../bench/bench-entries.ts';
import { EntryField } from '../EntryField.tsx';
import { sitePath } from '../islands/site-path.ts';
import { OriginBar } from '../OriginBar.tsx';
import { SpokenWhenResting } from '../SpokenWhenResting.tsx';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import { LEVEL_SIGNS } from '../verdict-signs.ts';
import { DropField } from './DropField.tsx';
import { RefusalView } from './RefusalView.tsx';
import type {
  Progress,
  RecordingKind,
  RecordingReader,
  Refusal,
  Source,
  Verdict,
} from './recording-kind.ts';

interface Props<
  Specs extends InputSpecs,
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found>,
> {
  readonly kind: RecordingKind<Specs, Settings, Found, Reader>;
  /** Prefix of element ids; unique on its page. */
  readonly instance: string;
  readonly bench?: BenchOverlay | undefined;
  /** What was typed before the script came. */
  readonly typed?: Entries;
  /** Gives files that are dropped on the sheet or pasted into it, the one before the script included. */
  readonly listen?: (take: (file: File) => void) => () => void;
}

/** What stands below the fields. */
type Shown<Settings, Found> =
  | { readonly stage: 'example' }
  | {
      readonly stage: 'found';
      /** Of this reading; what was done with another does not carry over. */
      readonly serial: number;
      readonly source: Source;
      readonly entries: Entries;
      readonly settings: Settings;
      readonly found: Found;
    }
  | {
      readonly stage: 'refused';
      readonly source: Source;
      readonly entries: Entries;
      readonly refusal: Refusal;
    }
  | { readonly stage: 'stopped' }
  | { readonly stage: 'not-fetched' };

const isSame = (some: Entries, others: Entries): boolean =>
  Object.keys(some).every((key) => some[key] === others[key]);

const isRefusal = (value: unknown): value is Refusal =>
  typeof value === 'object' && value !== null && (value as Partial<Refusal>).kind === 'refusal';

/**
 * A recording worksheet: a file in place of numbers, with the fields that the pictures cannot tell. As
 * built it shows what the demo recording gives; no code that decodes is loaded before a file is there.
 */
export function RecordingSheet<
  Specs extends InputSpecs,
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found>,
>(props: Props<Specs, Settings, Found, Reader>): ComponentChildren {
  const { kind, instance, bench } = props;
  const { inputs } = kind.fields.sheet;
  const [isLive, setIsLive] = useState(false);
  const [chosen, setChosen] = useState<'book' | 'bench' | 'own' | undefined>(undefined);
  const [changed, setChanged] = useState<Entries>(props.typed ?? {});
  const [progress, setProgress] = useState<Progress | undefined>(undefined);
  const [shown, setShown] = useState<Shown<Settings, Found>>({ stage: 'example' });
  const stop = useRef<AbortController | undefined>(undefined);
  const reader = useRef<Reader | undefined>(undefined);

  const serial = useRef(0);

  const isOfBench = isLive && bench !== undefined && (chosen ?? 'bench') === 'bench';
  const book = fillEntries(inputs, kind.demoEntries ?? {});
  // What only the demo’s bench is known for is not taken for the reader’s own.
  const own = fillEntries(inputs, {});
  const base = isOfBench ? { ...own, ...bench.entries } : chosen === 'own' ? own : book;
  const entries = isLive ? { ...base, ...changed } : base;
  const { settings, messages } = kind.fields.read(entries);
  const isChanged = Object.entries(changed).some(([key, text]) => text !== base[key]);

  const read = async (source: Source, used: Entries): Promise<void> => {
    const wanted = kind.fields.read(used).settings;
    if (wanted === undefined) return;
    stop.current?.abort();
    const task = new AbortController();
    stop.current = task;
    reader.current ??= kind.makeReader();
    const found = await reader.current.read(source, wanted, {
      signal: task.signal,
      onProgress: (now) => {
        if (!task.signal.aborted) setProgress(now);
      },
    });
    // Another file took its place meanwhile.
    if (stop.current !== task) return;
    setProgress(undefined);
    if (found === undefined) setShown({ stage: 'stopped' });
    else if (isRefusal(found))
      setShown({ stage: 'refused', source, entries: used, refusal: found });
    else {
      serial.current += 1;
      const { current } = serial;
      setShown({ stage: 'found', serial: current, source, entries: used, settings: wanted, found });
    }
  };

  const readFile = (file: File): void => {
    const isDemoBench = !isOfBench && chosen !== 'own';
    if (isDemoBench) setChosen('own');
    const used = isDemoBench ? { ...own, ...changed } : entries;
    void read({ file, name: file.name, isDemo: false }, used);
  };
  const readDemo = async (): Promise<void> => {
    // The demo was made on a bench of its own.
    setChosen('book');
    setChanged({});
    setProgress({ words: 'Fetching the demo recording', share: undefined });
    try {
      const answer = await fetch(sitePath(kind.demo.path));
      if (!answer.ok) throw new Error(answer.statusText);
      await read({ file: await answer.blob(), name: kind.demo.name, isDemo: true }, book);
    } catch {
      setProgress(undefined);
      setShown({ stage: 'not-fetched' });
    }
  };
  const latest = useRef(readFile);
  latest.current = readFile;

  useLayoutEffect(() => {
    setIsLive(true);
  }, []);
  // A file that was there before the script is read with what was typed before it, so not before that is in.
  useEffect(() => {
    if (!isLive) return undefined;
    return props.listen?.((file) => {
      latest.current(file);
    });
  }, [isLive]);
  useEffect(
    () => () => {
      stop.current?.abort();
      reader.current?.end();
    },
    [],
  );

  const isOld =
    (shown.stage === 'found' || shown.stage === 'refused') && !isSame(shown.entries, entries);
  const verdict = verdictOf(kind, shown, progress, settings);
  const open = kind.openFields;
  const field = (key: string): ComponentChildren => {
    const spec = inputs[key];
    if (spec === undefined) return null;
    return (
      <EntryField
        key={key}
        id={`${instance}-${key}`}
        name={key}
        spec={spec}
        text={entries[key] ?? ''}
        message={messages[key]}
        onChange={(text) => {
          setChanged((before) => ({ ...before, [key]: text }));
        }}
      />
    );
  };
  const isBrief = kind.isBriefAtFirst === true && !isLive;
  const others = Object.keys(inputs).filter((key) => !open.includes(key));
  return (
    <form
      class="sheet recording"
      id={instance}
      aria-labelledby={`${instance}-title`}
      onSubmit={(event) => {
        event.preventDefault();
      }}
    >
      <header class="sheet-head">
        <p class="sheet-kind">Recording</p>
        <h3 id={`${instance}-title`}>{kind.title}</h3>
        <p class="sheet-question">{kind.question}</p>
      </header>
      <VerdictBox instance={instance} verdict={verdict} isWorking={progress !== undefined} />
      <OriginBar
        origin={isOfBench ? 'bench' : 'book'}
        isChanged={isChanged}
        isChapters={false}
        benchName={isLive ? bench?.name : undefined}
        leftOut={bench?.leftOut ?? []}
        onChoose={(choice) => {
          setChosen(choice);
          setChanged({});
        }}
      />
      <div class="sheet-body">
        {!isBrief && (
          <fieldset class="sheet-inputs">
            <legend>What the recording was made with</legend>
            {open.map(field)}
            <details class="recording-others">
              <summary>Less common settings</summary>
              {others.map(field)}
            </details>
          </fieldset>
        )}
        <DropField
          id={instance}
          wanted={kind.wanted}
          progress={progress}
          onFile={readFile}
          onDemo={() => {
            void readDemo();
          }}
          onCancel={() => {
            stop.current?.abort();
          }}
        />
      </div>
      {isOld && (
        <div class="sheet-notice">
          What stands below was worked out with other numbers.{' '}
          <button
            type="button"
            disabled={settings === undefined}
            onClick={() => {
              void read(shown.source, entries);
            }}
          >
            Work it out with these
          </button>
        </div>
      )}
      <div class="recording-result" data-old={isOld ? 'true' : undefined} inert={isOld}>
        {progress === undefined && (
          <Result {...{ kind, shown, instance, isBrief }} reader={reader.current} />
        )}
      </div>
    </form>
  );
}

function verdictOf<
  Specs extends InputSpecs,
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found>,
>(
  kind: RecordingKind<Specs, Settings, Found, Reader>,
  shown: Shown<Settings, Found>,
  progress: Progress | undefined,
  settings: Settings | undefined,
): Verdict | undefined {
  if (progress !== undefined) return { level: 'note', sentence: `${progress.words}.` };
  if (settings === undefined && shown.stage !== 'found') {
    return { level: 'note', sentence: 'An entry below cannot be used yet.' };
  }
  switch (shown.stage) {
    case 'example': {
      const own = kind.fields.read(fillEntries(kind.fields.sheet.inputs, kind.demoEntries ?? {}));
      if (own.settings === undefined) return undefined;
      const { level, sentence } = kind.verdict(kind.demo.found, own.settings);
      return { level, sentence: `The demo recording: ${withSmallStart(sentence)}` };
    }
    case 'found':
      return kind.verdict(shown.found, shown.settings);
    case 'refused':
      return { level: 'stop', sentence: shown.refusal.says };
    case 'stopped':
      return { level: 'note', sentence: 'Stopped. Nothing is kept of the recording.' };
    case 'not-fetched':
      return {
        level: 'care',
        sentence: 'The demo recording could not be fetched. Connect to the network and try again.',
      };
  }
}

const withSmallStart = (sentence: string): string =>
  `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;

/** Before the result, nothing is called one. */
const WORKING = { mark: '…', word: 'Working' };

function VerdictBox(props: {
  readonly instance: string;
  readonly verdict: Verdict | undefined;
  readonly isWorking: boolean;
}): ComponentChildren {
  const { level, sentence } = props.verdict ?? { level: 'note', sentence: '' };
  const sign = props.isWorking ? WORKING : LEVEL_SIGNS[level];
  return (
    <>
      <p class={`verdict verdict-${level}`} id={`${props.instance}-verdict`}>
        <span class="verdict-sign">
          <span aria-hidden="true">{sign.mark}</span> {sign.word}
        </span>{' '}
        <span class="verdict-sentence">
          <UnbrokenUnits text={sentence} />
        </span>
      </p>
      <SpokenWhenResting text={`${sign.word}: ${sentence}`} />
    </>
  );
}

function Result<
  Specs extends InputSpecs,
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found>,
>(props: {
  readonly kind: RecordingKind<Specs, Settings, Found, Reader>;
  readonly shown: Shown<Settings, Found>;
  readonly instance: string;
  readonly isBrief: boolean;
  readonly reader: Reader | undefined;
}): ComponentChildren {
  const { kind, shown, instance, isBrief, reader } = props;
  if (shown.stage === 'refused') return <RefusalView refusal={shown.refusal} />;
  if (shown.stage !== 'found' && shown.stage !== 'example') return null;
  const isExample = shown.stage === 'example';
  const example = kind.fields.read(fillEntries(kind.fields.sheet.inputs, kind.demoEntries ?? {}));
  const settings = isExample ? example.settings : shown.settings;
  if (settings === undefined) return null;
  return (
    <>
      <p class="recording-name">
        {isExample
          ? 'Below: what the demo recording of the book gives.'
          : `Read: ${shown.source.name}`}
      </p>
      <kind.Report
        key={isExample ? 0 : shown.serial}
        found={isExample ? kind.demo.found : shown.found}
        settings={settings}
        source={isExample ? undefined : shown.source}
        reader={reader}
        instance={instance}
        isBrief={isBrief}
      />
    </>
  );
}
