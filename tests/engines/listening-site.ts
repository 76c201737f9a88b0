import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { siteFolder } from '../site/built-site.ts';
import { serveSite } from '../tools/site-server.ts';

/** The built site with an ear in every page, and a blank page to hold another in a frame. */
export interface ListeningSite {
  readonly origin: string;
  /** Requests that were answered with a fault since the last call. */
  takeFailed(): readonly string[];
  close(): void;
}

// A driver of WebKit can look into a page only after it has loaded; this listens from the first line.
const EAR = `(() => {
  const faults = (window.heardFaults = []);
  for (const kind of ['error', 'warn']) {
    const say = console[kind];
    console[kind] = (...words) => {
      faults.push('console: ' + words.join(' '));
      say.apply(console, words);
    };
  }
  addEventListener('error', (event) => {
    faults.push('error: ' + (event.message ?? event.target?.src ?? event.target?.href));
  }, true);
  addEventListener('unhandledrejection', (event) => {
    faults.push('rejected: ' + event.reason);
  });
  addEventListener('securitypolicyviolation', (event) => {
    faults.push('policy: ' + event.violatedDirective + ' ' + event.blockedURI);
  });
})();`;
const FRAME =
  '<!doctype html><html lang="en"><head><title>Frame</title><link rel="icon" href="data:,"></head><body></body></html>';

/** Serves the built site until it is closed. */
export async function openListeningSite(): Promise<ListeningSite> {
  const { origin: behind, stop } = await serveSite({ folder: siteFolder });
  let failed: string[] = [];

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const path = request.url ?? '/';
    const send = (type: string, body: string | Buffer, status = 200): void => {
      response.writeHead(status, { 'content-type': type, 'cache-control': 'no-cache' }).end(body);
    };
    if (path === '/ear.js') send('text/javascript', EAR);
    else if (path === '/frame') send('text/html', FRAME);
    // The copy for use without network would fetch the whole book meanwhile, and answer in its place.
    else if (path === '/service-worker.js') response.writeHead(404).end();
    else {
      const found = await fetch(`${behind}${path}`);
      const type = found.headers.get('content-type') ?? '';
      if (!found.ok) failed.push(`${found.status}: ${path}`);
      if (type.startsWith('text/html')) {
        const html = await found.text();
        const heard = html.replace(/(<meta charset[^>]*>)/u, '$1<script src="/ear.js"></script>');
        send(type, heard, found.status);
      } else {
        send(type, Buffer.from(await found.arrayBuffer()), found.status);
      }
    }
  };
  const front = createServer((request, response) => {
    answer(request, response).catch((error: unknown) => {
      failed.push(`${String(error)}: ${request.url ?? ''}`);
      response.writeHead(502).end();
    });
  }).listen(0, '127.0.0.1');
  await once(front, 'listening');
  return {
    origin: `http://127.0.0.1:${(front.address() as AddressInfo).port}`,
    takeFailed() {
      const taken = failed;
      failed = [];
      return taken;
    },
    close() {
      front.closeAllConnections();
      front.close();
      void stop();
    },
  };
}
