import type { ComponentChildren } from 'preact';
import { sitePath } from '../islands/site-path.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { Stretch } from './excerpt.ts';
import type { Findings, Hit } from './search-index.ts';

/** The best results, for a reader who wants one place to go to. */
export function BestHits({ hits }: { readonly hits: readonly Hit[] }): ComponentChildren {
  return (
    <section class="hits hits-best" aria-labelledby="hits-best">
      <h2 id="hits-best">Best matches</h2>
      <ol>
        {hits.map((hit) => (
          <HitLine key={hit.url} hit={hit} />
        ))}
      </ol>
    </section>
  );
}

/** Results by kind, each kind with its number and, when there are more, a way to all of them. */
export function ResultGroups(props: {
  readonly findings: Findings;
  readonly onWhole: (kind: Kind) => void;
}): ComponentChildren {
  const { findings, onWhole } = props;
  return findings.groups.map(({ kind, total, hits }) => (
    <section class="hits" key={kind} aria-labelledby={`hits-${kind}`}>
      <h2 id={`hits-${kind}`}>
        {KINDS[kind]} <span class="hits-count">{total}</span>
      </h2>
      <ol>
        {hits.map((hit) => (
          <HitLine key={hit.url} hit={hit} />
        ))}
      </ol>
      {total > hits.length && (
        <p>
          <button
            type="button"
            class="button"
            onClick={() => {
              onWhole(kind);
            }}
          >
            More {KINDS[kind].toLowerCase()}
          </button>
        </p>
      )}
    </section>
  ));
}

function HitLine({ hit }: { readonly hit: Hit }): ComponentChildren {
  return (
    <li class="hit">
      <p class="hit-title">
        <a class="hit-link" href={sitePath(hit.url)}>
          {hit.title}
        </a>{' '}
        <span class="hit-place">{hit.place}</span>
      </p>
      <p class="hit-excerpt">
        <Marked stretches={hit.excerpt} />
      </p>
    </li>
  );
}

function Marked({ stretches }: { readonly stretches: readonly Stretch[] }): ComponentChildren {
  return stretches.map(({ text, marked }, index) =>
    // A stretch has no identity beside its place.
    marked ? <mark key={index}>{text}</mark> : <span key={index}>{text}</span>,
  );
}
