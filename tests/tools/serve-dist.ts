// Serves the built site for the browser tests: node tests/tools/serve-dist.ts [port] [folder].
// Plain HTTP, no compression, no cache: what a test sees is what the build wrote.
import { createReadStream, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { extname, join, normalize, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.avif': 'image/avif',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.mp4': 'video/mp4',
  '.webm': 'video/webm',
  '.pdf': 'application/pdf',
};

const port = Number(process.argv[2] ?? 4390);
const folder = resolve(process.argv[3] ?? fileURLToPath(new URL('../../dist', import.meta.url)));

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}

function send(response: ServerResponse, status: number, file: string, isHead: boolean): void {
  response.writeHead(status, {
    'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
    'content-length': statSync(file).size,
    'cache-control': 'no-cache',
    'x-content-type-options': 'nosniff',
  });
  if (isHead) response.end();
  else createReadStream(file).pipe(response);
}

function answer(request: IncomingMessage, response: ServerResponse): void {
  const { method = 'GET', url = '/' } = request;
  if (method !== 'GET' && method !== 'HEAD') {
    response.writeHead(405, { allow: 'GET, HEAD' }).end();
    return;
  }
  let path: string;
  try {
    path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    response.writeHead(400).end();
    return;
  }
  const file = join(folder, normalize(`/${path}`), path.endsWith('/') ? 'index.html' : '');
  if (!file.startsWith(folder)) {
    response.writeHead(403).end();
  } else if (isFile(file)) {
    send(response, 200, file, method === 'HEAD');
  } else if (isFile(join(file, 'index.html'))) {
    response.writeHead(301, { location: `${path}/` }).end();
  } else if (isFile(join(folder, '404.html'))) {
    send(response, 404, join(folder, '404.html'), method === 'HEAD');
  } else {
    response.writeHead(404).end('not found');
  }
}

createServer(answer).listen(port, '127.0.0.1', () => {
  console.log(`http://127.0.0.1:${port}/ serves ${folder}`);
});
