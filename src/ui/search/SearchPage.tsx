import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { KINDS, type Kind } from './kinds.ts';
import { sitePath } from '../islands/site-path.ts';
import { moveThroughResults } from './result-keys.ts';
import { BestHits, ResultGroups } from './ResultGroups.tsx';
import type { OpenedIndex } from './open-search-index.ts';
import type { Findings, SearchIndex } from './search-index.ts';

/** Hits of each kind before the reader asks for more. */
const FIRST_HITS = 4;
/** More than anyone reads; keeps a query such as “film” quick. */
const MOST_HITS = 60;

/**
 * Contract of the address: `/search/?q=<query as typed>`. A missing or empty `q` opens the empty form.
 */
function queryOfAddress(): string {
  return new URLSearchParams(location.search).get('q')?.slice(0, 200) ?? '';
}

interface Props {
  /** Opens the index; called at the first sign of use. Left out in the page that the build writes. */
  readonly open?: () => Promise<OpenedIndex>;
  /** What the reader typed before the script had come; counts before the address. */
  readonly typed?: string;
}

function neverOpen(): Promise<OpenedIndex> {
  return Promise.reject(new Error('no index while the page is built'));
}

/** The search form with its results, worked by keyboard alone if the reader likes. */
export function SearchPage({ open = neverOpen, typed = '' }: Props): ComponentChildren {
  // The field is open before its script has come; the results begin with the script.
  const [query, setQuery] = useState(typed);
  const [isLive, setIsLive] = useState(false);
  const [whole, setWhole] = useState<readonly Kind[]>([]);
  const [findings, setFindings] = useState<Findings | undefined>();
  const [state, setState] = useState<'ready' | 'searching' | 'failed'>('ready');
  const field = useRef<HTMLInputElement>(null);
  const page = useRef<HTMLDivElement>(null);
  // The whole index, once it has come; the first answers are given without it.
  const [wholeIndex, setWholeIndex] = useState<SearchIndex | undefined>();
  const asked = query.trim();

  useEffect(() => {
    const onPopState = (): void => {
      setQuery(queryOfAddress());
    };
    addEventListener('popstate', onPopState);
    // A letter may have been typed since the form came to life: it stays.
    setQuery((now) => (now === '' ? queryOfAddress() : now));
    setIsLive(true);
    return () => {
      removeEventListener('popstate', onPopState);
    };
  }, []);

  useEffect(() => {
    if (isLive) field.current?.focus();
  }, [isLive]);

  useEffect(() => {
    if (!isLive) return undefined;
    const address = asked === '' ? location.pathname : `?${new URLSearchParams({ q: asked })}`;
    history.replaceState(history.state, '', address);
    document.title = document.title.replace(/^(?:“.*” · )?/u, asked === '' ? '' : `“${asked}” · `);
    if (asked === '') {
      setFindings(undefined);
      setState('ready');
      return undefined;
    }
    let current = true;
    setState('searching');
    open()
      .then(({ first, whole: growing }) => {
        // Where the rest cannot be loaded, the first answers stand.
        growing.then(setWholeIndex).catch(() => undefined);
        if (!current) return;
        const index = wholeIndex ?? first;
        setFindings(index.find(asked, (kind) => (whole.includes(kind) ? MOST_HITS : FIRST_HITS)));
        setState('ready');
      })
      .catch(() => {
        if (current) setState('failed');
      });
    return () => {
      current = false;
    };
  }, [asked, whole, open, isLive, wholeIndex]);

  const ask = (text: string): void => {
    setWhole([]);
    setQuery(text);
    field.current?.focus();
  };

  return (
    <div
      ref={page}
      class="search"
      onKeyDown={(event) => {
        if (event.key === 'Escape') {
          event.preventDefault();
          ask('');
        } else if (page.current !== null) {
          moveThroughResults(event, page.current);
        }
      }}
    >
      <form
        role="search"
        onSubmit={(event) => {
          event.preventDefault();
          page.current?.querySelector<HTMLAnchorElement>('.hit-link')?.click();
        }}
      >
        <label for="search-query">Look for a word, a symptom, a number or a worksheet</label>
        <input
          ref={field}
          id="search-query"
          type="search"
          name="q"
          value={query}
          autofocus
          autocomplete="off"
          spellcheck={false}
          enterkeyhint="search"
          aria-describedby="search-keys"
          onFocus={() => {
            // Loading starts while the reader still types. A failure shows at the first search.
            open().catch(() => undefined);
          }}
          onInput={(event) => {
            setWhole([]);
            setQuery(event.currentTarget.value);
          }}
        />
        <p id="search-keys" class="search-keys">
          <kbd>↓</kbd> <kbd>↑</kbd> move through the results, <kbd>Enter</kbd> opens, <kbd>Esc</kbd>{' '}
          clears. From any page <kbd>/</kbd> leads here.
        </p>
      </form>
      <p class="search-status" role="status">
        {statusLine(state, asked, findings)}
      </p>
      {state === 'failed' && <Elsewhere />}
      {asked === '' && <FirstSteps onAsk={ask} />}
      {asked !== '' && findings !== undefined && state !== 'failed' && (
        <>
          {findings.total === 0 ? (
            state === 'ready' && <Elsewhere />
          ) : (
            <>
              <BestHits hits={findings.best} />
              <ResultGroups
                findings={findings}
                onWhole={(kind) => {
                  setWhole((before) => [...before, kind]);
                }}
              />
            </>
          )}
        </>
      )}
    </div>
  );
}

function statusLine(state: string, asked: string, findings: Findings | undefined): string {
  if (state === 'failed') {
    return 'The search index could not be loaded. Check the connection and reload, or look here:';
  }
  if (asked === '') return '';
  if (findings === undefined) return 'Loading the index …';
  if (findings.total === 0) return `Nothing in the book matches “${asked}”.`;
  const counts = findings.groups.map(
    ({ kind, total }) => `${KINDS[kind].toLowerCase()} (${total})`,
  );
  const corrected =
    findings.insteadOf === undefined
      ? ''
      : `Nothing matches “${findings.insteadOf}”. Showing results for “${findings.query}”. `;
  const partly = findings.isPartial ? 'Nothing holds all these words; these hold some. ' : '';
  return `${corrected}${corrected === '' ? partly : ''}Found ${findings.total}: ${counts.join(', ')}.`;
}

function Elsewhere(): ComponentChildren {
  return (
    <ul class="search-elsewhere">
      <li>
        <a href={sitePath('/contents/')}>Contents</a> lists every chapter with the question it
        answers.
      </li>
      <li>
        <a href={sitePath('/trainee/glossary/')}>Glossary</a> has every term with other words for
        it.
      </li>
    </ul>
  );
}

const STARTERS = ['double image', 'flicker', '1/54', 'vinegar smell', 'how long', 'price'];

function FirstSteps({ onAsk }: { readonly onAsk: (query: string) => void }): ComponentChildren {
  return (
    <div class="search-starters">
      <p>For instance</p>
      <ul>
        {STARTERS.map((query) => (
          <li key={query}>
            <a
              href={sitePath(`/search/?${new URLSearchParams({ q: query })}`)}
              onClick={(event) => {
                event.preventDefault();
                onAsk(query);
              }}
            >
              {query}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}
