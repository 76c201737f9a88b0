// Serves a built site for the tests. Plain HTTP, no compression: what a test sees is what the build
// wrote. A test may answer by itself, add headers, and serve the site in a folder of the host.
import { createReadStream, readFileSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.mp4': 'video/mp4',
  '.woff2': 'font/woff2',
};

export type Headers = Readonly<Record<string, string>>;

export interface SiteServerOptions {
  readonly folder: string;
  /** 0 takes any that is free. */
  readonly port?: number;
  /** Folder of the host that the site stands in, with `/` at both ends. */
  readonly base?: string;
  /** Headers of a file, by its path from the root of the site, for instance `/contents/index.html`. */
  readonly headersOf?: (path: string) => Headers;
  /** Sends text compressed, as hosts do. */
  readonly compresses?: boolean;
  /** True when the test has answered by itself. */
  readonly answers?: (request: IncomingMessage, response: ServerResponse) => boolean;
}

export interface SiteServer {
  /** Address of the host, without `/` at its end. */
  readonly origin: string;
  stop(): Promise<void>;
}

const ALWAYS_FRESH: Headers = { 'cache-control': 'no-cache', 'x-content-type-options': 'nosniff' };

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}

/** Path of a request from the root of the site; nothing where it is no address or leaves the site. */
function sitePathOf(url: string, base: string): string | undefined {
  try {
    const path = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
    return path.startsWith(base) ? path.slice(base.length - 1) : undefined;
  } catch {
    return undefined;
  }
}

export async function serveSite(options: SiteServerOptions): Promise<SiteServer> {
  const { folder, port = 0, base = '/', headersOf = () => ALWAYS_FRESH, answers } = options;
  const { compresses = false } = options;

  const send = (response: ServerResponse, status: number, path: string, isHead: boolean): void => {
    const file = join(folder, path);
    const type = TYPES[extname(file)] ?? 'application/octet-stream';
    if (compresses && /^text|json|xml/u.test(type)) {
      response.writeHead(status, {
        'content-type': type,
        'content-encoding': 'gzip',
        ...headersOf(path),
      });
      response.end(isHead ? undefined : gzipSync(readFileSync(file)));
      return;
    }
    response.writeHead(status, {
      'content-type': type,
      'content-length': statSync(file).size,
      ...headersOf(path),
    });
    if (isHead) response.end();
    else createReadStream(file).pipe(response);
  };

  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    if (answers?.(request, response) === true) return;
    const { method = 'GET', url = '/' } = request;
    if (method !== 'GET' && method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end();
      return;
    }
    const isHead = method === 'HEAD';
    const path = sitePathOf(url, base);
    const file = path?.endsWith('/') === true ? `${path}index.html` : path;
    if (file !== undefined && isFile(join(folder, file))) {
      send(response, 200, file, isHead);
    } else if (path !== undefined && isFile(join(folder, path, 'index.html'))) {
      response.writeHead(301, { location: `${base}${path.slice(1)}/` }).end();
    } else if (isFile(join(folder, '404.html'))) {
      send(response, 404, '/404.html', isHead);
    } else {
      response.writeHead(404).end('not found');
    }
  };

  const server = createServer(answer);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject).listen(port, '127.0.0.1', resolve);
  });
  return {
    // Browsers take this address for as secure as https, which the offline copy needs.
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => {
          resolve();
        });
        server.closeAllConnections();
      }),
  };
}
