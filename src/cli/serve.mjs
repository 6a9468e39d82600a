// A small static server for dist/. Run by itself: node src/cli/serve.mjs --port 4173
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { LauncherError, root } from './install.mjs';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
  '.md': 'text/plain; charset=utf-8',
};

// no unsafe-eval: a skill or a sheet is data from anywhere. blob: workers are Pixi's image loaders.
export const contentSecurityPolicy = [
  "default-src 'self'",
  "script-src 'self'",
  "worker-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "media-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self' data: blob:",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const headers = {
  'content-security-policy': contentSecurityPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
};

function answer(dir, request, response) {
  const fail = (code, words) => {
    response.writeHead(code, { ...headers, 'content-type': types['.txt'] });
    response.end(`${words}\n`);
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') return fail(405, 'Only GET and HEAD');
  const file = findFile(dir, request.url ?? '/');
  if (!file) return fail(404, 'Not found');
  // hashed names never change; everything else is asked for again
  const isHashed = file.path.includes(`${path.sep}assets${path.sep}`);
  response.writeHead(200, {
    ...headers,
    'content-type': types[path.extname(file.path)] ?? 'application/octet-stream',
    'content-length': file.size,
    'cache-control': isHashed ? 'public, max-age=31536000, immutable' : 'no-cache',
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file.path)
    .on('error', () => response.destroy())
    .pipe(response);
}

function findFile(dir, url) {
  let wanted;
  try {
    wanted = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return null;
  }
  if (wanted.includes('\0') || wanted.split('/').some((part) => part.startsWith('.'))) return null;
  const full = path.join(dir, wanted.endsWith('/') ? `${wanted}index.html` : wanted);
  if (!full.startsWith(dir + path.sep)) return null;
  const stat = statSync(full, { throwIfNoEntry: false });
  return stat?.isFile() ? { path: full, size: stat.size } : null;
}

/** Listens on the first free port from `port` on (or on that one only) and resolves to { server, url }. */
export async function serveDist({ port = 4173, tries = 50, host = '127.0.0.1', dir = path.join(root, 'dist') } = {}) {
  const server = createServer((request, response) => answer(dir, request, response));
  for (let next = port; next < port + tries; next += 1) {
    if (await listen(server, next, host)) return { server, url: `http://${host}:${server.address().port}/` };
  }
  throw new LauncherError(
    tries === 1 ? `Port ${port} is in use.` : `No free port between ${port} and ${port + tries - 1}.`,
  );
}

function listen(server, port, host) {
  return new Promise((resolve, reject) => {
    const onError = (error) => {
      server.off('listening', onListening);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    const onListening = () => {
      server.off('error', onError);
      resolve(true);
    };
    server.once('error', onError).once('listening', onListening).listen(port, host);
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const at = process.argv.indexOf('--port');
  const { url } = await serveDist(at > 0 ? { port: Number(process.argv[at + 1]), tries: 1 } : {});
  console.log(url);
}
