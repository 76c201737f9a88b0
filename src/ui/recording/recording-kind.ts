import type { ComponentChildren } from 'preact';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import type { InputSpecs, VerdictLevel } from '../../worksheets/machine/types.ts';
import type { SettingsReader } from './settings-reader.ts';

/** Why a recording is not read: the reason, where it shows, and what to do. */
export interface Refusal {
  readonly kind: 'refusal';
  readonly says: string;
  readonly place?: string | undefined;
  readonly toDo: string;
  /** Makes a copy that can be read. */
  readonly command?: string | undefined;
}

/** One sentence on top of the sheet. */
export interface Verdict {
  readonly level: VerdictLevel;
  readonly sentence: string;
}

/** The recording that a result was read from. */
export interface Source {
  readonly file: Blob;
  readonly name: string;
  readonly isDemo: boolean;
}

/** How far the work has come. */
export interface Progress {
  readonly words: string;
  /** 0–1; undefined where it is not known. */
  readonly share: number | undefined;
}

/** What a reading of one file needs besides the file. */
export interface ReadTools {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** Reads files of one kind, and remembers the last, so that other settings do not decode it anew. */
export interface RecordingReader<Settings, Found> {
  /** Gives undefined when it was stopped. */
  read(source: Source, settings: Settings, tools: ReadTools): Promise<Found | Refusal | undefined>;
  /** Frees what it holds. */
  end(): void;
}

/** What the report of a recording is drawn from. */
export interface ReportProps<
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found> = RecordingReader<Settings, Found>,
> {
  readonly found: Found;
  readonly settings: Settings;
  /** Undefined for the example that is printed in the page. */
  readonly source: Source | undefined;
  readonly reader: Reader | undefined;
  /** Prefix of element ids. */
  readonly instance: string;
}

/** A kind of recording that the book reads. */
export interface RecordingKind<
  Specs extends InputSpecs,
  Settings,
  Found,
  Reader extends RecordingReader<Settings, Found> = RecordingReader<Settings, Found>,
> {
  readonly title: string;
  readonly question: string;
  /** What the recording has to be, in a sentence or two. */
  readonly wanted: string;
  readonly fields: SettingsReader<Specs, Settings>;
  /** Fields that stand open; the others are behind a word. */
  readonly openFields: readonly string[];
  readonly demo: {
    /** Address from the root of the site. */
    readonly path: string;
    readonly name: string;
    /** What was read from it when the book was made. */
    readonly found: Found;
  };
  makeReader(): Reader;
  verdict(found: Found, settings: Settings): Verdict;
  Report(props: ReportProps<Settings, Found, Reader>): ComponentChildren;
  /** Entries that put the demo’s own bench into the fields; the defaults when left out. */
  readonly demoEntries?: Entries;
}
