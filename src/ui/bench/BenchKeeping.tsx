import type { ComponentChildren } from 'preact';
import { CopyButton } from '../CopyButton.tsx';
import { offerDownload } from '../offer-download.ts';
import { benchLink } from './bench-link.ts';
import { benchJson } from './bench-schema.ts';
import type { BenchState } from './bench-state.ts';
import type { AsideText } from './kept-store.ts';

interface Props {
  readonly state: BenchState;
  readonly aside: readonly AsideText[];
  /** Address of this site, before the path; empty in the static page. */
  readonly site: string;
  readonly onFile: (file: File) => void;
  readonly onClear: () => void;
  readonly onDropAside: () => void;
}

/** Takes the bench away and brings it in: link, file, clearing; and what was kept aside. */
export function BenchKeeping(props: Props): ComponentChildren {
  const { state, aside, site, onFile, onClear, onDropAside } = props;
  const isEmpty = state.benches.length + state.reels.length === 0;
  return (
    <section class="bench-keeping" aria-labelledby="keep-and-share">
      <h2 id="keep-and-share">Keep and share</h2>
      <p class="bench-note">
        The link holds the bench, reel and region in use, but never your prices and times. The file
        holds everything on this page, prices too. Neither is sent anywhere unless you send it.
      </p>
      <div class="bench-buttons">
        {/* Always there, so that nothing moves when a bench comes in. */}
        <CopyButton text={`${site}${benchLink(state)}`} label="Copy link" isDisabled={isEmpty} />
        <button
          type="button"
          disabled={isEmpty}
          onClick={() => {
            offerDownload({
              fileName: 'bench.json',
              mediaType: 'application/json',
              text: `${benchJson(state, 2)}\n`,
            });
          }}
        >
          Save as a file
        </button>
        <label class="button">
          Open a file
          <input
            type="file"
            class="visually-hidden"
            accept=".json,application/json"
            onChange={(event) => {
              const input = event.currentTarget;
              const file = input.files?.[0];
              if (file !== undefined) onFile(file);
              // The same file can be chosen again after it was mended.
              input.value = '';
            }}
          />
        </label>
        <button type="button" disabled={isEmpty} onClick={onClear}>
          Clear everything
        </button>
      </div>
      {aside.length > 0 && <AsideList aside={aside} onDropAside={onDropAside} />}
    </section>
  );
}

function AsideList(props: {
  readonly aside: readonly AsideText[];
  readonly onDropAside: () => void;
}): ComponentChildren {
  return (
    <div class="bench-aside" id="kept-aside">
      <h3>Kept aside</h3>
      <p>
        Part of what was stored could not be read. The rest is in use; the text as it was found is
        kept, so that nothing is lost.
      </p>
      <ul>
        {props.aside.flatMap(({ faults }) => faults.map((fault) => <li key={fault}>{fault}</li>))}
      </ul>
      <div class="bench-buttons">
        <button
          type="button"
          onClick={() => {
            offerDownload({
              fileName: 'bench-kept-aside.json',
              mediaType: 'application/json',
              text: `${JSON.stringify(props.aside, undefined, 2)}\n`,
            });
          }}
        >
          Save what was found
        </button>
        <button type="button" onClick={props.onDropAside}>
          Throw it away
        </button>
      </div>
    </div>
  );
}
