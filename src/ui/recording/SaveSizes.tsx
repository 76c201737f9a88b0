import type { ComponentChildren } from 'preact';
import { formatBytes } from '../../quantity/format.ts';

/** What is known of a copy of the kept frames before it is made. */
export type CopyForecast =
  | { readonly kind: 'unknown' }
  | {
      readonly kind: 'possible';
      readonly totalBytes: number;
      readonly isExact: boolean;
      readonly leavesSoundOut: boolean;
    }
  | {
      readonly kind: 'refused';
      readonly refusal: { readonly sentence: string; readonly advice: string };
    };

function copyWords(forecast: CopyForecast | undefined): string {
  switch (forecast?.kind) {
    case undefined:
      return 'the size is being read from the index of the recording.';
    case 'unknown':
      return 'its size is told once it is made.';
    case 'refused':
      return `This cannot be made. ${forecast.refusal.sentence} ${forecast.refusal.advice}`;
    case 'possible': {
      const { totalBytes, isExact, leavesSoundOut } = forecast;
      const short = totalBytes < 1e6 ? '' : `, ${formatBytes(totalBytes)}`;
      const size = isExact
        ? `exactly ${totalBytes.toLocaleString('en')} bytes${short}`
        : `about ${formatBytes(totalBytes, 2)}`;
      const sound = leavesSoundOut ? ' Sound is left out: it does not fit the film’s rate.' : '';
      return `${size}. Before it is copied, each kept picture is proven to stand alone.${sound}`;
    }
  }
}

/** How large each of the two copies will be, and which of them cannot be made. */
export function SaveSizes(props: {
  readonly copy: CopyForecast | undefined;
  readonly watchBytes: number;
}): ComponentChildren {
  return (
    <ul>
      <li>
        The kept frames unchanged: <span data-size="copy">{copyWords(props.copy)}</span>
      </li>
      <li>
        A copy to watch:{' '}
        <span data-size="watch">
          about {formatBytes(props.watchBytes, 2)}, less where little moves.
        </span>
      </li>
    </ul>
  );
}
