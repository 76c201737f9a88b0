import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { EMPTY_BOX, jobOf, reelName, type Box, type Job } from '../../worksheets/box/job.ts';
import type { JobField } from '../../worksheets/box/job-fields.ts';
import { COUNTER_FIELDS } from '../../worksheets/box/reel-fields.ts';
import { judgedReel, projectorRefusal } from '../../worksheets/box/reel-reading.ts';
import { current, EMPTY_BENCH, type BenchState } from '../bench/bench-state.ts';
import type { BenchStore } from '../bench/bench-store.ts';
import type { AsideText, KeptSnapshot } from '../bench/kept-store.ts';
import { sitePath } from '../islands/site-path.ts';
import {
  addListedReels,
  addReels,
  chooseJob,
  clearTable,
  fillCells,
  importJobs,
  moveReel,
  putOnTable,
  removeJob,
  removeReel,
  setJobText,
  setReelText,
  startJob,
} from './box-edits.ts';
import type { BoxStore } from './box-store.ts';
import { LARGEST_BOX_FILE_BYTES, parseBoxFile } from './box-text.ts';
import { BoxKeeping } from './BoxKeeping.tsx';
import { BoxStatus, type BoxSaid } from './BoxStatus.tsx';
import { ImportDialog, type OfferedBox } from './ImportDialog.tsx';
import { JobBar, jobWords } from './JobBar.tsx';
import { AboutJob, JobFields } from './JobFields.tsx';
import { PaperBar } from './PaperBar.tsx';
import { reelCount } from './reel-count.ts';
import { ReelPanel } from './ReelPanel.tsx';
import type { RowCalls } from './ReelRow.tsx';
import { ReelTable } from './ReelTable.tsx';
import { reelRows } from './table-text.ts';
import { TotalsView } from './TotalsView.tsx';

interface Props {
  /** The reader's stores; none in the static page, which shows the empty form. */
  readonly stores?: {
    readonly box: BoxStore;
    readonly bench: BenchStore;
    /** Tells the sheets about the reel that lies on the table now. */
    readonly lay: (bench: BenchState) => void;
    /** Today, as the device writes it: 2026-11-27. */
    readonly today: () => string;
  };
}

/** Fields of a job that stand open: the others unfold. */
const FIRST_FIELDS: readonly JobField[] = ['number', 'customer'];

/** The whole page of the box below its heading: jobs, reels, totals, papers, keeping. */
export function BoxPage({ stores }: Props): ComponentChildren {
  // The first live render repeats the static one; what is kept follows before it is painted.
  const [snapshot, setSnapshot] = useState<KeptSnapshot<Box>>({ state: EMPTY_BOX });
  const [bench, setBench] = useState<BenchState>(EMPTY_BENCH);
  const [aside, setAside] = useState<readonly AsideText[]>([]);
  const [openReel, setOpenReel] = useState<string>();
  const [said, setSaid] = useState<BoxSaid>();
  const [offered, setOffered] = useState<OfferedBox>();
  const [showsOwn, setShowsOwn] = useState(false);
  const { state } = snapshot;
  const job = jobOf(state, state.currentJob);
  const reel = job?.reels.find(({ id }) => id === openReel);
  const benchTexts = current(bench, 'benches')?.entries ?? {};
  const projectorGauge = benchTexts['projector.gauge'] ?? '';

  useLayoutEffect(() => {
    if (stores === undefined) return undefined;
    const refresh = (): void => {
      setSnapshot(stores.box.read());
      setAside(stores.box.aside());
      const nextBench = stores.bench.read().state;
      setBench(nextBench);
      stores.lay(nextBench);
    };
    refresh();
    const stops = [stores.box.subscribe(refresh), stores.bench.subscribe(refresh)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [stores]);

  const edit = (change: (before: Box) => Box, words?: string): void => {
    const before = stores?.box.read().state;
    stores?.box.update(change);
    setSaid(words === undefined || before === undefined ? undefined : { words, undo: before });
  };

  const lay = (id: string, isOnlyToLook: boolean): void => {
    const chosen = job?.reels.find((one) => one.id === id);
    if (job === undefined || chosen === undefined) return;
    const judged = judgedReel(chosen);
    const mayBurn = judged.triage.verdict === 'do-not-open' ? judged.sentence : undefined;
    const refusal = mayBurn ?? projectorRefusal(chosen, projectorGauge);
    if (refusal !== undefined && !isOnlyToLook) {
      const isNitrate = mayBurn !== undefined;
      setSaid({
        isRefusal: true,
        words: `${reelName(chosen)} is not put on the table. ${refusal}`,
        ...(isNitrate
          ? {}
          : {
              act: {
                label: 'Put it there only to look and measure',
                run: () => {
                  lay(id, true);
                },
              },
            }),
      });
      return;
    }
    edit(
      (before) => putOnTable(before, { job: job.id, reel: id }),
      `${reelName(chosen)} is on the table: every sheet of the book opens with its numbers.`,
    );
  };

  // The rows keep these functions for good; what they need of the moment is looked up when they are called.
  const now = useRef({ job, edit, lay, onTable: state.onTable });
  now.current = { job, edit, lay, onTable: state.onTable };
  const calls = useMemo<RowCalls>(
    () => ({
      onText(id, field, text) {
        const { job: open, edit: change } = now.current;
        if (open === undefined) return;
        change((before) => setReelText(before, { job: open.id, reel: id }, field, text));
      },
      onOpen(id) {
        setOpenReel((before) => (before === id ? undefined : id));
      },
      onTable(id) {
        const { job: open, onTable, edit: change, lay: put } = now.current;
        const isThere = onTable !== undefined && onTable.reel === id && onTable.job === open?.id;
        if (isThere) change(clearTable, 'The table is empty.');
        else put(id, false);
      },
    }),
    [],
  );

  const onJobText = (field: JobField, text: string): void => {
    if (job !== undefined) edit((before) => setJobText(before, job.id, field, text));
  };
  const openBoxFile = async (file: File): Promise<void> => {
    const reading =
      file.size > LARGEST_BOX_FILE_BYTES
        ? ({ ok: false, reason: 'It is larger than 20 MB.' } as const)
        : parseBoxFile(await file.text());
    if (reading.ok) setOffered({ box: reading.state, faults: reading.faults });
    else {
      const words = `“${file.name}” was not opened. ${reading.reason} Nothing is changed.`;
      setSaid({ isRefusal: true, words });
    }
  };
  const openList = async (file: File, into: Job): Promise<void> => {
    const { rows, unknown } = reelRows(await file.text());
    if (rows.length === 0) {
      setSaid({
        isRefusal: true,
        words: `There is no reel in “${file.name}”. Nothing is changed.`,
      });
      return;
    }
    const left = unknown.length === 0 ? '' : ` Columns passed over: ${unknown.join(', ')}.`;
    edit(
      (before) => addListedReels(before, into.id, rows),
      `${reelCount(rows.length)} of “${file.name}” ${rows.length === 1 ? 'is' : 'are'} added.${left}`,
    );
  };

  return (
    <div class="box-work">
      <BoxStatus
        snapshot={snapshot}
        hasAside={aside.length > 0}
        said={said}
        onUndo={(before) => {
          edit(() => before);
        }}
      />
      <JobBar
        box={state}
        job={job}
        onChoose={(id) => {
          setOpenReel(undefined);
          edit((before) => chooseJob(before, id));
        }}
        onNew={() => {
          setOpenReel(undefined);
          edit(startJob);
        }}
        onRemove={(one) => {
          edit((before) => removeJob(before, one.id), `${jobWords(one)} is removed.`);
        }}
      />
      {job === undefined ? (
        <p>No job yet. Start one, or open a file of yours below.</p>
      ) : (
        <>
          <JobFields job={job} fields={FIRST_FIELDS} onText={onJobText} />
          <h2>Reels</h2>
          <p class="box-note">
            Enter and the arrow keys move from field to field; Enter in the last line begins a new
            one. Cells copied from a spreadsheet are pasted where the cursor stands.{' '}
            {projectorGauge === '' && (
              <>
                Say on <a href={sitePath('/bench/')}>your bench</a> which gauge the projector runs,
                and a reel that does not fit is refused here.
              </>
            )}
          </p>
          <ReelTable
            job={job}
            openReel={openReel}
            onTableReel={state.onTable?.job === job.id ? state.onTable.reel : undefined}
            projectorGauge={projectorGauge}
            calls={calls}
            onAdd={() => {
              edit((before) => addReels(before, job.id, [{}]));
            }}
            onPaste={(id, column, cells) => {
              edit(
                (before) =>
                  fillCells(before, { job: job.id, reel: id }, COUNTER_FIELDS.slice(column), cells),
                cells.length === 1 ? 'One line is pasted.' : `${cells.length} lines are pasted.`,
              );
            }}
          />
          <p class="box-buttons">
            <button
              type="button"
              class="button"
              onClick={() => {
                edit((before) => addReels(before, job.id, [{}]));
              }}
            >
              Add a reel
            </button>
          </p>
          {reel !== undefined && (
            <ReelPanel
              key={reel.id}
              job={job}
              reel={reel}
              projectorGauge={projectorGauge}
              onText={(field, text) => {
                edit((before) => setReelText(before, { job: job.id, reel: reel.id }, field, text));
              }}
              onMove={(to, reason) => {
                const who = reel.texts.who ?? '';
                const day = stores?.today() ?? '';
                edit((before) =>
                  moveReel(before, { job: job.id, reel: reel.id }, { state: to, day, who, reason }),
                );
              }}
              onRemove={() => {
                edit(
                  (before) => removeReel(before, { job: job.id, reel: reel.id }),
                  `${reelName(reel)} is removed.`,
                );
              }}
            />
          )}
          <TotalsView job={job} bench={benchTexts} showsOwn={showsOwn} onShowOwn={setShowsOwn} />
          <PaperBar job={job} openReel={reel} bench={benchTexts} today={stores?.today() ?? ''} />
          <AboutJob job={job} onText={onJobText} />
        </>
      )}
      <BoxKeeping
        box={state}
        job={job}
        aside={aside}
        onBoxFile={(file) => {
          void openBoxFile(file);
        }}
        onList={(file) => {
          if (job !== undefined) void openList(file, job);
        }}
        onClear={() => {
          const before = state;
          stores?.box.clear();
          setSaid({ words: 'The box is empty.', undo: before });
        }}
        onDropAside={() => stores?.box.dropAside()}
      />
      {offered !== undefined && (
        <ImportDialog
          offered={offered}
          here={state}
          onTake={(choices) => {
            edit((before) => importJobs(before, offered.box, choices), 'The file is imported.');
            setOffered(undefined);
          }}
          onLeave={() => {
            setOffered(undefined);
          }}
        />
      )}
    </div>
  );
}
